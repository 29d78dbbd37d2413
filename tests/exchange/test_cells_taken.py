"""The cells of a sheet: figures with their units, dates in their order, words of any kind, and what cannot be read."""

from __future__ import annotations

import csv
import io
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from journal_tools.exchange.cell import nothing_said
from journal_tools.exchange.propose import propose
from journal_tools.exchange.sheet import read_sheet
from journal_tools.exchange.taking import take_sheet
from journal_tools.records import Journal
from tests.exchange.sheets import take, told, written
from tests.ledger.desk import write


class TestCellsThatCannotBeRead:
    SHEET = "Warp,Piece,Width on loom,Hours\nBlue,a,wide,3\nBlue,b,18,4\nRed,a,9,5\n"

    def test_the_whole_warp_waits(self, journal: Journal) -> None:
        """A cell that cannot be read keeps its warp out, since a record is never written over later."""
        taken = take(self.SHEET, journal)

        assert [
            (2, "skipped", ["unreadable"]),
            (3, "skipped", ["with-another"]),
            (4, "new", []),
        ] == list(told(taken.outcomes))
        problem = taken.outcomes[0].problems[0]
        assert ("past.csv", 2, "Width on loom", "wide") == (problem.file, problem.line, problem.field, problem.read)

    def test_kept_in_the_notes(self, journal: Journal) -> None:
        """If asked, the cell goes into the notes as it stands, and is a question."""
        taken = take(self.SHEET, journal, keep_unread=True)
        pieces = taken.records[0].fields["pieces"]

        assert taken.sound
        assert {"name": "a", "note": "Width on loom: wide"} == pieces[0]  # type: ignore[index, call-overload]

    @pytest.mark.parametrize(
        ("heading", "cell", "word"),
        [
            ("Date", "4/5/2016", "dates: day first"),
            ("Date", "31/2/2016", "February"),
            ("Weight (g)", '"1,200"', "comma: decimal"),
            ("Width on loom", "=A1*2", "formula"),
            ("Width on loom", "18 / 0", "divided by 0"),
            ("Ends", "about half", "number"),
            ("Yards a pound", "many", "number"),
        ],
    )
    def test_what_would_be_right(self, journal: Journal, heading: str, cell: str, word: str) -> None:
        """Each kind of cell is told of with what would be right, for the whole sheet where that can be said."""
        taken = take(f"Warp,{heading}\nBlue,{cell}\n", journal)

        assert [True] == [word in problem.right for problem in taken.outcomes[0].problems]

    def test_what_the_reader_refuses(self, journal: Journal) -> None:
        """What is wrong only once the record is read, such as a sley of letters, is told at its row."""
        taken = take("Warp,Piece,Sley\nBlue,a,2\nRed,a,two\n", journal)

        assert [(2, "new", []), (3, "skipped", ["unreadable"])] == list(told(taken.outcomes))
        assert "two" == taken.outcomes[1].problems[0].read

    def test_what_the_journal_asks(self, journal: Journal) -> None:
        """A towel that is wider washed than in the reed is asked about at its row, before anything is written."""
        taken = take("Warp,Width in reed,Width washed\nBlue,18,21\n", journal)

        assert taken.sound
        assert "washed-wider-than-reed" in taken.outcomes[0].problems[0].slug


class TestFigures:
    @pytest.mark.parametrize(
        ("heading", "cell", "key", "value"),
        [
            ("Width on loom (cm)", '"46,5"', "on_loom", "46.5 cm x ?"),
            ("Width on loom", "18 1/4", "on_loom", "18 1/4 x ?"),
            ("Width on loom", "18¼", "on_loom", "18¼ x ?"),
            ("Width on loom", "18.33333333333", "on_loom", "18.3333 x ?"),
            ("Width on loom (cm)", "18 in", "on_loom", "18 in x ?"),
            ("Size washed", "17 7/8 x 30", "washed", "17 7/8 x 30"),
            ("Size washed (cm)", "45 x 70", "washed", "45 cm x 70 cm"),
            ("Width washed 2", "17", "washed 2", "17 x ?"),
            ("Width in reed", "243 dents", "in_reed", "243 dents"),
            ("Date", "14.3.16", "started", "2016-03-14"),
            ("Date", "3/14/2016", "started", "2016-03-14"),
            ("Date", "Mar-16", "started", "Mar 2016"),
            ("Date", "14 March 2016", "started", "14 March 2016"),
            ("Date", "2016-03-14 00:00:00", "started", "2016-03-14"),
            ("Date", "03/2016", "started", "2016-03"),
            ("Date", "2016.0", "started", "2016"),
            ("Date", "spring 2016", "started", "spring 2016"),
            ("Ends", "396.0", "ends", "396"),
            ("EPI", "20", "sett", "20/in"),
            ("Ends per 10 cm", "80", "sett", "80 per 10 cm"),
            ("Weight (oz)", "5.4", "weight", "5.4 oz"),
            ("Cost", "12.50 EUR", "cost", "12.50 EUR"),
        ],
    )
    def test_as_a_record_has_it(self, journal: Journal, heading: str, cell: str, key: str, value: str) -> None:
        """Units, commas, fractions and dates come out as a record has them, and are read without a fault."""
        taken = take(f"Warp,{heading}\nBlue,{cell}\n", journal)

        assert value == taken.records[0].fields[key]
        written(taken, journal)

    def test_a_journal_with_decimal_commas(self, tmp_path: Path) -> None:
        """Where the journal's comma is decimal, 18.125 is written 18,125: with a point it could be thousands."""
        journal = write(tmp_path, journal="length: cm\ncomma: decimal")
        taken = take("Warp,Width on loom\nBlue,18.125\n", journal)

        assert "18,125 x ?" == taken.records[0].fields["on_loom"]
        written(taken, journal)

    @pytest.mark.parametrize(
        ("fibre", "words"),
        [
            ("cotton", "cotton"),
            ("50/50 cotton/linen", "50 % cotton, 50 % linen"),
            ("55% cotton 45% linen", "55 % cotton, 45 % linen"),
            ("wool & silk", "wool, silk"),
        ],
    )
    def test_fibres(self, journal: Journal, fibre: str, words: str) -> None:
        """Fibres are listed as a yarn's record lists them."""
        taken = take(f"Warp,Yarn,Fibre\nBlue,Fine,{fibre}\n", journal)

        assert words == next(record for record in taken.records if record.kind == "yarns").fields["fibre"]

    def test_a_yarn_called_by_its_number(self, journal: Journal) -> None:
        """A yarn called 8/2 cotton has that number; one whose number could be several keeps it out of the record."""
        taken = take("Warp,Yarn\nBlue,8/2 cotton\nRed,22/2 cottolin\n", journal)
        yarns = {record.name: record.fields.get("number") for record in taken.records if record.kind == "yarns"}

        assert {"8-2-cotton": "8/2 cotton", "22-2-cottolin": None} == yarns


WORDS = st.text(st.characters(exclude_categories=["Cs", "Cc"], include_characters="\n"), min_size=1, max_size=60)


@settings(max_examples=40)
@given(title=WORDS, note=WORDS, weave=WORDS)
def test_any_words(tmp_path_factory: pytest.TempPathFactory, title: str, note: str, weave: str) -> None:
    """Titles, weaves and notes of any letters are written so that the record reads back the same."""
    journal = write(tmp_path_factory.mktemp("words"), journal="length: in")
    stream = io.StringIO(newline="")
    csv.writer(stream).writerows([["Warp", "Weave", "Width on loom", "Notes"], [title, weave, "18", note]])
    sheet = read_sheet(stream.getvalue().encode(), "past.csv")
    taken = take_sheet(sheet, propose(sheet, journal.settings.units), journal)
    assert taken.sound
    if not taken.records:
        assert [True] == [bool(outcome.why) for outcome in taken.outcomes]  # a sum, or the headings again
        return
    warp = next(iter(written(taken, journal).warps.values()))
    cells = sheet.rows[1]
    titled = any(letter.isalnum() for letter in cells[0])

    assert (" ".join(cells[0].split()) if titled else "Row 2") == warp.title
    assert ("" if nothing_said(cells[1]) else " ".join(cells[1].split())) == (warp.weave or "")
    assert ("" if nothing_said(cells[3]) else cells[3]) == warp.notes.strip("\n")


HEADINGS = (
    "Warp",
    "Piece",
    "Date",
    "Yarn",
    "Weft",
    "Fibre",
    "Yards a pound",
    "EPI",
    "Sley",
    "Finish",
    "Loom",
    "Count",
    "Width in reed (cm)",
    "Size on loom",
    "Width washed (in)",
    "Length washed (in)",
    "Width washed 2",
    "Warp length",
    "Weight (g)",
    "Cost",
    "Buyer",
)
CELL = st.one_of(
    st.sampled_from(
        ["", "18 1/4", "about 18", "46,5", "1,200", "2016", "spring 2016", "4/5/16", "cotton", "a", "b", "=1"]
    ),
    st.text(max_size=8),
)


@settings(max_examples=40)
@given(st.lists(st.lists(CELL, min_size=len(HEADINGS), max_size=len(HEADINGS)), max_size=6), st.booleans())
def test_any_sheet(tmp_path_factory: pytest.TempPathFactory, rows: list[list[str]], keep_unread: bool) -> None:
    """Whatever stands in the cells, every row that says something has its outcome, and what is new can be written."""
    journal = write(tmp_path_factory.mktemp("any"), journal="length: in")
    stream = io.StringIO(newline="")
    csv.writer(stream).writerows([HEADINGS, *rows])
    sheet = read_sheet(stream.getvalue().encode("utf-8", "replace"), "past.csv")
    taken = take_sheet(sheet, propose(sheet, journal.settings.units), journal, keep_unread=keep_unread)

    assert [number for number, row in enumerate(sheet.rows[1:], start=2) if any(row)] == [
        outcome.row for outcome in taken.outcomes
    ]
    assert [] == [each.row for each in taken.outcomes if each.done == "skipped" and not (each.why or each.problems)]
    written(taken, journal)
