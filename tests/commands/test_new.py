"""`new`: skeletons that read, whether their examples are taken or not."""

from __future__ import annotations

import datetime
import re

import pytest

from journal_tools.editing.starting import ONE
from journal_tools.records import read_journal
from tests.commands.shell import Shell, text_of

EXAMPLE = re.compile(r"^# (?=\s*(?:- |[a-z_]+:(?: |$)))", re.MULTILINE)
"""An example in a comment: a key or an item of a list. A remark begins with a capital."""


class TestEveryKind:
    @pytest.mark.parametrize("kind", ONE)
    def test_reads_as_it_is(self, tenterhook: Shell, kind: str) -> None:
        """A new record of any kind reads without a fault, under the title made from its name."""
        made = tenterhook("new", kind, "slow-river")
        read = read_journal(tenterhook.folder / "entries")

        assert 0 == made.exit_code
        assert () == read.problems
        assert "Slow river" == read.kind(ONE[kind])["slow-river"].heading

    @pytest.mark.parametrize("kind", ONE)
    def test_reads_with_every_example_taken(self, tenterhook: Shell, kind: str) -> None:
        """With the mark before each example taken away, every one of them reads without a fault."""
        tenterhook("new", kind, "slow-river")
        path = tenterhook.folder / "entries" / ONE[kind] / "slow-river.md"
        taken, examples = EXAMPLE.subn("", path.read_text(encoding="utf-8"))
        path.write_text(taken, encoding="utf-8")
        read = read_journal(tenterhook.folder / "entries")

        assert examples >= 2
        assert () == read.problems

    def test_settings_read_with_every_example_taken(self, tenterhook: Shell) -> None:
        """The settings of a new journal, too, read with every example taken."""
        path = tenterhook.folder / "entries" / "journal.md"
        taken, examples = EXAMPLE.subn("", path.read_text(encoding="utf-8"))
        path.write_text(taken, encoding="utf-8")
        settings = read_journal(tenterhook.folder / "entries").settings

        assert examples == 5
        assert "Upstairs at the back" == settings.place
        assert () == read_journal(tenterhook.folder / "entries").problems

    def test_a_warp_with_its_examples_has_a_loss(self, tenterhook: Shell) -> None:
        """The examples of a warp are one cloth: 20 1/4 in the reed and 17 7/8 washed lose 11.7 %."""
        tenterhook("new", "warp", "slow-river")
        path = tenterhook.folder / "entries" / "warps" / "slow-river.md"
        path.write_text(EXAMPLE.sub("", path.read_text(encoding="utf-8")), encoding="utf-8")

        assert "width, reed to washed             " + "  11.7 % ± 0.7" in tenterhook("past", "cottolin-22-2").output

    def test_a_warp_is_not_shared_and_says_nothing_unasked(self, tenterhook: Shell) -> None:
        """A new warp is not shared and has no date of its own; today's stands ready behind the mark of an example."""
        before = datetime.date.today().isoformat()
        tenterhook("new", "warp", "slow-river")
        warp = read_journal(tenterhook.folder / "entries").warps["slow-river"]
        ready = re.search(r"^# started: (\S+)$", text_of(tenterhook.folder / "entries" / warp.file), re.MULTILINE)

        assert (None, False) == (warp.started, warp.share)
        assert ready is not None
        assert before <= ready[1] <= datetime.date.today().isoformat()


class TestNames:
    def test_says_where_the_record_is(self, tenterhook: Shell) -> None:
        """It ends with the path of the file that was made."""
        path = tenterhook.folder / "entries" / "yarns" / "cotton-8-2.md"

        assert f"made {path}\n" == tenterhook("new", "yarn", "cotton-8-2").output

    @pytest.mark.parametrize("title", ['Ann\'s "blue"', "1984", "{today}", "- dash: colon #3", "Nm 20/2: Лён", "null"])
    def test_keeps_any_title_as_typed(self, tenterhook: Shell, title: str) -> None:
        """A title is read back exactly as it was typed, whatever it holds."""
        tenterhook("new", "loom", "big-loom", "--title", title)
        read = read_journal(tenterhook.folder / "entries")

        assert () == read.problems
        assert title == read.looms["big-loom"].title

    def test_a_record_that_is_there_is_left(self, tenterhook: Shell) -> None:
        """A record is never written over."""
        path = tenterhook.write("yarns/cotton-8-2", "---\ntitle: Mine\n---\n")
        said = tenterhook("new", "yarn", "cotton-8-2")

        assert 1 == said.exit_code
        assert "---\ntitle: Mine\n---\n" == path.read_text(encoding="utf-8")
        assert f"{path} is there already; it is left as it is.\n" == said.stderr

    @pytest.mark.parametrize(
        ("name", "hint"), [("Blue Towels", " such as blue-towels"), ("../secret", " such as secret"), ("§", "")]
    )
    def test_a_name_that_is_no_address(self, tenterhook: Shell, name: str, hint: str) -> None:
        """A name is small letters, digits and hyphens; for another, one that would do is told."""
        said = tenterhook("new", "warp", name)

        assert 1 == said.exit_code
        assert f'"{name}" cannot be the name of an entry: small letters, digits and hyphens{hint}.\n' == said.stderr
        assert [] == list((tenterhook.folder / "entries" / "warps").iterdir())

    @pytest.mark.parametrize("name", ["index", "readme"])
    def test_a_name_that_would_never_be_read(self, tenterhook: Shell, name: str) -> None:
        """index and readme are files about a folder, so no entry can be called so."""
        assert 1 == tenterhook("new", "warp", name).exit_code

    def test_a_folder_that_is_missing_is_made(self, tenterhook: Shell) -> None:
        """A kind that the journal has no folder for yet gets one."""
        (tenterhook.folder / "entries" / "looms").rmdir()

        assert 0 == tenterhook("new", "loom", "big-loom").exit_code

    def test_from_a_folder_below(self, tenterhook: Shell, monkeypatch: pytest.MonkeyPatch) -> None:
        """The journal is the one around the folder one stands in, also from inside its entries."""
        monkeypatch.chdir(tenterhook.folder / "entries" / "warps")

        assert 0 == tenterhook("new", "warp", "slow-river").exit_code
        assert (tenterhook.folder / "entries" / "warps" / "slow-river.md").is_file()

    def test_without_a_journal(self, tenterhook: Shell, monkeypatch: pytest.MonkeyPatch) -> None:
        """Where there is no journal it says how to begin one, with the exit status of a mistyped command."""
        monkeypatch.chdir(tenterhook.folder.parent)
        said = tenterhook("new", "warp", "slow-river")

        assert 2 == said.exit_code
        assert "`tenterhook begin my-journal` makes one." in said.stderr
