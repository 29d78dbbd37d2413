"""What the template of a dressing sheet is given: plain frozen values, as in `views`."""

from __future__ import annotations

from dataclasses import dataclass

from journal_tools.pages.views import Link, Table


@dataclass(frozen=True)
class Ticks:
    """A row of boxes: the number in each, and the count of ends when all of them are ticked."""

    boxes: tuple[int, ...]
    to: int


@dataclass(frozen=True)
class Group:
    """A group that stands once: the number in its box, what it holds, and the count of ends after it."""

    box: int
    words: str
    to: int


@dataclass(frozen=True)
class Line:
    """What is done so many times. times: in words. groups: what is done. rows: a box each time, or for each group.

    note: a few words more. once: in place of groups and rows, where every group stands once.
    """

    times: str
    groups: tuple[str, ...]
    rows: tuple[Ticks, ...]
    note: str = ""
    once: tuple[Group, ...] = ()


@dataclass(frozen=True)
class WindingPart:
    """One warp as it is wound."""

    title: str
    said: tuple[str, ...]
    bouts: tuple[Line, ...]
    strands: Table


@dataclass(frozen=True)
class Part:
    """Sentences under a title; `large` is what is read at the loom. lines: with boxes to tick."""

    title: str
    large: tuple[str, ...]
    said: tuple[str, ...] = ()
    lines: tuple[Line, ...] = ()
    early: bool = False
    """Whether it is on the first sheet, since the second has less room."""


@dataclass(frozen=True)
class Card:
    """A tie-up, or a lift plan. heads: of the columns. rows: a heading and the shaft in each cell, "" for none."""

    title: str
    caption: str
    heads: tuple[str, ...]
    rows: tuple[tuple[str, tuple[str, ...]], ...]
    said: tuple[str, ...]


@dataclass(frozen=True)
class DressingView:
    """Everything on a dressing sheet. by: what it rests on. asked: what is short, or missing."""

    title: str
    about: str
    warp: Link
    asked: tuple[str, ...]
    windings: tuple[WindingPart, ...]
    sley: Part | None
    heddles: Part | None
    threading: Part | None
    card: Card | None
    later: tuple[str, ...]
