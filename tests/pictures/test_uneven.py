"""Cloth of uneven threads, by the pixels that each thread takes."""

from __future__ import annotations

import io

import numpy as np
from numpy.typing import NDArray
from PIL import Image

from journal_tools.drafts import Draft, parse_lift_plan, parse_threading
from journal_tools.pictures.cloth import cloth_picture
from journal_tools.pictures.draft_drawing import Window, draft_picture, draft_picture_size
from journal_tools.pictures.png import png_size
from journal_tools.pictures.uneven import uneven_picture
from journal_tools.pictures.unevenness import Unevenness

PLAIN = np.indices((2, 2)).sum(axis=0) % 2 == 0
OVER = np.ones((2, 2), dtype=bool)
"""Ends alone are seen: what is red is warp."""

RED, BLUE = "c02020", "2020c0"


def red(png: bytes) -> NDArray[np.bool_]:
    """True where a pixel is warp, of cloth with a red warp and a blue weft."""
    seen = np.asarray(Image.open(io.BytesIO(png)).convert("RGB")).astype(int)
    return seen[:, :, 0] > seen[:, :, 2]


def drawn(over: NDArray[np.bool_], uneven: Unevenness) -> NDArray[np.bool_]:
    """A cloth of 40 by 24 pixels, threads 8 px."""
    return red(uneven_picture(over, [RED], [BLUE], 20, 20, uneven, width_px=40, height_px=24, px_per_thread=8))


def test_even_threads_are_drawn_alike() -> None:
    """Where all threads are alike the picture is the usual one, to the last pixel of its colours."""
    usual = cloth_picture(PLAIN, [RED], [BLUE], 20, 20, width_px=40, height_px=24, px_per_thread=8)

    assert np.array_equal(red(usual), drawn(PLAIN, Unevenness()))
    assert Unevenness((1.0,), (1.0, 1.0)).is_even


def test_crammed_ends_are_narrow() -> None:
    """Ends with half the room are half as wide: twice as many changes of colour in the same width."""
    changes = [
        int((np.diff(drawn(PLAIN, uneven)[4].astype(int)) != 0).sum())
        for uneven in (Unevenness(), Unevenness(warp_room=(0.5,)))
    ]

    assert [4, 9] == changes


def test_a_gap_shows_the_weft() -> None:
    """Beside a spaced end only weft is seen, as wide as the room that is left."""
    row = drawn(OVER, Unevenness(warp_room=(2.0, 1.0)))[4]

    assert [False] * 8 + [True] * 16 + [False] * 8 + [True] * 8 == row.tolist()


def test_a_thick_pick_is_high() -> None:
    """A pick twice as thick takes twice the height, the first at the foot."""
    weft = np.zeros((2, 2), dtype=bool)
    weft[1] = True  # every second pick is under the warp throughout
    column = drawn(weft, Unevenness(weft_thickness=(2.0, 1.0)))[:, 4]

    assert [True] * 8 + [False] * 16 == column.tolist()


class TestTheWholeDrawing:
    DRAFT = Draft(
        parse_threading("25 times (1-4)"),
        lift_plan=parse_lift_plan("20 times (1+2, 2+3, 3+4, 4+1)"),
        warp_colours=("a",),
    )

    def test_tiles_cover_it(self) -> None:
        """A draft of 100 ends and 80 picks is shown by four windows of 64, and each crossing by one of them."""
        tiles = Window(most_ends=64, most_picks=64).tiles(100, 80)

        assert [(0, 0), (64, 0), (0, 64), (64, 64)] == [(one.first_end, one.first_pick) for one in tiles]
        assert [(64 + 1 + 4, 4 + 1 + 64), (36 + 1 + 4, 4 + 1 + 64)] == [
            tuple((side - 1) // 7 for side in png_size(draft_picture(self.DRAFT, one))) for one in tiles[:2]
        ]

    def test_sizes_are_told(self) -> None:
        """The size that is told is the picture's own, with and without colours."""
        for warp in ((), (RED,)):
            png = draft_picture(self.DRAFT, Window(64, 64, 64, 64), warp=warp)
            assert png_size(png) == draft_picture_size(self.DRAFT, Window(64, 64, 64, 64), coloured=bool(warp))

    def test_marked_floats_have_a_dot(self) -> None:
        """A marked crossing has a dot in its middle that is not the colour of its cell."""
        marked = np.zeros((80, 100), dtype=bool)
        marked[0, 0] = marked[0, 3] = True
        plain, dotted = (
            np.asarray(Image.open(io.BytesIO(draft_picture(self.DRAFT, marked=marks))).convert("L"))
            for marks in (None, marked)
        )
        changed = np.argwhere(plain != dotted) // 7

        assert {(5, 0), (5, 3)} == {tuple(cell) for cell in changed.tolist()}
