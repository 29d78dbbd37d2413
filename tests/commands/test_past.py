"""`past`: what a yarn did before, in a table and as figures for programs."""

from __future__ import annotations

import json
import re

import pytest

from journal_tools.commands.main import main
from tests.commands.shell import TIDELINE, Shell

YARN = "---\ntitle: Cottolin 22/2\nwas: old-cottolin\nfibre: 50 % cotton, 50 % linen\n---\n"
AGAIN = """\
---
title: Tideline again
started: 2025-03-14
yarn: cottolin-22-2
weave: 2/2 twill
in_reed: 20
plan:
  washed: 17 1/2 x 30
pieces:
  - name: towel 1
    on_loom: 19 x 33
    off_loom: 18 7/8 x 32
    washed: 17 1/2 x 30
  - name: towels 2-4
    on_loom: 19 x 33
    washed: 17 1/2 x 30
---
"""
OLDER = """\
---
title: Older scarf
started: spring 2019
warp:
  yarn: silk-30-2 plum
weft: cottolin-22-2
on_loom: 9 x 70
washed: 8 1/4 x 66
---
"""


@pytest.fixture
def shelf(tenterhook: Shell) -> Shell:
    """A journal with three warps in one yarn: one undated, one of 2025, one of 2019 with it as weft."""
    tenterhook.write("yarns/cottolin-22-2", YARN)
    tenterhook.write("warps/tideline-towels", TIDELINE)
    tenterhook.write("warps/tideline-again", AGAIN)
    tenterhook.write("warps/older-scarf", OLDER)
    return tenterhook


class TestTheTable:
    def test_newest_first_undated_last(self, shelf: Shell) -> None:
        """The newest warp stands first, and the one without a date last, each with what the yarn was in it."""
        said = shelf("past", "cottolin-22-2").output
        heads = re.findall(r"^\w.*, as .*$", said, re.MULTILINE)

        assert said.startswith("Cottolin 22/2: 3 warps\n")
        assert [
            "Tideline again (tideline-again), 14 March 2025, as warp and weft",
            "Older scarf (older-scarf), spring 2019, as weft",
            "Tideline towels (tideline-towels), undated, as warp and weft",
        ] == heads

    def test_every_step_with_its_uncertainty(self, shelf: Shell) -> None:
        """Each step names both its ends, with its loss and what a tape can tell."""
        said = shelf("past", "cottolin-22-2").output

        for line in (
            "  width, reed to loom                  4.3 % ± 0.7",
            "  width, reed to washed               11.7 % ± 0.7  plain weave",
            "  length, loom to washed               8.7 % ± 1.1  plain weave",
        ):
            assert line in said.partition("Tideline towels (")[2]

    def test_what_was_planned(self, shelf: Shell) -> None:
        """A loss that the plan states stands beside the one that was measured."""
        said = shelf("past", "cottolin-22-2").output

        assert "planned" not in said.partition("Older scarf")[2].partition("Over all")[0]
        assert re.search(r"width, reed to washed +12\.5 % ± 0\.\d +2/2 twill; .*mean of 4 pieces", said)

    def test_over_all_of_them(self, shelf: Shell) -> None:
        """Below stand the mean, the spread, the least and the most of each step: 11.7 and 12.5 make 12.1."""
        shelf.write("warps/tideline-again", AGAIN.replace("2/2 twill", "plain weave"))
        (shelf.folder / "entries" / "warps" / "older-scarf.md").unlink()
        said = shelf("past", "cottolin-22-2").output.partition("Over all of them")[2]

        assert re.search(r"width, reed to washed +12\.1 % +0\.5 +11\.7 % +12\.5 % +2\n", said)

    def test_each_weave_by_itself(self, shelf: Shell) -> None:
        """Twill and plain weave lose differently, and are not thrown together."""
        said = shelf("past", "cottolin-22-2").output

        assert "Over all of them" not in said
        assert re.search(r"In plain weave\n.*(\n  .*)*reed to washed +11\.7 % +– +11\.7 % +11\.7 % +1\n", said)
        assert re.search(r"In 2/2 twill\n.*(\n  .*)*reed to washed +12\.5 % +– +12\.5 % +12\.5 % +1\n", said)

    def test_one_weave(self, shelf: Shell) -> None:
        """--weave shows one of them, and says which there are when it is another."""
        said = shelf("past", "cottolin-22-2", "--weave", "2/2 Twill").output
        refused = shelf("past", "cottolin-22-2", "--weave", "huck")

        assert said.startswith("Cottolin 22/2: 1 warp\n")
        assert "plain weave" not in said
        assert 1 == refused.exit_code
        assert 'Nothing here in this yarn is in "huck"; there is 2/2 twill, plain weave.\n' == refused.stderr

    @pytest.mark.parametrize("name", ["cottolin-22-2", "old-cottolin", "Cottolin 22/2", "cottolin 22 2"])
    def test_by_any_of_its_names(self, shelf: Shell, name: str) -> None:
        """A yarn is found by its name, a name it had before, or its title."""
        assert 0 == shelf("past", name).exit_code
        assert shelf("past", name).output.startswith("Cottolin 22/2: 3 warps\n")

    def test_by_its_label(self, shelf: Shell) -> None:
        """A yarn is found by what its label says, where only one yarn has that label."""
        shelf.write("yarns/cottolin-22-2", YARN.replace("fibre:", "number: 22/2\nfibre:"))
        assert shelf("past", "22/2").output.startswith("Cottolin 22/2: 3 warps\n")

        shelf.write("yarns/other", "---\ntitle: Other\nnumber: 22/2\nfibre: 50 % cotton, 50 % linen\n---\n")
        said = shelf("past", "22/2")
        assert 1 == said.exit_code
        assert 'Several yarns here are labelled "22/2"; name one of them: cottolin-22-2, other.\n' == said.stderr

    def test_a_warp_that_names_the_label(self, shelf: Shell) -> None:
        """A warp that says its yarn by the label is a warp in that yarn, however the yarn is asked for."""
        shelf.write("yarns/cottolin-22-2", YARN.replace("fibre:", "number: 22/2 cottolin\nfibre:"))
        shelf.write("warps/labelled", TIDELINE.replace("cottolin-22-2", "22/2 cottolin"))

        for name in ("cottolin-22-2", "22/2 cottolin"):
            assert shelf("past", name).output.startswith("Cottolin 22/2: 4 warps\n")

    def test_no_colours_where_nobody_looks(self, shelf: Shell) -> None:
        """Colours are for a terminal: what goes into a file has none."""
        assert "\x1b" not in shelf("past", "cottolin-22-2").output


class TestNoSuchYarn:
    def test_a_misspelt_yarn(self, shelf: Shell) -> None:
        """For a misspelt yarn the nearest one is told, and the status is 1."""
        said = shelf("past", "cotolin-22-2")

        assert 1 == said.exit_code
        assert "" == said.stdout
        assert 'No warp in this journal has a yarn called "cotolin-22-2". Did you mean cottolin-22-2?\n' == said.stderr

    def test_a_yarn_without_a_record_is_near_too(self, shelf: Shell) -> None:
        """A yarn that was woven but has no record is a near miss as well."""
        assert shelf("past", "silk-30-3").stderr.endswith("Did you mean silk-30-2?\n")

    def test_nothing_near(self, shelf: Shell) -> None:
        """Where nothing is near, the yarns that were woven are named."""
        assert shelf("past", "zibeline").stderr.endswith("Yarns woven here: cottolin-22-2, silk-30-2.\n")

    def test_a_yarn_on_the_shelf(self, shelf: Shell) -> None:
        """A yarn that has a record and no warp yet is not called unknown."""
        shelf.write("yarns/hemp-16-2", "---\ntitle: Hemp 16/2\n---\n")
        said = shelf("past", "hemp-16-2")

        assert 1 == said.exit_code
        assert "No warp in this journal has Hemp 16/2 (hemp-16-2) in it yet.\n" == said.stderr

    def test_in_json_too(self, shelf: Shell) -> None:
        """A program gets an empty list, and whoever looks on the reason."""
        said = shelf("past", "cotolin-22-2", "--json")

        assert 1 == said.exit_code
        assert [] == json.loads(said.stdout)
        assert said.stderr.endswith("Did you mean cottolin-22-2?\n")


class TestJson:
    def test_its_keys_are_those_of_the_help(self, shelf: Shell) -> None:
        """Every key that the help explains is given, and no other."""
        told = shelf("past", "--help").output
        block = told[told.index("  warp, stretch, piece  ") : told.index("  Exit status 1")]
        keys = set()
        for line in block.splitlines():
            named, _, meaning = re.sub(r"^  ", "", line).partition("   ")
            more = re.match(r"whose loss it is; (\w+):", meaning.strip())
            keys |= {key.strip() for key in named.split(",") if key.strip()} | ({more[1]} if more else set())
        objects = json.loads(shelf("past", "cottolin-22-2", "--json").output)

        assert {frozenset(keys)} == {frozenset(each) for each in objects}

    def test_losses_are_fractions(self, shelf: Shell) -> None:
        """A loss is a fraction of the earlier size: 20 1/4 to 17 7/8 is 0.1173, with 0.0069 either way."""
        row = self.row(shelf, "tideline-towels", "width", "in_reed", "washed")

        assert round(1 - 17.875 / 20.25, 6) == row["loss"]
        assert 0.0069 == round(row["uncertainty"], 4)
        assert row["planned"] is None
        assert row["started"] is None
        assert "warp and weft" == row["use"]
        assert ["off_loom"] == self.row(shelf, "tideline-towels", "width", "on_loom", "washed")["skipped"]

    def test_what_was_planned(self, shelf: Shell) -> None:
        """A planned loss is a fraction too: the plan of 20 to 17 1/2 is 0.125."""
        shelf.write("warps/planned", AGAIN.replace("plan:\n", "plan:\n  in_reed: 20\n"))
        rows = [
            row
            for row in json.loads(shelf("past", "cottolin-22-2", "--json").output)
            if row["warp"] == "planned" and row["direction"] == "width" and row["whole"]
        ]

        assert [0.125, 0.125] == [row["planned"] for row in rows]
        assert [("towel 1", 1), ("towels 2-4", 3)] == [(row["piece"], row["pieces"]) for row in rows]
        assert {"2025-03-14"} == {row["started"] for row in rows}

    def test_newest_first_undated_last(self, shelf: Shell) -> None:
        """Warps stand in the same order as in the table."""
        objects = json.loads(shelf("past", "cottolin-22-2", "--json").output)

        warps = list(dict.fromkeys(row["warp"] for row in objects))

        assert ["tideline-again", "older-scarf", "tideline-towels"] == warps

    @staticmethod
    def row(shelf: Shell, warp: str, direction: str, first: str, last: str) -> dict[str, object]:
        """The one object of a step."""
        wanted = (warp, direction, first, last)
        [row] = [
            row
            for row in json.loads(shelf("past", "cottolin-22-2", "--json").output)
            if wanted == (row["warp"], row["direction"], row["from"], row["to"])
        ]
        return row


class TestMistyped:
    @pytest.mark.parametrize("words", [["pasd"], ["past"], ["past", "a", "b"], ["measure"], ["serve", "--port", "80"]])
    def test_status_two(self, tenterhook: Shell, words: list[str]) -> None:
        """A command that cannot be understood has the exit status 2, and says how it is used."""
        said = tenterhook(*words)

        assert 2 == said.exit_code
        assert "Usage: " in said.stderr

    def test_help_is_no_fault(self, tenterhook: Shell) -> None:
        """Help has the exit status 0, for the whole and for each command."""
        for words in ([], *([name] for name in main.list_commands(None))):  # type: ignore[arg-type]
            assert 0 == tenterhook(*words, "--help").exit_code
