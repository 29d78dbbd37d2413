"""The whole width of a cloth, from edge to edge, as a low strip in the cloth's proportions.

A card shows the part of a cloth that has most in it. Of a warp with broad stripes and borders that
is a corner, and what a cloth looks like on a table only the whole width tells.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from io import BytesIO

import numpy as np
from numpy.typing import NDArray

from journal_tools.pictures.cloth import MOST_PIXELS, cloth_picture, thread_pixels

WIDEST = 1200
"""Pixels that a strip is wide at most; threads of a wider one run together, as they do from afar."""
HEIGHT = 72
LARGEST = 8
SMALLEST = 2
"""Pixels to a thread in a strip that is not drawn smaller afterwards."""
COLOURS = 128


def strip_size(ends: int, epi: float, ppi: float) -> tuple[int, int] | None:
    """Width and height in pixels of the strip of so many ends; None for more ends than can be drawn."""
    wide = ends * thread_pixels(epi, ppi, _per_thread(ends, epi, ppi))[0]
    if wide * max(1, wide // WIDEST) * HEIGHT > MOST_PIXELS:
        return None
    return min(wide, WIDEST), HEIGHT


def strip_picture(over: NDArray[np.bool_], warp: Sequence[str], weft: Sequence[str], epi: float, ppi: float) -> bytes:
    """A palette PNG of every end once, first at the left; the arguments are those of `cloth_picture`.

    Raises ValueError where `strip_size` gives None.
    """
    size = strip_size(len(warp), epi, ppi)
    if size is None:
        raise ValueError(f"{len(warp)} ends are too many for a strip.")
    per_thread = _per_thread(len(warp), epi, ppi)
    wide = len(warp) * thread_pixels(epi, ppi, per_thread)[0]
    high = round(size[1] * wide / size[0])
    png = cloth_picture(over, warp, weft, epi, ppi, width_px=wide, height_px=high, px_per_thread=per_thread)
    if wide == size[0]:
        return png
    from PIL import Image

    drawn = BytesIO()
    with Image.open(BytesIO(png)) as whole:
        whole.convert("RGB").resize(size, Image.Resampling.BOX).quantize(COLOURS).save(drawn, "PNG")
    return drawn.getvalue()


@lru_cache(maxsize=1_000)  # towels are much alike
def _per_thread(ends: int, epi: float, ppi: float) -> int:
    """The largest threads with which so many ends are no wider than a strip, else the smallest."""
    sizes = range(LARGEST, SMALLEST - 1, -1)
    return next((px for px in sizes if ends * thread_pixels(epi, ppi, px)[0] <= WIDEST), SMALLEST)
