"""A whole draft in characters, for a terminal: threading above, tie-up and treadling or lifts at the right.

First end at the left and first pick at the top, as they are written; shaft 1 is the row next to the
drawdown, treadle 1 the column next to it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import numpy as np
from numpy.typing import NDArray

from journal_tools.drafts import Draft, drawdown

MOST_WIDE = 78
"""Columns of a drawing; of a draft that takes more the first ends are drawn."""

MOST_PICKS = 64

GAP = "  "
"""Between the drawdown and what stands beside it."""

WARP, WEFT = "█", " "
LONG_WARP, LONG_WEFT = "▓", "░"
"""Crossings in a float that is longer than it may be, warp over and weft over."""

MARKED = "are crossings in a float that is longer than its use bears."
WAYS = "End 1 is at the left and pick 1 at the top; on the loom the cloth grows upwards."


def text_drawing(draft: Draft, marked: NDArray[np.bool_] | None = None, whole: str = "") -> Iterator[str]:
    """The lines of the drawing and, below, what they mean.

    marked: crossings (picks, ends) in floats too long. whole: how the reader gets the whole drawing of a draft
    that is cut here, such as `--to whole.png`.
    """
    tied = draft.tie_up if draft.treadling is not None else None
    side = draft.treadling if tied is not None and draft.treadling is not None else draft.picks
    columns = len(tied) if tied is not None else draft.shafts
    # Two characters make a square, about; where they do not fit, one does.
    cell = 2 if (len(draft.threading) + columns) * 2 + len(GAP) <= MOST_WIDE else 1
    room = (MOST_WIDE - len(GAP)) // cell - columns
    beside = room >= min(len(draft.threading), MOST_WIDE // 2)
    ends = len(draft.threading[: room if beside else MOST_WIDE])
    picks = len(side[:MOST_PICKS])
    for shaft in range(draft.shafts, 0, -1):
        row = _numbers([shaft in end for end in draft.threading[:ends]], [shaft] * ends, cell)
        corner = "".join(_cell("x" if shaft in treadle else ".", cell) for treadle in tied or ())
        yield f"{row}{GAP}{corner if beside else ''}".rstrip()
    yield ""
    over = drawdown(draft)[:picks, :ends]
    long = np.zeros(over.shape, dtype=bool) if marked is None else marked[:picks, :ends]
    signs = {(True, False): WARP, (False, False): WEFT, (True, True): LONG_WARP, (False, True): LONG_WEFT}
    for pick in range(picks):
        row = "".join(signs[bool(up), bool(far)] * cell for up, far in zip(over[pick], long[pick], strict=True))
        pressed = _numbers([n in side[pick] for n in range(1, columns + 1)], range(1, columns + 1), cell)
        yield f"{row}{GAP}{pressed if beside else ''}".rstrip()
    yield ""
    yield WAYS
    what = "treadling does" if tied is not None else "lifts do"
    if not beside:
        yield f"The {what} not fit beside it{f': {whole} has all' if whole else ''}."
    if ends < len(draft.threading) or picks < len(draft.picks):
        shown = f"the first {ends} of {len(draft.threading)} ends and {picks} of {len(draft.picks)} picks"
        yield f"These are {shown}{f': {whole} has all' if whole else ''}."
    if marked is not None and marked.any():
        yield f"{LONG_WARP * cell} (warp) and {LONG_WEFT * cell} (weft) {MARKED}"


def _numbers(there: Sequence[bool], numbers: Sequence[int], cell: int) -> str:
    """A row of a threading or treadling: the last digit of each number that is there, a point elsewhere."""
    return "".join(_cell(str(n % 10) if said else ".", cell) for said, n in zip(there, numbers, strict=True))


def _cell(sign: str, cell: int) -> str:
    return sign + " " * (cell - 1)
