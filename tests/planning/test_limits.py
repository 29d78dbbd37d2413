"""What loom, yarn and record cannot do as it is planned, said before a thread is wound."""

from __future__ import annotations

from pathlib import Path

import pytest

from journal_tools.planning.words import Words
from tests.planning.test_plan import SHELF, TOWELS, WIDTH, planned


class TestLimits:
    @pytest.mark.parametrize(
        ("loom", "slug"),
        [
            ("width: 20 in", "wider-than-loom"),
            ("heddles: 200", "too-few-heddles"),
            ("reeds:\n  - 7/in", "sett-off"),
        ],
    )
    def test_what_the_loom_cannot(self, tmp_path: Path, loom: str, slug: str) -> None:
        """Too wide, too few heddles, no reed that comes near: said before a thread is wound."""
        plan = planned(tmp_path, TOWELS.replace("24/in", "11/in") if slug == "sett-off" else TOWELS, looms__big=loom)

        assert slug in [limit.slug for limit in plan.stretches[0].limits]

    def test_shafts(self, tmp_path: Path) -> None:
        """A draft of eight shafts does not go on four."""
        draft = "threading: 1-8\nlift_plan: 1+3+5+7, 2+4+6+8"
        plan = planned(tmp_path, TOWELS + "draft: eight\n", drafts__eight=draft)

        assert "more-shafts-than-loom" in [limit.slug for limit in plan.stretches[0].limits]

    def test_what_fits_instead(self, tmp_path: Path) -> None:
        """20 1/8 in does not go on 18: there 216 dents of the 12 make 16 in made up, and the wide loom takes it all."""
        small = SHELF["looms__big"].replace("36 in", "18 in").replace("The big loom", "The small loom")
        wide, narrow = "title: The wide loom\nwidth: 48 in\nshafts: 4", "title: The narrow loom\nwidth: 16 in"
        said = Words(planned(tmp_path, looms__big=small, looms__wide=wide, looms__narrow=narrow)).limits()

        assert 16 == 18 * WIDTH // 0.125 * 0.125
        assert [
            "20 1/8 in in the reed is 2 1/8 in wider than The small loom (18 in). The widest that fits there comes to"
            " 16 in made up. The wide loom would take it."
        ] == said

    def test_plain_weave_is_spread(self, tmp_path: Path) -> None:
        """484 ends of plain weave are 121 on each of four shafts, and 242 on each of two."""
        four, two = (
            planned(tmp_path / shafts, looms__big=SHELF["looms__big"].replace("shafts: 4", f"shafts: {shafts}"))
            for shafts in ("4", "2")
        )

        assert "Threaded straight over 4 shafts, 121 heddles on each." in [*Words(four).repeats(four.stretches[0])]
        assert 484 == four.stretches[0].across.ends == two.stretches[0].across.ends
        few = SHELF["looms__big"].replace("300", "241")
        assert [] == Words(planned(tmp_path / "few", looms__big=few)).limits()
        crowded = planned(tmp_path / "crowded", looms__big=few.replace("shafts: 4", "shafts: 2"))
        assert "Shaft 1 takes 242 heddles and The big loom has 241 on it: 1 more to put on." in Words(crowded).limits()

    def test_closer_than_the_yarn_lies(self, tmp_path: Path) -> None:
        """8/2 cotton takes 26 ends to the inch in plain weave and 34 in twill: 30 goes in the one, not the other."""
        close = TOWELS.replace("24/in", "30/in")
        said = "30/in is closer than the yarn can lie in plain weave, by Ashenhurst’s rule."
        plain = planned(tmp_path / "plain", close)

        assert [said] == Words(plain).limits()
        assert [True] == [limit.bars for limit in plain.stretches[0].limits]
        assert [] == Words(planned(tmp_path / "twill", close.replace("plain weave", "2/2 twill"))).limits()

    def test_a_weave_that_nobody_knows(self, tmp_path: Path) -> None:
        """An unknown weave is asked about with what was read, unless another warp has it too or it is accepted."""
        header = TOWELS.replace("plain weave", "plane weave")
        (said,) = Words(planned(tmp_path / "one", header)).limits()
        other = "yarn: cotton\nweave: Plane weave"

        assert 'The weave was read as "plane weave", which is none that is known: is it plain weave? ' in said
        (odd,) = Words(planned(tmp_path / "odd", TOWELS.replace("plain weave", "qqq"))).limits()
        assert "known by name are plain weave, " in odd
        assert [] == Words(planned(tmp_path / "two", header, warps__other=other)).limits()
        assert [] == Words(planned(tmp_path / "so", header + "accepted: no such weave\n")).limits()

    def test_two_widths_on_one_warp(self, tmp_path: Path) -> None:
        """A runner of 14 in beside a towel of 18 comes out 18 in wide and wastes 4 1/2 in of the reed."""
        header = TOWELS.replace("hem:", "  - piece: runner\n    made_up: 14 x 40\nhem:")
        plan = planned(tmp_path, header)

        assert pytest.approx(4.48, abs=0.01) == (18 - 14) / WIDTH
        assert [
            "On one warp with the towel, the runner comes to 18 in wide for the 14 in wanted: it wastes 4 1/2 in of the"
            " width in the reed. Cut it down, or give it its own stretch."
        ] == Words(plan).limits()
        assert [] == Words(planned(tmp_path / "same", header.replace("14 x 40", "18 x 40"))).limits()

    def test_nothing_in_the_way(self, tmp_path: Path) -> None:
        """A towel on a loom that has all it takes raises no word."""
        assert [] == Words(planned(tmp_path)).limits()
