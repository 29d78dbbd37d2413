"""Does a cloth hang together, and if not, what lies on what?

Threads are nodes and every crossing an arc from the upper thread to the lower one; the pieces that
cannot be taken apart are the strong components. In a weave they come in one order, top to bottom,
and are found from sums alone: with the ends sorted by how often they are over and the picks by how
seldom the warp is over them, the topmost t ends and s picks lift off where

    E(s, t) = t (m − s) − (sum of the t largest end sums) + (sum of the s smallest pick sums) = 0.

Source: the row and column test ascribed to C. R. J. Clapham, Bull. London Math. Soc. 12 (1980) 161-164
(from memory); tested against strong components by two libraries.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray


@dataclass(frozen=True)
class Part:
    """Threads that hold one another: ends and picks by their places from 0, in order. One thread alone is loose."""

    ends: tuple[int, ...]
    picks: tuple[int, ...]

    @property
    def is_woven(self) -> bool:
        """Whether ends and picks cross in it; else it is a single thread."""
        return bool(self.ends and self.picks)


@dataclass(frozen=True)
class Hanging:
    """All parts of a cloth, from the top down."""

    parts: tuple[Part, ...]

    @property
    def together(self) -> bool:
        """Whether it is one cloth."""
        return len(self.parts) == 1

    @property
    def layers(self) -> tuple[Part, ...]:
        """The woven parts, from the top down."""
        return tuple(part for part in self.parts if part.is_woven)

    @property
    def loose_ends(self) -> tuple[int, ...]:
        """Ends that no pick binds."""
        return tuple(sorted(end for part in self.parts if not part.is_woven for end in part.ends))

    @property
    def loose_picks(self) -> tuple[int, ...]:
        """Picks that no end binds."""
        return tuple(sorted(pick for part in self.parts if not part.is_woven for pick in part.picks))

    @property
    def verdict(self) -> str:
        """ "together", "layers" (whole cloths on one another, as in a double cloth), "loose" (threads that
        nothing binds) or "apart": parts so unequal that a slip is likelier than a second cloth."""
        if self.together:
            return "together"
        if self.loose_ends or self.loose_picks:
            return "loose"
        for count in ("ends", "picks"):
            sizes = [len(getattr(part, count)) for part in self.layers]
            if min(sizes) * LEAST_SHARE < sum(sizes) / len(sizes):
                return "apart"
        return "layers"


LEAST_SHARE = 3
"""A layer with less than a third of the mean of the layers' threads is taken for a slip (judgement)."""


def hanging(over: NDArray[np.bool_]) -> Hanging:
    """The parts of a cloth of which `over` (picks, ends; True where the warp is over) is one repeat.

    One repeat is enough: two copies of a thread cross everything alike. O(picks × ends).
    """
    import numpy as np

    picks, ends = over.shape
    end_sums, pick_sums = over.sum(axis=0), over.sum(axis=1)
    by_height, by_depth = np.argsort(-end_sums, kind="stable"), np.argsort(pick_sums, kind="stable")
    highest = np.concatenate([[0], np.cumsum(end_sums[by_height])])
    topmost = np.concatenate([[0], np.cumsum(pick_sums[by_depth])])
    taken = np.arange(ends + 1)
    cuts = [
        (pick, int(end))
        for pick in range(picks + 1)
        for end in np.flatnonzero(taken * (picks - pick) - highest + topmost[pick] == 0)
    ]
    return Hanging(
        tuple(
            Part(
                tuple(sorted(by_height[left:right].tolist())),
                tuple(sorted(by_depth[upper:lower].tolist())),
            )
            for (upper, left), (lower, right) in pairwise(cuts)
        )
    )
