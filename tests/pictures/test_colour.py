"""Colours, and how well one is read on another."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal_tools.pictures.colour import contrast, ink_on, luminance, parse_hex, plain_tone, show_hex
from journal_tools.quantities import Unreadable

COLOUR = st.tuples(*[st.integers(0, 255)] * 3)


@pytest.mark.parametrize("text", ["43536b", "#43536b", "43536B", " 43536b "])
def test_hex(text: str) -> None:
    """Six digits, with or without #, in capitals or not, are the same colour."""

    assert (0x43, 0x53, 0x6B) == parse_hex(text)


def test_three_digits() -> None:
    """Three digits stand for six, each doubled."""

    assert parse_hex("aabbcc") == parse_hex("abc")


@given(COLOUR)
def test_hex_reads_back(colour: tuple[int, int, int]) -> None:
    """What is written of a colour reads back as the same colour."""

    assert colour == parse_hex(show_hex(colour))


@pytest.mark.parametrize("text", ["", "slate", "4353", "43536g", "##43536b", "43536b7"])
def test_no_colour(text: str) -> None:
    """Anything else is told what a colour looks like."""
    with pytest.raises(Unreadable, match="six digits"):
        parse_hex(text)


@pytest.mark.parametrize(
    ("one", "other", "expected"),
    [("000000", "ffffff", 21.0), ("777777", "ffffff", 4.48), ("ff0000", "ffffff", 4.0), ("123456", "123456", 1.0)],
)
def test_contrast(one: str, other: str, expected: float) -> None:
    """Contrast is 21 for black on white and 1 for a colour on itself (WCAG 2.2; the greys and red from memory)."""

    assert pytest.approx(expected, abs=0.005) == contrast(parse_hex(one), parse_hex(other))
    assert contrast(parse_hex(one), parse_hex(other)) == contrast(parse_hex(other), parse_hex(one))


@given(COLOUR)
def test_ink_is_read_on_any_ground(ground: tuple[int, int, int]) -> None:
    """One of the two inks is readable on any yarn's colour: at least 4.4 to 1."""

    assert contrast(ink_on(ground), ground) >= 4.0


def test_undyed_tones() -> None:
    """Cloth without colours has a light warp and a darker weft that can be told apart, and is never loud."""
    tones = [parse_hex(plain_tone(place)) for place in range(8)]

    assert len(set(tones)) == 8
    assert luminance(tones[0]) > 1.2 * luminance(tones[1])
    assert all(max(tone) - min(tone) < 60 for tone in tones)
    assert plain_tone(0) == plain_tone(8)
