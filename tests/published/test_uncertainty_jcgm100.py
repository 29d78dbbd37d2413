"""Uncertainty by JCGM 100:2008 (the GUM): of a reading, and of a ratio of two.

F.2.2.1: a resolution d has the standard uncertainty d / √12. 5.1.2, equation 10, from memory: for a
quotient the relative variances add. The worked ratio, 500 mm to 455 mm read to the millimetre, is computed
from these and checked here by drawing both readings at random; so are rows of whole records.
"""

from __future__ import annotations

import math
from fractions import Fraction
from pathlib import Path

import numpy as np
import pytest
from numpy.typing import NDArray

from journal_tools.ledger.uncertainty import ratio_uncertainty, reading_uncertainty_mm
from tests.ledger.desk import the_row, woven

FROM, TO, MARK = 500.0, 455.0, 1.0


def drawn(half_width: float, count: int = 400_000) -> float:
    """Standard deviation of 100 (x1 / x0 - 1) when both readings are anywhere within a half-width."""
    chance = np.random.default_rng(20080901)
    before = FROM + chance.uniform(-half_width, half_width, count)
    after = TO + chance.uniform(-half_width, half_width, count)
    return float(np.std(100 * (after / before - 1)))


class TestReading:
    """A reading to the nearest mark lies anywhere within half a mark of it."""

    @pytest.mark.parametrize("mark", [Fraction(1), Fraction(254, 80), Fraction(1, 2)])
    def test_resolution(self, mark: Fraction) -> None:
        """u = d / √12 = 0.29 d, and U is twice that."""
        assert pytest.approx(2 * float(mark) / math.sqrt(12)) == reading_uncertainty_mm(mark)
        assert pytest.approx(2 * 0.29 * float(mark), rel=0.01) == reading_uncertainty_mm(mark)

    def test_by_chance(self) -> None:
        """Two hundred thousand readings within half a mark scatter by as much."""
        readings = np.random.default_rng(1).uniform(-0.5, 0.5, 200_000)

        assert pytest.approx(2 * float(np.std(readings)), rel=0.005) == reading_uncertainty_mm(Fraction(1))


class TestWorkedRatio:
    """500 mm before, 455 mm after, 1 mm divisions: change -9.000 %, u 0.0781 points, U 0.156."""

    def test_formula(self) -> None:
        """u = 100 (x1/x0) √((u0/x0)² + (u1/x1)²), U = 2 u."""
        read = reading_uncertainty_mm(Fraction(1))
        expanded = 100 * ratio_uncertainty(TO / FROM, [read / FROM, read / TO])

        assert pytest.approx(0.0781, abs=0.00005) == expanded / 2
        assert pytest.approx(0.156, abs=0.0005) == expanded

    def test_by_chance(self) -> None:
        """Drawn at random, the change scatters by the same 0.0781 points."""
        read = reading_uncertainty_mm(Fraction(1))
        expanded = 100 * ratio_uncertainty(TO / FROM, [read / FROM, read / TO])

        assert pytest.approx(expanded / 2, rel=0.005) == drawn(MARK / 2)

    def test_in_a_record(self, tmp_path: Path) -> None:
        """Marks 500 mm apart and 455 after the wash: 9.0 ± 0.16 %."""
        header = "units: mm\ntape: 1 mm\nmarks: 500 x 500\nwashed: 455 x 455"
        row = the_row(woven(tmp_path, header).rows, "width, off to washed")

        assert pytest.approx(0.09) == row.loss
        assert pytest.approx(0.156, abs=0.0005) == row.uncertainty * 100


class TestProduct:
    """A whole loss over a hem is a product of two ratios, so four relative variances add."""

    def test_by_chance(self) -> None:
        """Four readings drawn at random scatter as the formula says."""
        sizes = np.array([838.2, 825.5, 755.65, 723.9])  # 33, 32 1/2, 29 3/4 and 28 1/2 in
        read = reading_uncertainty_mm(Fraction(254, 80))
        half = 25.4 / 16
        draws = sizes + np.random.default_rng(3).uniform(-half, half, (400_000, 4))
        ratios = draws[:, 1] / draws[:, 0] * draws[:, 3] / draws[:, 2]
        ratio = float(sizes[1] / sizes[0] * sizes[3] / sizes[2])

        assert pytest.approx(2 * float(np.std(ratios)), rel=0.005) == ratio_uncertainty(ratio, list(read / sizes))


def floored(size: float, floor: float, chance: np.random.Generator) -> NDArray[np.float64]:
    """A size of cloth whose ± is the floor: its wander is taken as normal, so the floor is two of its deviations."""
    return chance.normal(size, floor / 2, 400_000)


class TestTheRow:
    """The ± of a record's rows is the scatter of its losses, when every size is measured anew at random.

    A width in the reed lies within half a mark of its reading. A size of cloth wanders by the floor, which is
    larger than the reading: 1/8 in or 3 mm in width, 1/4 in in 30 in or 6 mm in 75 cm in length (common
    practice, no source).
    """

    @pytest.mark.parametrize(
        ("header", "reed", "loom", "washed", "mark", "floors"),
        [
            (
                "in_reed: 20 1/4\non_loom: 19 1/4 x 33\nwashed: 17 7/8 x 30 1/8",
                20.25,
                (19.25, 33),
                (17.875, 30.125),
                1 / 8,
                (1 / 8, 1 / 4 / 30),
            ),
            (
                "units: cm\nin_reed: 51.4\non_loom: 48.8 x 84.0\nwashed: 45.4 x 76.5",
                51.4,
                (48.8, 84),
                (45.4, 76.5),
                0.1,
                (0.3, 0.6 / 75),
            ),
        ],
        ids=["inches", "centimetres"],
    )
    def test_by_chance(
        self,
        tmp_path: Path,
        header: str,
        reed: float,
        loom: tuple[float, float],
        washed: tuple[float, float],
        mark: float,
        floors: tuple[float, float],
    ) -> None:
        """A towel measured in the reed, on the loom and washed, four hundred thousand times over."""
        chance = np.random.default_rng(5077)
        in_reed = reed + chance.uniform(-mark / 2, mark / 2, 400_000)
        width, length = floors
        loom_width, loom_length = floored(loom[0], width, chance), floored(loom[1], length * loom[1], chance)
        dry_width, dry_length = floored(washed[0], width, chance), floored(washed[1], length * washed[1], chance)
        found = {
            "width, reed to loom": 1 - loom_width / in_reed,
            "width, loom to washed": 1 - dry_width / loom_width,
            "width, reed to washed": 1 - dry_width / in_reed,
            "length, loom to washed": 1 - dry_length / loom_length,
        }
        rows = woven(tmp_path, header).rows

        assert set(found) == {row.label for row in rows}
        for label, losses in found.items():
            assert pytest.approx(2 * float(np.std(losses)), rel=0.01) == the_row(rows, label).uncertainty

    def test_how_often_it_holds(self, tmp_path: Path) -> None:
        """With k = 2 the ± holds 95 times in 100 (JCGM 100:2008 table G.1: 95.45 %, from memory)."""
        row = the_row(woven(tmp_path, "on_loom: 19 1/4 x 33\nwashed: 17 7/8 x 30 1/8").rows, "length, loom to washed")
        chance = np.random.default_rng(100)
        losses = 1 - floored(30.125, 30.125 / 120, chance) / floored(33, 33 / 120, chance)

        assert pytest.approx(0.9545, abs=0.002) == float(np.mean(np.abs(losses - row.loss) <= row.uncertainty))

    def test_over_a_hem(self, tmp_path: Path) -> None:
        """A hemmed towel's whole loss has the scatter of all four lengths in it."""
        header = "on_loom: 19 3/8 x 33\noff_loom: 19 x 32 1/2\nhemmed: 19 x 29 3/4\nwashed: 18 x 28 1/2"
        row = the_row(woven(tmp_path, header).rows, "length, loom to washed")
        chance = np.random.default_rng(4)
        on_loom, off_loom, hemmed, washed = (floored(size, size / 120, chance) for size in (33, 32.5, 29.75, 28.5))
        losses = 1 - off_loom / on_loom * washed / hemmed

        assert row.joined
        assert pytest.approx(1 - 32.5 / 33 * 28.5 / 29.75) == row.loss
        assert pytest.approx(2 * float(np.std(losses)), rel=0.01) == row.uncertainty
