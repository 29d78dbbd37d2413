"""Parts that a draft may be written in: blocks, accents, ends in dents."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from journal_tools.notation import is_colour, parse_profile
from journal_tools.quantities import CountOf, Unreadable
from journal_tools.records import notated, readers
from journal_tools.records.model import Model, read_model, says
from journal_tools.records.spot import Spot


@dataclass(frozen=True)
class Profile:
    """Blocks in turn. text: as typed."""

    text: str
    items: tuple[str, ...]


def profile(spot: Spot) -> Profile:
    """Blocks by their letters."""
    return Profile(spot.text(), notated.at_column(parse_profile, spot.text()))


@dataclass(frozen=True, kw_only=True)
class Block(Model):
    """One block: the ends, and the picks, that stand for its letter."""

    threading: notated.Sets | None = says(notated.threading, "The ends of one unit.", "1, 3, 1, 4", public=True)
    treadling: notated.Sets | None = says(notated.treadling, "The picks of one unit.", "1, 2", public=True)


def blocks(spot: Spot) -> Mapping[str, Block]:
    """Blocks by their letter; a text alone is the threading."""
    read: dict[str, Block] = {}
    for key, key_spot, value in spot.entries():
        if len(key) != 1 or not "A" <= key <= "Z":
            key_spot.complain(key, "a block is one capital letter, such as `A: 1, 3, 1, 4`.")
        elif (block := value.read(_block)) is not None:
            read[key] = block
    return read


def _block(spot: Spot) -> Block:
    if spot.is_mapping:
        return read_model(spot, Block)
    return Block(threading=notated.threading(spot), lines={"threading": spot.line})


def colour_word(spot: Spot) -> str:
    """The name of one colour, as it would stand in a colour order."""
    typed = spot.text()
    if is_colour(typed):
        return typed
    hyphened = "-".join(typed.split())
    right = "a colour's name is one word, as in a colour order, with a hyphen where it needs two: `dark-gold`."
    raise Unreadable(typed, right, mended=hyphened if is_colour(hyphened) and hyphened[0].isalpha() else "")


@dataclass(frozen=True, kw_only=True)
class AccentEnd(Model):
    """A single end put into the draft."""

    end: CountOf | None = says(readers.count, "Which end it becomes.", "13", public=True)
    shaft: notated.Sets | None = says(notated.threading, "Its shaft.", "3", public=True)
    colour: str | None = says(colour_word, "Its colour, named as in a colour order.", "gold", public=True)
    way: str = says(
        readers.choice("added", "replacing"),
        "Added beside the others, or replacing the end there.",
        "added",
        public=True,
        default="added",
    )


def accents(spot: Spot) -> tuple[AccentEnd, ...]:
    """Accent ends as a list."""
    return readers.several(_accent)(spot)


def _accent(spot: Spot) -> AccentEnd:
    if not spot.is_mapping:
        raise Unreadable(
            spot.shown(), "an accent is written with its keys below: `end: 13`, `shaft: 3`, `colour: gold`."
        )
    found = read_model(spot, AccentEnd)
    if found.end is None:
        raise Unreadable(spot.shown(), "an accent says which end it becomes: `end: 13`.")
    if found.shaft is not None and len(found.shaft.items) != 1:
        raise Unreadable(found.shaft.text, "an accent is one end: `shaft: 3`.")
    return found
