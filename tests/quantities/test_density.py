"""Setts, beats, reeds and wraps: so many in an inch or a centimetre."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal_tools.quantities import Units, parse_density, parse_wraps, show_density
from tests.quantities.refusals import refusal_of

METRIC = Units(length="cm", density="cm")


@pytest.mark.parametrize(
    "text",
    ["24", "24/in", "24 / in", "24 per in", "24 per inch", "24 epi", "24 ppi", '24/"', "24 ends per inch", "24 ends/in",
     "24/in.", "24 EPI"],
)  # fmt: skip
def test_per_inch(text: str) -> None:
    """Twenty-four to the inch is the same however it is written."""
    density = parse_density(text)

    assert (24, "in", text) == (density.per_inch, density.unit, density.text)


@pytest.mark.parametrize(
    ("text", "per_cm"),
    [
        ("9.5/cm", Fraction(19, 2)),
        ("9,5/cm", Fraction(19, 2)),
        ("9 1/2 per cm", Fraction(19, 2)),
        ("50 per 10 cm", 5),
        ("50/10 cm", 5),
        ("9 ends per cm", 9),
        ("8 epc", 8),
    ],
)
def test_per_centimetre(text: str, per_cm: Fraction) -> None:
    """Ends in a centimetre, or in ten of them as metric reeds are named."""
    assert (per_cm, "cm") == (parse_density(text).per_cm, parse_density(text).unit)


def test_inch_and_centimetre() -> None:
    """Ten to the centimetre are 25.4 to the inch."""
    assert Fraction(254, 10) == parse_density("10/cm").per_inch


def test_bare() -> None:
    """A bare sett is in the journal's unit of density."""
    assert (10, 10) == (parse_density("10").per_inch, parse_density("10", METRIC).per_cm)


def test_reeds_by_name() -> None:
    """A 12 dent reed has 12 dents to the inch; 50/10 is five to the centimetre in a metric journal."""
    assert 12 == parse_density("12-dent").per_inch
    assert 12 == parse_density("12 dents").per_inch
    assert 5 == parse_density("50/10", METRIC).per_cm


def test_reed_without_its_unit() -> None:
    """50/10 in a journal of inches is asked for its unit."""
    assert "50/10 cm" == refusal_of(parse_density, "50/10").mended


def test_about() -> None:
    """A sett that is called a rough figure stays one."""
    assert (True, False) == (parse_density("~24/in").about, parse_density("24/in").about)


@pytest.mark.parametrize("text", ["30/in", "30 wpi", "30", "30 wraps per inch"])
def test_wraps(text: str) -> None:
    """Wraps round a ruler are read like ends to the inch."""
    assert 30 == parse_wraps(text).per_inch


def test_wraps_per_centimetre() -> None:
    """Wraps may be counted to the centimetre."""
    assert 12 == parse_wraps("12/cm").per_cm


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("", "Nothing is written"),
        ("/in", "Nothing is written"),
        ("0", "None at all"),
        ("24 per 0 in", "None at all"),
        ("24/yard", '"yard"'),
        ("24 inn", "Say in what"),
        ("24 26", "One figure"),
        ("24-26/in", "One figure"),
        ("-3/in", "less than nothing"),
        ("17/8", "2 1/8"),
        ("1,200/in", "1200"),
    ],
)
def test_refused(text: str, words: str) -> None:
    """What is no sett is refused in words."""
    refusal = refusal_of(parse_density, text)

    assert text == refusal.read
    assert words in refusal.right


@pytest.mark.parametrize(
    ("text", "shown"),
    [("24", "24/in"), ("9.5/cm", "9.5/cm"), ("17 1/2", "17.5/in"), ("50/10 cm", "5/cm"), ("12.34", "12.3/in")],
)
def test_shown(text: str, shown: str) -> None:
    """A sett is shown with one decimal at most."""
    density = parse_density(text)

    assert shown == show_density(density.per_m, density.unit)


@given(st.integers(1, 3000), st.sampled_from(["in", "cm"]))
def test_shown_reads_back(tenths: int, unit: str) -> None:
    """A sett that is shown is the same when it is read."""
    shown = parse_density(f"{tenths / 10}/{unit}")

    assert shown.per_m == parse_density(show_density(shown.per_m, shown.unit)).per_m
