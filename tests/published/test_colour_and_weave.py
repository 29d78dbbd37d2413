"""Colour-and-weave effects come out of interlacement and colour order alone.

The effects are common practice, no source. # is a dark thread on top, . a light one.
"""

from __future__ import annotations

import io

import numpy as np
from numpy.typing import NDArray
from PIL import Image

from journal_tools.drafts import drawdown, named_weave, parse_colours
from journal_tools.pictures.cloth import repeat_to
from journal_tools.pictures.drawdown import colour_drawdown_picture

HEX = {"dark": "1e1e22", "light": "f1e8d4"}


def effect(weave: str, warp: str, weft: str) -> NDArray[np.bool_]:
    """Shape (picks, ends): True where a dark thread is seen, read from the picture's pixels."""
    named = named_weave(weave)
    assert named is not None
    ends, picks = parse_colours(warp), parse_colours(weft)
    over = repeat_to(drawdown(named.draft), len(picks), len(ends))
    png = colour_drawdown_picture(over, [HEX[end] for end in ends], [HEX[pick] for pick in picks])
    pixels = np.asarray(Image.open(io.BytesIO(png)).convert("L"))
    return pixels < 128


def drawn(text: str) -> list[list[bool]]:
    """A drawing as rows of dark and light."""
    return [[mark == "#" for mark in row.split()] for row in text.strip().splitlines()]


def test_lines_along_the_weft() -> None:
    """Plain weave, dark and light by turns in warp and weft: lines across the cloth."""

    assert (
        drawn("""
        # # # #
        . . . .
        # # # #
        . . . .
    """)
        == effect("plain weave", "2 times (dark, light)", "2 times (dark, light)").tolist()
    )


def test_lines_along_the_warp() -> None:
    """The same with the weft begun on the other colour: lines along the cloth."""

    assert (
        drawn("""
        # . # .
        # . # .
        # . # .
        # . # .
    """)
        == effect("plain weave", "2 times (dark, light)", "2 times (light, dark)").tolist()
    )


def test_log_cabin() -> None:
    """Two threads of one colour together turn the lines: blocks across and along, like laid logs."""
    order = "4 times (dark, light), 4 times (light, dark)"
    cloth = effect("plain weave", order, order)

    for pick in (0, 8):
        for end in (0, 8):
            block = cloth[pick : pick + 8, end : end + 8]
            across = [len(set(row)) == 1 for row in block.tolist()]
            along = [len(set(column)) == 1 for column in block.T.tolist()]
            assert ([True] * 8, [False] * 8) == ((across, along) if pick == end else (along, across))


def test_two_and_two_in_plain_weave() -> None:
    """Plain weave, two dark and two light both ways: little pinwheels."""

    assert (
        drawn("""
        # # . #
        # # # .
        # . . .
        . # . .
    """)
        == effect("plain weave", "2 dark, 2 light", "2 dark, 2 light").tolist()
    )


def test_houndstooth() -> None:
    """2/2 twill, four dark and four light both ways: toothed checks."""

    assert (
        drawn("""
        # # # # . . # #
        # # # # # . . #
        # # # # # # . .
        # # # # . # # .
        # # . . . . . .
        . # # . . . . .
        . . # # . . . .
        # . . # . . . .
    """)
        == effect("2/2 twill", "4 dark, 4 light", "4 dark, 4 light").tolist()
    )


def test_houndstooth_is_its_own_ground() -> None:
    """The light teeth are the dark ones moved by four ends and four picks."""
    cloth = effect("houndstooth", "4 dark, 4 light", "4 dark, 4 light")

    assert np.array_equal(~cloth, np.roll(cloth, (4, 4), axis=(0, 1)))


def test_one_colour_hides_the_weave() -> None:
    """Warp and weft of one colour show one colour, whatever the weave."""

    assert effect("2/2 twill", "8 dark", "8 dark").all()


def test_dark_warp_light_weft() -> None:
    """Dark warp and light weft show the drawdown itself."""
    named = named_weave("waffle")
    assert named is not None

    assert np.array_equal(drawdown(named.draft), effect("waffle", "6 dark", "6 light"))
