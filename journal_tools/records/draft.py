"""The record of a draft, by itself or inside a warp, as the text that was typed.

What the text means is the business of the drafts layer, which reads it from here.
"""

from __future__ import annotations

from dataclasses import dataclass

from journal_tools.quantities import CountOf, Unreadable
from journal_tools.records import notated, readers
from journal_tools.records.model import read_model, says
from journal_tools.records.record import Record
from journal_tools.records.spot import Spot


@dataclass(frozen=True, kw_only=True)
class Draft(Record):
    """Threading, tie-up and treadling or lift plan, and colour orders."""

    title: str | None = says(readers.text, "What you call it.", "Huck squares", public=True)
    shafts: CountOf | None = says(readers.count, "Shafts it takes.", "4", public=True)
    treadles: CountOf | None = says(readers.count, "Treadles it takes.", "4", public=True)
    threading: notated.Sets | None = says(notated.threading, "The shaft of each end.", "12 times (1-4), 1", public=True)
    tie_up: notated.Sets | None = says(
        notated.tie_up, "The shafts tied to each treadle.", "1+2, 2+3, 3+4, 4+1", public=True
    )
    treadling: notated.Sets | None = says(notated.treadling, "The treadle of each pick.", "1-4", public=True)
    lift_plan: notated.Sets | None = says(
        notated.lift_plan,
        "The shafts of each pick, in place of tie-up and treadling.",
        "1+2, 2+3, 3+4, 4+1",
        public=True,
    )
    shed: str = says(
        readers.choice("rising", "sinking"),
        "Whether tied shafts rise or sink.",
        "rising",
        public=True,
        default="rising",
    )
    warp_colours: notated.ColourOrder | None = says(
        notated.colours, "Colour order of the warp.", "4 dark, 4 light", public=True
    )
    weft_colours: notated.ColourOrder | None = says(
        notated.colours, "Colour order of the weft.", "4 dark, 4 light", public=True
    )
    weave: str | None = says(readers.text, "The name of its weave.", "2/2 twill", public=True)

    @property
    def highest_shaft(self) -> int:
        """Shafts that it takes: the highest one named, or as many as it says."""
        named = [
            shaft
            for sets in (self.threading, self.tie_up, self.lift_plan)
            if sets
            for item in sets.items
            for shaft in item
        ]
        return max([*named, self.shafts.number if self.shafts else 0])


def draft_or_name(spot: Spot) -> Draft | str:
    """The name of a draft's record, or a draft written where it is used."""
    if spot.is_mapping:
        return read_model(spot, Draft)
    if spot.is_list:
        raise Unreadable(read=spot.shown(), right="the name of one draft is wanted, or its threading and the rest.")
    return readers.name(spot)
