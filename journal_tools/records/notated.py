"""Threadings, tie-ups, treadlings, lift plans and colour orders in a record: as typed, and read."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import TypeVar

from journal_tools.notation import (
    parse_colours,
    parse_dents,
    parse_lift_plan,
    parse_threading,
    parse_tie_up,
    parse_treadling,
)
from journal_tools.quantities import Unreadable
from journal_tools.records.spot import Shortened, Spot

T = TypeVar("T")


@dataclass(frozen=True)
class Sets:
    """Shafts or treadles, one set a thread; or ends, one number a dent. text: as typed."""

    text: str
    items: tuple[frozenset[int], ...]


@dataclass(frozen=True)
class ColourOrder:
    """The colour of each thread, by the weaver's name for it. text: as typed."""

    text: str
    items: tuple[str, ...]

    @property
    def counts(self) -> Mapping[str, int]:
        """Threads of each colour, in the order they first come in."""
        return Counter(self.items)


def _sets(parse: Callable[[str], tuple[frozenset[int], ...]]) -> Callable[[Spot], Sets]:
    return lambda spot: Sets(spot.text(), at_column(parse, spot.text()))


def at_column(parse: Callable[[str], T], text: str) -> T:
    """What the notation reads; where it cannot, the column stands in the message with the text there."""
    try:
        return parse(text)
    except Unreadable as unreadable:
        if unreadable.column is None or len(text) < 60:
            raise
        start = max(0, unreadable.column - 20)
        near = ("…" if start else "") + text[start : unreadable.column + 20] + "…"
        raise Shortened(near, unreadable.right, unreadable.column, unreadable.mended) from unreadable


threading = _sets(parse_threading)
tie_up = _sets(parse_tie_up)
treadling = _sets(parse_treadling)
lift_plan = _sets(parse_lift_plan)
dents = _sets(parse_dents)


def colours(spot: Spot) -> ColourOrder:
    """A colour order."""
    return ColourOrder(spot.text(), at_column(parse_colours, spot.text()))
