"""Whether the weft catches the outermost end as it turns.

The shuttle leaves at one edge and comes back there with the next pick. It goes round the outermost end
only if that end has changed sides in between; else the weft slips in to the first end that has.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray


@dataclass(frozen=True)
class Selvedge:
    """Turns of one shuttle at each edge in two repeats of the picks, and how many of them miss the outermost end.

    begin: the side to throw the first pick from, "left" or "right", so that fewer are missed.
    """

    turns: int
    missed_left: int
    missed_right: int
    begin: str

    @property
    def catches(self) -> bool:
        """Whether every turn catches."""
        return not self.missed_left and not self.missed_right


def selvedge(over: NDArray[np.bool_]) -> Selvedge:
    """The turns at both edges of a cloth (picks, ends) woven over and over with one shuttle."""
    import numpy as np

    twice = np.concatenate([over, over])  # an odd number of picks comes back to the same side after two repeats
    still = twice == np.roll(twice, -1, axis=0)
    left, right = still[:, 0], still[:, -1]
    from_left = int(right[0::2].sum()), int(left[1::2].sum())  # the first pick ends at the right
    from_right = int(right[1::2].sum()), int(left[0::2].sum())
    best, begin = min((from_left, "left"), (from_right, "right"), key=lambda pair: sum(pair[0]))
    return Selvedge(len(over), best[1], best[0], begin)
