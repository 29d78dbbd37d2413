"""The few threads that join what would else be whole cloths on one another: mistakes in a double weave."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from itertools import chain
from typing import TYPE_CHECKING

from journal_tools.drafts.hanging import hanging

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

MOST = 3
"""Threads that are left out; more are stitches, and meant (judgement)."""

MOST_TRIED = 128
"""Ends and picks together up to which each is left out by itself."""


@dataclass(frozen=True)
class Binders:
    """ends, picks: the threads by their places from 0 that join the layers; layers: how many there are without."""

    layers: int
    ends: tuple[int, ...]
    picks: tuple[int, ...]


def binders(over: NDArray[np.bool_], each: bool) -> Binders | None:
    """Three ends and picks at most without which a cloth (picks, ends) falls into layers; None where none are found.

    Left out are those that are like few others; each: in a small cloth every single one as well.
    """
    few: tuple[tuple[int, ...], tuple[int, ...]] = _rare(over), _rare(over.T)
    for picks, ends in ((few[0], ()), ((), few[1]), few):
        if 0 < len(picks) + len(ends) <= MOST and _layers(over, picks, ends):
            return _needed(over, picks, ends)
    if not each or sum(over.shape) > MOST_TRIED:
        return None
    singly = chain(
        (((pick,), ()) for pick in range(len(over))),
        (((), (end,)) for end in range(len(over.T))),
    )
    return next((Binders(n, ends, picks) for picks, ends in singly if (n := _layers(over, picks, ends))), None)


def _rare(table: NDArray[np.bool_]) -> tuple[int, ...]:
    """The rows of which there are no more than the most that are left out, all together."""
    rows = [row.tobytes() for row in table]
    times = Counter(rows)
    return tuple(place for place, row in enumerate(rows) if times[row] <= MOST)


def _needed(over: NDArray[np.bool_], picks: tuple[int, ...], ends: tuple[int, ...]) -> Binders:
    """Of the threads left out those without which it holds together."""
    for pick in picks:
        fewer = tuple(other for other in picks if other != pick)
        picks = fewer if _layers(over, fewer, ends) else picks
    for end in ends:
        fewer = tuple(other for other in ends if other != end)
        ends = fewer if _layers(over, picks, fewer) else ends
    return Binders(_layers(over, picks, ends), ends, picks)


def _layers(over: NDArray[np.bool_], picks: tuple[int, ...], ends: tuple[int, ...]) -> int:
    """Into how many layers a cloth falls without some threads; 0 where it does not."""
    import numpy as np

    left = np.delete(np.delete(over, picks, axis=0), ends, axis=1)
    if not left.size:
        return 0
    found = hanging(left)
    return len(found.layers) if found.verdict == "layers" else 0
