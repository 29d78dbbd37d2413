"""Which sheds need a treadle of their own when several treadles can be pressed at once."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from typing import TypeAlias

Shed: TypeAlias = frozenset[int]


def shared(sheds: Sequence[Shed], at_once: int) -> Mapping[Shed, tuple[Shed, ...]]:
    """For each shed the sheds whose treadles make it, at most so many: itself where it has a treadle of its own.

    A shed loses its treadle only while it, and every shed that leaned on it, can be made by those that are left.
    Largest first: a small shed is a part of more others. An empty shed takes none.
    """
    made: dict[Shed, tuple[Shed, ...]] = {shed: (shed,) if shed else () for shed in sheds}
    own = [shed for shed in made if shed]
    for shed in sorted(own, key=len, reverse=True):
        left = [other for other in own if other != shed]
        again = {each: together(each, left, at_once) for each, parts in made.items() if shed in parts}
        found = {each: parts for each, parts in again.items() if parts is not None}
        if len(found) == len(again):
            made.update(found)
            own = left
    return made


def together(shed: Shed, others: Collection[Shed], at_once: int) -> tuple[Shed, ...] | None:
    """Others, at most so many, that make just this shed when pressed at once; None where none do."""
    return _covering(shed, [other for other in others if other and other <= shed], at_once)


def _covering(rest: Shed, parts: Sequence[Shed], at_once: int) -> tuple[Shed, ...] | None:
    """Parts, at most so many, that hold all of the rest."""
    if not rest:
        return ()
    if at_once < 1:
        return None
    # Some part must hold the shaft that the fewest hold: those are the only ones worth trying.
    rarest = min(sorted(rest), key=lambda shaft: sum(shaft in part for part in parts))
    for part in parts:
        if rarest in part and (more := _covering(rest - part, parts, at_once - 1)) is not None:
            return (part, *more)
    return None
