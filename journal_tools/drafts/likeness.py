"""How alike two cloths are woven, whatever they are called.

Where the repeat begins, which way it is turned or mirrored, which side is up, which system is the warp,
and every colour, do not count. A cloth is told by how often each window of four ends and four picks
comes in it; the distance of two is the share of windows in which they differ.
"""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING

from journal_tools.drafts.repeat import same_begun_elsewhere, whole_repeat

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

WINDOW = 4
MOST = 2_000
"""Ends and picks of a repeat that are looked at."""


def windows(repeat: NDArray[np.bool_]) -> NDArray[np.float64]:
    """How often each window comes in a cloth: shares that add up to 1, alike ones as one.

    repeat: (picks, ends), woven on and on; of a draft as it was written, its true repeat.
    """
    import numpy as np

    once = whole_repeat(repeat)
    picks, ends = (min(size, MOST) for size in once.shape)
    # The windows of the last thread looked at reach on into those that follow it.
    reach = [np.arange(looked + WINDOW - 1) % size for looked, size in zip((picks, ends), once.shape, strict=True)]
    table = once[np.ix_(*reach)]
    code = np.zeros((picks, ends), dtype=np.int64)
    for pick in range(WINDOW):
        for end in range(WINDOW):
            code = 2 * code + table[pick : pick + picks, end : end + ends]
    classes, number = _classes()
    counts = np.bincount(classes[code.ravel()], minlength=number)
    shares: NDArray[np.float64] = counts / code.size
    return shares


def distance(one: NDArray[np.float64], other: NDArray[np.float64]) -> float:
    """The share of windows in which two cloths differ, by their `windows`: 0 for alike, 1 for nothing in common."""
    import numpy as np

    return float(np.abs(one - other).sum() / 2)


def same_cloth(one: NDArray[np.bool_], other: NDArray[np.bool_]) -> bool:
    """Whether two repeats are one and the same cloth, turned, mirrored, begun elsewhere or seen from the back."""
    a, b = whole_repeat(one), whole_repeat(other)
    return any(same_begun_elsewhere(a, changed) for changed in _changed(b))


def _changed(table: NDArray[np.bool_]) -> list[NDArray[np.bool_]]:
    """All that turning, mirroring, exchanging and turning over make of a table."""
    turned = [t[::up, ::side] for t in (table, table.T) for up in (1, -1) for side in (1, -1)]
    return [*turned, *(~each for each in turned)]


@cache
def _classes() -> tuple[NDArray[np.int64], int]:
    """For each of the 65,536 windows the number of its class, and how many classes there are."""
    import numpy as np

    cells = WINDOW * WINDOW
    codes = np.arange(2**cells)
    places = np.arange(cells).reshape(WINDOW, WINDOW)
    bits = (codes[:, None] >> (cells - 1 - np.arange(cells))) & 1
    weights = 1 << np.arange(cells - 1, -1, -1)
    least = codes.copy()
    for order in (t[::up, ::side] for t in (places, places.T) for up in (1, -1) for side in (1, -1)):
        moved = bits[:, order.ravel()]
        least = np.minimum(least, np.minimum(moved @ weights, (1 - moved) @ weights))
    _, classes = np.unique(least, return_inverse=True)
    return classes, int(classes.max()) + 1
