"""The threading in groups that a hand draws in at one go, each with a box to tick."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from journal_tools.dressing.runs import Run, root_of, runs_of
from journal_tools.notation import Sets

FEW, MANY = 4, 8
"""Ends in a group, where the repeat does not say better."""
MOST = 10
"""Ends of the longest repeat that is one group."""
FEW_BOXES, MANY_BOXES = 24, 40
"""Boxes of one repeat each up to so many; more come to at most so many, several repeats to a box (judgement)."""
FULL = 8, 24
"""Ends to a box of several repeats."""
WORTH, TIMES = 24, 3
"""Ends that a repeat must cover, and how often it must stand, to be told for itself in a threading of many parts."""


@dataclass(frozen=True)
class Section:
    """A part of the threading that is repeated, or stands once.

    groups: the ends of one repeat, in groups. times: how often the repeat stands.
    first: the number of its first end, counted from 1. broken: whether it is the beginning of a
    repeat that is cut off by the edge. colours: of the ends of each group, where they repeat with it.
    """

    groups: tuple[Sets, ...]
    times: int
    first: int
    broken: bool = False
    colours: tuple[tuple[str, ...], ...] = ()

    @property
    def repeat_ends(self) -> int:
        """Ends in one repeat."""
        return sum(map(len, self.groups))

    @property
    def ends(self) -> int:
        """Ends in all."""
        return self.repeat_ends * self.times

    @property
    def boxes(self) -> int:
        """Groups in all, with a box for each."""
        return len(self.groups) * self.times

    @property
    def last(self) -> int:
        """The number of its last end."""
        return self.first + self.ends - 1

    def rows(self) -> Iterator[tuple[int, ...]]:
        """The end that each group brings the count to, repeat by repeat."""
        at = self.first - 1
        for _ in range(self.times):
            counted = []
            for group in self.groups:
                at += len(group)
                counted.append(at)
            yield tuple(counted)


def threaded(threading: Sets, ends: int) -> Sets:
    """The threading of so many ends: begun again when short, cut off when long."""
    rounds = -(-ends // len(threading)) if threading else 0
    return (threading * rounds)[:ends]


def sections_of(threading: Sets, ends: int, edges: Collection[int] = ()) -> tuple[Section, ...]:
    """The threading of so many ends, in sections of whole repeats and what is left over.

    Of a short repeat that would have very many boxes, several share one. edges: the ends before each
    stripe of colour, at which boxes best begin.
    """
    root = root_of(threading)
    if ends < 2 * len(root):
        return tuple(_sections(_worth(runs_of(threaded(threading, ends)), WORTH, TIMES), edges))
    times, over = divmod(ends, len(root))
    found = list(_sections([Run(root, times)], edges))
    if over:
        found.append(Section(_cut(groups_of(root), over), 1, ends - over + 1, broken=True))
    return tuple(found)


def _worth(runs: Sequence[Run[frozenset[int]]], worth: int, times: int = 2) -> Iterator[Run[frozenset[int]]]:
    """The runs that cover so many ends, so many times over; the others joined to what stands beside them."""
    once: Sets = ()
    for run in runs:
        if run.times >= times and run.length >= worth:
            if once:
                yield Run(once, 1)
            yield run
            once = ()
        else:
            once += run.block * run.times
    if once:
        yield Run(once, 1)


def _sections(runs: Iterable[Run[frozenset[int]]], edges: Collection[int]) -> Iterator[Section]:
    first = 1
    for run in runs:
        several = _to_a_box(run, first - 1, edges)
        for often, times in zip((several, run.times % several), (run.times // several, 1), strict=True):
            if often and times:
                groups = groups_of(run.block) if often == 1 else (run.block * often,)
                section = Section(groups, times, first)
                yield section
                first += section.ends


def _to_a_box(run: Run[frozenset[int]], before: int, edges: Collection[int]) -> int:
    """How many repeats share a box: one, or as many as fill a hand, and more where there are very many boxes."""
    long = len(run.block)
    least = MANY // long if long < FEW and run.times > 1 else 1
    if long > MOST or run.times <= FEW_BOXES * least:
        return least
    few = -(-FULL[0] // long)
    found = [several for several in (few, 2 * few, 3 * few) if several * long <= FULL[1]]
    enough = [several for several in found if run.times <= several * MANY_BOXES] or found[-1:]
    inside = [at - before for at in edges if before < at < before + run.length]
    return max(enough, key=lambda several: (sum(at % (several * long) == 0 for at in inside), -several))


def _cut(groups: Sequence[Sets], ends: int) -> tuple[Sets, ...]:
    """The groups of a repeat's first ends; an end or two alone go with the group before them."""
    found: list[Sets] = []
    for group in groups:
        left = ends - sum(map(len, found))
        if left > 0:
            found.append(group[:left])
    if len(found) > 1 and len(found[-1]) <= 2 and len(found[-2]) + len(found[-1]) <= MOST:
        rest = found.pop()
        found[-1] += rest
    return tuple(found)


def groups_of(block: Sets) -> tuple[Sets, ...]:
    """One repeat: whole when it is short, else in groups of four to eight ends, cut where it repeats or turns."""
    if len(block) <= MOST:
        return (block,)
    return tuple(group for run in _worth(runs_of(block), FEW + 2) for group in _groups_of(run))


def _groups_of(run: Run[frozenset[int]]) -> Iterator[Sets]:
    """Even groups of whole repeats, or a stretch without repeats cut where it turns."""
    if run.times == 1 or len(run.block) > MANY:
        for _ in range(run.times):
            yield from _at_turns(run.block)
        return
    least = -(-run.length // MANY)
    even = [n for n in range(least, run.times + 1) if run.times % n == 0 and run.length >= FEW * n]
    groups = even[0] if even else min(least, run.times)
    for n in range(groups):
        yield run.block * (run.times * (n + 1) // groups - run.times * n // groups)


def _at_turns(block: Sets) -> Iterator[Sets]:
    """The cheapest cuts: groups of about six, ended where the threading turns."""
    turns = _turns(block)
    best: list[tuple[float, int]] = [(0.0, 0)] + [(float("inf"), 0)] * len(block)
    for end in range(1, len(block) + 1):
        for size in range(1, min(MANY, end) + 1):
            elsewhere = 0.0 if end in turns or end == len(block) else 0.5
            cost = best[end - size][0] + 0.4 + 0.03 * abs(size - 6) + (size < FEW) + elsewhere
            if cost < best[end][0]:
                best[end] = (cost, end - size)
    cuts = [len(block)]
    while cuts[-1]:
        cuts.append(best[cuts[-1]][1])
    cuts.reverse()
    for start, end in pairwise(cuts):
        yield block[start:end]


def _turns(block: Sets) -> set[int]:
    """How many ends stand before each place where the threading turns, the turning end among them."""
    shafts = [min(end) if len(end) == 1 else 0 for end in block]
    return {
        at + 1
        for at in range(1, len(block) - 1)
        if (shafts[at] - shafts[at - 1]) * (shafts[at + 1] - shafts[at]) < 0
    }
