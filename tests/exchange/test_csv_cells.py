"""Cells of an export: words stay words in a spreadsheet, and come back as they were."""

from __future__ import annotations

import csv
import io

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal_tools.exchange.csv_cells import SIGNS, csv_bytes, guarded, unguarded

WORDS = st.text(st.characters(exclude_categories=["Cs"]), max_size=40)


@given(WORDS)
def test_words_come_back(words: str) -> None:
    """Whatever words a cell has, taking the guard away gives them back."""
    assert words == unguarded(guarded(words))


@given(WORDS)
def test_no_cell_is_a_formula(words: str) -> None:
    """No guarded cell begins with a sign that a spreadsheet runs, but for the apostrophe that guards it."""
    assert guarded(words).lstrip(" ")[:1] not in set(SIGNS) - {"'"}


@given(st.lists(st.tuples(WORDS, WORDS), max_size=6))
def test_a_table_comes_back(rows: list[tuple[str, str]]) -> None:
    """A table of any words, with quotes, commas and line ends in them, reads back cell by cell."""
    text = csv_bytes(("one", "two"), rows).decode("utf-8-sig")
    read = list(csv.reader(io.StringIO(text, newline="")))

    assert ["one", "two"] == read[0]
    assert [list(row) for row in rows] == [[unguarded(cell) for cell in row] for row in read[1:]]


@pytest.mark.parametrize(
    ("words", "cell"),
    [
        ("=1+2", "'=1+2"),
        ("+49 30", "'+49 30"),
        ("-18", "'-18"),
        ("@home", "'@home"),
        ("\t=1", "'\t=1"),
        ("  =1", "'  =1"),
        ("'tis", "''tis"),
        ("plain = weave", "plain = weave"),
        ("", ""),
    ],
)
def test_what_is_guarded(words: str, cell: str) -> None:
    """Words that begin as a formula does, after blanks too, or with an apostrophe, have an apostrophe before them."""
    assert cell == guarded(words)


@pytest.mark.parametrize("cell", ["'tis the season", "plain", "'", "o'clock"])
def test_what_was_never_guarded_stays(cell: str) -> None:
    """A cell that no export made keeps its own apostrophe."""
    assert cell == unguarded(cell)


def test_figures_are_bare() -> None:
    """Figures below nothing stay figures, yes and no are words, and what nobody knows is empty."""
    assert b"\xef\xbb\xbfa,b,c,d,e\r\n-0.5,3,yes,no,\r\n" == csv_bytes(tuple("abcde"), [(-0.5, 3, True, False, None)])
