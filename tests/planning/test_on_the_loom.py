"""A plan asked for again when the warp is on the loom: the reed is what it is, and its own cloth has a say."""

from __future__ import annotations

from pathlib import Path

import pytest

from journal_tools.forecast.kind import ClothKind
from journal_tools.forecast.observed import Observed, Reading
from journal_tools.planning.plan import Plan, plan_of
from journal_tools.planning.remembering import remembered
from journal_tools.planning.words import Words
from tests.ledger.desk import write
from tests.planning.knows import Knows
from tests.planning.test_plan import INCH, SHELF, TOWELS, WIDTH

WOUND = "warp:\n  ends: 480\n  wound: 5 yd\nreed: 12/in\nsley: 2\n"
WASHED = Observed("next", "sample", ClothKind(), (Reading("in_reed", 0, 0), Reading("washed 1", -0.1, 0.01)))
LOOM_ONLY = Observed("next", "towel 1", ClothKind(), (Reading("in_reed", 0, 0), Reading("on_loom", -0.04, 0.01)))


def again(folder: Path, header: str, *seen: Observed) -> Plan:
    """The plan of a warp of which these pieces were measured."""
    made = write(folder, **SHELF, warps__next=header)
    assert [] == [problem.sentence() for problem in made.problems]
    return plan_of(made, Knows(), made.warps["next"], seen={"width": seen, "length": seen})


class TestTheReed:
    def test_it_is_sleyed_already(self, tmp_path: Path) -> None:
        """480 ends stand in 240 dents of the 12, 20 in, though 18 in made up would want 242 dents."""
        plan = again(tmp_path, TOWELS + WOUND, WASHED)
        across, (piece,) = plan.stretches[0].across, plan.stretches[0].pieces
        assert piece.width is not None

        assert (240, 480) == (across.dents, across.ends)
        assert pytest.approx(20 * INCH) == across.mm
        assert pytest.approx(20 * WIDTH * INCH) == piece.width.mm
        assert Words(plan).sley(plan.stretches[0]).startswith("Sleyed already: 20 in: 240 dents of the 12/in, ")
        assert "It is wound 5 yd; all of the plan takes 5 yd." == Words(plan).wound()

    def test_a_width_that_was_measured(self, tmp_path: Path) -> None:
        """A width in the reed in the record stands, within the dents that a tape may miss."""
        across = again(tmp_path, TOWELS + WOUND + "in_reed: 20 1/8\n", WASHED).stretches[0].across

        assert pytest.approx(20.125 * INCH) == across.mm
        assert 240 == across.dents

    def test_crammed(self, tmp_path: Path) -> None:
        """480 ends in 15 in are crammed, and the tape is believed: 180 dents."""
        across = again(tmp_path, TOWELS + WOUND + "in_reed: 15\n", WASHED).stretches[0].across

        assert (180, 480) == (across.dents, across.ends)

    def test_nothing_is_measured_yet(self, tmp_path: Path) -> None:
        """As long as nothing of it was measured, width and ends follow what is wanted."""
        across = again(tmp_path, TOWELS + WOUND).stretches[0].across

        assert (242, 484) == (across.dents, across.ends)
        assert not across.sleyed


class TestItsOwnCloth:
    def test_what_the_others_would_say(self, tmp_path: Path) -> None:
        """What was expected before is told beside what is expected now, which is narrower."""
        plan = again(tmp_path, TOWELS + WOUND, WASHED)
        (piece,) = plan.stretches[0].pieces
        assert piece.blind is not None
        before = piece.blind[0]
        assert before is not None
        assert piece.width is not None

        assert before.high - before.low > 1.9 * (piece.width.high - piece.width.low)
        said = " ".join(Words(plan).expects(plan.stretches[0], piece))
        assert "Your other warps alone would say 17 7/8 in wide (17 1/4 to 18 1/2 in)" in said

    def test_a_sample_that_is_washed_is_not_advised(self, tmp_path: Path) -> None:
        """A washed piece is a sample; a width on the loom is none, and a sample may still be worth its warp."""
        washed, woven = (again(tmp_path, TOWELS + WOUND, seen) for seen in (WASHED, LOOM_ONLY))

        assert (True, False) == (washed.washed, woven.washed)
        assert "" == Words(washed).sample(washed.stretches[0])

    def test_it_counts_once(self, tmp_path: Path) -> None:
        """The memory that is asked about a warp is of the others, and what it rests on are the others."""
        past = "yarn: cotton\nweave: plain weave\nin_reed: 20\non_loom: 19 1/8 x 33\nwashed: 17 3/4 x 30"
        woven = TOWELS + WOUND + "pieces:\n  - name: sample\n    in_reed: 20\n    washed: 17 1/2 x 7\n    hem: none\n"
        made = write(tmp_path, **SHELF, warps__past=past, warps__next=woven)
        memory, seen = remembered(made, made.warps["next"])

        assert {"past"} == {piece.warp for pieces in memory.observed.values() for piece in pieces}
        assert {"next"} == {piece.warp for pieces in seen.values() for piece in pieces}
        plan = plan_of(made, memory, made.warps["next"], seen=seen)
        assert ("past",) == tuple(plan.stretches[0].rests_on.yarn_warps)
        assert plan.washed


def test_stretches_without_a_plan(tmp_path: Path) -> None:
    """A tail that nothing is planned for is named, since its warp is not in what is to be wound."""
    head = TOWELS.replace("plan:\n  - piece", "stretches:\n  - name: towels\n    plan:\n      - piece").replace(
        "    count: 4\n    made_up: 18 x 27\n", "        count: 4\n        made_up: 18 x 27\n  - name: bookmarks\n"
    )
    plan = again(tmp_path, head)

    assert ("bookmarks",) == plan.left_out
    assert "Nothing is planned for bookmarks, so no warp is reckoned for it." == Words(plan).left_out()
