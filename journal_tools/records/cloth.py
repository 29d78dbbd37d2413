"""What a warp, a stretch or a piece may say about its cloth, with the sizes it had at each state."""

from __future__ import annotations

import dataclasses
import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from journal_tools.problems import nearest
from journal_tools.quantities import (
    CountOf,
    Density,
    Length,
    Size,
    Unreadable,
    Weight,
    When,
    parse_count,
    parse_length,
    parse_minutes,
)
from journal_tools.records import notated, readers
from journal_tools.records.hem import Fringe, Hem, fringe, hem
from journal_tools.records.learn import Learn, learn
from journal_tools.records.model import Model, read_model, says
from journal_tools.records.spot import Spot

WEIGHED = ("on_loom", "off_loom", "in_oil", "washed", "made_up")


@dataclass(frozen=True, kw_only=True)
class SizeAt(Model):
    """A size at one state of the cloth, with how it was taken.

    wash: which wash it followed, for washed states; None when the record did not number it.
    """

    size: Size | None = says(readers.size, "Width x length.", "17 7/8 x 30 1/8", public=True)
    on: When | None = says(readers.when, "The day it was measured.", "2025-03-14")
    dry: str | None = says(readers.choice("dry", "damp"), "Whether the cloth was dry.", "dry")
    pressed: bool | None = says(readers.yes_no, "Whether it had been pressed.", "yes")
    rested: str | None = says(readers.text, "How long it had rested.", "overnight")
    taken: str | None = says(
        readers.choice("tape", "ribbon", "picks", "marks", "stick"), "How the length was taken.", "ribbon"
    )
    finish: str | None = says(readers.name, "The finishing recipe of this wash.", "hand-40-line", public=True)
    wash: int | None = None


def size_at(spot: Spot) -> SizeAt:
    """A size, alone or with how it was taken."""
    if spot.is_mapping:
        read = read_model(spot, SizeAt)
        if read.size is None:
            raise Unreadable(read=spot.shown(), right="a `size:` is wanted here, such as `size: 17 7/8 x 30 1/8`.")
        return read
    return SizeAt(size=readers.size(spot), lines={"size": spot.line})


def washes(spot: Spot) -> tuple[SizeAt, ...]:
    """The sizes after wash 1, 2, …, one of them or a list."""
    if not spot.is_list:
        return (size_at(spot),)
    if len(spot.items()) > readers.MOST_FEW:
        raise Unreadable(read=spot.shown(), right=f"{readers.MOST_FEW} washes of one cloth are read at most.")
    read = []
    for number, item in enumerate(spot.items(), start=1):
        at = item.named(f"wash {number}").read(size_at)
        if at is not None:
            read.append(dataclasses.replace(at, wash=number))
    return tuple(read)


@dataclass(frozen=True)
class ReedWidth:
    """How wide the warp stood in the reed: a length, or dents that were counted.

    folded: for a double cloth, whether the width is of the folded cloth.
    """

    length: Length | None
    dents: CountOf | None
    fold: str | None
    text: str


def reed_width(spot: Spot) -> ReedWidth:
    """`20 1/4`, `243 dents` or `86 cm folded`."""
    typed = spot.text()
    dents = re.fullmatch(r"(.+?)\s+dents?", typed)
    if dents:
        counted = parse_count(dents[1], spot.units)
        if not counted.number:
            raise Unreadable(read=typed, right="dents are counted from 1; leave the line out where nobody counted.")
        return ReedWidth(None, counted, None, typed)
    fold = re.fullmatch(r"(.+?)\s+(folded|opened)", typed)
    read = readers.more_than_nothing(parse_length(fold[1] if fold else typed, spot.units))
    return ReedWidth(read, None, fold[2] if fold else None, typed)


@dataclass(frozen=True)
class FullingCheck:
    """The size at one check of a fulling; minute 0 is the cloth when only scoured."""

    minutes: int
    at: SizeAt
    words: str


def fulling(spot: Spot) -> tuple[FullingCheck, ...]:
    """Minutes and sizes, in the order of the minutes."""
    checks = []
    for key, key_spot, value in spot.entries():
        match = re.fullmatch(r"(\d+ min(?:utes)?)\s*(.*)", key)
        if not match:
            key_spot.complain(key, "a check of the fulling begins with its minutes, such as `8 min: 141 x 203 cm`.")
            continue
        at = value.read(size_at)
        if at is not None:
            checks.append(FullingCheck(round(parse_minutes(match[1], spot.units).minutes), at, match[2]))
    return tuple(sorted(checks, key=lambda check: check.minutes))


def weighings(spot: Spot) -> Mapping[str, Weight]:
    """A weight when washed, or weights by state."""
    if not spot.is_mapping:
        return {"washed": readers.weight(spot)}
    read: dict[str, Weight] = {}
    for key, key_spot, value in spot.entries():
        state = key.replace(" ", "_")
        if state not in WEIGHED:
            near = nearest(state, WEIGHED)
            key_spot.complain(
                key, f"a weight is of the cloth {', '.join(WEIGHED)}." + (f" Did you mean `{near}`?" if near else "")
            )
        elif (weighed := value.read(readers.weight)) is not None:
            read[state] = weighed
    return read


@dataclass(frozen=True)
class Ends:
    """How many ends: a count, and whether they are the ones in the middle of the warp."""

    number: int
    from_the_middle: bool
    about: bool


def ends(spot: Spot) -> Ends:
    """`396` or `48 from the middle`."""
    typed = spot.text()
    match = re.fullmatch(r"(.+?)\s+from the middle", typed)
    counted = parse_count(match[1] if match else typed, spot.units)
    return Ends(counted.number, match is not None, counted.about)


def sley(spot: Spot) -> tuple[int, ...]:
    """Ends in each dent, in order: `2`, `1-2`, `1-1-2`."""
    typed = spot.text()
    if not re.fullmatch(r"\d{1,2}(?:\s*-\s*\d{1,2})*", typed):
        raise Unreadable(read=typed, right="ends in each dent are wanted, in order, such as `2`, `1-2` or `1-1-2`.")
    order = tuple(int(part) for part in typed.split("-"))
    if not any(order):
        raise Unreadable(read=typed, right="no dent holds an end; `2` is two ends in each dent.")
    return order


def slug_words(spot: Spot) -> tuple[str, ...]:
    """Slugs of accepted questions, with hyphens or blanks."""
    return tuple("-".join(each.lower().split()) for each in readers.texts(spot))


def weft(spot: Spot) -> tuple[Weft, ...]:
    """A yarn, a mapping, or a list of either."""
    return readers.several(_weft)(spot)


def _weft(spot: Spot) -> Weft:
    return read_model(spot, Weft) if spot.is_mapping else Weft(yarn=readers.text(spot), lines={"yarn": spot.line})


@dataclass(frozen=True, kw_only=True)
class Weft(Model):
    """A weft: its yarn, by its name here or by a yarn's name and colour."""

    yarn: str | None = says(
        readers.text, "The yarn: its name in `yarns:`, or a yarn and a colour.", "bone", public=True
    )
    colour: str | None = says(readers.text, "The yarn's colour.", "slate", public=True)
    order: notated.ColourOrder | None = says(
        notated.colours, "The colours as thrown.", "12 times (4 slate, 24 bone)", public=True
    )
    role: str | None = says(
        readers.choice("ground", "pattern", "tabby", "pile", "hem", "supplementary", "accent"),
        "What it does in the cloth.",
        "ground",
        public=True,
    )
    amount: Weight | None = says(readers.weight, "How much of it was used.", "310 g")


@dataclass(frozen=True, kw_only=True)
class Cloth(Model):
    """What may stand in a warp, a stretch or a piece; what a piece does not say it takes from above."""

    weave: str | None = says(readers.text, "The weave by name.", "plain weave", public=True)
    weft: tuple[Weft, ...] = says(weft, "The weft yarn or yarns.", "bone", public=True, default=())
    ends: Ends | None = says(ends, "How many ends.", "396", public=True)
    reed: Density | None = says(readers.density, "The reed used, in dents.", "12/in", public=True)
    sley: tuple[int, ...] | None = says(sley, "Ends in each dent, in order.", "1-2", public=True)
    sett: Density | None = says(readers.density, "Ends to the inch or centimetre in the reed.", "20/in", public=True)
    in_reed: ReedWidth | None = says(
        reed_width, "Width in the reed: dents used over dents to the inch.", "20 1/4", public=True
    )
    on_loom: SizeAt | None = says(
        size_at, "Size on the loom: tension on, temple moved away, at the breast beam.", "19 3/8 x 33", public=True
    )
    off_loom: SizeAt | None = says(size_at, "Size cut off and rested overnight.", "19 1/4 x 32 1/8", public=True)
    hemmed: SizeAt | None = says(size_at, "Size once hemmed.", "19 3/8 x 29 3/4", public=True)
    washed: tuple[SizeAt, ...] = says(
        washes,
        "Size after each wash, dry; a list is of wash 1, wash 2 and so on.",
        "17 7/8 x 30 1/8",
        public=True,
        default=(),
        numbered=True,
    )
    made_up: SizeAt | None = says(size_at, "What the owner measures, hems inside.", "18 x 27", public=True)
    fulling: tuple[FullingCheck, ...] = says(
        fulling,
        "Sizes while it was fulled, by the minutes; 0 min is only scoured.",
        "\n  0 min: 152 x 214 cm\n  8 min: 141 x 203 cm",
        public=True,
        default=(),
    )
    marks: Size | None = says(
        readers.size,
        "Marks sewn this far apart off the loom; the washed sizes are then between the marks.",
        "100 x 100 mm",
        public=True,
    )
    picks: CountOf | None = says(readers.pick_count, "Picks in one piece, counted.", "561", public=True)
    beat: Density | None = says(readers.density, "Picks to the inch or centimetre on the loom.", "20/in", public=True)
    tabby: str | None = says(
        readers.choice("counted", "not counted"), "Whether tabby picks are in the count.", "counted"
    )
    warp_used: Length | None = says(readers.some_length, "Warp that one piece took, measured on the warp.", "36 1/2 in")
    hem: Hem | None = says(hem, "How it is hemmed.", "1 in", public=True)
    fringe: Fringe | None = says(fringe, "Its fringe.", "2 in each end", public=True)
    finish: tuple[str, ...] = says(
        readers.names, "Finishing recipe of each wash, in order.", "hand-40-line", public=True, default=()
    )
    weight: Mapping[str, Weight] | None = says(weighings, "What one piece weighs, washed or by state.", "125 g")
    learn: tuple[Learn, ...] = says(
        learn,
        "`no` and why, to keep it out of what the journal learns.",
        "no widths from bookmarks, pulled in on purpose",
        default=(),
    )
    accepted: tuple[str, ...] = says(
        slug_words, "Questions that have been answered once.", "wider than loom", default=()
    )


def model_reader(model: type[Model]) -> Callable[[Spot], Model]:
    """A reader for a mapping of this kind."""
    return lambda spot: read_model(spot, model)
