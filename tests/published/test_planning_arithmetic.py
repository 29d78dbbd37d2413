"""A plan's arithmetic against published worked examples."""

from __future__ import annotations

import pytest

from journal_tools.planning import arithmetic as sums


class TestCrimpAndTakeUp:
    """textilecalculations.com, "Calculate crimp percentage of woven fabric": worked after ASTM D3883's formulas."""

    def test_a_strip(self) -> None:
        """A strip of 20 cm holds 21.2 cm of yarn: take-up 5.66 %, so 20 cm of cloth take 21.2 cm of warp."""
        take_up = (21.2 - 20) / 21.2

        assert pytest.approx(0.0566, abs=5e-5) == take_up
        assert pytest.approx(21.2) == sums.warp_for(20, take_up)

    def test_a_length_of_cloth(self) -> None:
        """160 m of cloth at a crimp of 12 % take 179.2 m of warp."""
        crimp = 0.12

        assert pytest.approx(179.2) == sums.warp_for(160, crimp / (1 + crimp))

    def test_a_warp(self) -> None:
        """800 m of warp at a crimp of 8 % weave 740.74 m; the page prints 740.8."""
        crimp = 0.08

        assert pytest.approx(740.74, abs=0.005) == sums.after_loss(800, crimp / (1 + crimp))


class TestWeight:
    """textilecalculations.com, "Fabric weight calculation": 120 x 70, 40s x 30s, crimp 3 % and 5 %."""

    def test_a_square_yard(self) -> None:
        """The threads of a square metre weigh 128.8 g, with the exact constant in place of the page's rounded 23.25."""
        ends, picks = 120 / 0.0254, 70 / 0.0254
        warp = sums.warp_grams(round(ends), 1000 * 1.03, 590.541247 / 40)
        weft = picks * 1000 * 1.05 * 590.541247 / 30 / 1e6

        assert pytest.approx(128.80, rel=1e-3) == warp + weft


class TestTwoLosses:
    """A handweaver's towel in cotton 8/2 twill, from a teaching forum (n = 1): 14 in in the reed, 11 in finished."""

    def test_ratios_multiply(self) -> None:
        """The ratio is 0.786; after 9 % on the loom the water took 13.7 %, and the two make the whole."""
        assert pytest.approx(1 - 0.7857, abs=5e-5) == 1 - 11 / 14
        assert pytest.approx(1 - 11 / 14) == sums.whole_loss([0.09, 1 - 11 / 14 / 0.91])
        assert pytest.approx(14) == sums.before_loss(sums.before_loss(11, 1 - 11 / 14 / 0.91), 0.09)


class TestComputedFromTheDefinition:
    """No source: what dividing means."""

    def test_adding_per_cents_falls_short(self) -> None:
        """28 in at 12 % and 9 % are 34.965 in; adding the per cents gives 33.88, an inch too few."""
        right = sums.warp_for(sums.before_loss(28, 0.12), 0.09)

        assert pytest.approx(34.965, abs=5e-4) == right
        assert right - 28 * 1.21 > 1
