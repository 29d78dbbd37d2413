"""Headings as weavers write them, and what is proposed for a sheet of them."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal_tools.exchange.columns import Columns, parsed, printed
from journal_tools.exchange.headings import heading_meaning
from journal_tools.exchange.meaning import MEANINGS
from journal_tools.exchange.propose import propose
from journal_tools.exchange.sheet import Sheet, read_sheet
from journal_tools.quantities import Units

INCHES, METRIC = Units(), Units(length="cm", density="cm")


@pytest.mark.parametrize(
    ("heading", "words"),
    [
        ("Warp", "warp"),
        ("Project name", "warp"),
        ("# of pieces", "how many"),
        ("Date started", "date"),
        ("Yarn", "yarn"),
        ("Fiber", "fibre"),
        ("Yards a pound", "yield, yd/lb"),
        ("YPP", "yield, yd/lb"),
        ("m/kg", "yield, m/kg"),
        ("EPI", "sett, /in"),
        ("Sett (ends per cm)", "sett, /cm"),
        ("Sett, ends/in", "sett, /in"),
        ("ppi", "beat, /in"),
        ("Finish", "finish"),
        ("Weave structure", "weave"),
        ("width on loom (in)", "width on the loom, in"),
        ("Width on the loom, cm", "width on the loom, cm"),
        ('Width at fell "', "width on the loom, in"),
        ("width_in_reed_in", "width in the reed, in"),
        ("Width in reed", "width in the reed"),
        ("Off-loom width", "width off the loom"),
        ("cut length", "length off the loom"),
        ("Finished width (inches)", "width washed, in"),
        ("Wet-finished length [cm]", "length washed, cm"),
        ("Width after 2nd wash", "width washed 2"),
        ("Size washed (mm)", "size washed, mm"),
        ("Reed (cm)", "width in the reed, cm"),
        ("Warp length (yd)", "warp wound, yd"),
        ("Weight oz", "weight, oz"),
        ("Shrinkage %", "leave out"),
        ("Take-up", "leave out"),
        ("Remarks", "notes"),
    ],
)
def test_what_a_heading_says(heading: str, words: str) -> None:
    """A heading is taken by its words, and the unit by its brackets, its comma or its last word."""
    found = heading_meaning(heading)

    assert found is not None
    assert words == ", ".join(part for part in (found[0].name, found[1]) if part)


@pytest.mark.parametrize("heading", ["", "width", "Planned width on loom", "Buyer", "Length in reed", "Loom (cm)"])
def test_what_a_heading_does_not_say(heading: str) -> None:
    """A width of no state, a plan, and a stranger are not guessed at."""
    assert heading_meaning(heading) is None


@given(st.text(max_size=60))
def test_any_heading(heading: str) -> None:
    """Any heading at all is one of the known meanings, or none."""
    found = heading_meaning(heading)

    assert found is None or (found[0].name in MEANINGS and found[1] in {"", *_units(found[0].name)})


def _units(name: str) -> tuple[str, ...]:
    meaning = MEANINGS[name]
    return MEANINGS["width washed"].units if meaning.kind == "size" else meaning.units


def sheet(text: str) -> Sheet:
    """A sheet of these lines."""
    return read_sheet(text.encode(), "past.csv")


def proposed(text: str, units: Units = INCHES) -> tuple[Columns, dict[str, str]]:
    """What is proposed for a sheet: all of it, and its columns as words."""
    columns = propose(sheet(text), units)
    return columns, {column.heading: column.words for column in columns.columns}


class TestProposed:
    def test_the_header_below_a_title(self) -> None:
        """The headings are found below a title and a blank row."""
        columns, words = proposed("My weaving,,\n,,\nWarp,Date,Width on loom\nBlue,2016,18\n")

        assert (3, 3) == columns.header
        assert {"Warp": "warp", "Date": "date", "Width on loom": "width on the loom, in"} == words

    def test_headings_in_two_rows(self) -> None:
        """Width over reed, loom and washed is three widths."""
        columns, words = proposed(",Width,,,Length,\nWarp,Reed,Loom,Washed,Loom,Washed\nBlue,20,19,18,33,30\n")

        assert (1, 2) == columns.header
        assert [
            "warp",
            "width in the reed, in",
            "width on the loom, in",
            "width washed, in",
            "length on the loom, in",
            "length washed, in",
        ] == list(words.values())

    def test_nothing_is_lost(self) -> None:
        """A heading that says nothing becomes a note, and an empty column is left out."""
        _, words = proposed("Warp,Buyer,Empty,Colour way\nBlue,Ann,,red\n")

        assert {"Warp": "warp", "Buyer": "notes", "Empty": "leave out", "Colour way": "notes"} == words

    def test_the_journals_own_units(self) -> None:
        """A heading without a unit takes the journal's, and a warp of 5 is in yards or metres."""
        text = "Warp,Width on loom,Warp length,epi,sett\nBlue,18,5,24,24\n"

        assert ["width on the loom, in", "warp wound, yd", "sett, /in"] == list(proposed(text)[1].values())[1:4]
        assert ["width on the loom, cm", "warp wound, m", "sett, /in"] == list(proposed(text, METRIC)[1].values())[1:4]

    def test_a_second_column_of_one_meaning(self) -> None:
        """Two columns that say the same are one of it, and a note."""
        assert {"Washed width": "width washed, in", "Finished width": "notes"} == proposed(
            "Washed width,Finished width\n18,17\n"
        )[1]

    def test_reed_widths(self) -> None:
        """Under "reed" stand widths where they have fractions, and reeds where they are whole."""
        assert "width in the reed, in" == proposed("Warp,Reed\nA,20 1/4\nB,18.5\n")[1]["Reed"]
        assert "reed, /in" == proposed("Warp,Reed\nA,12\nB,10\n")[1]["Reed"]

    def test_finished_how_or_when(self) -> None:
        """Under "finished" stand dates, or else what was done."""
        assert "date finished" == proposed("Warp,Finished\nA,2016-03-14\n")[1]["Finished"]
        assert "finish" == proposed("Warp,Finished\nA,hot wash\n")[1]["Finished"]

    @pytest.mark.parametrize(
        ("text", "each"),
        [
            ("Warp,Piece\nA,towel 1\n", "a piece"),
            ("Warp,Width on loom\nA,18\nA,18\n", "a piece"),
            ("Warp,Width on loom\nA,18\nB,18\n", "a warp"),
        ],
    )
    def test_what_a_row_is(self, text: str, each: str) -> None:
        """A row is a piece where pieces have names or a warp comes twice."""
        assert each == proposed(text)[0].each

    @pytest.mark.parametrize(
        ("cells", "dates"),
        [
            (["14/3/2016", "4/5/2016"], "day first"),
            (["3/14/16", "4/5/16"], "month first"),
            (["4/5/2016"], None),
            (["14/3/2016", "3/14/2016"], None),
        ],
    )
    def test_which_is_the_day(self, cells: list[str], dates: str | None) -> None:
        """A day above twelve tells for the whole sheet; where none does, or both do, nothing is guessed."""
        assert dates == proposed("Warp,Date\n" + "".join(f"A,{cell}\n" for cell in cells))[0].dates

    @pytest.mark.parametrize(
        ("cells", "comma"),
        [
            (["46,5", "33"], "decimal"),
            (["18.5", "1,200"], "thousands"),
            (["1,200"], None),
            (["18.5", "46,5"], None),
        ],
    )
    def test_what_a_comma_is(self, cells: list[str], comma: str | None) -> None:
        """The figures tell what a comma is; where they do not, or tell both, nothing is guessed."""
        rows = "".join(f"A\t{cell}\n" for cell in cells)

        assert comma == proposed("Warp\tWidth on loom\n" + rows)[0].comma


class TestKept:
    TEXT = 'Warp,Width," # pieces",Notes -> mine\nBlue,18,4,good\n'

    def test_what_is_kept_reads_the_same(self) -> None:
        """The file of columns, as it is proposed, reads back as it was."""
        one = sheet('Titles,,\n,,\nWarp,Date,Width on loom (in),Buyer\nBlue,14/3/2016,"46,5",Ann\n')
        columns = propose(one, INCHES)

        assert columns == parsed(printed(columns, "past.csv"), "past.columns.txt", one, columns)

    def test_odd_headings(self) -> None:
        """Headings that begin with # or hold an arrow are headings still."""
        one = sheet(self.TEXT)
        columns = propose(one, INCHES)
        read = parsed(printed(columns, "past.csv"), "past.columns.txt", one, columns)

        assert ["Warp", "Width", "# pieces", "Notes -> mine"] == [column.heading for column in read.columns]
        assert () == read.problems

    def test_corrected(self) -> None:
        """What the weaver writes counts, before what the headings say."""
        one = sheet(self.TEXT)
        settings, columns = "one row is: a piece\ncomma: decimal\n", "Warp -> piece\nWidth -> width washed 2, cm\n"
        text = f"{settings}{columns}Notes -> mine -> leave out\n"
        read = parsed(text, "past.columns.txt", one, propose(one, INCHES))

        assert ["piece", "width washed 2, cm", "leave out"] == [column.words for column in read.columns]
        assert ("a piece", "decimal") == (read.each, read.comma)
        assert ["# pieces"] == [problem.field for problem in read.problems]

    @pytest.mark.parametrize(
        ("line", "word"),
        [
            ("Width -> widht washed", "Did you mean width washed?"),
            ("Width -> width washed, kg", "Its unit is one of in, cm"),
            ("Width -> notes, in", "It has no unit"),
            ("Width -> warp", "Warp is that already"),
            ("Wdith -> notes", "Did you mean Width?"),
            ("dates: sometimes", "day first"),
            ("datse: day first", "Did you mean dates?"),
            ("header: row 9", "has 2 rows"),
            ("header: top", "row 1"),
        ],
    )
    def test_a_slip(self, line: str, word: str) -> None:
        """A slip in the file of columns is told with what would be right."""
        one = sheet(self.TEXT)
        read = parsed(f"Warp -> warp\n{line}\n", "past.columns.txt", one, propose(one, INCHES))

        assert [word] == [word for problem in read.problems if word in problem.right][:1]
