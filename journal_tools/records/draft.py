"""The record of a draft, by itself or inside a warp, as the text that was typed.

What the text means is the business of the drafts layer, which reads it from here.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from journal_tools.quantities import CountOf, Unreadable
from journal_tools.records import draft_parts as parts
from journal_tools.records import notated, readers
from journal_tools.records.cloth import slug_words
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
    blocks: Mapping[str, parts.Block] | None = says(
        parts.blocks,
        "Blocks by their letters, each with the ends and picks of one unit.",
        "\n  A:\n    threading: 1, 3, 1, 4\n    treadling: 1, 2\n  B: 2, 3, 2, 4",
        public=True,
    )
    profile: parts.Profile | None = says(
        parts.profile, "The blocks as they are threaded, in place of the threading.", "4 A, 2 B, A", public=True
    )
    profile_treadling: parts.Profile | None = says(
        parts.profile, "The blocks as they are treadled, in place of the treadling.", "3 A, B, 3 A", public=True
    )
    tabby_between: notated.Sets | None = says(
        notated.treadling,
        "Treadles (in a lift plan, shafts) of the tabby pick that follows each pattern pick, in turn.",
        "3, 4",
        public=True,
    )
    warp_order: notated.ColourOrder | None = says(
        notated.colours, "What each end does, where not all do the same.", "20 ground, 4 supplementary", public=True
    )
    weft_order: notated.ColourOrder | None = says(
        notated.colours, "Which shuttle throws each pick.", "pattern, tabby", public=True
    )
    ends_in_dents: notated.Sets | None = says(
        notated.dents, "Ends in each dent, for crammed and spaced warps.", "20 times (2), none, 4 times (4)",
        public=True,
    )  # fmt: skip
    accents: tuple[parts.AccentEnd, ...] = says(
        parts.accents,
        "Single ends added, or in place of others.",
        "\n  - end: 13\n    shaft: 3\n    colour: gold",
        public=True,
        default=(),
    )
    floating_selvedges: CountOf | None = says(
        readers.count, "Ends without a heddle at each edge, beside the threading.", "1", public=True
    )
    upper: Draft | None = says(
        lambda spot: read_model(spot, Draft),
        "The upper cloth of a double cloth, as a draft of its own.",
        "\n    threading: 1, 2\n    lift_plan: 1, 2",
        public=True,
    )
    lower: Draft | None = says(
        lambda spot: read_model(spot, Draft),
        "The lower cloth, on shafts of its own counted from 1.",
        "\n    threading: 1, 2\n    lift_plan: 1, 2",
        public=True,
    )

    accepted: tuple[str, ...] = says(
        slug_words, "Questions that have been answered once.", "threading slip", default=()
    )

    @property
    def highest_shaft(self) -> int:
        """Shafts that it takes: the highest one named, or as many as it says."""
        named = [
            shaft
            for sets in (
                self.threading,
                self.tie_up,
                self.lift_plan,
                *(b.threading for b in (self.blocks or {}).values()),
                *(accent.shaft for accent in self.accents),
                self.tabby_between if self.lift_plan else None,  # treadles where there is no lift plan
            )
            if sets
            for item in sets.items
            for shaft in item
        ]
        layers = sum(layer.highest_shaft for layer in (self.upper, self.lower) if layer is not None)
        return max([*named, layers, self.shafts.number if self.shafts else 0])


def draft_or_name(spot: Spot) -> Draft | str:
    """The name of a draft's record, or a draft written where it is used."""
    if spot.is_mapping:
        return read_model(spot, Draft)
    if spot.is_list:
        raise Unreadable(read=spot.shown(), right="the name of one draft is wanted, or its threading and the rest.")
    return readers.name(spot)
