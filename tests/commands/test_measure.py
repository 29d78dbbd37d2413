"""`measure` with options: what cloth measured goes into the right place of the record."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from tests.commands.shell import NAPKINS, TIDELINE, Shell, text_of


class TestOptions:
    def test_a_size_goes_to_the_end_of_its_record(self, tenterhook: Shell, tideline: Path) -> None:
        """A size off the loom is written as a line of its own, and all other lines stay."""
        said = tenterhook("measure", "tideline-towels", "--off-loom", "19 1/4 x 32 1/8")

        assert 0 == said.exit_code
        assert TIDELINE[:-4] + "off_loom: 19 1/4 x 32 1/8\n---\n" == text_of(tideline)
        assert "wrote off_loom: 19 1/4 x 32 1/8\n" in said.output

    def test_what_it_did_is_shown_at_once(self, tenterhook: Shell, tideline: Path) -> None:
        """The losses that follow are shown: 19 1/4 to 17 7/8 is 7.1 % with 0.9 points either way."""
        said = tenterhook("measure", "tideline-towels", "--off-loom", "19 1/4 x 32 1/8")

        assert "  width, off to washed                 7.1 % ± 0.9\n" in said.output
        assert "  width, reed to washed               11.7 % ± 0.7\n" in said.output
        assert "  length, loom to washed               8.7 % ± 1.1\n" in said.output

    def test_what_can_hardly_be_is_asked_first(self, tenterhook: Shell, tideline: Path) -> None:
        """Cloth of 46 x 76 inches out of a reed of 20 1/4 is asked about, and not written: it was centimetres."""
        said = tenterhook("measure", "tideline-towels", "--washed", "46 x 76")

        assert 1 == said.exit_code
        assert "wider than the 20 1/4 in it stood in the reed" in said.output
        assert "Nothing was written. If it is so, say --anyway as well.\n" == said.stderr
        assert TIDELINE == text_of(tideline)

    def test_anyway_it_is_written(self, tenterhook: Shell, tideline: Path) -> None:
        """With --anyway the figure is written, and what the journal asks about it is told below the losses."""
        said = tenterhook("measure", "tideline-towels", "--washed", "18 5/8 x 30", "--anyway")

        assert 0 == said.exit_code
        assert "  - 17 7/8 x 30 1/8\n  - 18 5/8 x 30\n" in text_of(tideline)
        assert "question washed 2" in said.output

    def test_what_is_asked_already_is_no_hindrance(self, tenterhook: Shell) -> None:
        """A question that the journal asks anyway does not keep another figure out; an accepted one neither."""
        path = tenterhook.write("warps/wide", TIDELINE.replace("17 7/8 x", "46 x"))
        assert 0 == tenterhook("measure", "wide", "--picks", "561").exit_code

        path = tenterhook.write("warps/wide", TIDELINE.replace("---\n", "---\naccepted: grew\n", 1))
        assert 0 == tenterhook("measure", "wide", "--washed", "18 5/8 x 30").exit_code
        assert "  - 18 5/8 x 30\n" in text_of(path)

    @pytest.mark.parametrize(("answer", "written"), [("y\n", True), ("n\n", False), ("\n", False)])
    def test_on_a_terminal_it_can_be_answered(
        self, tenterhook: Shell, tideline: Path, answer: str, written: bool
    ) -> None:
        """On a terminal the question wants a yes; anything else leaves the record as it was."""
        import pty

        mine, its = pty.openpty()
        words = [sys.executable, "-m", "journal_tools", "measure", "tideline-towels", "--washed", "46 x 76"]
        with subprocess.Popen(words, stdin=its, stdout=subprocess.PIPE, stderr=subprocess.PIPE) as process:
            os.write(mine, answer.encode())
            said, _ = process.communicate(timeout=60)
        os.close(mine)
        os.close(its)

        assert b"Write it anyway? [y/N]" in said
        assert (written, not written) == ("  - 46 x 76\n" in text_of(tideline), process.returncode == 1)

    def test_against_the_plan(self, tenterhook: Shell) -> None:
        """A size that was planned is held against the plan, in words."""
        plan = "---\nplan:\n  washed: 18 x 30 1/8\n  made_up: 18 x 27 3/8\n"
        tenterhook.write("warps/towels", TIDELINE.replace("---\n", plan, 1))
        said = tenterhook("measure", "towels", "--made-up", "18 x 27")

        assert "  width, reed to washed               11.7 % ± 0.7  1/8 in narrower than planned\n" in said.output
        assert "  length, loom to washed               8.7 % ± 1.1  as planned\n" in said.output
        assert "  width, made up                       18 in        as planned\n" in said.output
        assert "  length, made up                      27 in        3/8 in shorter than planned\n" in said.output

    def test_several_at_once(self, tenterhook: Shell, tideline: Path) -> None:
        """Every kind of figure has an option, and all of them can be given in one go."""
        said = tenterhook(
            "measure", "tideline-towels", "--off-loom", "19 1/4 x 32 1/8", "--hemmed", "19 1/4 x 29", "--made-up",
            "17 3/4 x 27", "--picks", "561", "--weight", "125 g",
        )  # fmt: skip

        assert 0 == said.exit_code
        assert (
            TIDELINE[:-4]
            + "off_loom: 19 1/4 x 32 1/8\nhemmed: 19 1/4 x 29\nmade_up: 17 3/4 x 27\npicks: 561\nweight: 125 g\n---\n"
            == text_of(tideline)
        )

    @pytest.mark.parametrize("width", ["20 1/4", "243 dents", "51,4 cm", "20.25 in folded"])
    def test_a_width_in_the_reed(self, tenterhook: Shell, width: str) -> None:
        """In the reed a width is a length or so many dents, and of double cloth it may be of the fold."""
        path = tenterhook.write("warps/bare", "---\ntitle: Bare\nreed: 12/in\n---\n")

        assert 0 == tenterhook("measure", "bare", "--in-reed", width).exit_code
        assert f"---\ntitle: Bare\nreed: 12/in\nin_reed: {width}\n---\n" == text_of(path)

    def test_by_title_and_by_old_name(self, tenterhook: Shell) -> None:
        """A warp is found by its title and by a name that it had before, too."""
        path = tenterhook.write("warps/towels-one", "---\ntitle: Tideline towels\nwas: blue-towels\n---\n")
        tenterhook("measure", "Tideline towels", "--in-reed", "20")
        tenterhook("measure", "blue-towels", "--on-loom", "19 x 30")

        assert "in_reed: 20\non_loom: 19 x 30\n" in text_of(path)

    def test_a_dry_run_writes_nothing(self, tenterhook: Shell, tideline: Path) -> None:
        """With --dry-run it says what it would write, and the record stays as it is."""
        said = tenterhook("measure", "tideline-towels", "--off-loom", "19 1/4 x 32 1/8", "--dry-run")

        assert 0 == said.exit_code
        assert "would write off_loom: 19 1/4 x 32 1/8\n" == said.output
        assert TIDELINE == text_of(tideline)


class TestWashes:
    def test_a_second_wash_makes_a_list(self, tenterhook: Shell, tideline: Path) -> None:
        """The second wash stands below the first, as an item each, and the third below that."""
        tenterhook("measure", "tideline-towels", "--washed", "17 3/4 x 30")
        tenterhook("measure", "tideline-towels", "--washed", "17 3/4 x 29 7/8")

        assert TIDELINE.replace(
            "washed: 17 7/8 x 30 1/8\n", "washed:\n  - 17 7/8 x 30 1/8\n  - 17 3/4 x 30\n  - 17 3/4 x 29 7/8\n"
        ) == text_of(tideline)

    def test_two_washes_in_one_go(self, tenterhook: Shell) -> None:
        """--washed may stand twice: the first wash and the second."""
        path = tenterhook.write("warps/bare", "---\ntitle: Bare\n---\n")
        tenterhook("measure", "bare", "--washed", "18 x 30", "--washed", "17 3/4 x 29 7/8")

        assert "---\ntitle: Bare\nwashed:\n  - 18 x 30\n  - 17 3/4 x 29 7/8\n---\n" == text_of(path)

    def test_numbered_washes_go_on(self, tenterhook: Shell) -> None:
        """Where only the second wash was measured, the next one is the third and the second stays."""
        path = tenterhook.write("warps/bare", "---\ntitle: Bare\nwashed 2: 18 x 30\n---\n")
        tenterhook("measure", "bare", "--washed", "17 3/4 x 29 7/8")

        assert "---\ntitle: Bare\nwashed 2: 18 x 30\nwashed 3: 17 3/4 x 29 7/8\n---\n" == text_of(path)

    def test_a_wash_in_words_keeps_them(self, tenterhook: Shell) -> None:
        """What is said of how the first wash was done stays with it; the second stands beside it."""
        before = "---\ntitle: Bare\nwashed:\n  size: 18 x 30\n  pressed: yes\n---\n"
        path = tenterhook.write("warps/bare", before)
        tenterhook("measure", "bare", "--washed", "17 3/4 x 29 7/8", "--washed", "17 3/4 x 29 3/4")

        assert before[:-4] + "washed 2: 17 3/4 x 29 7/8\nwashed 3: 17 3/4 x 29 3/4\n---\n" == text_of(path)

    @pytest.mark.parametrize(
        ("before", "after"),
        [
            ("washed: 18 x 30\n", "washed: 17 x 29\n"),
            ("washed:\n  - 19 x 31\n  - 18 x 30\n", "washed:\n  - 19 x 31\n  - 17 x 29\n"),
            ("washed 1: 19 x 31\nwashed 2: 18 x 30\n", "washed 1: 19 x 31\nwashed 2: 17 x 29\n"),
            ("washed:\n  size: 18 x 30\n  pressed: yes\n", "washed:\n  size: 17 x 29\n  pressed: yes\n"),
            (
                "washed:\n  - 19 x 31\n  - size: 18 x 30\n    pressed: yes\n",
                "washed:\n  - 19 x 31\n  - size: 17 x 29\n    pressed: yes\n",
            ),
        ],
    )
    def test_replace_is_of_the_last_wash(self, tenterhook: Shell, before: str, after: str) -> None:
        """--replace puts another size in the place of the last wash, however the record writes it."""
        path = tenterhook.write("warps/bare", f"---\ntitle: Bare\n{before}---\n")
        said = tenterhook("measure", "bare", "--washed", "17 x 29", "--replace")

        assert 0 == said.exit_code
        assert f"---\ntitle: Bare\n{after}---\n" == text_of(path)

    def test_replace_is_of_one_wash(self, tenterhook: Shell, tideline: Path) -> None:
        """Two washes to replace in one go are refused: it could be meant in two ways."""
        said = tenterhook("measure", "tideline-towels", "--washed", "17 x 29", "--washed", "16 x 28", "--replace")

        assert 1 == said.exit_code
        why = "only one wash is written anew, the last or the one of --wash; say --washed once.\n"
        assert why == said.stderr
        assert TIDELINE == text_of(tideline)


    @pytest.mark.parametrize(
        ("before", "after"),
        [
            ("washed:\n  - 19 x 31\n  - 18 x 30\n", "washed:\n  - 18 1/2 x 30\n  - 18 x 30\n"),
            ("washed: 19 x 31\nwashed 2: 18 x 30\n", "washed: 18 1/2 x 30\nwashed 2: 18 x 30\n"),
            ("washed 1: 19 x 31\nwashed 2: 18 x 30\n", "washed 1: 18 1/2 x 30\nwashed 2: 18 x 30\n"),
            (
                "washed:\n  - size: 19 x 31\n    pressed: yes\n  - 18 x 30\n",
                "washed:\n  - size: 18 1/2 x 30\n    pressed: yes\n  - 18 x 30\n",
            ),
        ],
    )
    def test_an_earlier_wash_is_mended(self, tenterhook: Shell, before: str, after: str) -> None:
        """--wash 1 --replace puts another size in the place of the first wash, and the second stays."""
        path = tenterhook.write("warps/bare", f"---\ntitle: Bare\n{before}---\n")
        said = tenterhook("measure", "bare", "--washed", "18 1/2 x 30", "--wash", "1", "--replace")

        assert 0 == said.exit_code
        assert f"---\ntitle: Bare\n{after}---\n" == text_of(path)

    def test_a_wash_that_was_left_out(self, tenterhook: Shell) -> None:
        """A wash is written under its number where the ones before it were not measured, or it was not."""
        path = tenterhook.write("warps/bare", "---\ntitle: Bare\nwashed 2: 18 x 30\n---\n")
        tenterhook("measure", "bare", "--washed", "18 1/4 x 30 1/4", "--wash", "1")
        tenterhook("measure", "bare", "--washed", "17 7/8 x 29 3/4", "--wash", "4")

        assert "washed 2: 18 x 30\nwashed 1: 18 1/4 x 30 1/4\nwashed 4: 17 7/8 x 29 3/4\n" in text_of(path)

    @pytest.mark.parametrize(
        ("words", "why"),
        [
            (["--washed", "17 x 29", "--wash", "1"], "the record has wash 1 already; say --replace"),
            (["--washed", "17 x 29", "--wash", "3", "--replace"], "no wash 3 to replace; its last one is wash 1."),
            (["--picks", "561", "--wash", "1"], "--wash says which wash --washed is; say --washed as well."),
        ],
    )
    def test_which_wash_must_be_clear(self, tenterhook: Shell, tideline: Path, words: list[str], why: str) -> None:
        """A wash that is there is kept, one that is not there cannot be replaced, and --wash is of --washed."""
        said = tenterhook("measure", "tideline-towels", *words)

        assert 1 == said.exit_code
        assert why in said.stderr
        assert TIDELINE == text_of(tideline)

    def test_that_it_is_one_more_is_said(self, tenterhook: Shell, tideline: Path) -> None:
        """A size that becomes the second wash says so, with what mends the first one."""
        said = tenterhook("measure", "tideline-towels", "--washed", "17 3/4 x 30")

        assert "wrote washed: 17 3/4 x 30 (one wash more; to mend one, say --wash 1 --replace)\n" in said.output


class TestReplacing:
    def test_a_figure_that_is_there_is_kept(self, tenterhook: Shell, tideline: Path) -> None:
        """A size that the record has is never written over by itself."""
        said = tenterhook("measure", "tideline-towels", "--on-loom", "19 1/2 x 33")

        assert 1 == said.exit_code
        assert "the record has on_loom already; say --replace to put 19 1/2 x 33 in its place.\n" == said.stderr
        assert TIDELINE == text_of(tideline)

    def test_with_replace_it_is_written(self, tenterhook: Shell, tideline: Path) -> None:
        """With --replace the new figure stands where the old one stood."""
        tenterhook("measure", "tideline-towels", "--on-loom", "19 1/2 x 33", "--replace")

        assert TIDELINE.replace("19 3/8 x 33", "19 1/2 x 33") == text_of(tideline)

    def test_words_beside_a_figure_stay(self, tenterhook: Shell) -> None:
        """How a length was taken stays when its figure is replaced."""
        before = "---\ntitle: Bare\non_loom:\n  size: 19 x 33\n  taken: ribbon\n---\n"
        path = tenterhook.write("warps/bare", before)
        tenterhook("measure", "bare", "--on-loom", "19 1/2 x 33", "--replace")

        assert before.replace("19 x 33", "19 1/2 x 33") == text_of(path)


class TestPieces:
    def test_of_one_piece(self, tenterhook: Shell, napkins: Path) -> None:
        """A size goes to the piece that is named, above what follows it; remarks stay in their places."""
        tenterhook("measure", "napkins", "--piece", "napkin 1", "--washed", "19 3/4 x 20")

        assert NAPKINS.replace("x 21\n", "x 21\n        washed: 19 3/4 x 20\n") == text_of(napkins)

    def test_only_that_piece_is_shown(self, tenterhook: Shell, napkins: Path) -> None:
        """What the piece did is shown under its name, and the other pieces are not."""
        said = tenterhook("measure", "napkins", "--piece", "napkins 2-6", "--on-loom", "20 1/2 x 21")

        assert "\nnapkins 2-6\n  width, reed to loom" in said.output
        assert "napkin 1" not in said.output

    def test_of_a_stretch_without_pieces(self, tenterhook: Shell, napkins: Path) -> None:
        """A stretch that has no pieces stands for its one piece, by its own name, and is shown."""
        said = tenterhook("measure", "napkins", "--piece", "bookmarks", "--washed", "2 1/8 x 7")

        assert NAPKINS.replace("2 5/8\n", "2 5/8\n    washed: 2 1/8 x 7\n") == text_of(napkins)
        assert "\nbookmarks\n  width, reed to washed               19.0 %" in said.output

    def test_without_a_name_of_several(self, tenterhook: Shell, napkins: Path) -> None:
        """Where there are several pieces it wants to know which, and names them."""
        said = tenterhook("measure", "napkins", "--washed", "19 3/4 x 20")

        assert 1 == said.exit_code
        assert "Napkins has several pieces; say which with --piece: napkin 1, napkins 2-6, bookmarks.\n" == said.stderr
        assert NAPKINS == text_of(napkins)

    def test_the_only_piece_needs_no_name(self, tenterhook: Shell) -> None:
        """A record with one piece is measured without saying which."""
        before = "---\ntitle: Runner\npieces:\n  - name: runner\n    on_loom: 16 x 50\n---\n"
        path = tenterhook.write("warps/runner", before)

        assert 0 == tenterhook("measure", "runner", "--washed", "15 x 47").exit_code
        assert before[:-4] + "    washed: 15 x 47\n---\n" == text_of(path)

    def test_a_misspelt_piece(self, tenterhook: Shell, napkins: Path) -> None:
        """For a piece that is not there the nearest name is told."""
        said = tenterhook("measure", "napkins", "--piece", "napkin one", "--washed", "19 3/4 x 20")

        assert 1 == said.exit_code
        assert (
            'Napkins has no piece called "napkin one". Did you mean napkin 1? To add one, say --add as well.\n'
            == said.stderr
        )

    def test_two_pieces_of_one_name(self, tenterhook: Shell) -> None:
        """Where two stretches have a piece of the same name, the stretch must be said, and then it is enough."""
        before = (
            "---\ntitle: Two\nstretches:\n  - name: plain\n    pieces:\n      - name: towel\n"
            "  - name: twill\n    pieces:\n      - name: towel\n---\n"
        )
        path = tenterhook.write("warps/two", before)
        refused = tenterhook("measure", "two", "--piece", "towel", "--washed", "18 x 30")
        tenterhook("measure", "two", "--piece", "towel", "--stretch", "twill", "--washed", "18 x 30")

        assert 1 == refused.exit_code
        assert 'Two has more than one piece called "towel"; say which with --stretch: plain, twill.\n' == refused.stderr
        assert before[:-4] + "        washed: 18 x 30\n---\n" == text_of(path)

    def test_a_new_piece(self, tenterhook: Shell, napkins: Path) -> None:
        """--add writes a piece that the record did not have, at the end of its stretch."""
        said = tenterhook(
            "measure", "napkins", "--add", "--piece", "napkin 7", "--stretch", "napkins", "--on-loom", "20 1/2 x 20 3/4"
        )

        assert 0 == said.exit_code
        assert NAPKINS.replace(
            "        washed: 19 3/4 x 20\n",
            "        washed: 19 3/4 x 20\n      - name: napkin 7\n        on_loom: 20 1/2 x 20 3/4\n",
        ) == text_of(napkins)
        assert "napkin 7\n  width, reed to loom                  4.1 %" in said.output

    def test_not_beside_sizes_of_its_own(self, tenterhook: Shell, tideline: Path) -> None:
        """A new piece beside the sizes of a six-line warp would take them for its own: nothing is written."""
        before = text_of(tideline)
        said = tenterhook("measure", "tideline-towels", "--add", "--piece", "towel 2", "--washed", "18 x 30")

        assert 1 == said.exit_code
        assert "tideline-towels has sizes of its own (on_loom, washed)" in said.stderr
        assert before == text_of(tideline)

    @pytest.mark.parametrize(
        ("words", "why"),
        [
            (["--piece", "napkin 7"], "say which stretch the piece is of, with --stretch: napkins, bookmarks."),
            ([], "say what the new piece is called, with --piece."),
            (
                ["--piece", "napkin 1", "--stretch", "napkins"],
                'Napkins has a piece called "napkin 1" already; leave out --add.',
            ),
        ],
    )
    def test_a_new_piece_must_be_clear(self, tenterhook: Shell, napkins: Path, words: list[str], why: str) -> None:
        """A new piece has a name of its own and a stretch that it is of."""
        said = tenterhook("measure", "napkins", "--add", *words)

        assert 1 == said.exit_code
        assert f"{why}\n" == said.stderr
        assert NAPKINS == text_of(napkins)
