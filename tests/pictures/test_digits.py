"""Figures in a drawing."""

from __future__ import annotations

import io

import numpy as np
from PIL import Image

from journal_tools.drafts import Draft
from journal_tools.notation import parse_lift_plan, parse_threading
from journal_tools.pictures.digits import number_mask
from journal_tools.pictures.draft_drawing import Window, draft_picture, draft_picture_size
from journal_tools.pictures.png import png_size

DRAFT = Draft(parse_threading("25 times (1-4)"), lift_plan=parse_lift_plan("20 times (1+2, 2+3, 3+4, 4+1)"))


def test_every_number_looks_otherwise() -> None:
    """No two numbers up to 999 are drawn alike."""
    assert 999 == len({(number_mask(n).shape, number_mask(n).tobytes()) for n in range(1, 1000)})


def test_numbers_stand_at_their_threads() -> None:
    """Over the eighth end of the second piece stands 72, beside its sixteenth pick 80, and the size is told."""
    window = Window(64, 64, 64, 64)
    png = draft_picture(DRAFT, window, cell_px=6, numbered=True)
    dark = np.asarray(Image.open(io.BytesIO(png)).convert("L")) < 60
    size = draft_picture_size(DRAFT, window, cell_px=6, numbered=True)
    beside = (36 + 1 + 4) * 6 + 2

    assert png_size(png) == size
    assert np.array_equal(number_mask(72), dark[1:6, 8 * 6 - 7 : 8 * 6])
    assert np.array_equal(number_mask(80), dark[7 + (5 + 15) * 6 + 1 :, beside : beside + 7][:5])
