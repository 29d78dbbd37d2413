"""How far threads run without being crossed, which is where cloth snags and slips."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray


@dataclass(frozen=True)
class LongestFloats:
    """The longest floats of a cloth, in crossings; None where a thread is never crossed at all.

    warp: an end over, or under, so many picks. weft: a pick over, or under, so many ends.
    """

    warp: int | None
    weft: int | None


def longest_floats(over: NDArray[np.bool_]) -> LongestFloats:
    """The longest floats on either side of a cloth of which `over` is one repeat.

    over: shape (picks, ends), True where the warp is over. A float is a longest run of equal
    crossings along one thread, and runs on from the end of the repeat into its beginning.
    """
    return LongestFloats(warp=_longest_run(over), weft=_longest_run(over.T))


def _longest_run(crossings: NDArray[np.bool_]) -> int | None:
    """The longest run down the columns, or None where a column never changes."""
    import numpy as np

    if bool((crossings == crossings[0]).all(axis=0).any()):
        return None
    run = np.ones(crossings.shape[1], dtype=np.int64)
    longest = 1
    # Twice round: a run that crosses the end of the repeat is whole the second time.
    for before, here in zip([*crossings, *crossings], [*crossings[1:], *crossings], strict=False):
        run = np.where(here == before, run + 1, 1)
        longest = max(longest, int(run.max()))
    return longest
