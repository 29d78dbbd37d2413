"""Colours as six hex digits, and how well one is seen on another."""

from __future__ import annotations

import re
from typing import TypeAlias

from journal_tools.quantities import Unreadable

RGB: TypeAlias = tuple[int, int, int]

_HEX = re.compile(r"#?([0-9a-fA-F]{6}|[0-9a-fA-F]{3})")

PLAIN_WARP = "e4dac6"
PLAIN_WEFT = "cdbfa3"
_PLAIN_MORE = ("a79a80", "f3ede0", "83796a", "b9b1a2", "d8c9a6", "6b6358")
"""Undyed tones, for cloth whose colours nobody wrote down: near enough to be nobody's colours."""


def parse_hex(text: str) -> RGB:
    """Red, green and blue, 0 to 255, from a1b2c3, #a1b2c3 or abc. Raises Unreadable."""
    found = _HEX.fullmatch(text.strip())
    if not found:
        raise Unreadable(text, "A colour is six digits out of 0-9 and a-f, without a # before them: 43536b.")
    digits = found.group(1)
    if len(digits) == 3:
        digits = "".join(digit * 2 for digit in digits)
    return int(digits[:2], 16), int(digits[2:4], 16), int(digits[4:], 16)


def show_hex(colour: RGB) -> str:
    """The six digits of a colour, without #."""
    return "{:02x}{:02x}{:02x}".format(*colour)


def luminance(colour: RGB) -> float:
    """Relative luminance, 0 for black to 1 for white.

    Source: WCAG 2.2, definition of relative luminance (sRGB).
    """
    red, green, blue = (
        part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4
        for part in (value / 255 for value in colour)
    )
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: RGB, other: RGB) -> float:
    """Contrast ratio, 1 to 21. Source: WCAG 2.2, definition of contrast ratio."""
    dark, light = sorted((luminance(one), luminance(other)))
    return (light + 0.05) / (dark + 0.05)


def ink_on(ground: RGB, dark: RGB = (34, 32, 28), light: RGB = (255, 253, 247)) -> RGB:
    """Whichever of a dark and a light ink is read better on a ground."""
    return dark if contrast(dark, ground) >= contrast(light, ground) else light


def plain_tone(place: int) -> str:
    """The hex of an undyed tone for the thread colour that comes at a place, 0 first.

    The first two are a plain warp and a plain weft, far enough apart for a weave to be seen.
    """
    tones = (PLAIN_WARP, PLAIN_WEFT, *_PLAIN_MORE)
    return tones[place % len(tones)]
