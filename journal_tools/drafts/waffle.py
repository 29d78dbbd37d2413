"""Waffles of any number of shafts, told by how they are made.

Ends and picks stand in cells that are their own mirror images, sideways and upright. From the wall of a cell,
where a float of the one system is longest, floats grow shorter by a step with each end and each pick, go over
into plain weave, and grow again to the longest float of the other system (common practice, no source). So a
crossing depends only on its steps from the corner of the cell, ends and picks together: alike for some steps,
then over and under in turn, then alike on the other side.
"""

from __future__ import annotations

from itertools import groupby
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

LEAST_THREADS, MOST_THREADS = 4, 40
"""Ends from the wall to the middle of the smallest cell, and of the largest that is looked for (judgement)."""


def is_waffle(repeat: NDArray[np.bool_]) -> bool:
    """Whether a repeat (picks, ends) is one cell of a waffle, wherever it begins."""
    import numpy as np

    size = len(repeat)
    half = size // 2 + 1
    if repeat.shape != (size, size) or size % 2 or not LEAST_THREADS <= half <= MOST_THREADS:
        return False
    upright, sideways = _mirrors(repeat), _mirrors(repeat.T)
    return any(
        _is_cell(np.roll(repeat, (-pick, -end), axis=(0, 1))[:half, :half]) for pick in upright for end in sideways
    )


def _mirrors(table: NDArray[np.bool_]) -> list[int]:
    """The rows about which a table that goes round is its own mirror image."""
    import numpy as np

    steps = np.arange(len(table))
    return [row for row in range(len(table)) if np.array_equal(table[(row + steps) % len(table)], table[row - steps])]


def _is_cell(quarter: NDArray[np.bool_]) -> bool:
    """Whether crossings change from one corner to the other as a waffle's do."""
    import numpy as np

    by_steps = np.array([*quarter[0], *quarter[1:, -1]])
    steps = np.indices(quarter.shape).sum(axis=0)
    if not np.array_equal(by_steps[steps], quarter):
        return False
    runs = [len(list(alike)) for _, alike in groupby(by_steps.tolist())]
    walls, between = (runs[0], runs[-1]), runs[1:-1]
    differ = bool(by_steps[0] != by_steps[-1])
    return differ and min(walls) >= 2 and max(walls) >= 3 and len(between) >= 2 and set(between) == {1}
