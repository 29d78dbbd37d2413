"""Heddles on each shaft against what the loom has, and what to move or add where one is short."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

from journal_tools.notation import Sets
from journal_tools.planning.threaded import loom_heddles
from journal_tools.records.loom import Loom


@dataclass(frozen=True)
class OnShaft:
    """One shaft. needed: heddles that the threading takes. has: what the loom has, None where nobody says."""

    shaft: int
    needed: int
    has: int | None

    @property
    def short(self) -> int:
        """Heddles that are wanting; none where nobody knows."""
        return max(0, self.needed - self.has) if self.has is not None else 0

    @property
    def spare(self) -> int:
        """Heddles that are over; none where nobody knows."""
        return max(0, self.has - self.needed) if self.has is not None else 0


@dataclass(frozen=True)
class Move:
    """So many heddles to a shaft, from another; source: None for heddles that must be added."""

    shaft: int
    heddles: int
    source: int | None


def heddles_of(ends: Sets, loom: Loom | None) -> tuple[OnShaft, ...]:
    """Every shaft of the threading, or of the loom when that has more. ends: the shafts of each end.

    A shaft that the loom has not got has no heddles to give: the draft's shafts are told of elsewhere.
    """
    needed = Counter(shaft for end in ends for shaft in end)
    own = loom.shafts.number if loom is not None and loom.shafts is not None else 0
    shafts = range(1, max([own, *needed], default=0) + 1)
    return tuple(OnShaft(shaft, needed[shaft], _has(loom, shaft, own)) for shaft in shafts)


def _has(loom: Loom | None, shaft: int, own: int) -> int | None:
    if loom is None or (own and shaft > own):
        return None
    return loom_heddles(loom, shaft)


def moves(shafts: Sequence[OnShaft]) -> tuple[Move, ...]:
    """How the short shafts come by their heddles: from the shafts that have most over, then added."""
    spare = {each.shaft: each.spare for each in shafts if each.spare}
    found = []
    for each in shafts:
        wanting = each.short
        while wanting and spare:
            source = max(spare, key=lambda shaft: (spare[shaft], -shaft))
            given = min(wanting, spare[source])
            found.append(Move(each.shaft, given, source))
            wanting -= given
            spare[source] -= given
            if not spare[source]:
                del spare[source]
        if wanting:
            found.append(Move(each.shaft, wanting, None))
    return tuple(found)


def straight_instead(ends: Sets, loom: Loom | None) -> tuple[int, int] | None:
    """(shafts, heddles on the fullest) of a straight draw that spares a crowded pair of shafts.

    Only where two shafts are threaded by turns: the odd shafts then do the work of the first, the
    even ones of the second. The fewest shafts whose heddles are enough; None where there are none.
    """
    turns = (frozenset({1}), frozenset({2}))
    if loom is None or loom.shafts is None or any(end != turns[n % 2] for n, end in enumerate(ends)):
        return None
    for shafts in range(4, loom.shafts.number + 1, 2):
        most = -(-len(ends) // shafts)
        if all((has := loom_heddles(loom, shaft)) is not None and has >= most for shaft in range(1, shafts + 1)):
            return shafts, most
    return None
