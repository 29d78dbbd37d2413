"""A table of the journal: its columns, each with its unit in its name and its meaning, and its rows."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Any, SupportsFloat

from journal_tools.exchange.csv_cells import Cell
from journal_tools.ledger import Ledger, ledger_of
from journal_tools.records import Journal

KINDS: Mapping[str, Mapping[str, Any]] = {
    "words": {"type": "string"},
    "figure": {"type": ["number", "null"]},
    "count": {"type": ["integer", "null"]},
    "yes or no": {"type": ["boolean", "null"]},
}
"""What a column holds, and what that is in JSON. Words that nobody wrote are an empty text, figures null."""


@dataclass(frozen=True)
class Column:
    """One column. kind: one of `KINDS`. meaning: a sentence for the page of columns and for the schema."""

    name: str
    kind: str
    meaning: str


@dataclass(frozen=True)
class Told:
    """A journal with its ledgers, from which every table is told. ledgers: by warp."""

    journal: Journal
    ledgers: Mapping[str, Ledger]

    @classmethod
    def of(cls, journal: Journal, ledgers: Mapping[str, Ledger] | None = None) -> Told:
        """The journal with the ledgers that are at hand, or with its own."""
        if ledgers is None:
            ledgers = {name: ledger_of(journal, warp) for name, warp in journal.warps.items()}
        return cls(journal, ledgers)

    @cached_property
    def warps(self) -> tuple[str, ...]:
        """The names of the warps, in order."""
        return tuple(sorted(self.journal.warps))


@dataclass(frozen=True)
class Table:
    """One table. name: of its file, without ending. one: what one row is. rows: as long as the columns."""

    name: str
    one: str
    columns: tuple[Column, ...]
    rows: Callable[[Told], Iterator[tuple[Cell, ...]]]

    @property
    def headings(self) -> tuple[str, ...]:
        """The names of the columns."""
        return tuple(column.name for column in self.columns)


def columns(text: str) -> tuple[Column, ...]:
    """Columns written one a line: `name | kind | meaning`."""
    lines = [line.split(" | ") for line in text.splitlines() if line.strip()]
    return tuple(Column(name.strip(), kind.strip(), meaning.strip()) for name, kind, meaning in lines)


def figure(value: SupportsFloat | None, places: int = 6) -> float | int | None:
    """A figure of a table: rounded, whole ones without a point, None for one that nobody knows."""
    if value is None:
        return None
    rounded = round(float(value), places)
    return int(rounded) if rounded.is_integer() else rounded
