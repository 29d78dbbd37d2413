"""A sheet of past warps taken in: every row accounted for, and the records as a weaver would have written them."""

from __future__ import annotations

from journal_tools.ledger import ledger_of
from journal_tools.records import Journal, read_journal
from tests.exchange.sheets import take, texts, told, written
from tests.exchange.trips import ledgers
from tests.ledger.desk import JOURNAL, losses, write

TOWELS = """\
Warp,Date,Piece,Yarn,Fibre,Yards a pound,EPI,Finish,Width in reed (in),Width on loom (in),Length on loom (in),\
Width washed (in),Length washed (in)
Blue towels,spring 2016,towel 1,Cottolin 22/2,50/50 cotton/linen,3150,24,Hot wash,20 1/4,19 3/8,33,17 7/8,30 1/8
Blue towels,spring 2016,towel 2,Cottolin 22/2,50/50 cotton/linen,3150,24,Hot wash,20 1/4,19 3/8,33,about 18,
"""


class TestOneRowAPiece:
    def test_the_records(self, journal: Journal) -> None:
        """What all pieces share is said once; each piece has its own sizes; yarn and finish get a record."""
        assert {
            "warps/blue-towels.md": """\
---
title: Blue towels
started: spring 2016
yarn: cottolin-22-2
sett: 24/in
in_reed: 20 1/4
finish: hot-wash
pieces:
  - name: towel 1
    on_loom: 19 3/8 x 33
    washed: 17 7/8 x 30 1/8
  - name: towel 2
    on_loom: 19 3/8 x 33
    washed: about 18 x ?
---
""",
            "yarns/cottolin-22-2.md": """\
---
title: Cottolin 22/2
fibre: 50 % cotton, 50 % linen
yield: 3150 yd/lb
---
""",
            "finishes/hot-wash.md": "---\ntitle: Hot wash\n---\n",
        } == texts(take(TOWELS, journal))

    def test_every_row_is_accounted_for(self, journal: Journal) -> None:
        """Each row says what became of it, and in which record it stands."""
        taken = take(TOWELS, journal)

        assert [(2, "new", []), (3, "new", [])] == list(told(taken.outcomes))
        assert {"warps/blue-towels.md"} == {outcome.file for outcome in taken.outcomes}
        assert taken.sound

    def test_its_losses(self, journal: Journal) -> None:
        """The first towel went from 20 1/4 to 17 7/8, which is 11.7 per cent."""
        read = written(take(TOWELS, journal), journal)
        piece = ledger_of(read, read.warps["blue-towels"]).pieces[0]

        assert round(1 - 17.875 / 20.25, 6) == round(losses(piece.rows)["width, reed to washed"], 6)

    def test_a_second_time(self, journal: Journal) -> None:
        """Taking the same sheet in again writes nothing, and says that all is there."""
        taken = take(TOWELS, written(take(TOWELS, journal), journal))

        assert () == taken.records
        assert [(2, "there", []), (3, "there", [])] == list(told(taken.outcomes))

    def test_nothing_is_written_over(self, journal: Journal) -> None:
        """A warp that stands in the journal with other words keeps its rows out, each with the reason."""
        write(journal.folder, warps__blue_towels="title: Blue towels\nin_reed: 20")
        taken = take(TOWELS, read_journal(journal.folder))

        assert () == taken.records
        assert [(2, "skipped", ["is-there"]), (3, "skipped", ["with-another"])] == list(told(taken.outcomes))
        assert not taken.sound

    def test_a_name_that_was(self, journal: Journal) -> None:
        """A name that another record had before is taken, since its address leads there."""
        write(journal.folder, warps__sea_towels="title: Sea towels\nwas: blue-towels")

        assert ["is-there"] == take(TOWELS, read_journal(journal.folder)).outcomes[0].problems[0].slug.split()

    def test_what_the_shelf_has(self, journal: Journal) -> None:
        """A yarn and a finish that have a record, by any of their names, get no other."""
        write(
            journal.folder,
            yarns__cottolin="title: Cottolin 22/2\nnumber: 22/2\nyield: 3150 yd/lb",
            finishes__hot="title: Hot wash",
        )
        (record,) = take(TOWELS, read_journal(journal.folder)).records

        assert ("cottolin", "hot") == (record.fields["yarn"], record.fields["finish"])

    def test_a_finish_that_fulls(self, journal: Journal) -> None:
        """A finish whose words say that it fulls is one that does, and it is asked: that loss was a decision."""
        taken = take(
            "Warp,Finish,Width on loom,Width washed\nBlanket,Fulled by hand,36,28\nScarf,hand wash,9,8\n", journal
        )
        finishes = {record.name: record.fields.get("fulling") for record in taken.records if record.kind == "finishes"}
        read = written(taken, journal)

        assert {"fulled-by-hand": "yes", "hand-wash": None} == finishes
        assert [["fulled"], []] == [slugs for _, _, slugs in told(taken.outcomes)]
        assert {"blanket": True, "scarf": False} == {
            name: each.rows[-1].steered for name, each in ledgers(read).items()
        }

    def test_rows_that_name_no_warp(self, journal: Journal) -> None:
        """A name that stands only in the first of several rows holds for those below it, and is asked."""
        taken = take("Warp,Piece,Width on loom\nBlue,a,18\n,b,18 1/8\nRed,a,9\n", journal)

        assert ["warps/blue.md", "warps/blue.md", "warps/red.md"] == [outcome.file for outcome in taken.outcomes]
        assert [[], ["no-name"], []] == [slugs for _, _, slugs in told(taken.outcomes)]

    def test_pieces_of_one_name(self, journal: Journal) -> None:
        """Pieces that share a name are numbered, and it is asked; pieces without a name are too."""
        taken = take("Warp,Piece,Width on loom\nBlue,towel,18\nBlue,towel,18 1/8\nBlue,,9\n", journal)
        pieces = taken.records[0].fields["pieces"]

        assert ["towel 1", "towel 2", "piece 3"] == [piece["name"] for piece in pieces]  # type: ignore[index, call-overload]
        assert ["doubled"] == taken.outcomes[1].problems[0].slug.split()


class TestSaidDifferently:
    def test_of_a_warp(self, journal: Journal) -> None:
        """Two dates of one warp are a question; the first is written, the other kept in its notes."""
        taken = take("Warp,Piece,Date\nBlue,a,2016\nBlue,b,spring 2017\n", journal)
        (record,) = taken.records

        assert [(2, "new", []), (3, "new", ["said-differently"])] == list(told(taken.outcomes))
        assert ("2016", "\nDate, in row 3: spring 2017\n") == (record.fields["started"], record.notes)

    def test_of_a_piece(self, journal: Journal) -> None:
        """Two setts in one warp are a question, and each piece is written with its own."""
        taken = take("Warp,Piece,EPI\nBlue,a,20\nBlue,b,24\n", journal)

        assert ["said-differently"] == [slug for _, _, slugs in told(taken.outcomes) for slug in slugs]
        assert [{"name": "a", "sett": "20/in"}, {"name": "b", "sett": "24/in"}] == taken.records[0].fields["pieces"]

    def test_of_a_yarn(self, journal: Journal) -> None:
        """Two fibres of one yarn are a question; the first is written, the other kept in the yarn's notes."""
        taken = take("Warp,Yarn,Fibre\nBlue,Mystery,cotton\nRed,Mystery,linen\n", journal)
        yarn = next(record for record in taken.records if record.kind == "yarns")

        assert ["said-differently"] == [slug for _, _, slugs in told(taken.outcomes) for slug in slugs]
        assert ({"title": "Mystery", "fibre": "cotton"}, "\nfibre, in row 3: linen\n") == (yarn.fields, yarn.notes)

    def test_what_is_measured_of_each(self, journal: Journal) -> None:
        """Sizes, picks and beat differ from piece to piece, and nothing is asked."""
        taken = take("Warp,Piece,ppi,Picks,Width washed\nBlue,a,20,400,18\nBlue,b,21,420,17 3/4\n", journal)

        assert [[], []] == [slugs for _, _, slugs in told(taken.outcomes)]


class TestOneRowAWarp:
    SHEET = "Name;Jahr;Yarn;Weft;Width on loom (cm);Length on loom (cm);Warp length (m);Count;Remarks\n" + (
        "Schal;2019;Merino 2/20;Silk 30/2;46,5;183;3,2;2;gut\nDecke;~2018;Woollen;;83;1.250;2;;\n"
    )

    def test_the_record(self, journal: Journal) -> None:
        """Warp and weft stand apart where there are two; units are written where they are not the journal's."""
        said = texts(take(self.SHEET, journal, said=SCHAL))

        assert """\
---
title: Schal
started: 2019
warp:
  yarn: merino-2-20
  wound: 3.2 m
weft: silk-30-2
count: 2
on_loom: 46.5 cm x 183 cm
---

gut
""" == said["warps/schal.md"]
        assert "on_loom: 83 cm x 1250 cm\n" in said["warps/decke.md"]
        assert "started: ~2018\nyarn: woollen\nwarp:\n  wound: 2 m\n" in said["warps/decke.md"]

    def test_a_name_twice(self, journal: Journal) -> None:
        """A second row of the same name is skipped, with the words that make rows pieces."""
        taken = take("Warp,Width on loom\nBlue,18\nblue,19\n", journal, said="one row is: a warp\nWarp -> warp\n")

        assert [(2, "new", []), (3, "skipped", ["doubled"])] == list(told(taken.outcomes))
        assert "one row is: a piece" in taken.outcomes[1].problems[0].right

    def test_without_a_name(self, journal: Journal) -> None:
        """Where no column names the warp, it is called after its yarn and date, and it is asked."""
        taken = take("Yarn,Date,Width on loom\nLinen 16/2,2016,18\n,,20\n", journal)

        assert ["warps/linen-16-2-2016.md", "warps/row-3.md"] == [outcome.file for outcome in taken.outcomes]
        assert ["no-name"] == [problem.slug for problem in taken.problems]


SCHAL = """\
one row is: a warp
comma: decimal
Name -> warp
Jahr -> date
Yarn -> yarn
Weft -> weft yarn
Width on loom (cm) -> width on the loom, cm
Length on loom (cm) -> length on the loom, cm
Warp length (m) -> warp wound, m
Count -> how many
Remarks -> notes
"""


class TestRowsThatAreNone:
    def test_each_with_its_reason(self, journal: Journal) -> None:
        """Sums, titles among the rows and headings that come again are skipped and say so; blank rows are no rows."""
        sheet = "Warp,Date,Width on loom\n2016,,\nBlue,2016,18\n,,\nWarp,Date,Width on loom\nTotal,,18\nRed,2017,9\n"
        taken = take(sheet, journal)

        assert [
            (2, "skipped", "only one of its cells is filled, so it is taken for a title."),
            (3, "new", ""),
            (5, "skipped", "it holds the headings once more."),
            (6, "skipped", 'it begins with "Total", and a sum is no warp.'),
            (7, "new", ""),
        ] == [(outcome.row, outcome.done, outcome.why) for outcome in taken.outcomes]
        assert taken.sound

    def test_nothing_said(self, journal: Journal) -> None:
        """n/a, ?, a dash and 0 in a column of sizes are what nobody measured."""
        (record, *_) = take("Warp,Width on loom,Width washed,Finish\nBlue,18,n/a,-\nRed,?,0,\n", journal).records

        assert {"title": "Blue", "on_loom": "18 x ?"} == record.fields


def test_a_sheet_of_the_fixtures(journal: Journal) -> None:
    """The six lines of a record, as a row with units in its headings, give the same losses as the record."""
    taken = take(
        "Warp,Yarn,Weave,Width in reed (in),Width on loom (in),Length on loom (in),"
        "Width washed (in),Length washed (in)\n"
        "Tideline towels,cottolin-22-2,plain weave,20 1/4,19 3/8,33,17 7/8,30 1/8\n",
        journal,
    )
    read = written(taken, journal)

    assert ledgers(read_journal(JOURNAL))["tideline-towels"].rows == ledgers(read)["tideline-towels"].rows
