"""The colours along the threading: in its groups where both repeat together, else where each stripe begins."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import accumulate, pairwise

from journal_tools.dressing.runs import Run, root_of, runs_of
from journal_tools.dressing.sections import FEW, MOST, Section, groups_of, threaded
from journal_tools.dressing.stripes import Stripe, stripes_along
from journal_tools.notation import Sets

LONGEST = 128
"""Ends of the longest repeat of threading and colours together that is told in one."""
COVERS, TIMES = 0.6, 3
"""The share of the ends that such a repeat must cover, and how often it must stand."""

Threads = tuple[tuple[frozenset[int], str], ...]
"""The shafts and the colour of each end."""


@dataclass(frozen=True)
class Begins:
    """Where a stripe begins: in which box, counted from 1, and at which end of that box's group."""

    stripe: Stripe
    box: int
    end: int


def coloured_sections(threading: Sets, colours: Sequence[str]) -> tuple[Section, ...]:
    """The threading in groups that end where colours do; none where the two do not repeat together.

    threading: one repeat. colours: of every end with a heddle, of at least two colours.
    """
    threads: Threads = tuple(zip(threaded(threading, len(colours)), colours, strict=True))
    found = max(_placed(threads), key=lambda placed: placed[1].length * (placed[1].times > 1), default=None)
    if found is None:
        return ()
    start, run = found
    long = len(run.block)
    if run.times < TIMES or long > LONGEST or run.length < COVERS * len(colours):
        return ()
    root = root_of(threading)
    start = _begun(threads, start, run, len(root))
    times = 1
    while threads[start : start + long] == threads[start + times * long : start + (times + 1) * long]:
        times += 1
    end = start + times * long
    parts = [(threads[:start], 1, 0), (threads[start : start + long], times, start), (threads[end:], 1, end)]
    return tuple(_section(part, often, first, root) for part, often, first in parts if part)


def begins_of(sections: Sequence[Section], colours: Sequence[str]) -> tuple[Begins, ...]:
    """Where each stripe begins along the groups of the threading."""
    box = before = 0
    stripes = list(stripes_along(colours))
    found = []
    for section in sections:
        for group in section.groups * section.times:
            box += 1
            while stripes and stripes[0].first <= before + len(group):
                stripe = stripes.pop(0)
                found.append(Begins(stripe, box, stripe.first - before))
            before += len(group)
    return tuple(found)


def _placed(threads: Threads) -> Iterator[tuple[int, Run[tuple[frozenset[int], str]]]]:
    """Each run with the ends before it."""
    before = 0
    for run in runs_of(threads):
        yield before, run
        before += run.length


def _begun(threads: Threads, start: int, run: Run[tuple[frozenset[int], str]], root: int) -> int:
    """Where the first whole repeat is best begun: at the edge, or else with a colour, and with the threading."""
    edges = {stripe.first - 1 for stripe in stripes_along([colour for _, colour in threads])}
    long = len(run.block)
    places = range(start, start + long)

    def cost(at: int) -> tuple[float, int]:
        return (0 if at == 0 else (at not in edges) + 0.7 * bool(at % root)), at

    return min(places, key=cost)


def _section(part: Threads, times: int, first: int, root: Sets) -> Section:
    groups = list(_cut(part, first, root))
    shafts = tuple(tuple(shafts for shafts, _ in group) for group in groups)
    return Section(shafts, times, first + 1, colours=tuple(tuple(colour for _, colour in group) for group in groups))


def _cut(part: Threads, first: int, root: Sets) -> Iterator[Threads]:
    """The cheapest groups of about six ends, ended where colours end, and where groups of the threading do."""
    edges = {stripe.first - 1 for stripe in stripes_along([colour for _, colour in part])} | {len(part)}
    begun = {0, *accumulate(map(len, groups_of(root)))}
    cost = [0.0] + [float("inf")] * len(part)
    came = [0] * (len(part) + 1)
    for end in range(1, len(part) + 1):
        again = (first + end) % len(root) in begun
        place = (0.0 if again else 0.2) if end in edges else (0.25 if again else 0.9)
        for start in range(max(0, end - MOST), end):
            size, inner = end - start, sum(start < edge < end for edge in edges)
            here = cost[start] + 0.3 + 0.03 * abs(size - 6) + (size < FEW) * 0.5 + place + 0.2 * inner
            if here < cost[end]:
                cost[end], came[end] = here, start
    cuts = [len(part)]
    while cuts[-1]:
        cuts.append(came[cuts[-1]])
    for start, end in pairwise(cuts[::-1]):
        yield part[start:end]
