"""How far threads run without being crossed, which is where cloth snags and slips."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

System = Literal["warp", "weft"]
Side = Literal["face", "back"]

MOST_PLACES = 1_000
"""Floats whose places are listed."""

AT_ONCE = 4_000_000
"""Crossings looked at in one go: numbers of them take thirty times the memory of the cloth."""


@dataclass(frozen=True)
class LongestFloats:
    """The longest floats of a cloth, in crossings; None where a thread is never crossed at all.

    warp: an end over, or under, so many picks. weft: a pick over, or under, so many ends.
    """

    warp: int | None
    weft: int | None


@dataclass(frozen=True)
class Float:
    """The longest floats of one system on one side.

    threads: crossings that they run over; None where a thread is never crossed, 0 where none lies there.
    at: (thread, first crossing) of each, by places from 0: ends and picks of the warp's, picks and ends of the
    weft's; the first thousand of them. in_threads: how many threads have one. layer: of layers on one another
    the one it lies in, the topmost 0; share: how much of the crossed threads are that layer's.
    """

    system: System
    side: Side
    threads: int | None
    at: tuple[tuple[int, int], ...]
    in_threads: int
    layer: int | None = None
    share: float = 1.0

    def mm(self, crossed_per_m: float | None) -> float | None:
        """Its length in the cloth, by the threads to the metre of the system that it crosses, all layers together."""
        return None if not self.threads or not crossed_per_m else self.threads / (crossed_per_m * self.share) * 1000


def longest_floats(over: NDArray[np.bool_]) -> LongestFloats:
    """The longest floats on either side of a cloth of which `over` is one repeat.

    over: shape (picks, ends), True where the warp is over. A float is a longest run of equal
    crossings along one thread, and runs on from the end of the repeat into its beginning.
    """
    runs = run_lengths(over), run_lengths(over.T)
    warp, weft = (None if not run.all() else int(run.max()) for run in runs)
    return LongestFloats(warp, weft)


def floats(over: NDArray[np.bool_], goes_on: tuple[bool, bool] = (True, True)) -> tuple[Float, ...]:
    """The longest floats of warp and weft on face and back, with every place where they begin.

    goes_on: whether the picks, and the ends, begin again after the last one; else floats stop there.
    """
    sides: tuple[Side, Side] = ("face", "back")
    ways: tuple[tuple[System, NDArray[np.bool_], Side, bool], ...] = (
        ("warp", over, "face", goes_on[0]),
        ("weft", over.T, "back", goes_on[1]),
    )
    return tuple(
        _longest(runs, table if side == up else ~table, system, side, joined)
        for system, table, up, joined in ways
        for runs in (run_lengths(table, joined),)
        for side in sides
    )


def _longest(runs: NDArray[np.int32], there: NDArray[np.bool_], system: System, side: Side, joined: bool) -> Float:
    """Of the runs down the columns of a table, the longest that lie where `there` is True."""
    import numpy as np

    endless = np.flatnonzero((runs == 0).all(axis=0) & there.all(axis=0))
    if len(endless):
        return Float(system, side, None, tuple((int(thread), 0) for thread in endless[:MOST_PLACES]), len(endless))
    here = np.where(there, runs, 0)
    longest = int(here.max(initial=0))
    before = np.roll(there, 1, axis=0)
    before[0] &= joined
    begins = there & ~before & (here == longest)
    threads, starts = np.nonzero(begins.T) if longest else (np.empty(0, dtype=int), np.empty(0, dtype=int))
    at = zip(threads[:MOST_PLACES].tolist(), starts[:MOST_PLACES].tolist(), strict=True)
    return Float(system, side, longest, tuple(at), len(np.unique(threads)))


def too_long(
    over: NDArray[np.bool_], warp: int | None, weft: int | None, goes_on: tuple[bool, bool] = (True, True)
) -> NDArray[np.bool_]:
    """The crossings that lie in a float of more than so many threads (shape as `over`); None bears any."""
    import numpy as np

    found = np.zeros(over.shape, dtype=bool)
    for table, most, turned in ((over, warp, False), (over.T, weft, True)):
        if most is not None:
            runs = run_lengths(table, goes_on[turned])
            beyond = (runs > most) | (runs == 0)
            found |= beyond.T if turned else beyond
    return found


def most_whole(threads: float | None) -> int | None:
    """The most whole threads that a float may cross, at least one; None bears any."""
    return None if threads is None else max(1, int(threads + 1e-6))


def run_lengths(table: NDArray[np.bool_], joined: bool = True) -> NDArray[np.int32]:
    """How long the run is that each crossing lies in, down its column and round the repeat where its end is joined to
    its beginning; 0 in a column that never changes (shape as the table)."""
    import numpy as np

    at_once = max(1, AT_ONCE // max(1, len(table)))
    parts = [_runs(table[:, start : start + at_once], joined) for start in range(0, table.shape[1], at_once)]
    return np.concatenate(parts, axis=1) if len(parts) != 1 else parts[0]


def _runs(table: NDArray[np.bool_], joined: bool) -> NDArray[np.int32]:
    import numpy as np

    rows = len(table)
    changes = table != np.roll(table, 1, axis=0)
    crossed = changes.any(axis=0)
    changes[0] |= not joined
    twice = np.concatenate([changes, changes])
    places = np.arange(2 * rows, dtype=np.int32)[:, None]
    since = np.maximum.accumulate(np.where(twice, places, np.int32(-1)), axis=0)
    until = np.minimum.accumulate(np.where(twice, places, np.int32(2 * rows))[::-1], axis=0)[::-1]
    # A crossing's run begins at the last change before it and ends before the next one: seen in the second
    # round for its beginning and in the first for its end.
    begins = since[rows:] - rows
    ends = np.concatenate([until[1:rows], until[rows : rows + 1]])
    found: NDArray[np.int32] = np.where(crossed, ends - begins, 0).astype(np.int32)
    return found
