"""What every page is put together from: links, pictures, facts, cards, tables.

As in `views`: texts are plain, addresses begin at the top of the site, and what is empty or None is left out.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Link:
    """Words, and where they lead; without `href` only words."""

    text: str
    href: str = ""


@dataclass(frozen=True)
class Picture:
    """A cloth picture, a drawdown or a photo. width and height are the file's own pixels."""

    src: str
    alt: str
    width: int
    height: int
    caption: str = ""
    sharp: bool = False
    """True for drawdowns of few pixels, which must be enlarged without blurring."""
    wider: tuple[tuple[str, int], ...] = ()
    """Larger files of the same photo: (address, pixels wide)."""


@dataclass(frozen=True)
class Fact:
    """One line of a facts list: "yarn" -> one or several values, linked or plain."""

    label: str
    values: tuple[Link, ...]


@dataclass(frozen=True)
class Figure:
    """A figure on a card: "17⅞ × 27 in" over "made up"."""

    text: str
    label: str


@dataclass(frozen=True)
class Card:
    """A swatch. `found_by` is what the filter reads besides the words on the card."""

    title: str
    href: str
    picture: Picture | None = None
    about: str = ""
    """Yarn · weave · month, in one line."""
    figures: tuple[Figure, ...] = ()
    flag: str = ""
    """A few words in the corner: "1 thing to mend", "not shared"."""
    yarns: tuple[str, ...] = ()
    weave: str = ""
    year: str = ""
    found_by: str = ""
    line: tuple[str, ...] = ()
    """Figures in a line: "4 shafts", "lift plan". A number in them is found together with its word."""
    tags: tuple[str, ...] = ()


@dataclass(frozen=True)
class Cell:
    """A table cell. `sort` is what the column is sorted by when that is not the text."""

    text: str
    href: str = ""
    sort: str = ""
    strong: bool = False
    beyond: bool = False
    """True draws the warning mark: further off than the tape can explain."""
    small: str = ""
    """Small words after the text: "± 0.9", "across a gap"."""


@dataclass(frozen=True)
class Column:
    """A column's heading; numbers stand to the right."""

    text: str
    number: bool = False


@dataclass(frozen=True)
class Table:
    """Any table. The first cell of a row is its heading."""

    title: str
    columns: tuple[Column, ...]
    rows: tuple[tuple[Cell, ...], ...]
    sortable: bool = False
    note: str = ""
    prose: bool = False
    """True for a table of sentences, whose rows become paragraphs where it is narrow."""
    stacked: bool = False
    """True for a table of many columns, whose rows become cards where it is narrow."""


@dataclass(frozen=True)
class Chart:
    """A drawn chart and the same figures as a table."""

    title: str
    src: str
    alt: str
    width: int
    height: int
    table: Table | None = None
    note: str = ""


@dataclass(frozen=True)
class Neighbours:
    """The way on: the one before, the one after, and the list they stand in."""

    previous: Link | None = None
    next: Link | None = None
    all: Link | None = None


@dataclass(frozen=True)
class Notation:
    """A line of a draft as text: "threading" -> "12 times (1-4)"."""

    label: str
    text: str


@dataclass(frozen=True)
class DraftPart:
    """A draft as shown on its own page and on a warp's."""

    title: str
    href: str = ""
    drawdown: Picture | None = None
    cloth: tuple[Picture, ...] = ()
    facts: tuple[Fact, ...] = ()
    notation: tuple[Notation, ...] = ()
