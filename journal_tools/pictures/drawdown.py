"""The interlacement drawn flat: black squares, warp over weft, on a ground.

First end at the left and first pick at the top, as they are written.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from journal_tools.pictures.colour import parse_hex
from journal_tools.pictures.png import palette_png

INK, GROUND = "22201c", "fffdf7"


def drawdown_picture(over: NDArray[np.bool_], *, cell_px: int = 1, ink: str = INK, ground: str = GROUND) -> bytes:
    """A PNG of one bit a pixel, cell_px pixels a crossing; enlarge it without smoothing.

    over: shape (picks, ends), True, in ink, where the warp is over the weft.
    """
    return palette_png(enlarged(over.astype(np.uint8), cell_px), [parse_hex(ground), parse_hex(ink)])


def colour_drawdown_picture(
    over: NDArray[np.bool_], warp: Sequence[str], weft: Sequence[str], *, cell_px: int = 1
) -> bytes:
    """A palette PNG in which every crossing has the colour of the thread on top.

    warp, weft: the colour of each end and pick as hex; a shorter list begins again. Raises
    Unreadable for a colour that is none, ValueError for more than 256 colours.
    """
    palette = list(dict.fromkeys(map(parse_hex, (*warp, *weft))))
    if len(palette) > 256:
        raise ValueError(f"{len(palette)} colours are too many for one picture: 256 at most.")
    number = {colour: place for place, colour in enumerate(palette)}
    ends = np.resize([number[parse_hex(text)] for text in warp], over.shape[1])
    picks = np.resize([number[parse_hex(text)] for text in weft], over.shape[0])
    cells = np.where(over, ends[None, :], picks[:, None]).astype(np.uint8)
    return palette_png(enlarged(cells, cell_px), palette)


def enlarged(cells: NDArray[np.uint8], cell_px: int) -> NDArray[np.uint8]:
    """Every cell as so many pixels both ways."""
    return cells.repeat(cell_px, axis=0).repeat(cell_px, axis=1)
