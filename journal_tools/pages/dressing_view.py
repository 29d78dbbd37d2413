"""What the template of a dressing sheet is given: plain frozen values, as in `views`."""

from __future__ import annotations

from dataclasses import dataclass

from journal_tools.pages.view_parts import Link, Table


@dataclass(frozen=True)
class Ticks:
    """A row of boxes: the number in each, and the count of ends when all of them are ticked."""

    boxes: tuple[int, ...]
    to: int


@dataclass(frozen=True)
class Shown:
    """A group as it is done, in one line that is not broken: its words, and its colours below them."""

    words: str
    colours: str = ""


@dataclass(frozen=True)
class Group:
    """A group that stands once: the number in its box, what it holds, and the count of ends after it."""

    box: int
    shown: Shown
    to: int


@dataclass(frozen=True)
class Line:
    """What is done so many times. times: in words. groups: what is done. rows: a box each time, or for each group.

    note: a few words more. once: in place of groups and rows, where every group stands once.
    """

    times: str
    groups: tuple[Shown, ...]
    rows: tuple[Ticks, ...]
    note: str = ""
    once: tuple[Group, ...] = ()


@dataclass(frozen=True)
class Card:
    """A tie-up, or a lift plan. heads: of the columns. rows: a heading and the shaft in each cell, "" for none."""

    caption: str
    heads: tuple[str, ...]
    rows: tuple[tuple[str, tuple[str, ...]], ...]
    said: str


@dataclass(frozen=True)
class Part:
    """One thing that is done. key: its anchor. said: sentences. large: what is read at the loom.

    lines: with boxes to tick. begins: where each colour begins along them. blanks: lines to write on.
    """

    key: str
    title: str
    large: tuple[str, ...] = ()
    said: tuple[str, ...] = ()
    lines: tuple[Line, ...] = ()
    begins: tuple[str, ...] = ()
    table: Table | None = None
    card: Card | None = None
    blanks: tuple[str, ...] = ()


@dataclass(frozen=True)
class Sheet:
    """One sheet of paper. percent: of the usual size of its letters, so that the sheet is full and holds it all."""

    parts: tuple[Part, ...]
    percent: int = 100


@dataclass(frozen=True)
class DressingView:
    """Everything on a dressing sheet. about: what it rests on. asked: what is short, or missing."""

    title: str
    about: str
    warp: Link
    asked: tuple[str, ...]
    order: str
    sheets: tuple[Sheet, ...]
