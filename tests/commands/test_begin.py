"""`begin`: a journal that works at once, and nothing written over."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest
import yaml

from journal_tools.checking import check
from journal_tools.records import read_journal
from tests.commands.shell import Shell


@pytest.fixture
def outside(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Shell:
    """The command line in an empty folder, with no journal around."""
    monkeypatch.chdir(tmp_path)
    return Shell(tmp_path / "journal")


class TestANewJournal:
    def test_has_a_folder_for_every_kind(self, outside: Shell) -> None:
        """A new journal has its settings, a folder for each kind of record, and what the site wants."""
        said = outside("begin", "journal")
        there = sorted(path.relative_to(outside.folder).as_posix() for path in outside.folder.rglob("*"))

        assert 0 == said.exit_code
        assert [
            ".gitignore",
            "entries",
            *(f"entries/{kind}" for kind in ("drafts", "finishes")),
            "entries/journal.md",
            *(f"entries/{kind}" for kind in ("looms", "warps", "yarns")),
            "mkdocs.yml",
        ] == there

    def test_has_nothing_to_mend(self, outside: Shell) -> None:
        """The settings of a new journal read without a fault and without a question."""
        outside("begin", "journal")

        assert () == check(read_journal(outside.folder / "entries"))

    def test_says_what_to_do_next(self, outside: Shell) -> None:
        """It ends with the three commands that a weaver wants now."""
        said = outside("begin", "journal")

        for next_command in ("tenterhook new warp", "tenterhook measure", "tenterhook serve"):
            assert next_command in said.output

    def test_says_it_as_the_weaver_calls_it(self, outside: Shell, monkeypatch: pytest.MonkeyPatch) -> None:
        """Begun through start.py, it says the lines that work then, and where the short command is."""
        monkeypatch.setenv("TENTERHOOK_CALLED", "python3 /opt/loom/start.py")
        said = outside("begin", "my journal").output

        assert "cd 'my journal'" in said or 'cd "my journal"' in said
        assert "  python3 /opt/loom/start.py serve " in said
        assert "  tenterhook" not in said
        assert str(Path(sys.executable).with_name("tenterhook")) in said

    def test_takes_an_empty_folder_that_is_there(self, outside: Shell) -> None:
        """A folder that was made beforehand is good enough, as long as it is empty."""
        outside.folder.mkdir()

        assert 0 == outside("begin", "journal").exit_code

    def test_makes_folders_on_the_way(self, outside: Shell) -> None:
        """The folder may stand in others that are not there yet."""
        assert 0 == outside("begin", "weaving/books/journal").exit_code
        assert Path("weaving/books/journal/entries/journal.md").is_file()

    @pytest.mark.parametrize(
        "title", ['Ann\'s cloth: "what it did"', "1984", "yes", "{today}", "# loom", "Włókno, Лён, 織り", "a\\b"]
    )
    def test_keeps_any_title_as_typed(self, outside: Shell, title: str) -> None:
        """A title with quotes, colons, or nothing but digits is the journal's and the site's as typed."""
        outside("begin", "journal", "--title", title)

        assert title == read_journal(outside.folder / "entries").settings.title
        assert title == yaml.safe_load((outside.folder / "mkdocs.yml").read_text(encoding="utf-8"))["site_name"]


class TestRefusals:
    def test_a_folder_with_something_in_it(self, outside: Shell) -> None:
        """A folder that is not empty is refused, and what is in it stays as it is."""
        outside.folder.mkdir()
        letter = outside.folder / "letter.txt"
        letter.write_text("Dear Ann,", encoding="utf-8")
        said = outside("begin", "journal")

        assert 1 == said.exit_code
        assert "journal is there already and is not empty; name a folder that is new.\n" == said.stderr
        assert [letter] == list(outside.folder.iterdir())

    def test_a_second_begin(self, outside: Shell) -> None:
        """A journal is never begun over."""
        outside("begin", "journal")
        settings = outside.folder / "entries" / "journal.md"
        settings.write_text("---\ntitle: Mine\n---\n", encoding="utf-8")

        assert 1 == outside("begin", "journal").exit_code
        assert "---\ntitle: Mine\n---\n" == settings.read_text(encoding="utf-8")

    def test_a_place_below_a_file(self, outside: Shell) -> None:
        """Where no folder can be made, it says so and why."""
        Path("letter.txt").write_text("Dear Ann,", encoding="utf-8")
        said = outside("begin", str(Path("letter.txt") / "journal"))

        assert 1 == said.exit_code
        assert f"{Path('letter.txt', 'journal')} cannot be made: Not a directory.\n" == said.stderr
