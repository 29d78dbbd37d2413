"""Cloths in blocks, told by how they are woven: pattern weft over plain weave and kin, M's and O's.

The definitions are the trade's (common practice, no source). Each is told only where the interlacement leaves no
doubt; many a cloth in blocks has no name here.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from typing import TYPE_CHECKING

from journal_tools.drafts.floats import run_lengths

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

ON_PLAIN = "pattern weft over plain ground"

GROUP = 3
"""Ends together from which on they are a group and not plain weave (judgement)."""


def in_blocks(repeat: NDArray[np.bool_]) -> str:
    """The name of a cloth of which this is a repeat (picks, ends), wherever it begins; "" where it has none."""
    if repeat.shape[0] < 4 or repeat.shape[1] < 4 or repeat.shape[1] % 2:
        return ""
    return _on_plain(repeat) or ("M's and O's" if _are_ms_and_os(repeat) else "")


def _on_plain(repeat: NDArray[np.bool_]) -> str:
    """What has pattern picks, each between two of a plain weave that is left without them."""
    import numpy as np

    odd = np.arange(repeat.shape[1]) % 2 == 0
    ways = [1 if (row == odd).all() else -1 if (row != odd).all() else 0 for row in repeat]
    ground = [way for way in ways if way]
    beside = any(not here and not after for here, after in pairwise([*ways, ways[0]]))
    # Of an odd number of tabby picks two come together where the treadling begins again.
    breaks = sum(here == after for here, after in pairwise([*ground, *ground[:1]]))
    if beside or breaks > len(ground) % 2 or len(ways) - len(ground) < 2:
        return ""
    pattern = repeat[[not way for way in ways]]
    if not any(run == 0 or run >= GROUP for run in run_lengths(pattern.T).flat):
        return ""  # nothing floats
    tied = _blocks_tied_down(pattern)
    if tied:
        return f"summer and winter in {tied} blocks"
    sheds, blocks = (len({line.tobytes() for line in table}) for table in (pattern, pattern.T))
    if sheds == blocks == 2:
        return "monk's belt" if bool((pattern.any(axis=0) & ~pattern.all(axis=0)).all()) else ON_PLAIN
    return f"{ON_PLAIN}, in {blocks} blocks" if sheds == blocks else ON_PLAIN


def _blocks_tied_down(pattern: NDArray[np.bool_]) -> int:
    """The blocks of a summer and winter by its pattern picks; 0 where it is none.

    Every other end ties the pattern weft down, over and under it in turn in every pick; of the ends between,
    the two of a unit go together.
    """
    import numpy as np

    if pattern.shape[1] % 4:
        return 0
    for first in (0, 1):
        ties, others = pattern[:, first::2], pattern[:, 1 - first :: 2]
        in_turn = bool((ties != np.roll(ties, 1, axis=1)).all())
        if not in_turn or len({row.tobytes() for row in ties}) != 2:
            continue
        for begun in (others, np.roll(others, 1, axis=1)):
            units = begun[:, ::2]
            blocks = len({column.tobytes() for column in units.T})
            if blocks > 1 and (units == begun[:, 1::2]).all():
                return blocks
    return 0


def _are_ms_and_os(repeat: NDArray[np.bool_]) -> bool:
    """Whether two pairs of opposite sheds weave turn about, each plain where the other has ends in groups."""
    import numpy as np

    rows = [row.tobytes() for row in repeat]
    different = {row: repeat[place] for place, row in enumerate(rows)}
    if len(different) != 4:
        return False
    opposite = {row: (~table).tobytes() for row, table in different.items()}
    if any(back not in different for back in opposite.values()) or not _turn_about(rows, opposite):
        return False
    one = rows[0]
    other = next(row for row in rows if row not in (one, opposite[one]))
    runs = [run_lengths(different[row][:, None])[:, 0] for row in (one, other)]
    grouped = [(run >= GROUP) | (run == 0) for run in runs]
    return bool((grouped[0] != grouped[1]).all() and all(np.any(each) for each in grouped))


def _turn_about(rows: Sequence[bytes], opposite: dict[bytes, bytes]) -> bool:
    """Whether each pair of sheds weaves at least four picks in turn before the other does."""
    changes = [place for place in range(len(rows)) if rows[place] not in (rows[place - 1], opposite[rows[place - 1]])]
    same = any(rows[place] == rows[place - 1] for place in range(len(rows)))
    lengths = [after - here for here, after in pairwise([*changes, *(each + len(rows) for each in changes[:1])])]
    return not same and bool(lengths) and min(lengths) >= 4
