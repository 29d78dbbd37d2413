"""Pieces of one kind: those whose mean is the size of something."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from itertools import pairwise

from journal_tools.ledger import PieceLedger

AT_ONE_MOMENT = 0.1
"""Sizes at one moment that differ by more than this part of the larger are of unlike pieces (judgement)."""
AT_ANY = 1 / 3
"""The same for sizes at two moments, between which lies all that hems and finishing take (judgement)."""
NAMED = 4
"""So many names are said; of more, how many they are."""

Sizes = Mapping[tuple[str, float], float]


def alike(pieces: Sequence[PieceLedger]) -> list[PieceLedger]:
    """The kind with most pieces; of kinds with as many, the one that was woven first."""
    kinds = kinds_of(pieces)
    return max(kinds, key=number_of) if kinds else []


def kinds_of(pieces: Sequence[PieceLedger]) -> list[list[PieceLedger]]:
    """Pieces by kind: woven to one plan, and no two of them unlike in width or in length."""
    kinds: list[list[tuple[PieceLedger, Sizes]]] = []
    for piece in pieces:
        sizes = sizes_of(piece)
        own = (kind for kind in kinds if all(piece.plan == other.plan and near(sizes, its) for other, its in kind))
        kind = next(own, None)
        if kind is None:
            kinds.append(kind := [])
        kind.append((piece, sizes))
    return [[piece for piece, _ in kind] for kind in kinds]


def sizes_of(piece: PieceLedger) -> Sizes:
    """Every measured size in mm, by direction and by the place of its state in the order."""
    return {(line.direction, line.state.rank): line.measured_mm for line in piece.sizes if line.measured_mm is not None}


def near(one: Sizes, other: Sizes) -> bool:
    """Whether two pieces may be of one kind: compared at the same moments, else by their last sizes."""
    for direction in ("width", "length"):
        own = {state: mm for (way, state), mm in one.items() if way == direction}
        its = {state: mm for (way, state), mm in other.items() if way == direction}
        both = own.keys() & its.keys()
        if any(differ(own[state], its[state]) > AT_ONE_MOMENT for state in both):
            return False
        if own and its and not both and differ(own[max(own)], its[max(its)]) > AT_ANY:
            return False
    return True


def differ(one: float, other: float) -> float:
    """By what part of the larger two sizes differ."""
    return 1 - min(one, other) / max(one, other)


def number_of(pieces: Sequence[PieceLedger]) -> int:
    """How many pieces there are, those written down as alike counted each."""
    return sum(piece.number for piece in pieces)


def called(pieces: Sequence[PieceLedger]) -> str:
    """The pieces by name: `towels 1-4` for four that are numbered in turn, else one after the other."""
    found = [re.fullmatch(r"(.+?)s? (\d+)(?:\s*[-–]\s*(\d+))?", piece.name) for piece in pieces]
    spans = [(match[1], int(match[2]), int(match[3] or match[2])) for match in found if match is not None]
    in_turn = all(word == before and first == last + 1 for (before, _, last), (word, first, _) in pairwise(spans))
    if len(spans) == len(pieces) > 1 and in_turn:
        return f"{spans[0][0]}s {spans[0][1]}-{spans[-1][2]}"
    names = [piece.name or "one without a name" for piece in pieces]
    if len(names) > NAMED:
        return f"{number_of(pieces)} pieces"
    return " and ".join([", ".join(names[:-1]), names[-1]] if len(names) > 1 else names)
