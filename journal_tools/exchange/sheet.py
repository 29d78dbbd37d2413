"""A spreadsheet saved as CSV, whatever saved it: its encoding and its separator found out, its rows as cells."""

from __future__ import annotations

import csv
import io
import re
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

from journal_tools.exchange.csv_cells import unguarded
from journal_tools.problems import Problem

LARGEST = 16 * 1024 * 1024
"""Bytes of a sheet that are read."""

SEPARATORS = {",": "comma", ";": "semicolon", "\t": "tab", "|": "upright line"}
"""What may stand between two cells, and what it is called."""

_LINE_END = re.compile("\r\n?|[\x85\u2028\u2029]")
_UNSEEN = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x84\x86-\x9f\ufeff\ufffe\uffff]")
"""Characters that cannot be seen and mean nothing in a cell; no record can hold them."""


class NoSheet(Exception):
    """A file that cannot be read as a sheet; problem says why."""

    def __init__(self, problem: Problem) -> None:
        super().__init__(problem.sentence())
        self.problem = problem


@dataclass(frozen=True)
class Sheet:
    """Rows of cells, as many in each, with the blanks around them gone. rows[0] is row 1, as a spreadsheet counts.

    file: its name. encoding, separator: how it was read, in words.
    """

    file: str
    rows: tuple[tuple[str, ...], ...]
    encoding: str
    separator: str

    @cached_property
    def width(self) -> int:
        """Cells in a row."""
        return len(self.rows[0]) if self.rows else 0

    def problem(self, row: int, field: str, read: str, right: str, slug: str) -> Problem:
        """A problem in one row; its line is the row."""
        return Problem(self.file, row, field, read, right, slug=slug)


def read_sheet(data: bytes, file: str) -> Sheet:
    """Read a sheet. Raises NoSheet.

    Encodings: UTF-8, UTF-16 with or without its mark, else Windows-1252. Separators: the one by
    which the rows fit best together; `sep=;` in a first line of its own says it.
    """
    if len(data) > LARGEST:
        raise _no(file, f"The file is larger than {LARGEST // 1024**2} MB.")
    if data[:4] == b"PK\x03\x04" or data[:8] == b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1":
        raise _no(file, "This is a spreadsheet's own file. Open it there and save it as CSV, then import that.")
    text, encoding = decoded(data)
    if not text.strip():
        raise _no(file, "The file is empty.")
    said = text.split("\n", 1)[0].strip().strip('"')
    separators: Sequence[str] = list(SEPARATORS)
    first = 0
    if said.lower().startswith("sep=") and said[4:5] in SEPARATORS:
        separators, first = [said[4]], 1
    read = {separator: _rows(text, separator) for separator in separators}
    whole = {separator: rows for separator, rows in read.items() if rows is not None}
    if not whole:
        right = "A quotation mark is opened and never closed, or a cell is as long as a book."
        raise _no(file, right)
    best = max(whole, key=lambda separator: _fit(whole[separator]))
    blank: list[list[str]] = [[]] * first
    return Sheet(file, _even(blank + whole[best][first:]), encoding, SEPARATORS[best])


def decoded(data: bytes) -> tuple[str, str]:
    """The text of a file, and the encoding that it was in."""
    for mark, name in ((b"\xef\xbb\xbf", "utf-8"), (b"\xff\xfe", "utf-16-le"), (b"\xfe\xff", "utf-16-be")):
        if data.startswith(mark):
            return data[len(mark) :].decode(name, "replace"), name.upper()[:6].rstrip("-")
    start = data[:1000]
    for place, name in ((1, "utf-16-le"), (0, "utf-16-be")):
        zeros = start[place::2].count(0)
        if len(start) > 3 and zeros > len(start) // 4 and not start[1 - place :: 2].count(0):
            return data.decode(name, "replace"), "UTF-16"
    try:
        return data.decode("utf-8"), "UTF-8"
    except UnicodeDecodeError:
        # Five bytes mean nothing there; each becomes the sign for a letter that is lost.
        return data.decode("cp1252", "replace"), "Windows-1252"


def _rows(text: str, separator: str) -> list[list[str]] | None:
    """The rows by one separator; None where a cell never ends."""
    try:
        return list(csv.reader(io.StringIO(text, newline=""), delimiter=separator))
    except csv.Error:
        return None


def _fit(rows: list[list[str]]) -> tuple[float, int]:
    """How well rows go together: the share of them that have the commonest number of cells, and that number.

    A separator that never comes leaves one cell in each row, which fits nothing.
    """
    widths = Counter(len(row) for row in rows if any(cell.strip() for cell in row))
    several = {width: number for width, number in widths.items() if width > 1}
    if not several:
        return (0.0, 0)
    width = max(several, key=lambda each: (several[each], each))
    return (round(several[width] / sum(widths.values()), 1), width)


def _even(rows: list[list[str]]) -> tuple[tuple[str, ...], ...]:
    """Rows of one width, without the blank ones at the end and the blank columns at the right."""
    tidy = [[unguarded(_UNSEEN.sub("", _LINE_END.sub("\n", cell)).strip()) for cell in row] for row in rows]
    width = max((place for row in tidy for place, cell in enumerate(row, start=1) if cell), default=0)
    while tidy and not any(tidy[-1]):
        tidy.pop()
    return tuple(tuple((row + [""] * width)[:width]) for row in tidy)


def _no(file: str, right: str) -> NoSheet:
    return NoSheet(Problem(file, 0, "", "", right, slug="no-sheet"))
