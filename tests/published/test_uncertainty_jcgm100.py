"""Uncertainty by JCGM 100:2008 (the GUM): of a reading, and of a ratio of two.

F.2.2.1: a resolution d has the standard uncertainty d / √12. 5.1.2, equation 10, from memory: for a
quotient the relative variances add. The worked ratio, 500 mm to 455 mm read to the millimetre, is computed
from these and checked here by drawing both readings at random.
"""

from __future__ import annotations

import math
from fractions import Fraction
from pathlib import Path

import numpy as np
import pytest

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
