"""An order of colours as a weaver would write it, two colours in turn among them."""

from __future__ import annotations

from collections.abc import Sequence

from journal_tools.dressing.runs import Run, runs_from_left, runs_of
from journal_tools.notation import print_colours


def colour_words(items: Sequence[str]) -> str:
    """The shortest of three notations: by stripes, or by ends, in two ways of finding repeats.

    Where one colour ends a repeat and begins the next, the two are one stripe, which hides the
    repeat of `8 times (black, gold), 8 times (gold, black)`; the ends themselves still show it.
    """
    found = (print_colours(items), *(_written(runs) for runs in (runs_from_left(items), runs_of(items))))
    # At the board hands go one way: a mirror is written out.
    written = [text for text in found if "mirrored (" not in text and "pointed (" not in text] or list(found)
    return min(written, key=len)


def _written(runs: Sequence[Run[str]]) -> str:
    parts = []
    for run in runs:
        if run.times > 1 and len(set(run.block)) > 1:
            parts.append(f"{run.times} times ({colour_words(run.block)})")
        else:
            parts.append(print_colours(run.block * run.times))
    return ", ".join(parts)
