"""Cells of a CSV file: written so that no spreadsheet runs one, and read back as they were.

A cell of words that begins with = + - @ or a tab is a formula to a spreadsheet, and the words of a
journal are data. Such a cell is written with an apostrophe before it, and so is one that begins
with an apostrophe, so that the one before it can be told from its own. Figures are bare: a number
runs nothing. OWASP's page on CSV injection lists the signs.
"""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Sequence

SIGNS = "=+-@\t\r\n＝＋－＠'"
"""What a cell of words may not begin with, after blanks, when a spreadsheet opens it."""

BOM = "\ufeff"
"""Stands before the first heading: by it a spreadsheet knows the file for UTF-8."""

Cell = str | int | float | bool | None


_MAY_BE_SIGNS = frozenset(SIGNS + " ")


def guarded(words: str) -> str:
    """Words as a cell that no spreadsheet takes for a formula."""
    return f"'{words}" if _is_sign(words) else words


def unguarded(cell: str) -> str:
    """The words that `guarded` was given; a cell that it never made stays as it is."""
    return cell[1:] if cell[:1] == "'" and _is_sign(cell[1:]) else cell


def _is_sign(words: str) -> bool:
    bare = words.lstrip(" ")
    return bare[:1] != "" and bare[0] in SIGNS


def cell(value: Cell) -> str | int | float | None:
    """A value as it goes to the writer: yes or no, words guarded; figures bare, and nothing for None."""
    if value is True or value is False:
        return "yes" if value else "no"
    if isinstance(value, str) and value[:1] in _MAY_BE_SIGNS:
        return guarded(value)
    return value


def csv_bytes(headings: Sequence[str], rows: Iterable[Sequence[Cell]]) -> bytes:
    """A CSV file as RFC 4180 has it, UTF-8 with its mark: the headings, then a line for each row."""
    stream = io.StringIO(newline="")
    writer = csv.writer(stream, lineterminator="\r\n")
    writer.writerow(headings)
    writer.writerows(map(cell, row) for row in rows)
    return (BOM + stream.getvalue()).encode("utf-8", "replace")
