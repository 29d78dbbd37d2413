"""The field guide: whole records that read, and examples with the key they stand below."""

from __future__ import annotations

from pathlib import Path

from journal_tools.checking import check
from journal_tools.pages.guide_page import NOTES, PARTS, guide_view
from journal_tools.pages.guide_records import WHOLE
from journal_tools.records import KINDS, read_journal
from journal_tools.records.model import words_of


class TestWholeRecords:
    def test_they_are_a_journal_with_nothing_to_ask(self, tmp_path: Path) -> None:
        """The whole records of the guide, each in its file, read without a fault and without a question."""
        for each in WHOLE:
            path = tmp_path / f"{each.entry}.md"
            path.parent.mkdir(exist_ok=True)
            path.write_text(each.text, encoding="utf-8")
        journal = read_journal(tmp_path)

        assert () == check(journal)
        assert {each.entry for each in WHOLE} == {f"{kind}/{name}" for kind in KINDS for name in journal.kind(kind)}

    def test_there_is_one_of_every_kind_and_a_warp_in_six_lines(self) -> None:
        """Every kind of record is shown whole, and a warp both in six lines and with all that was measured."""
        entries = [each.entry.split("/")[0] for each in WHOLE]
        fields = WHOLE[0].text.split("---\n")[1].splitlines()

        assert set(KINDS) == set(entries)
        assert (2, 6) == (entries.count("warps"), len(fields))

    def test_the_page_shows_them(self) -> None:
        """Each stands on the page as it stands in its file, under its path."""
        for each in WHOLE:
            assert f"`{each.entry}.md`\n\n```yaml\n{each.text}```" in NOTES


class TestExamples:
    def test_every_row_has_one(self) -> None:
        """No row of the guide's tables is without an example."""
        tables = guide_view().tables

        assert len(PARTS) == len(tables)
        assert [] == [(table.title, row[0].text) for table in tables for row in table.rows if not row[2].text]

    def test_what_stands_below_a_key_shows_the_key(self) -> None:
        """Where keys or a list stand below a key, the example begins with the key's own line."""
        cells = {row[0].text: row[2].text for table in guide_view().tables for row in table.rows}

        assert "yarns:\n  bone: linen-20-2 bone\n  slate: linen-20-2 slate" == cells["yarns"]
        assert "small-loom" == cells["loom"]

    def test_titles_of_their_own(self) -> None:
        """Every kind of record has an example title of its own."""
        titles = [words_of(kind)["title"][1].example for kind in KINDS.values()]

        assert len(KINDS) == len(set(titles))
