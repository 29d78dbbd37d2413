"""Crimp and take-up of a strip by ASTM D3883-04(2020): crimp = (D - F) / F, take-up = (D - F) / D.

F is the yarn's length in the cloth, D its length straightened. The formulas as the standard's published
abstract has them (standards.iteh.ai, "ASTM D3883-04(2020)"). The worked strip is on
https://www.textilecalculations.com/calculate-crimp-percentage-of-woven-fabric/ ; that page prints its
figures to three or four digits.
"""

from __future__ import annotations

import pytest

from journal_tools.ledger.crimp import cloth_from, crimp, crimp_from_take_up, take_up, take_up_from_crimp, yarn_for


class TestWorkedStrip:
    """A strip of 20 cm, whose yarn is 21.2 cm straightened."""

    def test_crimp(self) -> None:
        """Printed: 6.0 %."""
        assert 6.0 == round(crimp(20, 21.2) * 100, 2)

    def test_take_up(self) -> None:
        """Printed: 5.66 %."""
        assert 5.66 == round(take_up(20, 21.2) * 100, 2)


class TestWarpForCloth:
    """The same page's warp and cloth of a given crimp."""

    def test_warp_of_160_m(self) -> None:
        """Printed: 160 m of cloth with 12 % crimp take 179.2 m of warp."""
        assert pytest.approx(179.2) == yarn_for(160, 0.12)

    def test_cloth_of_800_m(self) -> None:
        """Printed: a warp of 800 m with 8 % crimp weaves 740.8 m; the formula gives 740.74."""
        assert pytest.approx(740.8, abs=0.1) == cloth_from(800, 0.08)
        assert 740.74 == round(cloth_from(800, 0.08), 2)


class TestRelation:
    """One figure from the other, computed from the definitions."""

    @pytest.mark.parametrize(("taken", "crimped"), [(5, 5.2632), (10, 11.1111), (15, 17.6471), (20, 25)])
    def test_table(self, taken: float, crimped: float) -> None:
        """c = t / (1 - t): a take-up of 20 % is a crimp of 25 %."""
        assert pytest.approx(crimped, abs=0.00005) == crimp_from_take_up(taken / 100) * 100
        assert pytest.approx(taken, abs=0.00005) == take_up_from_crimp(crimped / 100) * 100

    def test_take_up_is_the_smaller(self) -> None:
        """For one strip take-up is smaller than crimp, because the straight yarn is the longer base."""
        for straightened in (20.2, 21.2, 25, 40):
            assert take_up(20, straightened) < crimp(20, straightened)
            assert pytest.approx(crimp(20, straightened)) == crimp_from_take_up(take_up(20, straightened))


def test_percentages_are_never_added() -> None:
    """28 in finished after 12 % shrinkage and 9 % take-up need 34.965 in of warp; adding says 33.88.

    Computed from the definitions: divide by what is left of each.
    """
    woven = 28 / (1 - 0.12)

    assert pytest.approx(34.965, abs=0.0005) == yarn_for(woven, crimp_from_take_up(0.09))
    assert pytest.approx(28, abs=0.001) == cloth_from(34.965, crimp_from_take_up(0.09)) * (1 - 0.12)
