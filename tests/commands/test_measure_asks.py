"""`measure` asks state by state, moves no other byte, and refuses with the record left as it was."""

from __future__ import annotations

import io
from pathlib import Path

import pytest
from click.testing import CliRunner

from journal_tools.commands.main import main
from tests.commands.shell import TIDELINE, Shell, text_of


class ThenStopped(io.BytesIO):
    """What is typed at a desk where Ctrl+C is pressed once these lines are given."""

    def read1(self, size: int | None = -1, /) -> bytes:
        """The lines, and then the interruption, as reading from a terminal gives them."""
        given = super().read1(-1 if size is None else size)
        if not given and size != 0:
            raise KeyboardInterrupt
        return given

    def read(self, size: int | None = -1, /) -> bytes:
        """The same."""
        return self.read1(size)


class TestAsked:
    def test_state_by_state(self, tenterhook: Shell) -> None:
        """Without a size it asks for each state in the order of the cloth; an empty answer leaves it out."""
        path = tenterhook.write("warps/bare", "---\ntitle: Bare\n---\n")
        said = tenterhook("measure", "bare", typed="20 1/4\n19 3/8 x 33\n\n17 7/8 x 30 1/8\n\n561\n\n")

        assert 0 == said.exit_code
        assert "A bare number is in inches." in said.output
        assert (
            "---\ntitle: Bare\nin_reed: 20 1/4\non_loom: 19 3/8 x 33\nwashed: 17 7/8 x 30 1/8\npicks: 561\n---\n"
            == text_of(path)
        )
        assert "11.7 % ± 0.7" in said.output

    def test_only_what_is_missing(self, tenterhook: Shell, tideline: Path) -> None:
        """It does not ask for what the record has, except for the next wash."""
        said = tenterhook("measure", "tideline-towels", typed="\n17 3/4 x 30\n\n\n\n")

        assert "In the reed" not in said.output
        assert "On the loom" not in said.output
        assert "Washed 2 and dry" in said.output
        assert "washed:\n  - 17 7/8 x 30 1/8\n  - 17 3/4 x 30\n" in text_of(tideline)

    def test_a_bad_answer_is_asked_again(self, tenterhook: Shell, tideline: Path) -> None:
        """What cannot be read is explained and asked again, and nothing typed before is lost."""
        said = tenterhook(
            "measure", "tideline-towels", typed="19 1/4\nninteen x 3\n19 1/4 x 32 1/8\n\n\nmany\n561\n\n"
        )

        assert 0 == said.exit_code
        assert 3 == said.output.count("Off the loom, rested")
        assert 2 == said.output.count("Picks, counted")
        assert "width x length is wanted, such as 17 7/8 x 30 1/8" in said.output
        assert TIDELINE[:-4] + "off_loom: 19 1/4 x 32 1/8\npicks: 561\n---\n" == text_of(tideline)

    def test_which_piece(self, tenterhook: Shell, napkins: Path) -> None:
        """Of several pieces it asks which, and asks again for a name that is none."""
        said = tenterhook("measure", "napkins", typed="napkin 9\nnapkins 2-6\n\n20 1/2 x 21\n\n\n\n\n\n")

        assert 0 == said.exit_code
        assert 2 == said.output.count("Which piece?")
        assert "washed: 19 3/4 x 20\n        on_loom: 20 1/2 x 21\n" in text_of(napkins)

    def test_nothing_said(self, tenterhook: Shell, tideline: Path) -> None:
        """With nothing but empty answers nothing is written."""
        said = tenterhook("measure", "tideline-towels", typed="\n" * 8)

        assert 0 == said.exit_code
        assert "Nothing to write." in said.output
        assert TIDELINE == text_of(tideline)

    def test_an_end_in_the_middle(self, tenterhook: Shell, tideline: Path) -> None:
        """When the answers end (Ctrl+D), those that were given are written, and it is said what was written."""
        said = tenterhook("measure", "tideline-towels", typed="19 1/4 x 32 1/8\n")

        assert 0 == said.exit_code
        assert "The answers end here; what you gave until now is taken.\nwrote off_loom: 19 1/4" in said.output
        assert TIDELINE[:-4] + "off_loom: 19 1/4 x 32 1/8\n---\n" == text_of(tideline)

    def test_an_end_before_any_answer(self, tenterhook: Shell, tideline: Path) -> None:
        """When the answers end before there is one, nothing is written, and that is said."""
        said = tenterhook("measure", "tideline-towels", typed="")

        assert 0 == said.exit_code
        assert said.output.endswith("\nNothing to write.\n")
        assert TIDELINE == text_of(tideline)

    def test_stopped_in_the_middle(self, tenterhook: Shell, tideline: Path) -> None:
        """Ctrl+C writes nothing, and says the line that would write what was given."""
        said = CliRunner().invoke(main, ["measure", "tideline-towels"], input=ThenStopped(b"19 1/4 x 32 1/8\n"))

        assert 1 == said.exit_code
        assert (
            "Stopped; nothing was written.\n"
            "To write what you gave: tenterhook measure tideline-towels --off-loom '19 1/4 x 32 1/8'\n"
        ) == said.stderr
        assert TIDELINE == text_of(tideline)

    def test_what_can_hardly_be_is_asked_at_once(self, tenterhook: Shell, tideline: Path) -> None:
        """A size that grew is asked about before the next question; without a yes it is asked for again."""
        said = tenterhook(
            "measure", "tideline-towels", typed="\n46 x 76\nn\n17 3/4 x 30\n\n\n\n"
        )

        assert 1 == said.output.count("Write it anyway? [y/N]")
        assert 2 == said.output.count("Washed 2 and dry")
        assert "washed:\n  - 17 7/8 x 30 1/8\n  - 17 3/4 x 30\n" in text_of(tideline)

    def test_with_a_yes_it_is_written(self, tenterhook: Shell, tideline: Path) -> None:
        """A figure that was asked about and meant is written, and is not asked about a second time."""
        said = tenterhook("measure", "tideline-towels", typed="\n18 5/8 x 30\ny\n\n\n\n")

        assert 1 == said.output.count("question washed 2")
        assert "  - 18 5/8 x 30\n" in text_of(tideline)

    @pytest.mark.parametrize(
        ("more", "asked"),
        [
            ("", False),
            ("fringe: 2 in each end\n", False),
            ("hem: none\n", False),
            ("hem: 1 in\n", True),
            ("plan:\n  hemmed: 17 x 28\n", True),
        ],
    )
    def test_a_hem_is_asked_for_where_there_is_one(self, tenterhook: Shell, more: str, asked: bool) -> None:
        """The hemmed size is asked for where a hem is recorded or planned: a scarf with a fringe has none."""
        tenterhook.write("warps/scarf", TIDELINE.replace("---\n", f"---\n{more}", 1))

        assert asked == ("Hemmed (width x length)" in tenterhook("measure", "scarf", typed="\n" * 8).output)

    def test_in_the_units_of_the_record(self, tenterhook: Shell) -> None:
        """A record in centimetres is asked in centimetres."""
        tenterhook.write("warps/bare", "---\ntitle: Bare\nunits: cm\n---\n")
        said = tenterhook("measure", "bare", typed="51.4\n49 x 84\n\n45.4 x 76.5\n\n\n\n")

        assert "A bare number is in centimetres." in said.output
        assert "11.7 %" in said.output


class TestEveryOtherByte:
    def test_windows_line_ends(self, tenterhook: Shell) -> None:
        """A record with the line ends of another system keeps them, and so does the new line."""
        before = TIDELINE.replace("\n", "\r\n") + "\r\nNotes,\r\nas typed.  "
        path = tenterhook.write("warps/tideline-towels", before)
        tenterhook("measure", "tideline-towels", "--picks", "561")

        assert before.replace("30 1/8\r\n", "30 1/8\r\npicks: 561\r\n") == text_of(path)

    def test_odd_habits(self, tenterhook: Shell) -> None:
        """Comments, odd blanks, quotes and a missing last line end stay as the weaver typed them."""
        before = '---\n# mine\ntitle:   "Tideline"   # so called\n\nin_reed:\t20 1/4\n---\n\n  * not *much* here'
        path = tenterhook.write("warps/odd", before.replace("\t", " "))
        tenterhook("measure", "odd", "--on-loom", "19 3/8 x 33")

        assert before.replace("\t", " ").replace("20 1/4\n", "20 1/4\non_loom: 19 3/8 x 33\n") == text_of(path)

    def test_the_mode_of_the_file(self, tenterhook: Shell, tideline: Path) -> None:
        """Who may read the file stays as it was."""
        tideline.chmod(0o640)
        tenterhook("measure", "tideline-towels", "--picks", "561")

        assert 0o640 == tideline.stat().st_mode & 0o777


class TestRefusals:
    @pytest.mark.parametrize(
        ("option", "typed", "why"),
        [
            ("--off-loom", "19 1/4", "width x length is wanted"),
            ("--off-loom", "19 1/0 x 32", "1/0"),
            ("--picks", "20/in", "picks"),
            ("--in-reed", "wide", "wide"),
            ("--in-reed", "", "in-reed"),
            ("--weight", "heavy", "heavy"),
        ],
    )
    def test_what_cannot_be_read(self, tenterhook: Shell, tideline: Path, option: str, typed: str, why: str) -> None:
        """A figure that cannot be read is refused with its option named, and the record stays as it was."""
        said = tenterhook("measure", "tideline-towels", option, typed)

        assert 1 == said.exit_code
        assert said.stderr.startswith(f'{option} "')
        assert why in said.stderr
        assert TIDELINE == text_of(tideline)

    def test_one_bad_figure_stops_them_all(self, tenterhook: Shell, tideline: Path) -> None:
        """When one of several figures cannot be read, none is written."""
        said = tenterhook("measure", "tideline-towels", "--off-loom", "19 1/4 x 32 1/8", "--picks", "many")

        assert 1 == said.exit_code
        assert TIDELINE == text_of(tideline)

    def test_a_place_that_cannot_be_written(self, tenterhook: Shell) -> None:
        """A record in brackets, where a line cannot be added safely, is refused and stays as it was."""
        before = "---\ntitle: Bare\npieces: [{name: one}, {name: two}]\n---\n"
        path = tenterhook.write("warps/bare", before)
        said = tenterhook("measure", "bare", "--add", "--piece", "three", "--washed", "18 x 30")

        assert 1 == said.exit_code
        assert "warps/bare.md:3 to mend pieces" in said.output
        assert "The record is as it was.\n" == said.stderr
        assert before == text_of(path)

    def test_a_dry_run_is_refused_alike(self, tenterhook: Shell) -> None:
        """--dry-run says beforehand what could not be written."""
        tenterhook.write("warps/bare", "---\ntitle: Bare\npieces: [{name: one}, {name: two}]\n---\n")
        said = tenterhook("measure", "bare", "--add", "--piece", "three", "--washed", "18 x 30", "--dry-run")

        assert 1 == said.exit_code
        assert "would write" not in said.output

    def test_a_broken_record(self, tenterhook: Shell) -> None:
        """A record with a fault is mended first: its problems are told and it stays as it was."""
        before = TIDELINE.replace("20 1/4", "wide")
        path = tenterhook.write("warps/tideline-towels", before)
        said = tenterhook("measure", "tideline-towels", "--off-loom", "19 1/4 x 32 1/8")

        assert 1 == said.exit_code
        assert "warps/tideline-towels.md has something to mend first:\n" == said.stderr
        assert 'warps/tideline-towels.md:5 to mend in_reed: read "wide".' in said.output
        assert before == text_of(path)

    def test_another_record_may_be_broken(self, tenterhook: Shell, tideline: Path) -> None:
        """A fault in another record does not stand in the way."""
        tenterhook.write("warps/broken", "---\ntitle: [\n---\n")

        assert 0 == tenterhook("measure", "tideline-towels", "--picks", "561").exit_code

    def test_a_warp_that_is_not_there(self, tenterhook: Shell, tideline: Path) -> None:
        """For a misspelt warp the nearest name is told."""
        said = tenterhook("measure", "tidelin-towel", "--picks", "561")

        assert 1 == said.exit_code
        assert 'There is no warp called "tidelin-towel" here. Did you mean tideline-towels?\n' == said.stderr
