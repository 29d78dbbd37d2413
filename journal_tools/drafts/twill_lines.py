"""How the lines of a twill go, by the order in which its ends or picks are drawn in.

The definitions are the trade's (common practice, no source). Straight: each thread one step on. Pointed: the
lines turn on one thread. Herringbone: they turn past a gap, where a thread is left out. Broken: they break off
at even distances. In all of them each line goes on for a whole repeat of the twill, but in a broken one.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import groupby
from typing import Literal, TypeVar

Thread = TypeVar("Thread")

Way = Literal["straight", "pointed", "herringbone", "broken"]
WAYS: tuple[Way, ...] = ("straight", "pointed", "herringbone", "broken")
"""The plainest first."""


@dataclass(frozen=True)
class Lines:
    """way: how they go. forward: of straight ones, whether up the numbers. together: equal threads beside one
    another throughout, 1 for none. doubled: whether the threads that they turn on stand twice."""

    way: Way
    forward: bool
    together: int
    doubled: bool


def lines(order: Sequence[int], size: int) -> Lines | None:
    """The lines of a twill on so many threads drawn in by an order that goes round; None for no regular ones."""
    threads, together = grouped(order)
    if len(threads) < size:
        return None
    steps = [(after - here) % size for here, after in zip(threads, [*threads[1:], threads[0]], strict=True)]
    turns = [_turns(steps[place - 1], steps[place], size) for place in range(len(steps))]
    doubled = len(set(together)) > 1
    if doubled and any(times > (2 if turn else 1) for times, turn in zip(together, turns, strict=True)):
        return None
    way = _way(steps, size)
    if way is None or (doubled and way != "pointed"):
        return None
    return Lines(way, steps[0] == 1, 1 if doubled else together[0], doubled)


def grouped(order: Sequence[Thread]) -> tuple[list[Thread], list[int]]:
    """An order that goes round with equal neighbours as one, from where a group begins, and how many they were."""
    start = next((place for place in range(len(order)) if order[place] != order[place - 1]), 0)
    groups = [list(alike) for _, alike in groupby([*order[start:], *order[:start]])]
    return [group[0] for group in groups], [len(group) for group in groups]


def _turns(before: int, after: int, size: int) -> bool:
    """Whether lines turn on the thread between two steps."""
    return {before, after} == {1, size - 1}


def _way(steps: Sequence[int], size: int) -> Way | None:
    single = (1, size - 1)
    gaps = [step for step in steps if step not in single]
    if not gaps and len(set(steps)) == 1:
        return "straight"
    start = next((place for place in range(len(steps)) if steps[place] != steps[place - 1]), 0)
    runs = [(step, len(list(alike))) for step, alike in groupby([*steps[start:], *steps[:start]])]
    drawn = [(step, times) for step, times in runs if step in single]
    if not drawn:
        return None
    lengths, ways = {times for _, times in drawn}, [step for step, _ in drawn]
    turning = all(here != before for before, here in zip(ways, [ways[-1], *ways[:-1]], strict=True))
    whole = min(lengths) >= size - 1
    if not gaps:
        return "pointed" if whole else None
    between = len(gaps) == len(drawn) and len({min(gap, size - gap) for gap in gaps}) == 1
    if not between:
        return None
    if turning and whole:
        return "herringbone"
    return "broken" if len(lengths) == 1 and max(lengths) < size else None
