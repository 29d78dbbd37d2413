"""Two cloths woven on one another."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import cycle, islice
from math import lcm
from typing import TypeVar

from journal_tools.drafts.draft import Draft
from journal_tools.drafts.operations import other_shed, shifted
from journal_tools.drafts.unfitting import Unfitting
from journal_tools.notation.lists import HIGHEST
from journal_tools.quantities import Unreadable

T = TypeVar("T")

MOST_THREADS_OF_LAYERS = 5_000


def double_cloth(upper: Draft, lower: Draft) -> Draft:
    """Two cloths on one another, an end and a pick of each in turn, the upper one first.

    For a pick of the lower cloth every end of the upper one is up; for one of the upper no end of the
    lower. Repeats of different length are woven until both end together. Where both sheds sink the whole
    sinks, else it rises. Orders and sizes of threads go with their threads.

    Raises Unfitting where an end of the upper cloth is on no shaft, so that nothing lifts it off the lower
    one, and for a sinking layer where an end is on no shaft or on several.
    """
    ends = lcm(len(upper.threading), len(lower.threading))
    picks = lcm(len(upper.picks), len(lower.picks))
    if max(ends, picks) > MOST_THREADS_OF_LAYERS:
        right = "The two layers' repeats fit together in too many threads."
        raise Unfitting(f"{ends:,} ends, {picks:,} picks", right, part="upper")
    if upper.shafts + lower.shafts > HIGHEST:
        right = f"The two layers take more than {HIGHEST} shafts together."
        raise Unfitting(f"{upper.shafts} and {lower.shafts} shafts", right, part="upper")
    _refuse_what_is_never_lifted(upper)
    top, below = _rising(upper, "upper"), _rising(lower, "lower")
    every = frozenset(range(1, upper.shafts + 1))
    sheds = zip(_full(top.picks, picks), shifted(_full(below.picks, picks), upper.shafts), strict=True)
    made = Draft(
        _in_turn(top.threading, shifted(below.threading, upper.shafts), ends),
        lift_plan=tuple(shed for over, under in sheds for shed in (over, every | under)),
        warp_colours=_both(upper.warp_colours, lower.warp_colours, ends, ("upper", "lower")),
        weft_colours=_both(upper.weft_colours, lower.weft_colours, picks, ("upper", "lower")),
        warp_order=_both(upper.warp_order, lower.warp_order, ends, ("upper", "lower")),
        weft_order=_both(upper.weft_order, lower.weft_order, picks, ("upper", "lower")),
        warp_thickness=_both(upper.warp_thickness, lower.warp_thickness, ends, (1.0, 1.0)),
        weft_thickness=_both(upper.weft_thickness, lower.weft_thickness, picks, (1.0, 1.0)),
        warp_spacing=_both(upper.warp_spacing, lower.warp_spacing, ends, (1.0, 1.0)),
        weft_spacing=_both(upper.weft_spacing, lower.weft_spacing, picks, (1.0, 1.0)),
        floating_selvedges=max(upper.floating_selvedges, lower.floating_selvedges),
    )
    return made if upper.rising or lower.rising else other_shed(made)


def _refuse_what_is_never_lifted(upper: Draft) -> None:
    for number, end in enumerate(upper.threading, 1):
        if not end:
            right = f"End {number} of the upper cloth is on no shaft, so that nothing lifts it off the lower one."
            raise Unfitting("none", right, part="threading").in_layer("upper")


def _rising(layer: Draft, name: str) -> Draft:
    """The layer in a rising shed. name: "upper" or "lower". Raises Unfitting."""
    if layer.rising:
        return layer
    try:
        return other_shed(layer)
    except Unreadable as unreadable:
        right = f"The {name} cloth's shed sinks. {unreadable.right}"
        raise Unfitting(unreadable.read, right, part="threading").in_layer(name) from unreadable


def _full(threads: Sequence[T], number: int) -> tuple[T, ...]:
    return tuple(islice(cycle(threads), number))


def _in_turn(one: Sequence[T], other: Sequence[T], number: int) -> tuple[T, ...]:
    """So many of each, one of the first and one of the other in turn."""
    return tuple(thread for both in zip(_full(one, number), _full(other, number), strict=True) for thread in both)


def _both(one: Sequence[T], other: Sequence[T], number: int, usual: tuple[T, T]) -> tuple[T, ...]:
    """The orders of two layers in turn, with what is usual for one that has none; () where neither has any."""
    return _in_turn(one or usual[:1], other or usual[1:], number) if one or other else ()
