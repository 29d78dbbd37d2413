"""`expect`: what a yarn will do next time, said in a weaver's words and as figures for programs."""

from __future__ import annotations

import json
import re
from fractions import Fraction
from typing import Any

import pytest

from tests.commands.shell import Shell

COTTOLIN = "---\ntitle: Cottolin 22/2\nwas: old-cottolin\nfibre: 55 % cotton, 45 % linen\nyield: 3170 yd/lb\n---\n"
WOOL = "---\ntitle: Woollen 8/2\nfibre: wool\nnumber: Nm 8/2\n---\n"
TOWELS = """\
---
title: {title}
started: {year}
yarn: cottolin-22-2
weave: plain weave
sett: 20/in
in_reed: 20
on_loom: 19 1/4 x 33
washed: 17 3/4 x 30 1/8
finish: by-hand
---
"""
BLANKET = """\
---
title: Cove blanket
yarn: woollen-8-2
weave: 2/2 twill
units: cm
in_reed: 105
on_loom: 102 x 215
off_loom: 99 x 209
fulling:
  0 min scoured only: 92 x 195
  4 min: 87.5 x 183
  8 min: 81 x 168
washed: 76 x 157
finish: tub
---
"""


@pytest.fixture
def shelf(tenterhook: Shell) -> Shell:
    """Three warps of towels in one cottolin, one fulled blanket, and a silk that was never woven."""
    tenterhook.write("yarns/cottolin-22-2", COTTOLIN)
    tenterhook.write("yarns/woollen-8-2", WOOL)
    tenterhook.write("yarns/silk-30-2", "---\ntitle: Spun silk\nfibre: silk\nnumber: Nm 30/2\n---\n")
    tenterhook.write("finishes/tub", "---\ntitle: Fulled in the tub\nfulling: yes\n---\n")
    tenterhook.write("finishes/by-hand", "---\ntitle: By hand at 40\n---\n")
    for number, title in enumerate(("Tideline", "Ebb", "Neap")):
        tenterhook.write(f"warps/{title.lower()}-towels", TOWELS.format(title=f"{title} towels", year=2020 + number))
    tenterhook.write("warps/cove-blanket", BLANKET)
    return tenterhook


def figures(shelf: Shell, *words: str) -> dict[str, Any]:
    """The answer for programs."""
    found: dict[str, Any] = json.loads(shelf("expect", *words, "--json").output)
    return found


def loss(shelf: Shell, *words: str) -> float:
    """The width's loss, reed to washed, to be expected."""
    [found] = [each for each in figures(shelf, *words)["figures"] if each["figure"] == "width, reed to washed"]
    return float(found["loss"])


class TestWhatItRestsOn:
    def test_before_the_figures(self, shelf: Shell) -> None:
        """How many warps it rests on is said before any figure of loss."""
        said = shelf("expect", "cottolin-22-2").output

        assert re.search(r"Rests on 3 of your warps, mostly (Tideline|Ebb|Neap) towels\.", said)
        assert said.index("Rests on") < said.index("For ") < said.index(" %")

    def test_none_in_this_weave(self, shelf: Shell) -> None:
        """A weave that the yarn was never woven in is said to be one."""
        said = shelf("expect", "cottolin-22-2", "--weave", "twill").output

        assert (
            " None in 2/2 twill: what the weave does goes by one of your warps in other yarns, Cove blanket."
            " A sample of it would show.\n"
        ) in said

    def test_none_of_the_weave_at_all(self, shelf: Shell) -> None:
        """A weave that the trade knows and the journal does not goes by common practice."""
        said = shelf("expect", "cottolin-22-2", "--weave", "waffle").output

        assert "None in waffle weave: what the weave does goes by common practice, so sample first." in said

    def test_a_guess(self, shelf: Shell) -> None:
        """For a yarn that was never woven the answer is called a guess, and says what it goes by."""
        said = shelf("expect", "silk-30-2").output

        assert "A guess: nothing of yours in Spun silk. It goes by common practice.\n" in said

    def test_a_guess_by_fibre(self, shelf: Shell) -> None:
        """Where other yarns of the fibre were woven, it goes by them."""
        shelf.write("yarns/lambswool-6-1", "---\ntitle: Lambswool\nfibre: wool\n---\n")

        assert "It goes by one of your warps in wool." in shelf("expect", "lambswool-6-1").output

    def test_a_weft_never_thrown(self, shelf: Shell) -> None:
        """A weft that no warp has had is told, though the warp yarn is known."""
        said = shelf("expect", "cottolin-22-2", "--weft", "silk-30-2").output

        assert "Cottolin 22/2 with Spun silk as weft in plain weave" in said
        assert "Rests on 3 of your warps" in said
        assert " None in Spun silk." in said

    def test_a_weave_mistyped(self, shelf: Shell) -> None:
        """A weave that nobody knows is answered as one never woven, with the name that is near."""
        assert (
            "None in 2/2 twil: no weave of that name is known here, so what it does is a guess."
            " Did you mean 2/2 twill?"
            in shelf("expect", "cottolin-22-2", "--weave", "2/2 twil").output
        )


class TestWhatHandsDo:
    def test_sley_and_weave(self, shelf: Shell) -> None:
        """It says what to sley and to weave for the usual size, and what comes of it nine times in ten."""
        said = shelf("expect", "cottolin-22-2").output
        size = r"\d+(?: \d/\d)?"

        assert re.search(
            rf"^For 18 in washed, sley 20(?: 1/[24])? in; nine times in ten it comes out {size} to {size} in\.$",
            said,
            re.M,
        )
        assert re.search(
            r"^For 30 in washed, weave 33(?: 1/[24])? in, tension on; nine times in ten it comes out", said, re.M
        )

    def test_what_was_woven_holds_the_middle(self, shelf: Shell) -> None:
        """Three warps alike that lost 11 % make one expect about 11 %."""
        assert abs(loss(shelf, "cottolin-22-2") - (1 - 17.75 / 20)) < 0.01

    def test_how_it_is_undone(self, shelf: Shell) -> None:
        """Beside each loss stands what a wanted size is divided by: .89 for 11 %."""
        rows = re.findall(
            r"^  (?:width|length), .*? (\d+) %  .*? (\.\d\d) ", shelf("expect", "cottolin-22-2").output, re.M
        )

        assert 4 == len(rows)
        assert [f".{100 - int(lost)}" for lost, _ in rows] == [by for _, by in rows]

    def test_sample_first(self, shelf: Shell) -> None:
        """Where the range is too wide to plan by, a sample is asked for and no range is printed."""
        said = shelf("expect", "silk-30-2", "--weave", "waffle").output
        [row] = re.findall(r"^  width, reed to washed .*$", said, re.MULTILINE)

        assert "Sample first: what the width will do is too little known to plan by." in said
        assert "too unsure" in row
        assert " to " not in row.removeprefix("  width, reed to washed")

    def test_picks_by_the_past_beat(self, shelf: Shell) -> None:
        """Picks for a length are as close as such cloth was beaten, and it says in how many warps."""
        counted = TOWELS.format(title="Slack towels", year=2023).replace("on_loom", "picks: 528\non_loom")
        shelf.write("warps/slack-towels", counted)  # 528 picks in 33 in are 16 an inch

        said = shelf("expect", "cottolin-22-2").output
        [(woven, picks)] = re.findall(
            r"weave ([\d/ ]+) in, tension on, or (\d+) picks at 16 an inch, as in one past warp;", said
        )

        assert round(16 * float(sum(Fraction(part) for part in woven.split()))) == int(picks)

    def test_never_two_decimals_of_a_size(self, shelf: Shell) -> None:
        """No per cent and no length has decimals that hands cannot use."""
        said = shelf("expect", "cottolin-22-2").output

        assert [] == re.findall(r"\d\.\d", said.replace("Nm", ""))

    def test_metric(self, shelf: Shell) -> None:
        """In a metric journal the same figures are centimetres, and are answered to the half of one."""
        shelf.write("journal", "---\nlength: cm\n---\n")
        said = shelf("expect", "cottolin-22-2").output

        assert re.search(
            r"^For 20 cm washed, sley 2[23](?:\.5)? cm; nine times in ten it comes out", said, re.MULTILINE
        )


class TestWhatIsMeant:
    def test_as_it_mostly_was(self, shelf: Shell) -> None:
        """What nobody asked for is as it mostly was, and said to be so."""
        said = shelf("expect", "cottolin-22-2").output

        assert said.startswith("Cottolin 22/2 in plain weave, 20/in, By hand at 40\n")
        assert "Weave, finish and sett are as they mostly were.\n" in said

    def test_as_asked(self, shelf: Shell) -> None:
        """What was asked for is not said to be usual."""
        asked = ["--weave", "twill", "--sett", "24", "--finish", "By hand at 40"]
        said = shelf("expect", "cottolin-22-2", *asked).output

        assert said.startswith("Cottolin 22/2 in 2/2 twill, 24/in, By hand at 40\n")
        assert "mostly were" not in said

    def test_closer_loses_less(self, shelf: Shell) -> None:
        """A closer sett is narrowed less: common practice until the journal knows better."""
        assert loss(shelf, "cottolin-22-2", "--sett", "24") < loss(shelf, "cottolin-22-2", "--sett", "16")

    @pytest.mark.parametrize("name", ["cottolin-22-2", "old-cottolin", "Cottolin 22/2"])
    def test_by_any_of_its_names(self, shelf: Shell, name: str) -> None:
        """A yarn is found by its name, a name it had before, or its title."""
        assert "cottolin-22-2" == figures(shelf, name)["warp_yarn"]

    def test_only_ever_weft(self, shelf: Shell) -> None:
        """A yarn that was only ever weft is answered with the warp that it mostly had."""
        shelf.write("yarns/tow-8-1", "---\ntitle: Tow\nfibre: linen\n---\n")
        text = TOWELS.format(title="Scrubbers", year=2024).replace("yarn:", "weft: tow-8-1\nwarp:\n  yarn:")
        shelf.write("warps/scrubbers", text)
        found = figures(shelf, "tow-8-1")

        assert ("cottolin-22-2", "tow-8-1") == (found["warp_yarn"], found["weft_yarn"])
        assert "warp" in found["usual"]


class TestFulled:
    def test_by_time(self, shelf: Shell) -> None:
        """Fulled cloth is answered to the scouring, and from there by minutes; one blanket is said to be one."""
        said = shelf("expect", "woollen-8-2").output

        assert "width, reed to scoured" in said
        assert "settled" not in said
        assert "they rest on Cove blanket, which is all there is." in said
        assert re.search(
            r"^10 % narrower than scoured: about \d+ minutes, \d+ to \d+; shorter by about \d+ %", said, re.M
        )

    def test_beyond_what_was_tried(self, shelf: Shell) -> None:
        """Minutes beyond the longest that were ever tried are called so."""
        lines = re.findall(r"^\d+ % narrower.*$", shelf("expect", "woollen-8-2").output, re.MULTILINE)

        assert "longer than you ever fulled" not in lines[0]
        assert "longer than you ever fulled" in lines[-1]

    def test_cloth_that_was_never_fulled(self, shelf: Shell) -> None:
        """Of a yarn that was never fulled no minutes are told, unless the recipe asked for fulls it."""
        assert figures(shelf, "cottolin-22-2")["fulling"] is None
        assert "other" == figures(shelf, "cottolin-22-2", "--finish", "tub")["fulling"]["basis"]


class TestForPrograms:
    def test_documented_keys(self, shelf: Shell) -> None:
        """Every key of the object stands in the help, and no other."""
        told = shelf("expect", "--help").output
        keys = set(figures(shelf, "woollen-8-2"))
        listed = {
            key
            for names in re.findall(r"^    ([a-z_]+(?:, [a-z_]+)*)  +\S", told, re.MULTILINE)
            for key in names.split(", ")
        }

        assert keys == listed

    def test_fractions(self, shelf: Shell) -> None:
        """Losses are fractions, least below loss below most, for width and length."""
        found = figures(shelf, "cottolin-22-2")["figures"]

        assert {"width", "length"} == {each["direction"] for each in found}
        for each in found:
            assert each["least"] < each["loss"] < each["most"] < 1

    def test_no_colours_in_a_pipe(self, shelf: Shell) -> None:
        """Where there is no terminal there are no colours."""
        assert "\x1b" not in shelf("expect", "cottolin-22-2").output

    def test_same_again(self, shelf: Shell) -> None:
        """The same journal gives the same answer."""
        assert figures(shelf, "woollen-8-2") == figures(shelf, "woollen-8-2")


class TestUnknown:
    def test_yarn(self, shelf: Shell) -> None:
        """An unknown yarn has the exit status 1, and the name that is near."""
        ended = shelf("expect", "cotolin-22-2")

        assert 1 == ended.exit_code
        assert 'This journal has no yarn called "cotolin-22-2". Did you mean cottolin-22-2?\n' == ended.stderr

    def test_weft(self, shelf: Shell) -> None:
        """So has an unknown weft."""
        ended = shelf("expect", "cottolin-22-2", "--weft", "bamboo")

        assert 1 == ended.exit_code
        assert 'no yarn called "bamboo". Yarns here: cottolin-22-2, silk-30-2, woollen-8-2.' in ended.stderr

    def test_several_of_one_label(self, shelf: Shell) -> None:
        """A label that two yarns have asks which of them is meant."""
        shelf.write("yarns/shetland", WOOL.replace("Woollen 8/2", "Shetland"))
        ended = shelf("expect", "Nm 8/2")

        assert 1 == ended.exit_code
        assert "name one of them: shetland, woollen-8-2." in ended.stderr

    def test_sett(self, shelf: Shell) -> None:
        """A sett that cannot be read is a mistyped command."""
        ended = shelf("expect", "cottolin-22-2", "--sett", "many")

        assert 2 == ended.exit_code
        assert "'--sett'" in ended.stderr

    def test_finish(self, shelf: Shell) -> None:
        """An unknown recipe is said to be a guess, with the name that is near, and answered all the same."""
        ended = shelf("expect", "cottolin-22-2", "--finish", "by-hands")

        assert 0 == ended.exit_code
        assert (
            'There is no finishing recipe called "by-hands", so the wash is a guess. Did you mean by-hand?'
            in ended.stderr
        )

    def test_a_journal_without_warps(self, tenterhook: Shell) -> None:
        """A yarn is answered from common practice before the first warp."""
        tenterhook.write("yarns/cottolin-22-2", COTTOLIN)
        ended = tenterhook("expect", "cottolin-22-2")

        assert 0 == ended.exit_code
        assert "A guess: nothing of yours in Cottolin 22/2. It goes by common practice." in ended.output
