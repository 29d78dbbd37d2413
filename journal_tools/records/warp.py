"""The record of a warp: stretches woven in order, each with what was planned and the pieces that exist."""

from __future__ import annotations

import dataclasses
import re
from collections.abc import Mapping
from dataclasses import dataclass

from journal_tools.quantities import (
    CountOf,
    Density,
    Length,
    Money,
    TimesLength,
    Unreadable,
    When,
    parse_length,
)
from journal_tools.records import notated, readers
from journal_tools.records.cloth import (
    Cloth,
    Ends,
    ReedWidth,
    SizeAt,
    ends,
    model_reader,
    reed_width,
    size_at,
    sley,
    washes,
)
from journal_tools.records.draft import Draft, draft_or_name
from journal_tools.records.model import Model, read_model, says
from journal_tools.records.record import Record
from journal_tools.records.spot import Spot

ROLES = ("ground", "pattern", "tabby", "pile", "hem", "supplementary", "accent")


@dataclass(frozen=True, kw_only=True)
class YarnUse(Model):
    """A yarn in this warp, under a short name of the weaver's."""

    yarn: str | None = says(readers.text, "The yarn's name, and a colour.", "linen-20-2 bone", public=True)
    colour: str | None = says(readers.text, "The colour's name in the yarn's record.", "bone", public=True)
    role: str | None = says(readers.choice(*ROLES), "What it does in the cloth.", "ground", public=True)
    lot: str | None = says(readers.text, "The dye lot.", "7")


def yarn_use(spot: Spot) -> YarnUse:
    """A yarn as text, or a mapping."""
    return read_model(spot, YarnUse) if spot.is_mapping else YarnUse(yarn=readers.text(spot), lines={"yarn": spot.line})


@dataclass(frozen=True)
class Marked:
    """Warp between two marks on the warp, and the cloth that it wove, under tension."""

    warp: Length
    cloth: Length


def marked(spot: Spot) -> tuple[Marked, ...]:
    """`36 in wove 33 1/4 in`, one or a list."""
    return readers.several(_marked)(spot)


def _marked(spot: Spot) -> Marked:
    typed = spot.text()
    parts = re.split(r"\s+wove\s+", typed)
    if len(parts) != 2:
        raise Unreadable(
            read=typed, right="warp between marks and the cloth it wove are wanted, such as `36 in wove 33 1/4 in`."
        )
    warp, cloth = (readers.more_than_nothing(parse_length(part, spot.units)) for part in parts)
    return Marked(warp, cloth)


@dataclass(frozen=True, kw_only=True)
class WarpYarn(Model):
    """One warp as it was wound."""

    yarn: str | None = says(readers.text, "Its yarn: a name in `yarns:`, or a yarn and a colour.", "bone", public=True)
    order: notated.ColourOrder | None = says(
        notated.colours,
        "The colours as wound, in order.",
        "20 bone, 12 times (4 slate, 24 bone), 4 slate, 20 bone",
        public=True,
    )
    ends: Ends | None = says(ends, "How many ends.", "396", public=True)
    wound: Length | None = says(readers.some_length, "How long it was wound.", "7 1/2 yd")
    sett: Density | None = says(readers.density, "Its ends to the inch or centimetre.", "20/in", public=True)
    floating_selvedges: str | None = says(
        readers.text, "Yarn of floating selvedges: ends, but no heddles.", "bone", public=True
    )
    role: str | None = says(readers.choice(*ROLES), "What it does in the cloth.", "ground", public=True)
    marked: tuple[Marked, ...] = says(
        marked, "Warp between marks, and the cloth it wove.", "36 in wove 33 1/4 in", default=()
    )
    wound_on: str | None = says(readers.text, "How it was measured: on a board, a reel, a mill.", "warping board")

    @property
    def end_count(self) -> int | None:
        """Ends wound, with a floating selvedge at each side when there are such; None when not said."""
        counted = self.ends.number if self.ends else len(self.order.items) if self.order else None
        if counted is None:
            return None
        return counted + (2 if self.floating_selvedges else 0)


def warps(spot: Spot) -> tuple[WarpYarn, ...]:
    """One warp or a list of them."""
    return tuple(read for item in spot.items() if (read := item.read(lambda at: read_model(at, WarpYarn))) is not None)


@dataclass(frozen=True, kw_only=True)
class Band(Model):
    """One of several bands side by side in the same cloth."""

    ends: Ends | None = says(ends, "Its ends.", "64", public=True)
    reed: Density | None = says(readers.density, "The reed.", "12/in", public=True)
    sley: tuple[int, ...] | None = says(sley, "Ends in each dent, in order.", "1-1-2", public=True)
    sett: Density | None = says(readers.density, "Ends to the inch or centimetre.", "16/in", public=True)
    in_reed: ReedWidth | None = says(reed_width, "Its width in the reed.", "4", public=True)


@dataclass(frozen=True, kw_only=True)
class BandSizes(Model):
    """What one band of a piece measured."""

    in_reed: ReedWidth | None = says(reed_width, "Width in the reed.", "4", public=True)
    on_loom: SizeAt | None = says(size_at, "Size on the loom.", "3 7/8 x 8", public=True)
    off_loom: SizeAt | None = says(size_at, "Size off the loom.", "3 3/4 x 7 3/4", public=True)
    washed: tuple[SizeAt, ...] = says(
        washes, "Size after each wash.", "93.5 x 93 mm", public=True, default=(), numbered=True
    )


def band_sizes(spot: Spot) -> BandSizes:
    """A mapping, or the washed size alone."""
    return read_model(spot, BandSizes) if spot.is_mapping else BandSizes(washed=(size_at(spot),))


@dataclass(frozen=True, kw_only=True)
class Planned(Model):
    """What was wanted: a kind of piece, how many, and the sizes expected on the way."""

    piece: str | None = says(readers.text, "The piece, as the pieces are named.", "napkin")
    count: CountOf | None = says(readers.count, "How many.", "6")
    in_reed: ReedWidth | None = says(reed_width, "Planned width in the reed.", "21 3/8")
    on_loom: SizeAt | None = says(size_at, "Planned size on the loom.", "20 1/2 x 21")
    off_loom: SizeAt | None = says(size_at, "Planned size off the loom.", "20 3/8 x 20 3/4")
    hemmed: SizeAt | None = says(size_at, "Planned size once hemmed.", "19 3/8 x 29 3/4")
    washed: tuple[SizeAt, ...] = says(washes, "Planned size after each wash.", "19 3/4 x 20", default=(), numbered=True)
    made_up: SizeAt | None = says(size_at, "Planned made-up size.", "18 x 18")
    picks: CountOf | None = says(readers.pick_count, "Planned picks.", "378")


def plans(spot: Spot) -> tuple[Planned, ...]:
    """One plan or a list."""
    return tuple(read for item in spot.items() if (read := item.read(lambda at: read_model(at, Planned))) is not None)


@dataclass(frozen=True, kw_only=True)
class Piece(Cloth):
    """Cloth that exists. `napkins 2-6` is five pieces that measured alike."""

    name: str | None = says(readers.text, "Its name; `napkins 2-6` is five of them.", "napkin 1")
    count: CountOf | None = says(readers.count, "How many it stands for.", "5", public=True)
    across: Mapping[str, BandSizes] | None = says(
        readers.by_name(band_sizes),
        "Sizes of each band, where bands lie side by side.",
        "\n  16 to the inch:\n    off_loom: 3 3/4 x 7 3/4\n    washed: 3 1/2 x 7 1/4\n  20 to the inch: 3 5/8 x 7 1/4",
        public=True,
    )
    note: str | None = says(readers.text, "A remark.", "warp ran slack at the right")
    now: str | None = says(readers.text, "Where it is now.", "in use")
    buyer: str | None = says(readers.text, "Who has it.", "a friend of the house")
    price: Money | None = says(readers.money, "What it was sold for.", "38 EUR")
    half_kept: str | None = says(readers.text, "Whether half was kept, and how.", "unwashed")
    liked: bool | None = says(readers.yes_no, "Whether you would weave it again.", "yes")

    @property
    def number(self) -> int:
        """How many pieces this stands for."""
        if self.count is not None:
            return self.count.number
        span = re.search(r"\b(\d+)\s*[-–]\s*(\d+)$", self.name or "")
        return max(1, int(span[2]) - int(span[1]) + 1) if span else 1


@dataclass(frozen=True, kw_only=True)
class Stretch(Cloth):
    """What shares threading, sley, weave and weft; the stretches of a warp stand in the order woven."""

    name: str | None = says(readers.text, "What you call it.", "napkins")
    draft: Draft | str | None = says(
        draft_or_name, "A draft's name, or a draft of its own.", "huck-squares", public=True
    )
    across: Mapping[str, Band] | None = says(
        readers.by_name(model_reader(Band)),
        "Bands side by side, each with its ends and sley.",
        "\n  16 to the inch:\n    ends: 64\n    sley: 1-1-2\n  20 to the inch:\n    ends: 80\n    sley: 1-2-2",
        public=True,
    )
    plan: tuple[Planned, ...] = says(
        plans, "What was wanted.", "\n  - piece: napkin\n    count: 6\n    washed: 19 3/4 x 20", default=()
    )
    pieces: tuple[Piece, ...] = says(
        readers.several(model_reader(Piece)),
        "The pieces woven.",
        "\n  - name: napkin 1\n    on_loom: 20 1/2 x 21\n    washed: 19 3/4 x 20\n  - name: napkins 2-6",
        public=True,
        default=(),
    )
    count: CountOf | None = says(readers.count, "How many pieces, when they are all alike.", "4", public=True)


@dataclass(frozen=True, kw_only=True)
class Warp(Stretch, Record):
    """One warp, from the plan to the finished pieces."""

    name: str = ""
    started: When | None = says(
        readers.when, "When it went on the loom: a day, a month, a season or a year.", "2024-04-20", public=True
    )
    finished: When | None = says(readers.when, "When the last of it was done.", "spring 2024", public=True)
    loom: str | None = says(readers.name, "The loom's name.", "small-loom", public=True)
    temple: bool | None = says(readers.yes_no, "Whether a temple was used.", "yes")
    tension: str | None = says(readers.text, "How tight the warp was.", "firm")
    units: str | None = says(
        readers.choice("in", "cm", "mm"), "Unit of bare numbers in this record.", "cm", public=True
    )
    tape: Length | None = says(readers.length, "The finest mark of the tape used.", "1/16 in", public=True)
    yarn: str | None = says(readers.text, "The yarn of warp and weft, when it is one.", "cottolin-22-2", public=True)
    yarns: Mapping[str, YarnUse] | None = says(
        readers.by_name(yarn_use),
        "Short names for the yarns used.",
        "\n  bone: linen-20-2 bone\n  slate: linen-20-2 slate",
        public=True,
    )
    warp: tuple[WarpYarn, ...] = says(
        warps,
        "The warp as wound, or several.",
        "\n  yarn: bone\n  ends: 396\n  wound: 7 1/2 yd",
        public=True,
        default=(),
    )
    layers: CountOf | None = says(readers.few, "Layers of cloth on the loom at once.", "2", public=True)
    opens: str | None = says(readers.text, "Where a double-width cloth opens.", "along the left edge", public=True)
    stretches: tuple[Stretch, ...] = says(
        readers.several(model_reader(Stretch)),
        "Stretches in the order woven.",
        "\n  - name: napkins\n    weave: huck lace\n    in_reed: 21 3/8\n  - name: bookmarks\n    in_reed: 2 5/8",
        public=True,
        default=(),
    )
    where_it_went: Mapping[str, TimesLength] | None = says(
        readers.by_name(readers.times_length),
        "Where the rest of the warp went.",
        "\n  front tie-on: 8 in\n  gaps: 5 of 1/2 in\n  thrums: 19 in",
    )
    hours: str | None = says(readers.text, "Time it took.", "14")
    cost: Money | None = says(readers.money, "What it cost.", "62 EUR")
    share: bool | None = says(
        readers.yes_no, "Whether the shared journal shows it; no unless it says yes.", "yes", public=True
    )

    def sett_of(self, stretch: Stretch) -> Density | None:
        """Ends to the metre in the reed: as stated, else the reed's dents times the mean sley."""
        stated = stretch.sett or self.sett or next((wound.sett for wound in self.warp if wound.sett), None)
        reed, order = stretch.reed or self.reed, stretch.sley or self.sley
        if stated is not None or reed is None or not order:
            return stated
        return dataclasses.replace(reed, per_m=reed.per_m * sum(order) / len(order))

    def woven(self) -> tuple[Stretch, ...]:
        """The stretches; a record without any is one stretch, itself."""
        return self.stretches or (self,)
