"""The interlacement drawn flat, and the draft that makes it: black squares on a ground.

First end at the left and first pick at the top, as they are written. A black square is warp over
weft, a heddle, a tie, or a treadle pressed.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from journal_tools.drafts import Draft, Sets, drawdown
from journal_tools.pictures.colour import parse_hex
from journal_tools.pictures.png import palette_png

INK, GROUND, RULING = "22201c", "fffdf7", "e2dbcb"


def drawdown_picture(over: NDArray[np.bool_], *, cell_px: int = 1, ink: str = INK, ground: str = GROUND) -> bytes:
    """A PNG of one bit a pixel, cell_px pixels a crossing; enlarge it without smoothing.

    over: shape (picks, ends), True, in ink, where the warp is over the weft.
    """
    return palette_png(_enlarged(over.astype(np.uint8), cell_px), [parse_hex(ground), parse_hex(ink)])


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
    return palette_png(_enlarged(cells, cell_px), palette)


def draft_picture(draft: Draft, *, most_ends: int = 48, most_picks: int = 48, cell_px: int = 7) -> bytes:
    """A PNG of the whole draft: threading above, treadling at the right, tie-up where they meet.

    Shaft 1 is the row next to the drawdown, treadle 1 the column next to it. With a lift plan the
    shafts stand where the treadles would, and the corner is empty. Longer drafts are cut.
    """
    threading = _squares(draft.threading[:most_ends], draft.shafts)[:, ::-1].T
    if draft.tie_up is not None and draft.treadling is not None:
        side = _squares(draft.treadling[:most_picks], draft.treadles)
        corner = _squares(draft.tie_up, draft.shafts)[:, ::-1].T
    else:
        side = _squares(draft.picks[:most_picks], draft.shafts)
        corner = np.zeros((0, 0), dtype=bool)
    cloth = drawdown(draft)[:most_picks, :most_ends]
    gap = 1  # cells between the four parts
    shafts, ends = threading.shape
    picks, columns = side.shape
    sheet = np.zeros(((shafts + gap + picks) * cell_px + 1, (ends + gap + columns) * cell_px + 1), np.uint8)
    for part, row, column in (
        (threading, 0, 0),
        (corner, 0, ends + gap),
        (cloth, shafts + gap, 0),
        (side, shafts + gap, ends + gap),
    ):
        _rule(sheet, part, row * cell_px, column * cell_px, cell_px)
    return palette_png(sheet, [parse_hex(GROUND), parse_hex(INK), parse_hex(RULING)])


def draft_picture_size(draft: Draft, *, most_ends: int = 48, most_picks: int = 48, cell_px: int = 7) -> tuple[int, int]:
    """Width and height in px of the picture that `draft_picture` draws."""
    beside = draft.treadles if draft.tie_up is not None and draft.treadling is not None else draft.shafts
    across = min(len(draft.threading), most_ends) + 1 + beside
    down = draft.shafts + 1 + min(len(draft.picks), most_picks)
    return across * cell_px + 1, down * cell_px + 1


def _rule(sheet: NDArray[np.uint8], part: NDArray[np.bool_], top: int, left: int, cell_px: int) -> None:
    """Draw a part of a draft: ruled cells, filled where there is a square."""
    rows, columns = part.shape
    if not part.size:
        return
    area = sheet[top : top + rows * cell_px + 1, left : left + columns * cell_px + 1]
    area[:-1, :-1] = _enlarged(part.astype(np.uint8), cell_px)
    area[::cell_px, :] = 2
    area[:, ::cell_px] = 2


def _squares(sets: Sets, numbers: int) -> NDArray[np.bool_]:
    """Shape (sets, numbers): True where a set has the shaft or treadle."""
    return np.array([[n in some for n in range(1, numbers + 1)] for some in sets], dtype=bool)


def _enlarged(cells: NDArray[np.uint8], cell_px: int) -> NDArray[np.uint8]:
    return cells.repeat(cell_px, axis=0).repeat(cell_px, axis=1)
