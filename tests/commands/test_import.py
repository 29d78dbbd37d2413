"""`import`: a spreadsheet of past warps and a whole journal taken in, by a file of columns that can be corrected."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from journal_tools.records import read_journal
from tests.commands.shell import Shell, text_of
from tests.exchange.trips import ledgers
from tests.ledger.desk import JOURNAL

SHEET = """\
My weaving,,,,,
,,,,,
Warp,Date,Yarn,Width in reed (in),Width washed (in),Buyer
Blue towels,spring 2016,Cottolin,20 1/4,about 18,Ann
Red scarf,2017,Silk 30/2,9,wide,
Green scarf,4/5/2018,Silk 30/2,9,8 1/2,
"""


@pytest.fixture
def past(tenterhook: Shell) -> Path:
    """A sheet of past warps in the journal's folder."""
    path = tenterhook.folder / "past.csv"
    path.write_text(SHEET, encoding="utf-8")
    return path


def entries(shell: Shell) -> list[str]:
    """Every record of the journal."""
    folder = shell.folder / "entries"
    return sorted(path.relative_to(folder).as_posix() for path in folder.rglob("*.md"))


class TestTheFirstRun:
    def test_nothing_is_written(self, tenterhook: Shell, past: Path) -> None:
        """The first run writes no record; it says what would become of each row, and how to write them."""
        said = tenterhook("import", "past.csv")

        assert ["journal.md"] == entries(tenterhook)
        assert "row 4 would be written: warps/blue-towels.md\n" in said.output
        assert said.output.endswith("Nothing was written. To write them: tenterhook import past.csv --write\n")

    def test_every_row_with_its_reason(self, tenterhook: Shell, past: Path) -> None:
        """A row that cannot be taken says which cell, what was read and what would be right; the status is 1."""
        said = tenterhook("import", "past.csv")

        assert 1 == said.exit_code
        assert 'row 5 skipped because:\n    to mend Width washed (in): read "wide". A number is missing' in said.output
        assert 'row 6 skipped because:\n    to mend Date: read "4/5/2018". This is 4 May to one weaver' in said.output
        assert "\n3 rows: 1 to write, 2 skipped. 1 warp, 1 yarn.\n" in said.output

    def test_the_columns_are_kept(self, tenterhook: Shell, past: Path) -> None:
        """What is proposed for the columns is told, and kept in a file beside the sheet."""
        said = tenterhook("import", "past.csv")
        kept = text_of(past.with_suffix(".columns.txt"))

        assert "header: row 3\none row is: a warp\n" in kept
        assert "Width washed (in) -> width washed, in\nBuyer -> notes\n" in kept
        assert "  Buyer              -> notes\n" in said.output

    def test_where_nothing_can_be_kept(self, tenterhook: Shell, past: Path) -> None:
        """Where the file of columns cannot be written, the run goes on and names the option for another place."""
        said = tenterhook("import", "past.csv", "--columns", "no-such-folder/columns.txt")

        assert "name another with --columns" in said.output
        assert "row 4 would be written" in said.output


class TestTheSecondRun:
    def test_the_columns_are_used(self, tenterhook: Shell, past: Path) -> None:
        """What the weaver has put right in the file of columns counts, and the file stays as it is."""
        tenterhook("import", "past.csv")
        kept = past.with_suffix(".columns.txt")
        text = text_of(kept).replace("# dates: day first, or month first", "dates: day first")
        kept.write_text(text.replace("Buyer -> notes", "Buyer -> leave out"), encoding="utf-8")
        said = tenterhook("import", "past.csv", "--write")

        assert "row 6 written: warps/green-scarf.md\n" in said.output
        assert "started: 2018-05-04\n" in text_of(tenterhook.folder / "entries/warps/green-scarf.md")
        assert "Ann" not in text_of(tenterhook.folder / "entries/warps/blue-towels.md")
        assert "Buyer -> leave out" in text_of(kept)

    def test_a_slip_in_it(self, tenterhook: Shell, past: Path) -> None:
        """A slip in the file of columns stops the import, with the line and what would be right."""
        kept = past.with_suffix(".columns.txt")
        kept.write_text("Warp -> wrap\n", encoding="utf-8")
        said = tenterhook("import", "past.csv", "--write")

        assert 1 == said.exit_code
        assert 'past.columns.txt:1 to mend Warp: read "wrap".' in said.output
        assert "Did you mean warp?" in said.output
        assert ["journal.md"] == entries(tenterhook)

    def test_what_is_written(self, tenterhook: Shell, past: Path) -> None:
        """With --write the sound rows are written, and the journal has nothing to mend in them."""
        said = tenterhook("import", "past.csv", "--write")

        assert ["journal.md", "warps/blue-towels.md", "yarns/cottolin.md"] == entries(tenterhook)
        assert """\
---
title: Blue towels
started: spring 2016
yarn: cottolin
in_reed: 20 1/4
washed: about 18 x ?
---

Buyer: Ann
""" == text_of(tenterhook.folder / "entries/warps/blue-towels.md")
        assert "made yarns/cottolin.md: Cottolin\n" in said.output
        assert 0 == tenterhook("check").exit_code

    def test_again_and_again(self, tenterhook: Shell, past: Path) -> None:
        """A second writing finds what is there; once the sheet is put right, only what is new is written."""
        tenterhook("import", "past.csv", "--write")
        again = tenterhook("import", "past.csv", "--write")
        assert "row 4 is there already, the same: warps/blue-towels.md\n" in again.output

        past.write_text(SHEET.replace("wide", "8 1/4").replace("4/5/2018", "4 May 2018"), encoding="utf-8")
        last = tenterhook("import", "past.csv", "--write")
        assert 0 == last.exit_code
        assert "3 rows: 2 written, 1 there already. 2 warps, 1 yarn.\n" in last.output

    def test_a_record_of_hers_stays(self, tenterhook: Shell, past: Path) -> None:
        """A record that the weaver wrote under the same name is never touched."""
        hers = tenterhook.write("warps/blue-towels", "---\ntitle: Mine\n---\n")
        said = tenterhook("import", "past.csv", "--write")

        assert "There is a record of that name already, and it is left as it is. (warps/blue-towels.md)" in said.output
        assert "---\ntitle: Mine\n---\n" == text_of(hers)

    def test_what_cannot_be_read_as_notes(self, tenterhook: Shell, past: Path) -> None:
        """With --keep-unread every row is taken, and what could not be read stands in the notes."""
        said = tenterhook("import", "past.csv", "--write", "--keep-unread")

        assert 0 == said.exit_code
        assert "\nWidth washed (in): wide\n" in text_of(tenterhook.folder / "entries/warps/red-scarf.md")

    def test_what_was_kept_stays_taken(self, tenterhook: Shell, past: Path) -> None:
        """A later run without --keep-unread finds the rows that were kept, and has nothing to mend in them."""
        tenterhook("import", "past.csv", "--write", "--keep-unread")
        said = tenterhook("import", "past.csv")

        assert 0 == said.exit_code
        assert "row 5 is there already, the same: warps/red-scarf.md\n" in said.output


class TestForPrograms:
    def test_json(self, tenterhook: Shell, past: Path) -> None:
        """With --json each row is an object, and nothing else is said."""
        said = json.loads(tenterhook("import", "past.csv", "--json").output)

        assert {"file", "written", "records", "problems", "rows"} == set(said)
        assert ["warps/blue-towels.md"] == [name for name in said["records"] if name.startswith("warps/")]
        assert [(4, "new"), (5, "skipped"), (6, "skipped")] == [(row["row"], row["done"]) for row in said["rows"]]
        assert "wide" == said["rows"][1]["problems"][0]["read"]


class TestAWholeJournal:
    def test_out_and_in(self, tenterhook: Shell, tmp_path: Path) -> None:
        """A journal that was exported is taken into a new one with the same losses, and its settings with it."""
        tenterhook("export", "--journal", str(JOURNAL), "--to", str(tmp_path / "out"))
        said = tenterhook("import", str(tmp_path / "out" / "journal.json"), "--write")
        before, after = (ledgers(read_journal(each)) for each in (JOURNAL, tenterhook.folder / "entries"))

        assert 0 == said.exit_code
        assert {name: ledger.rows for name, ledger in before.items()} == {
            name: ledger.rows for name, ledger in after.items()
        }
        assert "journal.md has tape: 1/8 in\n" in said.output

    def test_nothing_is_written_at_first(self, tenterhook: Shell, tmp_path: Path) -> None:
        """A whole journal is told of first as well, and its settings stay as they are."""
        before = text_of(tenterhook.folder / "entries/journal.md")
        tenterhook("export", "--journal", str(JOURNAL), "--to", str(tmp_path / "out"))
        said = tenterhook("import", str(tmp_path / "out" / "journal.json"))

        assert "warps/tideline-towels.md would be written\n" in said.output
        assert (["journal.md"], before) == (entries(tenterhook), text_of(tenterhook.folder / "entries/journal.md"))


@pytest.mark.parametrize(
    ("name", "data", "word"),
    [
        ("past.csv", b"", "empty"),
        ("past.csv", b"PK\x03\x04", "save it as CSV"),
        ("journal.json", b"{", "no JSON"),
        ("journal.json", b"{}", "tenterhook export"),
    ],
)
def test_another_file(tenterhook: Shell, name: str, data: bytes, word: str) -> None:
    """A file that cannot be taken in is refused with what would be right, and nothing is made beside it."""
    (tenterhook.folder / name).write_bytes(data)
    said = tenterhook("import", name)

    assert 1 == said.exit_code
    assert word in said.output
    assert not (tenterhook.folder / "past.columns.txt").exists()
