"""What a draft takes of a loom, and what it could do without."""

from __future__ import annotations

from dataclasses import dataclass

from journal_tools.drafts.draft import Draft
from journal_tools.drafts.repeat import comes_again_after

ONE_REPEAT = 64
"""A threading of no more ends is taken to be threaded over and over (judgement)."""


@dataclass(frozen=True)
class Needs:
    """shafts_that_move: those that have an end and are lifted or sunk. shafts_that_would_do: one for all ends that
    move alike, none for those that never do. unused_shafts: lifted or sunk, and no end is on them.
    idle_shafts: threaded and never moved. unused_treadles: tied and never pressed."""

    shafts_that_move: int
    shafts_that_would_do: int
    unused_shafts: tuple[int, ...]
    idle_shafts: tuple[int, ...]
    unused_treadles: tuple[int, ...]


def needs(draft: Draft) -> Needs:
    """What a draft needs and what it does not."""
    threaded = frozenset[int]().union(*draft.threading)
    moved = frozenset[int]().union(*draft.picks)
    pressed = frozenset[int]().union(*(draft.treadling or ()))
    when = {end: frozenset(n for n, pick in enumerate(draft.picks) if pick & end) for end in set(draft.threading)}
    return Needs(
        len(threaded & moved),
        len({picks for picks in when.values() if picks}),
        tuple(sorted(moved - threaded)),
        tuple(sorted(threaded - moved)),
        tuple(treadle for treadle in range(1, draft.treadles + 1) if treadle not in pressed),
    )


def plain_weave_on(draft: Draft) -> tuple[frozenset[int], frozenset[int]] | None:
    """The two lifts that weave plain on a threading, so that every other end is up; None where none do.

    The threading is taken as it is written, from its first end to its last. A short one is one repeat, threaded
    over and over: if that has an odd number of ends, as 1-5 has, the next begins wrong, and none do. Nor do they
    where an end has no heddle or two neighbours are on one shaft.
    """
    short = len(draft.threading) <= ONE_REPEAT and comes_again_after(draft.threading) % 2
    ends = draft.threading * 2 if short else draft.threading
    odd, even = (frozenset[int]().union(*ends[start::2]) for start in (0, 1))
    found = []
    for up, down, start in ((odd, even, 0), (even, odd, 1)):
        lift = up - down
        if not all(end & lift for end in ends[start::2]):
            return None
        found.append(lift)
    return found[0], found[1]
