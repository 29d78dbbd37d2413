"""Where an order of colours is cut into bouts: at the end of a whole repeat before anywhere else."""

from __future__ import annotations

from collections.abc import Mapping, Sequence, Set
from dataclasses import dataclass
from itertools import groupby, pairwise

from journal_tools.dressing.runs import runs_of
from journal_tools.dressing.stripes import Stripe, stripes_along

REPEAT, COLOURS, UNIT, INSIDE, WITHIN = "repeat", "colours", "unit", "inside", "within"
"""Where a bout ends: after whole repeats of the colours, between two colours, after whole repeats of the
threading in a wide stripe, elsewhere in a wide stripe (of two colours by turns, between pairs), or between
two colours within a repeat."""
COSTS = {REPEAT: 0, COLOURS: 5, UNIT: 15, INSIDE: 25, WITHIN: 40}
"""What a cut costs, beside 100 for a bout that is twice as large as it should be (judgement). A narrow
stripe is never cut, so that none of these has to weigh that."""
ELSEWHERE = 0.7
"""The share of the cost to which it must come down before repeats are cut elsewhere than where they begin."""
WIDE = 3, 2
"""Times a bout that a stripe must be to be cut inside."""
LARGEST = 3
"""Times a bout that a bout may be, where stripes do not end sooner."""


@dataclass(frozen=True)
class Bout:
    """Ends that are wound, tied and taken off together. stripes: colours and ends, in order.

    first: the number of its first end, counted from 1. cut: at what it ends, "" at the edge of the warp.
    """

    stripes: tuple[tuple[str, int], ...]
    first: int
    cut: str = ""

    @property
    def ends(self) -> int:
        """Ends in it."""
        return sum(ends for _, ends in self.stripes)

    @property
    def last(self) -> int:
        """The number of its last end."""
        return self.first + self.ends - 1

    @property
    def order(self) -> tuple[str, ...]:
        """The colour of each end."""
        return tuple(colour for colour, ends in self.stripes for _ in range(ends))


def bouts_of(items: Sequence[str], aimed: int, unit: int = 1) -> tuple[Bout, ...]:
    """The order in bouts of about so many ends. unit: ends of the threading's repeat.

    Of all ways to cut the one with the least cost: of bouts that are too large or too small, and of
    cuts by the place they are at.
    """
    stripes = stripes_along(items)
    repeats = _repeats(items, stripes)
    inner = {at for phases in repeats for whole in phases for at in whole}
    cuts = _places(stripes, aimed, unit, inner)
    best = _cheapest(cuts, len(items), aimed)
    for phases in repeats:
        plain, bar = cuts, float("inf")
        for whole in phases:
            tried = {**plain, **{at: REPEAT for at in whole if at in plain}}
            cost = _cheapest(tried, len(items), aimed)
            if cost[0] < bar:
                cuts, best = tried, cost
                bar = cost[0] * (ELSEWHERE if bar == float("inf") else 1)
    edges = [0, *best[1], len(items)]
    return tuple(
        Bout(_striped(items[start:end]), start + 1, cuts.get(end, "")) for start, end in pairwise(edges)
    )


def _striped(items: Sequence[str]) -> tuple[tuple[str, int], ...]:
    return tuple((colour, len(list(same))) for colour, same in groupby(items))


def _places(stripes: Sequence[Stripe], aimed: int, unit: int, inner: Set[int]) -> Mapping[int, str]:
    """Every place where a cut may be, as the ends before it, and what it is."""
    places: dict[int, str] = {}
    for stripe in stripes:
        before = stripe.first - 1
        step = len(stripe.colours)
        if stripe.ends * WIDE[1] > aimed * WIDE[0]:
            for at in range(before + step, stripe.last, step):
                places[at] = UNIT if at % unit == 0 else INSIDE
        if before:
            places[before] = WITHIN if before in inner else COLOURS
    return places


def _repeats(items: Sequence[str], stripes: Sequence[Stripe]) -> list[list[tuple[int, ...]]]:
    """For each part of the order that repeats, the ways to cut it after whole repeats, by where a repeat begins."""
    edges = [stripe.first - 1 for stripe in stripes]
    found = []
    number = 0
    for run in runs_of([(stripe.colours, stripe.ends) for stripe in stripes]):
        start = begin = edges[number]
        number += len(run.block) * run.times
        long = sum(ends for _, ends in run.block)
        if run.times < 2:
            continue
        end = start + long * run.times
        while start and items[start - 1] == items[start - 1 + long]:
            start -= 1
        while end < len(items) and items[end] == items[end - long]:
            end += 1
        inside = [at for at in edges if start < at < end]
        begun = list(dict.fromkeys((begin % long, *(at % long for at in inside))))
        found.append([tuple(at for at in inside if at % long == phase) for phase in begun])
    return found


def _cheapest(cuts: Mapping[int, str], ends: int, aimed: int) -> tuple[float, list[int]]:
    """The least cost of all bouts together, and where the cuts then are; larger bouts before smaller ones."""
    at = [0, *sorted(cuts), ends]
    cost: list[float] = [0.0] + [float("inf")] * (len(at) - 1)
    came = [0] * len(at)
    for last in range(1, len(at)):
        here = COSTS[cuts[at[last]]] * aimed * aimed if at[last] in cuts else 0
        for first in range(last - 1, -1, -1):
            size = at[last] - at[first]
            if size > LARGEST * aimed and first < last - 1:
                break
            whole = cost[first] + 100 * (size - aimed) ** 2 + here
            if whole < cost[last]:
                cost[last], came[last] = whole, first
    found = []
    last = len(at) - 1
    while came[last]:
        last = came[last]
        found.append(at[last])
    return cost[-1], found[::-1]
