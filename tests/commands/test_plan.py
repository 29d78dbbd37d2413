"""`plan` and `left`: what they say, what they write, and what they leave alone."""

from __future__ import annotations

import json
import os
import pty
import subprocess
import sys

import pytest

from tests.commands.shell import Shell, text_of

YARN = "---\ntitle: Cottolin 22/2\nfibre: 55 % cotton, 45 % linen\nyield: 3170 yd/lb\n---\n"
LOOM = "---\ntitle: The big loom\nshafts: 4\nwidth: 36 in\nreeds:\n  - 12/in\n---\n"
RECORD = """\
---
title: Next towels   # for the shop
yarn: cottolin-22-2
weave: plain weave
sett: 24/in
loom: big
plan:
  - piece: towel
    count: 4
    made_up: 18 x 27
hem: 1 in
---

Blue ones, I think.
"""
WORDS = '--yarn cottolin-22-2 --loom big --sett 24 --piece towel --count 4 --hem "1 in"'.replace('"', "")


@pytest.fixture
def shelf(tenterhook: Shell) -> Shell:
    """A yarn, a loom and a record to plan from."""
    tenterhook.write("yarns/cottolin-22-2", YARN)
    tenterhook.write("looms/big", LOOM)
    tenterhook.write("warps/next-towels", RECORD)
    return tenterhook


class TestFromARecord:
    def test_the_order_of_things(self, shelf: Shell) -> None:
        """What it rests on comes before any figure, and per cent last."""
        said = shelf("plan", "next-towels")

        assert 0 == said.exit_code
        places = [
            said.output.index(words)
            for words in ("A guess: nothing of yours in Cottolin", "Sley ", "Towel: weave each of 4 to ", "Wind ",
                          "take-up", "Cottolin 22/2: ", "width, from the reed: loses ")
        ]  # fmt: skip
        assert sorted(places) == places

    def test_nothing_is_written_unasked(self, shelf: Shell) -> None:
        """Without --write the record stays as it is."""
        shelf("plan", "next-towels")

        assert RECORD == text_of(shelf.folder / "entries" / "warps" / "next-towels.md")

    def test_written_and_planned_again(self, shelf: Shell) -> None:
        """--write puts three lines under the plan and leaves every other byte; planning again gives the same."""
        first = shelf("plan", "next-towels", "--write")
        path = shelf.folder / "entries" / "warps" / "next-towels.md"
        once = text_of(path)
        second = shelf("plan", "next-towels", "--write")

        added = [line for line in once.splitlines() if line not in RECORD.splitlines()]
        assert ["in_reed", "on_loom", "picks"] == [line.strip().partition(":")[0] for line in added]
        assert RECORD.splitlines() == [line for line in once.splitlines() if line not in added]
        assert once == text_of(path)
        assert first.stdout == second.stdout
        assert "wrote the plan into warps/next-towels.md\n" == first.stderr

    def test_a_changed_record(self, shelf: Shell) -> None:
        """Another size in the record is another plan in it."""
        shelf("plan", "next-towels", "--write")
        path = shelf.folder / "entries" / "warps" / "next-towels.md"
        before = text_of(path)
        path.write_text(before.replace("made_up: 18 x 27", "made_up: 20 x 27"), encoding="utf-8")
        shelf("plan", "next-towels", "--write", "--anyway")

        assert "in_reed: 22" in text_of(path) or "in_reed: 23" in text_of(path)
        assert before.count("\n") == text_of(path).count("\n")

    def test_it_asks_before_it_writes_over(self, shelf: Shell) -> None:
        """A planned figure that would be another is told, old -> new, and stays unless --anyway is said."""
        kept = RECORD.replace("    made_up: 18 x 27\n", "    made_up: 18 x 27\n    in_reed: 21\n    picks: 762\n")
        path = shelf.write("warps/next-towels", kept)
        said = shelf("plan", "next-towels", "--write")

        assert 1 == said.exit_code
        assert "\n  towel, in_reed: 21 -> 19 7/8 in\n" in said.stderr
        assert "picks" not in said.stderr
        assert "Nothing was written. If it is so, say --anyway as well.\n" in said.stderr
        assert kept == text_of(path)
        assert 0 == shelf("plan", "next-towels", "--write", "--anyway").exit_code
        assert "    in_reed: 19 7/8 in\n    picks: 762\n    on_loom: " in text_of(path)

    @pytest.mark.parametrize(("answer", "written"), [("y\n", True), ("\n", False)])
    def test_on_a_terminal_it_can_be_answered(self, shelf: Shell, answer: str, written: bool) -> None:
        """On a terminal the question wants a yes; anything else leaves the record as it was."""
        path = shelf.write("warps/next-towels", RECORD.replace("18 x 27\n", "18 x 27\n    picks: 12\n"))
        mine, its = pty.openpty()
        words = [sys.executable, "-m", "journal_tools", "plan", "next-towels", "--write"]
        with subprocess.Popen(words, stdin=its, stdout=subprocess.PIPE, stderr=subprocess.PIPE) as process:
            os.write(mine, answer.encode())
            _, said = process.communicate(timeout=60)
        os.close(mine)
        os.close(its)

        assert b"towel, picks: 12 -> 762\nWrite it anyway? [y/N]" in said.replace(b"\r\n", b"\n")
        assert (written, not written) == ("    picks: 762\n" in text_of(path), process.returncode == 1)

    def test_what_cannot_be_woven(self, shelf: Shell) -> None:
        """A warp wider than its loom is not written unasked, into a record or a new one."""
        wide = RECORD.replace("18 x 27", "40 x 27")
        path = shelf.write("warps/next-towels", wide)
        said = shelf("plan", "next-towels", "--write")
        new = shelf("plan", "wide", *WORDS.split(" --hem ")[0].split(), "--made-up", "40 x 27", "--write")

        assert (1, 1) == (said.exit_code, new.exit_code)
        assert "This cannot be woven as it is planned: 44" in said.stderr
        assert wide == text_of(path)
        assert not (shelf.folder / "entries" / "warps" / "wide.md").exists()

    def test_json(self, shelf: Shell) -> None:
        """Every figure with its unit in its name, and sizes with their range."""
        found = json.loads(shelf("plan", "next-towels", "--json").output)
        (stretch,) = found["stretches"]
        (piece,) = stretch["pieces"]

        assert pytest.approx(stretch["dents"] / 12 * 25.4, abs=0.01) == stretch["in_reed_mm"]
        assert piece["width"]["low_mm"] < piece["width"]["mm"] < piece["width"]["high_mm"]
        assert piece["width"]["worst_of_batch_mm"] < piece["width"]["low_mm"] + 20
        assert pytest.approx(found["warp_mm"], abs=0.1) == sum(line["mm"] for line in found["lines"])
        assert 0 == round(found["wind_mm"] / 914.4 * 4, 3) % 1
        assert found["yarns"][0]["g"] > 300

    def test_a_record_that_cannot_be_read(self, shelf: Shell) -> None:
        """A fault in the record is told before a plan leaves something out."""
        shelf.write("warps/next-towels", RECORD.replace("hem: 1 in", "hem: one inch"))
        said = shelf("plan", "next-towels")

        assert 1 == said.exit_code
        assert "hem" in said.output
        assert "Mend that first" in said.stderr

    def test_options_beside_a_record(self, shelf: Shell) -> None:
        """What a record says is changed in the record."""
        said = shelf("plan", "next-towels", "--sett", "20")

        assert 1 == said.exit_code
        assert "change it there, and leave out --sett.\n" in said.stderr


class TestFromOptions:
    def test_a_new_record(self, shelf: Shell) -> None:
        """A warp without a record is planned from options, and --write makes its record, which plans alike."""
        words = [*WORDS.split(" --hem ")[0].split(), "--hem", "1 in", "--made-up", "18 x 27", "--weave", "plain weave"]
        said = shelf("plan", "gull-towels", *words, "--write")
        text = text_of(shelf.folder / "entries" / "warps" / "gull-towels.md")

        assert 0 == said.exit_code
        assert "    made_up: 18 x 27\n    in_reed: " in text
        assert "reed: 12/in\nsley: 2\n" in text
        assert "wrote warps/gull-towels.md\n" == said.stderr
        again = shelf("plan", "gull-towels")
        assert said.stdout.partition("Wind ")[0] == again.stdout.partition("Wind ")[0]
        assert 0 == shelf("check").exit_code

    def test_colours_and_selvedges(self, shelf: Shell) -> None:
        """An order of colours is repeated whole and written so, and floating selvedges stand beside it."""
        shelf.write("yarns/cottolin-22-2", YARN.replace("yield", "colours:\n  bone: ebe1cb\n  slate: 4a5b6b\nyield"))
        words = [*WORDS.split(" --hem ")[0].split(), "--made-up", "18 x 27", "--weave", "plain weave"]
        order = ["--order", "4 slate, 24 bone", "--floating", "bone", "--beat", "20", "--reed", "12/in"]
        said = shelf("plan", "gull-towels", *words, *order, "--write")
        text = text_of(shelf.folder / "entries" / "warps" / "gull-towels.md")

        assert 0 == said.exit_code
        assert "warp:\n  order: 17 times (4 slate, 24 bone), 4 slate\n  floating_selvedges: bone\n  wound: " in text
        assert "beat: 20\n" in text
        assert 0 == shelf("check").exit_code
        assert said.stdout == shelf("plan", "gull-towels").stdout

    @pytest.mark.parametrize("called", ["big", "The big loom", "THE BIG LOOM", "Big"])
    def test_the_loom_by_its_title(self, shelf: Shell, called: str) -> None:
        """A loom is known by its name or its title, in capitals or not, and the record has its name."""
        words = ["--yarn", "cottolin-22-2", "--sett", "24", "--made-up", "18 x 27", "--loom", called, "--write"]

        assert 0 == shelf("plan", "new", *words).exit_code
        assert "loom: big\n" in text_of(shelf.folder / "entries" / "warps" / "new.md")

    def test_no_such_loom(self, shelf: Shell) -> None:
        """A loom that is none is told with those that there are."""
        said = shelf("plan", "new", "--yarn", "cottolin-22-2", "--sett", "24", "--made-up", "18 x 27", "--loom", "bog")

        assert 1 == said.exit_code
        assert 'There is no loom called "bog". Did you mean big? Looms here: The big loom (big).\n' == said.stderr

    def test_what_is_turned_under(self, shelf: Shell) -> None:
        """--turn says what is turned under inside the hem, and is written beside its depth."""
        words = [*WORDS.split(" --hem ")[0].split(), "--made-up", "18 x 27", "--weave", "plain weave", "--hem", "1 in"]
        without = shelf("plan", "gull-towels", *words)
        said = shelf("plan", "gull-towels", *words, "--turn", "3/8 in", "--write")

        assert "Hem of 1 in with nothing turned under, both ends.\n" in without.stdout
        assert "Hem of 1 in with 3/8 in turned under, both ends.\n" in said.stdout
        text = text_of(shelf.folder / "entries" / "warps" / "gull-towels.md")
        assert "hem:\n  depth: 1 in\n  turn: 3/8 in\n" in text
        assert 2 == shelf("plan", "other", "--made-up", "18 x 27", "--turn", "3/8 in").exit_code

    def test_centimetres(self, shelf: Shell) -> None:
        """Sizes typed in centimetres are answered in centimetres, and written so, in a journal of inches."""
        words = [*WORDS.split(" --hem ")[0].split(), "--made-up", "45 x 70 cm", "--weave", "plain weave", "--write"]
        said = shelf("plan", "gull-towels", *words)
        text = text_of(shelf.folder / "entries" / "warps" / "gull-towels.md")

        assert " in;" not in said.stdout
        assert "  header                            5 cm  " in said.stdout
        figures = dict(line.strip().split(": ", 1) for line in text.splitlines() if ": " in line)
        assert ["cm", "cm", "m"] == [figures[key].split()[-1] for key in ("in_reed", "on_loom", "wound")]
        assert 0 == shelf("check").exit_code

    def test_no_such_warp(self, shelf: Shell) -> None:
        """A name that is none is told with the one that was meant."""
        said = shelf("plan", "next-towel")

        assert 1 == said.exit_code
        assert 'There is no warp called "next-towel". Did you mean next-towels?' in said.stderr

    def test_not_enough(self, shelf: Shell) -> None:
        """What is missing is asked for, with what to write."""
        said = shelf("plan", "new", "--yarn", "cottolin-22-2", "--sett", "24")

        assert 1 == said.exit_code
        assert "nothing is planned here yet" in said.stderr

    def test_a_size_that_is_none(self, shelf: Shell) -> None:
        """An option that cannot be read is told like a line of a record, and nothing is written."""
        said = shelf("plan", "new", "--yarn", "cottolin-22-2", "--made-up", "18 by lots", "--write")

        assert 1 == said.exit_code
        assert "made_up" in said.output
        assert not (shelf.folder / "entries" / "warps" / "new.md").exists()


class TestLeft:
    def test_what_is_left(self, shelf: Shell) -> None:
        """From 5 yd and one towel woven, and whether the next one fits."""
        woven = "warp:\n  wound: 5 yd\npieces:\n  - name: towel 1\n    on_loom: 19 1/2 x 32\n---\n\nBlue"
        shelf.write("warps/next-towels", RECORD.replace("---\n\nBlue", woven))
        said = shelf("left", "next-towels")

        assert 0 == said.exit_code
        assert "Wound 180 in; gone 3" in said.output
        assert "The last 30 in will not weave.\n" in said.output
        assert " to spare. 3 of them are still wanted.\n" in said.output
        found = json.loads(shelf("left", "next-towels", "--json").output)
        assert pytest.approx(found["wound"] - found["gone"] - found["behind"], abs=0.2) == found["left"]

    def test_not_wound(self, shelf: Shell) -> None:
        """Without the length that was wound it says what to write."""
        said = shelf("left", "next-towels")

        assert 1 == said.exit_code
        assert "how long was it wound? Say `wound: 5 yd` under `warp:`.\n" in said.stderr

    def test_no_such_warp(self, shelf: Shell) -> None:
        """A name that is none is told."""
        assert 1 == shelf("left", "nobody").exit_code
