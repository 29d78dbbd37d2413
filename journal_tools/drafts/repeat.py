"""The true repeat of a cloth, and whether two repeats are the same cloth begun at another thread."""

from __future__ import annotations

from collections.abc import Hashable, Sequence
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

LARGEST = 4_000_000
"""Crossings of a repeat that is held against another at every shift; of a larger one only as it stands."""


def period(items: Sequence[Hashable]) -> int:
    """After how many threads an order comes again from its beginning; its whole length where it never does.

    A repeat must be seen twice. The last one may be cut short, as a balanced draft's is. O(n).
    """
    borders = [0] * len(items)  # the longest beginning that each place ends with
    for place in range(1, len(items)):
        length = borders[place - 1]
        while length and items[place] != items[length]:
            length = borders[length - 1]
        borders[place] = length + (items[place] == items[length])
    found = len(items) - (borders[-1] if borders else 0)
    return found if found * 2 <= len(items) else len(items)


def true_repeat(over: NDArray[np.bool_]) -> NDArray[np.bool_]:
    """The smallest block (picks, ends) that makes the whole cloth when it is set side by side."""
    picks, ends = period([row.tobytes() for row in over]), period([column.tobytes() for column in over.T])
    return over[:picks, :ends]


def same_begun_elsewhere(one: NDArray[np.bool_], other: NDArray[np.bool_]) -> bool:
    """Whether two repeats are equal once one is begun at another end and another pick."""
    import numpy as np

    if one.shape != other.shape or one.sum() != other.sum():
        return False
    if one.size > LARGEST:
        return bool((one == other).all())
    a, b = (np.fft.rfft2(np.where(table, 1.0, -1.0)) for table in (one, other))
    alike = np.fft.irfft2(a * np.conj(b), s=one.shape)  # crossings that agree less those that differ, at every shift
    return bool(np.round(alike.max()) == one.size)
