"""A spreadsheet saved as CSV is read whatever saved it."""

from __future__ import annotations

import csv
import io

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal_tools.exchange.csv_cells import unguarded
from journal_tools.exchange.sheet import NoSheet, read_sheet

TABLE = [["Warp", "Breite (cm)", "Notes"], ["Blaue Tücher", "46,5", 'Zwei Zeilen,\neine "zitiert"'], ["Écru", "51", ""]]


def saved(rows: list[list[str]], separator: str, encoding: str, end: str = "\r\n") -> bytes:
    """Rows as a spreadsheet saves them."""
    stream = io.StringIO(newline="")
    csv.writer(stream, delimiter=separator, lineterminator=end).writerows(rows)
    return stream.getvalue().encode(encoding)


@pytest.mark.parametrize("separator", [",", ";", "\t"])
@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "utf-16-le", "utf-16-be", "cp1252"])
@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
def test_the_same_cells(separator: str, encoding: str, end: str) -> None:
    """Comma, semicolon or tab, any of the usual encodings and line ends: the cells are the same."""
    read = read_sheet(saved(TABLE, separator, encoding, end), "past.csv")

    assert [tuple(row) for row in TABLE] == list(read.rows)


CELLS = st.text(st.characters(categories=["L", "N", "P", "S", "Zs"]), max_size=20)


@given(st.lists(st.tuples(CELLS, CELLS, CELLS), min_size=1, max_size=8), st.sampled_from([",", ";", "\t"]))
def test_any_cells(rows: list[tuple[str, str, str]], separator: str) -> None:
    """Whatever words stand in the cells, below a heading they come back without the blanks around them."""
    table = [["Warp", "Piece", "Notes"], *map(list, rows)]
    read = read_sheet(saved(table, separator, "utf-8-sig"), "past.csv")
    wanted = [[cell.strip() for cell in row] for row in table]
    while not any(wanted[-1]):
        wanted.pop()

    # Where every row has as many of another separator, nobody could tell the two apart.
    if read.separator == {",": "comma", ";": "semicolon", "\t": "tab"}[separator]:
        assert [[unguarded(cell) for cell in row] for row in wanted] == [list(row) for row in read.rows]


def test_a_separator_that_is_said() -> None:
    """A first line sep=; says what stands between cells, and counts as a row."""
    read = read_sheet(b"sep=;\r\nWarp;Width, cm\r\nBlue;46\r\n", "past.csv")

    assert (("", ""), ("Warp", "Width, cm"), ("Blue", "46")) == read.rows


def test_decimal_commas_between_semicolons() -> None:
    """46,5;33,2 is two figures and not three."""
    data = b"Warp;width;length\nA;46,5;33,2\nB;46,0;33,25\nC;45;30\n"

    assert ("A", "46,5", "33,2") == read_sheet(data, "past.csv").rows[1]


def test_blank_rows_and_columns() -> None:
    """Blank rows keep their numbers; blank ones at the end and blank columns at the right are gone."""
    data = b",,,\nWarp,,Notes,\n,,,\nBlue,,good,\n,,,\n,,,\n"

    assert (("", "", ""), ("Warp", "", "Notes"), ("", "", ""), ("Blue", "", "good")) == read_sheet(data, "a.csv").rows


def test_a_formula_that_was_guarded() -> None:
    """The apostrophe that an export puts before =1+2 is taken away; that of 'tis stays."""
    assert ("=1+2", "'tis") == read_sheet(b"Warp,Notes\n'=1+2,'tis\n", "a.csv").rows[1]


@pytest.mark.parametrize(
    ("data", "word"),
    [
        (b"", "empty"),
        (b" \n\n", "empty"),
        (b"PK\x03\x04rest", "save it as CSV"),
        (b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1", "save it as CSV"),
        (b'Warp,Notes\nBlue,"' + b"x" * 200_000, "quotation mark"),
        (b"x" * (16 * 1024 * 1024 + 1), "larger than 16 MB"),
    ],
)
def test_what_is_no_sheet(data: bytes, word: str) -> None:
    """What cannot be read as a sheet is refused with what would be right."""
    with pytest.raises(NoSheet) as refused:
        read_sheet(data, "past.csv")

    assert word in refused.value.problem.sentence()


@given(st.binary(max_size=300))
def test_never_a_traceback(data: bytes) -> None:
    """Any bytes at all are rows of one width, or refused."""
    try:
        read = read_sheet(data, "past.csv")
    except NoSheet:
        return
    assert {read.width} >= {len(row) for row in read.rows}
