"""The true repeat of a cloth, and whether two repeats are the same cloth begun at another thread."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Sequence
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

LARGEST = 4_000_000
"""Crossings of a repeat that is held against another at every shift; of a larger one only as it stands."""


LONGEST = 100
"""The most threads of a draft that is taken for a repeat where nothing in it comes again (judgement)."""


def period(items: Sequence[Hashable]) -> int:
    """After how many threads an order comes again from its beginning; its whole length where it never does.

    A repeat must be seen twice. The last one may be cut short, as a balanced draft's is: so this is for an
    order as it was written, and not for what it found. O(n).
    """
    found = comes_again_after(items)
    return found if found * 2 <= len(items) else len(items)


def comes_again_after(items: Sequence[Hashable]) -> int:
    """After how many threads an order begins again, however little of it comes again: 6 for 1-4, 3-1. O(n)."""
    borders = [0] * len(items)  # the longest beginning that each place ends with
    for place in range(1, len(items)):
        length = borders[place - 1]
        while length and items[place] != items[length]:
            length = borders[length - 1]
        borders[place] = length + (items[place] == items[length])
    return len(items) - (borders[-1] if borders else 0)


def true_repeat(over: NDArray[np.bool_]) -> NDArray[np.bool_]:
    """The smallest block (picks, ends) that makes the whole of a cloth as it was written.

    The last one may be cut short, and only here: whatever is told of a repeat takes it as it is. So is a last thread
    left out that only closes a pattern which is its own mirror image, as in 1-4, 3-1.
    """
    return _cut(over, _without_closing)


def goes_on(over: NDArray[np.bool_], repeat: NDArray[np.bool_]) -> tuple[bool, bool]:
    """Whether picks, and ends, begin again after the true repeat of a cloth: not if it is too long for that."""
    picks, ends = (once < all_ or all_ <= LONGEST for once, all_ in zip(repeat.shape, over.shape, strict=True))
    return picks, ends


def _without_closing(items: Sequence[Hashable]) -> int:
    """The period of an order, of one too short to have one without the last thread where that only closes it.

    Of a pattern that turns on one thread that is the thread that both turns share; 1-4, 4-1 turns on two.
    """
    found, size = period(items), len(items)
    if found < size or not 3 <= size <= LONGEST or size % 2 == 0 or items[0] == items[1]:
        return found
    return size - 1 if all(items[place] == items[-1 - place] for place in range(size // 2)) else size


def whole_repeat(over: NDArray[np.bool_]) -> NDArray[np.bool_]:
    """The smallest block that is set side by side a whole number of times: of a repeat, itself or a part of it."""
    return _cut(over, _in_whole_times)


def _in_whole_times(items: Sequence[Hashable]) -> int:
    found = comes_again_after(items)
    return found if len(items) % found == 0 else len(items)


def _cut(over: NDArray[np.bool_], repeats_after: Callable[[Sequence[Hashable]], int]) -> NDArray[np.bool_]:
    picks, ends = (repeats_after([thread.tobytes() for thread in table]) for table in (over, over.T))
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
