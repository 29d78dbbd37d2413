"""What a plan asks of the journal's memory, and the one belief that a plan makes for itself.

The shapes only: a plan does not mind how the journal learns. Every belief is of ln(last / first).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from statistics import NormalDist
from typing import Literal, Protocol

from journal_tools.forecast.kind import ClothKind
from journal_tools.forecast.observed import Observed

_STANDARD = NormalDist()
_GRID = [step / 10 for step in range(-60, 61)]
_WEIGHTS = [_STANDARD.pdf(at) / 10 for at in _GRID]


class Belief(Protocol):
    """What is expected of ln(last / first) of cloth; see `forecast.belief`."""

    @property
    def mean(self) -> float:
        """Its mean."""

    @property
    def sd(self) -> float:
        """Standard deviation for one piece."""

    def quantile(self, p: float, of: Literal["piece", "batch"] = "piece") -> float:
        """Quantile p of one piece, or of the mean of a whole batch."""

    def worst(self, p: float, of: int) -> float:
        """Quantile p of the smallest of so many pieces."""

    def chance_worst_below(self, log_ratio: float, of: int) -> float:
        """Chance that the smallest of so many pieces is below a ratio."""


class RestsOn(Protocol):
    """What a belief rests on: names of warps, the weightiest first."""

    @property
    def basis(self) -> str:
        """ "yarn and weave", "yarn", "fibre and weave", "fibre" or "common practice"."""

    @property
    def yarn_warps(self) -> Sequence[str]:
        """Warps in the yarn."""

    @property
    def weave_warps(self) -> Sequence[str]:
        """Warps in the weave."""

    @property
    def both(self) -> Sequence[str]:
        """Warps in the yarn and the weave."""

    @property
    def heaviest(self) -> str:
        """The warp that moves the answer most."""


class Knows(Protocol):
    """The journal's memory."""

    def belief(
        self, direction: str, kind: ClothKind, first: str, last: str, *, seen: Sequence[Observed] = ()
    ) -> Belief:
        """What to expect; `seen` are pieces of the very warp."""

    def rests_on(self, direction: str, kind: ClothKind, first: str, last: str) -> RestsOn:
        """Which warps that rests on."""


@dataclass(frozen=True)
class Normal:
    """A belief that is normal: what pieces share, and what each has of its own, as standard deviations.

    Used where the last size is the weaver's decision, as in fulled cloth, and no habit of a yarn.
    """

    mean: float
    shared: float
    own: float

    @property
    def sd(self) -> float:
        """Standard deviation for one piece."""
        return math.hypot(self.shared, self.own)

    def quantile(self, p: float, of: Literal["piece", "batch"] = "piece") -> float:
        """Quantile p; a batch of many has no scatter of its own left in its mean."""
        return self.mean + _STANDARD.inv_cdf(p) * (self.sd if of == "piece" else self.shared)

    def chance_worst_below(self, log_ratio: float, of: int) -> float:
        """1 - the chance that all are above, averaged over what they share."""
        chance = 0.0
        for at, weight in zip(_GRID, _WEIGHTS, strict=True):
            above = 1 - _below(log_ratio - self.mean - at * self.shared, self.own)
            chance += weight * (1 - above**of)
        return chance

    def worst(self, p: float, of: int) -> float:
        """By halving."""
        low, high = self.mean - 12 * self.sd, self.mean + 12 * self.sd
        for _ in range(60):
            middle = (low + high) / 2
            low, high = (middle, high) if self.chance_worst_below(middle, of) < p else (low, middle)
        return (low + high) / 2


def _below(gap: float, own: float) -> float:
    return _STANDARD.cdf(gap / own) if own else float(gap >= 0)
