"""Sizes: width x length, with what was not measured left out."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal_tools.quantities import INCH, YARD, Units, parse_size, show_size
from tests.quantities.refusals import refusal_of

METRIC = Units(length="cm")


def inches(mm: Fraction | None) -> Fraction | None:
    """A side in inches."""
    return None if mm is None else mm / INCH


@pytest.mark.parametrize(
    "text", ["19 3/8 x 33", "19 3/8 × 33", "19⅜x33", '19 3/8" X 33"', "19 3/8 by 33", "19 3/8 in x 33"]
)
def test_width_and_length(text: str) -> None:
    """A size is width x length, with any of the signs for times."""
    size = parse_size(text)

    assert (Fraction(155, 8), 33) == (inches(size.width_mm), inches(size.length_mm))


@pytest.mark.parametrize(
    ("text", "width", "length"),
    [
        ("? x 30 1/8", None, Fraction(241, 8)),
        ("19 3/8 x ?", Fraction(155, 8), None),
        ("19 3/8", Fraction(155, 8), None),
    ],
)
def test_not_measured(text: str, width: Fraction | None, length: Fraction | None) -> None:
    """A side that nobody measured is missing, and is not nothing."""
    size = parse_size(text)

    assert (width, length) == (inches(size.width_mm), inches(size.length_mm))


@pytest.mark.parametrize(
    ("text", "widths", "length"),
    [
        ("19 3/4, 19 5/8, 19 3/4 x 20", ["19 3/4", "19 5/8", "19 3/4"], "20"),
        ("46,5, 46,8, 46,2 x 80,5 cm", ["46,5", "46,8", "46,2"], "80,5 cm"),
        ("19 3/4,19 5/8 x 20", ["19 3/4", "19 5/8"], "20"),
        ("19¾,19½ x ?", ["19¾", "19½"], None),
        ("19; 20 x 21", ["19", "20"], "21"),
    ],
)
def test_several_widths(text: str, widths: list[str], length: str | None) -> None:
    """Several widths stand before the x; a comma that is not decimal stands between them."""
    size = parse_size(text)

    assert (widths, length) == ([w.text for w in size.widths], size.length and size.length.text)


def test_mean_width() -> None:
    """The width of a cloth that was measured three times is the mean of the three."""
    assert Fraction(59, 3) == inches(parse_size("19 1/2, 19 3/4, 19 3/4 x 20").width_mm)


@pytest.mark.parametrize(
    ("text", "width", "length"),
    [
        ("153 x 220 cm", 1530, 2200),
        ("153 cm x 220", 1530, 2200),
        ("19 3/8 in x 46,5 cm", Fraction(155, 8) * INCH, 465),
        ("46,5, 46,7 x 80 cm", 466, 800),
        ("46.5 cm, 46.7 x 80", 466, 800),
        ("1 x 2 yd", YARD, 2 * YARD),
        ("27 in x 5 yd", 27 * INCH, 5 * YARD),
        ("19cmx33cm", 190, 330),
        ("? x 220 cm", None, 2200),
    ],
)
def test_unit_at_the_end_holds_for_both(text: str, width: Fraction | None, length: Fraction) -> None:
    """A unit holds for the bare figures beside it, whatever the journal's unit is."""
    size = parse_size(text)

    assert (width, length) == (size.width_mm, size.length_mm)


def test_bare_sizes() -> None:
    """A size without a unit is in the journal's."""
    assert 1530 == parse_size("153 x 220", METRIC).width_mm


def test_yardage() -> None:
    """27 x 5 yd would be a cloth of 27 yd width, so the unit of the width is asked for."""
    refusal = refusal_of(parse_size, "27 x 5 yd")

    assert "27 in x 5 yd" == refusal.mended
    assert "27 yd wide" in refusal.right


@pytest.mark.parametrize(
    ("text", "fold"),
    [("19 x 33 folded", "folded"), ("38 x 33 cm opened", "opened"), ("19 x 33", None), ("19, folded", "folded")],
)
def test_fold(text: str, fold: str | None) -> None:
    """A double cloth says whether it lay folded or opened."""
    assert fold == parse_size(text).fold


@pytest.mark.parametrize(
    ("text", "about"), [("~19 x 33", True), ("19 x ~33", True), ("about 19 by 33", True), ("19 x 33", False)]
)
def test_about(text: str, about: bool) -> None:
    """A size of which any part is a rough figure is one."""
    assert about == parse_size(text).about


@pytest.mark.parametrize(
    ("text", "column", "words"),
    [
        ("", 0, "missing"),
        ("x 33", 0, "missing"),
        ("19 x", 4, "missing"),
        ("? x ?", 0, "Nothing was measured"),
        ("?", 0, "Nothing was measured"),
        ("19 x 33 x 2", 8, "one x"),
        ("19 x 33, 34", 9, "one length"),
        ("19, ? x 33", 0, "not measured"),
        ("0 x 33", 0, "nothing"),
        ("19 x 33 inn", 8, '"inn" is no unit'),
        ("19 x 33 wide", 8, '"wide" is no unit'),
        ("19 x 17/8", 5, "2 1/8"),
        ("19 x -3", 5, "less than nothing"),
        ("19 x 33 folded opened", 8, "no unit"),
        ("19 x 1,200", 5, "1200"),
    ],
)
def test_refused(text: str, column: int, words: str) -> None:
    """What is wrong with a size is told with its place in the whole text."""
    refusal = refusal_of(parse_size, text)

    assert (text, column) == (refusal.read, refusal.column)
    assert words in refusal.right


def test_mended_in_the_whole_text() -> None:
    """What is offered to paste is the whole size, and not the mended part alone."""
    assert "19 x 1 1/4 yd" == refusal_of(parse_size, "19 x 5/4 yd").mended


def test_shown() -> None:
    """A size is shown width first, and what was not measured is a question mark."""
    width, length = INCH * 143 / 8, INCH * 241 / 8

    assert "17 7/8 x 30 1/8 in" == show_size(width, length, "in")
    assert "17⅞ × 30⅛ in" == show_size(width, length, "in", pretty=True)
    assert "? x 30 1/8 in" == show_size(None, length, "in")
    assert "45.4 x ? cm" == show_size(width, None, "cm")


@given(
    st.one_of(st.none(), st.integers(1, 1000)),
    st.integers(1, 5000),
    st.booleans(),
    st.sampled_from([Units(), METRIC, Units(length="mm")]),
)
def test_shown_reads_back(width: int | None, length: int, pretty: bool, units: Units) -> None:
    """A size that is shown is the same when it is read, in any journal."""
    in_mm = (None if width is None else width * INCH / 8, length * INCH / 8)
    size = parse_size(show_size(*in_mm, "in", pretty=pretty), units)

    assert in_mm == (size.width_mm, size.length_mm)
