"""A whole draft as the trade's books draw it: threading, tie-up, treadling or lifts, and the drawdown.

First end at the left and first pick at the top, as they are written. A black square is warp over
weft, a heddle, a tie, or a treadle pressed.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from journal_tools.drafts import Draft, Sets, drawdown
from journal_tools.pictures.colour import RGB, parse_hex
from journal_tools.pictures.digits import HIGH, WIDE, number_mask
from journal_tools.pictures.drawdown import GROUND, INK, enlarged
from journal_tools.pictures.png import palette_png

RULING, EIGHTH = "e2dbcb", "a89e88"
NUMBERED = 8
"""Every so manieth thread has its number; a drawing of fewer threads has none."""

GAP = 1
"""Cells between the parts of a draft."""

MOST_STRIPES = 250
"""Colours that a picture can hold beside its own; more are drawn as the nearest of these."""


@dataclass(frozen=True)
class Window:
    """The part of a draft that one drawing shows: ends and picks from the first (from 0), at most so many."""

    first_end: int = 0
    first_pick: int = 0
    most_ends: int = 48
    most_picks: int = 48

    def tiles(self, ends: int, picks: int) -> tuple[Window, ...]:
        """The windows of this size that show a whole draft, row by row."""
        return tuple(
            Window(end, pick, self.most_ends, self.most_picks)
            for pick in range(0, picks, self.most_picks)
            for end in range(0, ends, self.most_ends)
        )


def draft_picture(
    draft: Draft,
    window: Window | None = None,
    *,
    cell_px: int = 7,
    marked: NDArray[np.bool_] | None = None,
    warp: Sequence[str] = (),
    weft: Sequence[str] = (),
    numbered: bool = False,
) -> bytes:
    """A PNG of a draft: threading above, treadling at the right, tie-up where they meet.

    Shaft 1 is the row next to the drawdown, treadle 1 the column next to it; every eighth line is darker.
    With a lift plan the shafts stand where the treadles would, and the corner is empty. marked: crossings
    (picks, ends) that get a dot. warp, weft: hex of each thread, drawn along the edges, begun again when short.
    numbered: every eighth thread has its number, ends above and picks at the right.
    """
    window = window or Window()
    ends = slice(window.first_end, window.first_end + window.most_ends)
    picks = slice(window.first_pick, window.first_pick + window.most_picks)
    threading = _squares(draft.threading[ends], draft.shafts)[:, ::-1].T
    if draft.tie_up is not None and draft.treadling is not None:
        side = _squares(draft.treadling[picks], draft.treadles)
        corner = _squares(draft.tie_up, draft.shafts)[:, ::-1].T
    else:
        side = _squares(draft.picks[picks], draft.shafts)
        corner = np.zeros((0, 0), dtype=bool)
    cloth = drawdown(draft)[picks, ends]
    shafts, across = threading.shape
    down, columns = side.shape
    strip = 2 if warp or weft else 0
    wide, high = draft_picture_size(draft, window, cell_px=cell_px, coloured=bool(strip), numbered=numbered)
    whole = np.zeros((high, wide), np.uint8)
    sheet = whole[_numbers_above(across, cell_px) if numbered else 0 :]
    for part, row, column in (
        (threading, strip, 0),
        (corner, strip, across + GAP),
        (cloth, strip + shafts + GAP, 0),
        (side, strip + shafts + GAP, across + GAP),
    ):
        _rule(sheet, part, row * cell_px, column * cell_px, cell_px)
    if marked is not None:
        _dot(sheet, marked[picks, ends], cloth, (strip + shafts + GAP) * cell_px, cell_px)
    palette = [parse_hex(GROUND), parse_hex(INK), parse_hex(RULING), parse_hex(EIGHTH)]
    if numbered:
        _number(whole, sheet, window, (across, down, columns + strip), strip + shafts + GAP, cell_px)
    if strip:
        palette += _stripes(sheet, window, (across, down, columns), strip + shafts + GAP, (warp, weft), cell_px)
    return palette_png(whole, palette)


def draft_picture_size(
    draft: Draft, window: Window | None = None, *, cell_px: int = 7, coloured: bool = False, numbered: bool = False
) -> tuple[int, int]:
    """Width and height in px of the picture that `draft_picture` draws. coloured, numbered: along its edges."""
    window = window or Window()
    beside = draft.treadles if draft.tie_up is not None and draft.treadling is not None else draft.shafts
    strip = 2 if coloured else 0
    ends = min(len(draft.threading) - window.first_end, window.most_ends)
    picks = min(len(draft.picks) - window.first_pick, window.most_picks)
    across = ends + GAP + beside + strip
    last = window.first_pick + picks
    wide, high = across * cell_px + 1, (strip + draft.shafts + GAP + picks) * cell_px + 1
    if not numbered:
        return wide, high
    return wide + _numbers_beside(picks, last, cell_px), high + _numbers_above(ends, cell_px)


def _numbers_above(ends: int, cell_px: int) -> int:
    """Pixels above a drawing for the numbers of its ends; none in a small one."""
    return (HIGH + 2) * _scale(cell_px) if ends >= NUMBERED else 0


def _numbers_beside(picks: int, last: int, cell_px: int) -> int:
    """Pixels at the right of a drawing for the numbers of its picks."""
    return ((WIDE + 1) * len(str(last)) + 1) * _scale(cell_px) if picks >= NUMBERED else 0


def _scale(cell_px: int) -> int:
    return max(1, cell_px // 6)


def _number(
    whole: NDArray[np.uint8],
    sheet: NDArray[np.uint8],
    window: Window,
    sizes: tuple[int, int, int],
    above: int,
    cell_px: int,
) -> None:
    """Write the number of every eighth end above the drawing, of every eighth pick at its right."""
    across, down, beside = sizes
    scale = _scale(cell_px)
    for place in range(NUMBERED - 1, across, NUMBERED):
        mask = number_mask(window.first_end + place + 1, scale)
        right = (place + 1) * cell_px
        whole[scale : scale + mask.shape[0], right - mask.shape[1] : right][mask] = 1
    left = (across + GAP + beside) * cell_px + 2 * scale
    for place in range(NUMBERED - 1, down, NUMBERED):
        mask = number_mask(window.first_pick + place + 1, scale)
        top = (above + place) * cell_px + (cell_px - mask.shape[0] + 1) // 2
        sheet[top : top + mask.shape[0], left : left + mask.shape[1]][mask] = 1


def _rule(sheet: NDArray[np.uint8], part: NDArray[np.bool_], top: int, left: int, cell_px: int) -> None:
    """Draw a part of a draft: ruled cells, filled where there is a square."""
    rows, columns = part.shape
    if not part.size:
        return
    area = sheet[top : top + rows * cell_px + 1, left : left + columns * cell_px + 1]
    area[:-1, :-1] = enlarged(part.astype(np.uint8), cell_px)
    area[::cell_px, :] = 2
    area[:, ::cell_px] = 2
    area[NUMBERED * cell_px :: NUMBERED * cell_px, :] = 3
    area[:, NUMBERED * cell_px :: NUMBERED * cell_px] = 3


def _dot(sheet: NDArray[np.uint8], marked: NDArray[np.bool_], cloth: NDArray[np.bool_], top: int, cell_px: int) -> None:
    """A dot in the middle of the marked cells, of the ground in a filled one and of ink in an empty one."""
    start, stop = cell_px // 2, cell_px // 2 + max(1, cell_px // 3)
    for pick, end in np.argwhere(marked):
        row, column = top + pick * cell_px, end * cell_px
        sheet[row + start : row + stop, column + start : column + stop] = 0 if cloth[pick, end] else 1


def _stripes(
    sheet: NDArray[np.uint8],
    window: Window,
    sizes: tuple[int, int, int],
    above: int,
    colours: tuple[Sequence[str], Sequence[str]],
    cell_px: int,
) -> list[RGB]:
    """Draw the colours of ends along the top and of picks down the right side; what they add to the palette."""
    across, down, columns = sizes
    every = list(dict.fromkeys(parse_hex(text) for order in colours for text in order))
    hexes = every[:MOST_STRIPES]
    place = {colour: 4 + number for number, colour in enumerate(hexes)}
    for colour in every[MOST_STRIPES:]:
        place[colour] = place[min(hexes, key=lambda one: sum((a - b) ** 2 for a, b in zip(one, colour, strict=True)))]
    for order, number, first, upright in (
        (colours[0], across, window.first_end, True),
        (colours[1], down, window.first_pick, False),
    ):
        for thread in range(number if order else 0):
            index = place[parse_hex(order[(first + thread) % len(order)])]
            if upright:
                sheet[1:cell_px, thread * cell_px + 1 : (thread + 1) * cell_px] = index
            else:
                start, left = (above + thread) * cell_px, (across + GAP + columns + 1) * cell_px
                sheet[start + 1 : start + cell_px, left + 1 : left + cell_px] = index
    return hexes


def _squares(sets: Sets, numbers: int) -> NDArray[np.bool_]:
    """Shape (sets, numbers): True where a set has the shaft or treadle."""
    return np.array([[n in some for n in range(1, numbers + 1)] for some in sets], dtype=bool)
