"""What was planned, beside what the cloth did, in a weaver's words."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from journal_tools.ledger import SizeLine
from journal_tools.ledger.words import off_plan, per_cent, points, row_notes
from tests.ledger.desk import the_row, woven

EIGHTH = Fraction(254, 80)

TOWELS = """
in_reed: 20
plan:
  - piece: towel
    count: 2
    in_reed: 20
    on_loom: 19 x 33
    washed: 18 x 30
    made_up: 18 x 27
  - piece: cloth
    washed: 10 x 10
"""


def lines(sizes: tuple[SizeLine, ...], direction: str) -> dict[str, tuple[float | None, float | None]]:
    """Measured and planned inches at every state."""
    return {
        line.state.name: (inches(line.measured_mm), inches(line.planned_mm))
        for line in sizes
        if line.direction == direction
    }


def inches(mm: float | None) -> float | None:
    """To the millionth of an inch."""
    return None if mm is None else round(mm / 25.4, 6)


class TestTies:
    """A plan is tied to the pieces by name."""

    @pytest.mark.parametrize("name", ["towel 1", "towels 2-6", "Towel 3", "towel", "towels"])
    def test_by_kind(self, tmp_path: Path, name: str) -> None:
        """`towel` is the plan of "towel 1" and of "towels 2-6"."""
        made = woven(tmp_path, TOWELS + f"pieces:\n  - name: {name}\n    washed: 17 3/4 x 30")

        assert (17.75, 18) == lines(made.pieces[0].sizes, "width")["washed"]

    @pytest.mark.parametrize("name", ["sample", "tea towel 1", "clothes"])
    def test_by_no_other_name(self, tmp_path: Path, name: str) -> None:
        """A sample was not planned by the plan of the towels."""
        made = woven(tmp_path, TOWELS + f"pieces:\n  - name: {name}\n    washed: 17 3/4 x 30")

        assert (17.75, None) == lines(made.pieces[0].sizes, "width")["washed"]

    def test_one_plan_without_a_name(self, tmp_path: Path) -> None:
        """A single plan that names no piece is the plan of them all, and so is one for pieces without names."""
        nameless = woven(tmp_path / "a", "plan:\n  washed: 18 x 30\npieces:\n  - name: sample\n    washed: 17 x 29")
        pieces = "pieces:\n  - washed: 17 x 29\n  - washed: 17 x 28"
        unnamed = woven(tmp_path / "b", f"plan:\n  piece: towel\n  washed: 18 x 30\n{pieces}")

        assert (17, 18) == lines(nameless.pieces[0].sizes, "width")["washed"]
        assert [(17, 18), (17, 18)] == [lines(piece.sizes, "width")["washed"] for piece in unnamed.pieces]

    def test_the_plan_of_a_stretch(self, tmp_path: Path) -> None:
        """A stretch's own plan comes before the warp's."""
        header = (
            "plan:\n  washed: 18 x 30\nstretches:\n"
            "  - name: a\n    plan:\n      washed: 10 x 10\n    washed: 9 x 9\n  - name: b\n    washed: 17 x 29"
        )
        made = woven(tmp_path, header)

        assert [(9, 10), (17, 18)] == [lines(piece.sizes, "width")["washed"] for piece in made.pieces]


class TestSizes:
    """Planned beside measured; what nobody planned is blank."""

    def test_every_state(self, tmp_path: Path) -> None:
        """A state may be measured, planned or both, and stands where the cloth meets it."""
        made = woven(
            tmp_path, TOWELS + "pieces:\n  - name: towel 1\n    off_loom: 18 3/4 x 32\n    washed: 17 3/4 x 30"
        )

        assert {
            "in the reed": (20, 20),
            "on the loom": (None, 19),
            "off the loom": (18.75, None),
            "washed": (17.75, 18),
            "made up": (None, 18),
        } == lines(made.pieces[0].sizes, "width")
        assert ["in the reed", "on the loom", "off the loom", "washed", "made up"] == list(
            lines(made.pieces[0].sizes, "width")
        )

    def test_the_width_in_the_reed_is_not_planned_by_itself(self, tmp_path: Path) -> None:
        """The reed as it was used is no plan: only what the plan says is planned, and nothing is off it else."""
        made = woven(tmp_path, "in_reed: 20\nplan:\n  washed: 18 x 30\nwashed: 17 x 29")

        assert (20, None) == lines(made.pieces[0].sizes, "width")["in the reed"]
        assert [None, -25.4] == [
            None if line.off_mm is None else round(line.off_mm, 6)
            for line in made.pieces[0].sizes
            if line.direction == "width"
        ]

    def test_washed_is_wash_1(self, tmp_path: Path) -> None:
        """A planned `washed:` is the plan of the first of two washes."""
        made = woven(tmp_path, TOWELS + "pieces:\n  - name: towel 1\n    washed:\n      - 17 x 29\n      - 16 x 28")

        assert (17, 18) == lines(made.pieces[0].sizes, "width")["washed 1"]
        assert (16, None) == lines(made.pieces[0].sizes, "width")["washed 2"]

    def test_marks_are_not_planned_edges(self, tmp_path: Path) -> None:
        """What lies between marks is not compared with a planned width."""
        made = woven(tmp_path, "plan:\n  washed: 18 x 30\nmarks: 10 x 10\nwashed: 9 x 9")
        widths = [line for line in made.pieces[0].sizes if line.direction == "width"]

        assert [(9, None), (None, 18)] == [(inches(line.measured_mm), inches(line.planned_mm)) for line in widths]

    def test_beyond(self, tmp_path: Path) -> None:
        """An eighth off is within what a tape can tell; a quarter is not."""
        near = woven(tmp_path / "a", TOWELS + "pieces:\n  - name: towel 1\n    washed: 17 7/8 x 30")
        far = woven(tmp_path / "b", TOWELS + "pieces:\n  - name: towel 1\n    washed: 17 3/4 x 30")

        assert not next(line for line in near.pieces[0].sizes if line.state.key == "washed").beyond
        assert next(line for line in far.pieces[0].sizes if line.state.key == "washed").beyond

    def test_a_plan_finer_than_the_tape(self, tmp_path: Path) -> None:
        """A plan of 17 3/4 beside whole inches is still shown to the quarter; the ± stays the tape's."""
        made = woven(tmp_path, "plan:\n  washed: 17 3/4 x 30\nwashed: 18 x 30")
        line = made.pieces[0].sizes[0]

        assert Fraction(254, 40) == line.mark_mm
        assert pytest.approx(2 * 25.4 / 12**0.5) == line.u_mm


class TestPlannedLosses:
    """The losses that the plan's own sizes give, beside the measured ones."""

    def test_beside_measured(self, tmp_path: Path) -> None:
        """Planned 33 x 19 on the loom and 18 x 30 washed: 10 % of the width, 9.1 % of the length."""
        made = woven(
            tmp_path,
            TOWELS + "pieces:\n  - name: towel 1\n    on_loom: 19 1/4 x 33 1/4\n    washed: 17 3/4 x 30",
        )

        assert pytest.approx(1 - 18 / 20) == the_row(made.rows, "width, reed to washed").planned
        assert pytest.approx(1 - 19 / 20) == the_row(made.rows, "width, reed to loom").planned
        assert pytest.approx(1 - 30 / 33) == the_row(made.rows, "length, loom to washed").planned

    def test_never_a_rule_of_thumb(self, tmp_path: Path) -> None:
        """A step that the plan does not state has no planned loss."""
        made = woven(
            tmp_path, TOWELS + "pieces:\n  - name: towel 1\n    off_loom: 18 3/4 x 32\n    washed: 17 3/4 x 30"
        )

        assert {"width, reed to off", "width, off to washed", "length, off to washed"} == {
            row.label for row in made.rows if row.planned is None
        }

    def test_mean_of_plans(self, tmp_path: Path) -> None:
        """The stretch's planned loss is the mean of its pieces' plans, each by its number."""
        header = (
            "in_reed: 20\nplan:\n  - piece: towel\n    in_reed: 20\n    washed: 18 x 30\n"
            "  - piece: cloth\n    in_reed: 20\n    washed: 17 x 30\n"
            "pieces:\n  - name: towels 1-3\n    washed: 18 x 30\n  - name: cloth\n    washed: 17 x 30"
        )
        row = the_row(woven(tmp_path, header).stretch_rows, "width, reed to washed")

        assert pytest.approx((3 * 0.10 + 0.15) / 4) == row.planned


class TestWords:
    """Never a bare signed number."""

    @pytest.mark.parametrize(
        ("off_in", "direction", "said"),
        [
            (-1 / 4, "width", "1/4 in narrower than planned"),
            (1 / 8, "width", "1/8 in wider than planned"),
            (-1 / 2, "length", "1/2 in shorter than planned"),
            (1 + 3 / 8, "length", "1 3/8 in longer than planned"),
            (0, "width", "as planned"),
            (1 / 16, "width", "as planned"),
            (-1 / 16, "length", "as planned"),
            (3 / 16, "width", "1/8 in wider than planned"),
            (5 / 16, "width", "1/4 in wider than planned"),
            (0.19, "width", "1/4 in wider than planned"),
        ],
    )
    def test_inches(self, off_in: float, direction: str, said: str) -> None:
        """Off plan is said to the tape's mark, half a mark being nothing."""
        assert said == off_plan(off_in * 25.4, direction, "in", EIGHTH)

    def test_centimetres(self) -> None:
        """4 mm on a metric tape."""
        assert "0.4 cm narrower than planned" == off_plan(-4, "width", "cm", Fraction(1))

    def test_per_cent(self) -> None:
        """A gain has a true minus; nought has none."""
        assert ["11.7 %", "−2.0 %", "0.0 %", "0.7"] == [
            per_cent(0.1173),
            per_cent(-0.02),
            per_cent(-0.0001),
            points(0.00693),
        ]

    def test_notes(self, tmp_path: Path) -> None:
        """What must be said beside a loss: the gap, the number of pieces and their spread, what is not learned."""
        header = (
            "in_reed: 20\nlearn: no widths, beamed badly\n"
            "pieces:\n  - name: a\n    washed: 18 x 30\n  - name: b\n    washed: 17 x 30"
        )
        row = the_row(woven(tmp_path, header).stretch_rows, "width, reed to washed")

        assert [
            "not measured on the loom and off the loom",
            "mean of 2 pieces, spread 3.5 points",
            "not learned from: beamed badly",
        ] == list(row_notes(row))
