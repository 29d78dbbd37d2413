"""From the room that each end takes back to the ends in each dent: `spacing_in_dents` the other way."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from journal_tools.notation import Sets

USUAL = (2, 1, 3, 4, 5, 6)
"""Ends of a usual dent, as one is tried after the other: the room alone says only how dents stand to one another."""


def dents_of(spacing: Sequence[float], usual: int = 0) -> Sets | None:
    """The ends in each dent that stand so, or None where no dents do or all are alike.

    spacing: the room of each end beside the usual. usual: the ends of a usual dent, where that is known. An empty
    dent comes before the end that has its room, but behind the last one.
    """
    if len(set(spacing)) < 2:
        return None
    for each in (usual, *USUAL):
        # In a mirrored draft the room of an empty dent is that of the end before it.
        for way in (1, -1):
            dents = _read_back(spacing[::way], each) if each else None
            if dents is not None:
                return dents[::way]
    return None


def _read_back(spacing: Sequence[float], usual: int) -> Sets | None:
    """The dents, where they give the same room again."""
    from journal_tools.drafts.making import spacing_in_dents

    dents = _dents(spacing, usual)
    return dents if dents is not None and _alike(spacing_in_dents(dents), spacing) else None


def _dents(spacing: Sequence[float], usual: int) -> Sets | None:
    """The dents, if the usual one holds so many."""
    found: list[int] = []
    place = 0
    while place < len(spacing):
        # The room of a dent's first end is one share of the dent, and the whole of those before it that are empty.
        dents = spacing[place] / usual
        empty = int(dents + 1e-6)
        share = dents - empty
        held, empty = (1, empty - 1) if share < 1e-6 else (round(1 / share), empty)
        if empty < 0 or place + held > len(spacing):
            return None
        found += [0] * empty + [held]
        place += held
    last = found[-1]
    behind = round(spacing[-1] / usual - 1 / last) if last > 1 else 0
    return tuple(frozenset({number} - {0}) for number in [*found, *[0] * behind])


def _alike(one: Sequence[float], other: Sequence[float]) -> bool:
    return len(one) == len(other) and all(abs(a - b) < 1e-6 for a, b in zip(one, other, strict=True))
