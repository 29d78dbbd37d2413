"""Weaves by name, each against a drawing of it. The drawings are common practice, no source."""

from __future__ import annotations

from itertools import product

import numpy as np
import pytest
from numpy.typing import NDArray

from journal_tools.drafts import Face, NamedWeave, drawdown, longest_floats, named_weave, weave_names

DRAWN = {
    "plain weave": """
        # .
        . #""",
    "2/2 basket": """
        # # . .
        # # . .
        . . # #
        . . # #""",
    "2/2 twill": """
        # # . .
        . # # .
        . . # #
        # . . #""",
    "3/1 twill": """
        # # # .
        . # # #
        # . # #
        # # . #""",
    "1/3 broken twill": """
        # . . .
        . # . .
        . . . #
        . . # .""",
    "herringbone": """
        # # . . # # . . # # . . # # . .
        . # # . . # # . # . . # # . . #
        . . # # . . # # . . # # . . # #
        # . . # # . . # . # # . . # # .""",
    "broken twill": """
        # # . . # # . .
        . # # . # . . #
        . . # # . . # #
        # . . # . # # .""",
    "point twill": """
        # # . . . #
        . # # . # #
        . . # # # .
        # . . # . .
        . . # # # .
        . # # . # #""",
    "5-end satin": """
        . # # # #
        # # . # #
        # # # # .
        # . # # #
        # # # . #""",
    "8-end sateen": """
        # . . . . . . .
        . . . # . . . .
        . . . . . . # .
        . # . . . . . .
        . . . . # . . .
        . . . . . . . #
        . . # . . . . .
        . . . . . # . .""",
    "waffle weave": """
        # . . . . .
        . # . . . #
        # . # . # .
        # # . # . #
        # . # . # .
        . # . . . #""",
    "huck": """
        # . # . # . # . # .
        . . . . . # . # . #
        # . # . # . # . # .
        . . . . . # . # . #
        # . # . # . # . # .
        . # . # . # . # . #
        # . # . # . . . . .
        . # . # . # . # . #
        # . # . # . . . . .
        . # . # . # . # . #""",
    "huck lace": """
        # . # . # . # . # .
        . . . . . # # # # #
        # . # . # . # . # .
        . . . . . # # # # #
        # . # . # . # . # .
        . # . # . # . # . #
        # # # # # . . . . .
        . # . # . # . # . #
        # # # # # . . . . .
        . # . # . # . # . #""",
}


def weave(name: str) -> NamedWeave:
    """A weave that must be known."""
    found = named_weave(name)
    assert found is not None
    return found


def over(name: str) -> NDArray[np.bool_]:
    """One repeat of a weave."""
    return drawdown(weave(name).draft)


def hangs_together(cloth: NDArray[np.bool_]) -> bool:
    """Whether no part of the cloth lifts off, by the row and column test (Clapham 1980, from memory).

    Take the t ends that are most over and the s picks that are least under warp: if they are over
    all others, there and back, they are a layer of their own.
    """
    picks, ends = cloth.shape
    down = sorted(cloth.sum(axis=0).tolist(), reverse=True)
    across = sorted(cloth.sum(axis=1).tolist())
    return all(
        t * (picks - s) - sum(down[:t]) + sum(across[:s]) > 0
        for s, t in product(range(picks + 1), range(ends + 1))
        if (s, t) not in ((0, 0), (picks, ends))
    )


@pytest.mark.parametrize("name", DRAWN)
def test_as_drawn(name: str) -> None:
    """The draft of a named weave gives the interlacement that the trade draws for it."""
    drawing = [[mark == "#" for mark in row.split()] for row in DRAWN[name].strip().splitlines()]

    assert drawing == over(name).tolist()


@pytest.mark.parametrize("name", weave_names())
def test_every_weave_is_cloth(name: str) -> None:
    """Every named weave is found by its own name and hangs together in one layer."""
    found = weave(name)

    assert name == found.name
    assert hangs_together(drawdown(found.draft))


def test_the_test_of_hanging_together() -> None:
    """Plain weave hangs together; two layers of plain weave, one over the other, do not."""
    double = np.array([[1, 0, 0, 0], [1, 1, 1, 0], [0, 0, 1, 0], [1, 0, 1, 1]], dtype=bool)

    assert hangs_together(over("plain weave"))
    assert not hangs_together(double)


@pytest.mark.parametrize(
    ("name", "warp", "weft"),
    [("2/2 twill", 2, 2), ("3/1 twill", 3, 3), ("herringbone", 2, 2), ("5-end satin", 4, 4), ("8-end satin", 7, 7)],
)
def test_floats(name: str, warp: int, weft: int) -> None:
    """A twill floats over its larger figure, a satin over all ends but one; herringbone no longer than its twill."""
    floats = longest_floats(over(name))

    assert (warp, weft) == (floats.warp, floats.weft)


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("plain", "plain weave"),
        ("Tabby", "plain weave"),
        ("plain-weave", "plain weave"),
        ("2/2 twill, double width", "2/2 twill"),
        ("twill 2/2", "2/2 twill"),
        ("2-2 Twill", "2/2 twill"),
        ("2 / 2 twill", "2/2 twill"),
        ("waffle", "waffle weave"),
        ("bird's eye", "point twill"),
        ("bird’s-eye twill", "point twill"),
        ("satin", "5-end satin"),
        ("8-shaft satin", "8-end satin"),
        ("sateen", "5-end sateen"),
        ("hopsack", "2/2 basket"),
        ("warp-faced rep", "warp-faced plain weave"),
        ("weft faced plain weave", "weft-faced plain weave"),
        ("3/1/1/3 twill", "3/1/1/3 twill"),
    ],
)
def test_other_names(text: str, name: str) -> None:
    """A weave is found by its other names, and by words that say no more than its name."""

    assert name == weave(text).name


@pytest.mark.parametrize(
    "text", ["", "double weave", "6-end satin", "2/2/1 twill", "0/2 twill", "99/99 twill", "towel"]
)
def test_no_weave(text: str) -> None:
    """What names no single interlacement has no picture, rather than a wrong one."""

    assert named_weave(text) is None


@pytest.mark.parametrize(
    ("name", "face"),
    [
        ("plain weave", Face.BALANCED),
        ("2/2 twill", Face.BALANCED),
        ("3/1 twill", Face.WARP),
        ("1/3 twill", Face.WEFT),
        ("5-end satin", Face.WARP),
        ("5-end sateen", Face.WEFT),
        ("rep", Face.WARP),
        ("weft-faced", Face.WEFT),
    ],
)
def test_faces(name: str, face: Face) -> None:
    """More of the warp is seen in warp-faced weaves, more of the weft in weft-faced ones."""

    assert face == weave(name).face


def test_proportions_that_nobody_wrote_down() -> None:
    """A density that is known stands; the other is as the weave is usually set."""
    rep = weave("rep")

    assert (60, 12) == rep.proportions(60, 12)
    assert (60, 15) == rep.proportions(60, None)
    assert (48, 12) == rep.proportions(None, 12)
    assert (4, 1) == rep.proportions(None, None)
