"""Drawdowns and drafts, by their pixels."""

from __future__ import annotations

import io

import numpy as np
import pytest
from numpy.typing import NDArray
from PIL import Image

from journal_tools.drafts import Draft, drawdown, named_weave, parse_lift_plan, parse_threading
from journal_tools.pictures.draft_drawing import Window, draft_picture
from journal_tools.pictures.drawdown import colour_drawdown_picture, drawdown_picture
from journal_tools.pictures.png import png_size
from tests.pictures.pixels import over, pixels


def dark(png: bytes) -> NDArray[np.bool_]:
    """True where a pixel is dark."""
    return pixels(png).mean(axis=2) < 128


def test_a_pixel_a_crossing() -> None:
    """Every crossing is one pixel, dark where the warp is over."""

    assert np.array_equal(over("huck lace"), dark(drawdown_picture(over("huck lace"))))


def test_one_bit_a_pixel() -> None:
    """A drawdown of 240 ends by 240 picks takes less than a kilobyte."""
    png = drawdown_picture(np.tile(over("huck lace"), (24, 24)))

    assert (240, 240) == png_size(png)
    assert b"\x01\x03" == png[24:26]  # bit depth 1, palette: from the PNG specification
    assert len(png) < 1000


def test_larger_cells() -> None:
    """Larger cells are the same crossings, square by square."""
    cells = dark(drawdown_picture(over("2/2 twill"), cell_px=3))

    assert np.array_equal(over("2/2 twill").repeat(3, axis=0).repeat(3, axis=1), cells)


def test_colours() -> None:
    """Each crossing has just the colour of the thread on top."""
    seen = pixels(colour_drawdown_picture(over("plain weave"), ["ff0000", "00ff00"], ["0000ff"]))

    assert [[[255, 0, 0], [0, 0, 255]], [[0, 0, 255], [0, 255, 0]]] == seen.tolist()


def test_too_many_colours() -> None:
    """More colours than a palette holds are refused."""
    with pytest.raises(ValueError, match="257 colours"):
        colour_drawdown_picture(np.ones((1, 257), dtype=bool), [f"{n:06x}" for n in range(257)], ["000000"])


class TestDraft:
    CELL = 7

    def cells(self, png: bytes) -> NDArray[np.bool_]:
        """The middle of every cell: True where it is black."""
        seen = dark(png)
        return seen[self.CELL // 2 :: self.CELL, self.CELL // 2 :: self.CELL]

    def test_parts(self) -> None:
        """Threading above with shaft 1 at its foot, tie-up in the corner, treadling beside the drawdown."""
        named = named_weave("rosepath")
        assert named is not None
        draft = named.draft
        assert draft.tie_up is not None
        assert draft.treadling is not None
        cells = self.cells(draft_picture(draft, cell_px=self.CELL))

        assert (4 + 1 + 8, 8 + 1 + 4) == cells.shape
        for end, shafts in enumerate(draft.threading):
            assert {s for s in range(1, 5) if cells[4 - s, end]} == shafts
        for treadle, shafts in enumerate(draft.tie_up):
            assert {s for s in range(1, 5) if cells[4 - s, 9 + treadle]} == shafts
        for pick, treadles in enumerate(draft.treadling):
            assert {t for t in range(1, 5) if cells[5 + pick, 8 + t]} == treadles
        assert np.array_equal(drawdown(draft), cells[5:, :8])
        assert not cells[4].any()
        assert not cells[:, 8].any()

    def test_lift_plan(self) -> None:
        """A lift plan stands where the treadling would, and nothing in the corner."""
        draft = Draft(parse_threading("1-3"), lift_plan=parse_lift_plan("1+2, 3"))
        cells = self.cells(draft_picture(draft, cell_px=self.CELL))

        assert [[True, True, False], [False, False, True]] == cells[4:, 4:].tolist()
        assert not cells[:3, 4:].any()

    def test_long_drafts_are_cut(self) -> None:
        """Of a long draft its first ends and picks are drawn."""
        draft = Draft(parse_threading("100 times (1-4)"), lift_plan=parse_lift_plan("100 times (1+2, 2+3, 3+4, 4+1)"))

        assert ((20 + 1 + 4) * 7 + 1, (4 + 1 + 10) * 7 + 1) == png_size(
            draft_picture(draft, Window(most_ends=20, most_picks=10))
        )

    def test_few_colours(self) -> None:
        """A draft is drawn in ink, ground and ruling alone."""
        named = named_weave("plain weave")
        assert named is not None
        drawn = Image.open(io.BytesIO(draft_picture(named.draft))).convert("RGB")

        assert 3 == len(drawn.getcolors() or ())
