"""Cloth that prints as large as it is: its pixels carry how many of them make a metre."""

from __future__ import annotations

import struct
import zlib
from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from journal_tools.pictures.cloth import cloth_picture, thread_pixels
from journal_tools.pictures.uneven import uneven_picture
from journal_tools.pictures.unevenness import EVEN, Unevenness

HEAD = 33
"""Bytes of a PNG's signature and first chunk."""

PX = 12
"""Pixels to a thread: 300 to the inch at 25 ends."""

MOST = 6_000_000
"""Pixels of a picture to print: 4 by 3 inches at 700 to the inch."""

INCH_M = 0.0254


def real_size_picture(
    over: NDArray[np.bool_],
    warp: Sequence[str],
    weft: Sequence[str],
    epi: float,
    ppi: float,
    size: tuple[float, float],
    uneven: Unevenness = EVEN,
) -> bytes:
    """A palette PNG of a cloth as large as `size`, inches across and down, with threads of their true width.

    over, warp, weft, epi, ppi: as `cloth_picture` has them, usual threads to the inch. A program that prints
    it by its own measure prints it in real size. Raises ValueError for threads too fine. Source of the
    measure: PNG, chunk pHYs.
    """
    px = pixels_to_a_thread(epi, ppi, size)
    if not px:
        raise ValueError(f"{epi:g} by {ppi:g} threads to the inch are too fine to be printed in their real size.")
    end_px, pick_px = thread_pixels(epi, ppi, px)
    wide, high = round(size[0] * epi * end_px), round(size[1] * ppi * pick_px)
    if uneven.is_even:
        png = cloth_picture(over, warp, weft, epi, ppi, width_px=wide, height_px=high, px_per_thread=px)
    else:
        png = uneven_picture(over, warp, weft, epi, ppi, uneven, width_px=wide, height_px=high, px_per_thread=px)
    return with_density(png, end_px * epi / INCH_M, pick_px * ppi / INCH_M)


def pixels_to_a_thread(epi: float, ppi: float, size: tuple[float, float]) -> int:
    """About how many pixels a thread of a real-size picture has, fewer in a fine cloth; 0 for one that is too fine."""
    for px in range(PX, 0, -1):
        end_px, pick_px = thread_pixels(epi, ppi, px)
        if size[0] * epi * end_px * size[1] * ppi * pick_px <= MOST:
            return px
    return 0


def with_density(png: bytes, across_per_m: float, down_per_m: float) -> bytes:
    """A PNG that says how many of its pixels make a metre."""
    body = b"pHYs" + struct.pack(">IIB", round(across_per_m), round(down_per_m), 1)
    chunk = struct.pack(">I", len(body) - 4) + body + struct.pack(">I", zlib.crc32(body))
    return png[:HEAD] + chunk + png[HEAD:]
