"""An order of colours as a weaver would write it, two colours in turn among them."""

from __future__ import annotations

from collections.abc import Sequence

from journal_tools.dressing.runs import runs_of
from journal_tools.notation import print_colours


def colour_words(items: Sequence[str]) -> str:
    """The shorter of two notations: by stripes, or by ends.

    Where one colour ends a repeat and begins the next, the two are one stripe, which hides the
    repeat of `8 times (black, gold), 8 times (gold, black)`; the ends themselves still show it.
    """
    by_end = []
    for run in runs_of(items):
        if run.times > 1 and len(set(run.block)) > 1:
            by_end.append(f"{run.times} times ({colour_words(run.block)})")
        else:
            by_end.append(print_colours(run.block * run.times))
    return min(print_colours(items), ", ".join(by_end), key=len)
