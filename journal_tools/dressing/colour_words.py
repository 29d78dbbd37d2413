"""An order of colours as a weaver would write it, two colours in turn among them."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache

from journal_tools.dressing.runs import Run, runs_from_left, runs_of
from journal_tools.dressing.stripes import stripes_along
from journal_tools.notation import print_colours


def colour_words(items: Sequence[str]) -> str:
    """The shortest of four notations: by stripes, in pairs of two colours by turns, or by ends.

    Where one colour ends a repeat and begins the next, the two are one stripe, which hides the
    repeat of `8 times (black, gold), 8 times (gold, black)`; the ends themselves still show it.
    """
    if len(set(items)) == 1:
        return _one(items[0], len(items))
    return _shortest(tuple(items))


@lru_cache(maxsize=4_096)
def _one(colour: str, ends: int) -> str:
    return print_colours((colour,) * ends)


@lru_cache(maxsize=4_096)
def _shortest(items: tuple[str, ...]) -> str:
    """Kept, for bouts and groups come again, in one warp and from warp to warp."""
    by_ends = (_written(runs) for runs in (runs_from_left(items), runs_of(items)))
    found = (print_colours(items), _by_stripes(items), *by_ends)
    # At the board hands go one way: a mirror is written out.
    written = [text for text in found if "mirrored (" not in text and "pointed (" not in text] or list(found)
    return min(written, key=len)


def _by_stripes(items: Sequence[str]) -> str:
    return ", ".join(
        f"{stripe.ends // 2} times ({', '.join(stripe.colours)})" if len(stripe.colours) > 1 else
        print_colours(stripe.colours * stripe.ends)
        for stripe in stripes_along(items)
    )


def _written(runs: Sequence[Run[str]]) -> str:
    parts = []
    for run in runs:
        if run.times > 1 and len(set(run.block)) > 1:
            parts.append(f"{run.times} times ({colour_words(run.block)})")
        else:
            parts.append(print_colours(run.block * run.times))
    return ", ".join(parts)
