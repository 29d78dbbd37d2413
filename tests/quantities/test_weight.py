"""Weights, exact in grams."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal_tools.quantities import OUNCE, POUND, Units, parse_weight, show_weight
from tests.quantities.refusals import refusal_of


@pytest.mark.parametrize(
    ("text", "grams", "unit"),
    [
        ("152 g", 152, "g"),
        ("152", 152, "g"),
        ("152 grams", 152, "g"),
        ("1.2 kg", 1200, "kg"),
        ("1,2 kg", 1200, "kg"),
        ("5 1/2 oz", OUNCE * 11 / 2, "oz"),
        ("2 lbs", 2 * POUND, "lb"),
        ("1 lb 4 oz", POUND + 4 * OUNCE, "oz"),
        ("1 kg 200 g", 1200, "g"),
        ("0 g", 0, "g"),
    ],
)
def test_exact(text: str, grams: Fraction, unit: str) -> None:
    """A weight is exact, and its unit is the finest that was written."""
    assert (grams, unit) == (parse_weight(text).grams, parse_weight(text).unit)


def test_a_pound() -> None:
    """A pound is 453.59237 g, exactly (international pound of 1959, from memory), and 16 ounces."""
    assert (Fraction("453.59237"), 16) == (POUND, POUND / OUNCE)


def test_bare() -> None:
    """A bare weight is in the journal's unit."""
    assert 5 * OUNCE == parse_weight("5", Units(weight="oz")).grams


def test_about() -> None:
    """A weight that is called a rough figure stays one."""
    assert (True, "~150 g") == (parse_weight("~150 g").about, parse_weight("~150 g").text)


@pytest.mark.parametrize("text", ["", "heavy", "-1 g", "1 stone", "4 oz 1 lb", "1 lb 4", "1,200 g", "5 in"])
def test_refused(text: str) -> None:
    """What is no weight is refused with an example of one."""
    assert text == refusal_of(parse_weight, text).read


@pytest.mark.parametrize(
    ("grams", "unit", "shown"),
    [
        (152.4, "g", "152 g"),
        (12.34, "g", "12.3 g"),
        (0, "g", "0 g"),
        (1234, "kg", "1.23 kg"),
        (OUNCE * 11 / 2, "oz", "5.5 oz"),
        (POUND, "lb", "1 lb"),
        (100, "g", "100 g"),
    ],
)
def test_shown(grams: Fraction | float, unit: str, shown: str) -> None:
    """A weight is shown as finely as a kitchen scale weighs."""
    assert shown == show_weight(grams, unit)


@given(st.integers(20, 10**6))
def test_grams_read_back(grams: int) -> None:
    """A weight that is shown is the same when it is read."""
    assert grams == parse_weight(show_weight(grams)).grams


@given(st.integers(0, 10**5))
def test_tenths_of_ounces_read_back(tenths: int) -> None:
    """A weight that is shown in ounces is the same when it is read."""
    grams = OUNCE * tenths / 10

    assert grams == parse_weight(show_weight(grams, "oz")).grams
