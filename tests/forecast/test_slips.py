"""Slips of the pen: what might have been meant by a figure."""

from __future__ import annotations

import math

import pytest

from journal_tools.forecast.slips import MISSING, SWAPPED, TOO_MANY, UNIT, slips_of


def meant(text: str, written: float, kind: str, unit: str | None = "in") -> dict[str, float]:
    """What a slip of this kind asks, and the figure that would have been meant."""
    return {slip.asks: round(written * slip.share, 6) for slip in slips_of(text, written, unit) if slip.kind == kind}


class TestDigits:
    @pytest.mark.parametrize(
        ("text", "written", "figures"),
        [
            ("14.9", 14.9, {41.9, 19.4}),
            ("14,9 cm", 14.9, {41.9, 19.4}),
            ("18 1/4 in", 18.25, {81.25}),
            ("18-1/4", 18.25, {81.25}),
            ("561", 561, {651, 516}),
            ("22", 22, set()),
        ],
    )
    def test_changed_over(self, text: str, written: float, figures: set[float]) -> None:
        """Two neighbouring digits of the number are changed over, its fraction is left alone."""
        assert figures == set(meant(text, written, SWAPPED).values())

    def test_shown_as_typed(self) -> None:
        """The question shows the figure as it would be typed."""
        assert {"Were two digits changed over, and is it 81 1/4 in?": 81.25} == meant("18 1/4 in", 18.25, SWAPPED)

    def test_too_many(self) -> None:
        """121 may be 21, 11 or 12."""
        assert {21, 11, 12} == set(meant("121", 121, TOO_MANY).values())
        assert {} == meant("8 1/2", 8.5, TOO_MANY)

    def test_missing(self) -> None:
        """7 7/8 may be 17 7/8, or any other with a digit before or behind the 7, and never 07 7/8."""
        found = meant("7 7/8", 7.875, MISSING)

        assert 17.875 == found["Is a digit missing, and is it 17 7/8?"]
        assert {*range(70, 80), *range(17, 98, 10)} == {int(figure) for figure in found.values()}

    @pytest.mark.parametrize("text", ["3 yd 12 in", "3/4", "2 of 1/2 in", "about twenty", ""])
    def test_other_figures_are_left_alone(self, text: str) -> None:
        """Where there are several numbers, or none, nobody knows which digit is meant."""
        assert {UNIT} == {slip.kind for slip in slips_of(text, 20, "in")}


class TestUnits:
    @pytest.mark.parametrize(
        ("unit", "asks", "share"),
        [("in", "centimetres", 1 / 2.54), ("yd", "centimetres", 1 / 2.54), ("cm", "inches", 2.54)],
    )
    def test_the_other_system(self, unit: str, asks: str, share: float) -> None:
        """46 that was typed as inches is 46 cm, which is 18 in."""
        [slip] = [slip for slip in slips_of("46", 46, unit) if slip.kind == UNIT]

        assert f"Is it in {asks}?" == slip.asks
        assert math.isclose(share, slip.share)

    def test_a_count_has_none(self) -> None:
        """Picks are picks in every country."""
        assert [] == [slip for slip in slips_of("561", 561, None) if slip.kind == UNIT]
