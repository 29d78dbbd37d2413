"""The threading in groups that a hand draws in at one go, each with a box to tick."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from journal_tools.dressing.runs import Run, root_of, runs_of
from journal_tools.notation import Sets

FEW, MANY = 4, 8
"""Ends in a group, where the repeat does not say better."""
MOST = 10
"""Ends of the longest repeat that is one group."""
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


def sections_of(threading: Sets, ends: int) -> tuple[Section, ...]:
    """The threading of so many ends, in sections of whole repeats and what is left over."""
    root = root_of(threading)
    if ends < 2 * len(root):
        return tuple(_sections(_worth(runs_of(threaded(threading, ends)), WORTH, TIMES)))
    times, over = divmod(ends, len(root))
    found = list(_sections([Run(root, times)]))
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


def _sections(runs: Iterable[Run[frozenset[int]]]) -> Iterator[Section]:
    first = 1
    for run in runs:
        for part in _filled(run):
            section = Section(groups_of(part.block), part.times, first)
            yield section
            first += section.ends


def _filled(run: Run[frozenset[int]]) -> Iterator[Run[frozenset[int]]]:
    """A repeat of one to three ends taken so many times that it fills a hand."""
    several = MANY // len(run.block) if len(run.block) < FEW and run.times > 1 else 1
    rounds, over = divmod(run.times, several)
    if rounds:
        yield Run(run.block * several, rounds)
    if over:
        yield Run(run.block * over, 1)


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
