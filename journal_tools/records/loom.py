"""The record of a loom."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass

from journal_tools.quantities import CountOf, Density, Length, Unreadable
from journal_tools.records import readers
from journal_tools.records.model import says
from journal_tools.records.record import Record
from journal_tools.records.spot import Spot


def heddles(spot: Spot) -> Mapping[int, int]:
    """Heddles on each shaft; a count alone is of every shaft and stands under 0."""
    if not spot.is_mapping:
        return {0: readers.small_number(spot)}
    read: dict[int, int] = {}
    for key, key_spot, value in spot.entries():
        if not re.fullmatch(r"\d{1,2}", key):
            key_spot.complain(key, "heddles are counted by the shaft's number, such as `1: 200`.")
        elif (number := value.read(readers.small_number)) is not None:
            read[int(key)] = number
    return read


def reeds(spot: Spot) -> tuple[Density, ...]:
    """Reeds as a list, or on one line with blanks or commas between them."""
    if spot.is_text and "," in spot.text():
        raise Unreadable(
            read=spot.text(), right="reeds stand as a list, one on each line behind a hyphen, such as `- 12/in`."
        )
    return readers.several(readers.density)(spot)


@dataclass(frozen=True, kw_only=True)
class Loom(Record):
    """A loom and what it can do."""

    title: str | None = says(readers.text, "What you call it.", "The small loom", public=True)
    shafts: CountOf | None = says(readers.count, "Its shafts.", "8", public=True)
    treadles: CountOf | None = says(readers.count, "Its treadles.", "10", public=True)
    width: Length | None = says(readers.length, "Its weaving width.", "36 in", public=True)
    heddles: Mapping[int, int] | None = says(heddles, "Heddles on each shaft.", "200")
    reeds: tuple[Density, ...] = says(reeds, "The reeds you have for it.", "12/in", default=())
    waste: Length | None = says(readers.length, "Its usual loom waste.", "28 in")
    retie: Length | None = says(readers.length, "What a cut-off and re-tie costs.", "9 in")
