"""What the forecast believes of one ratio: a mixture of normals of ln(last / first)."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property
from typing import Literal

import numpy as np

from journal_tools.forecast.normal import below
from journal_tools.forecast.small import Floats

Of = Literal["piece", "batch"]
_NODES, _WEIGHTS = np.polynomial.hermite_e.hermegauss(15)
_WEIGHTS = _WEIGHTS / _WEIGHTS.sum()


@dataclass(frozen=True)
class Belief:
    """A mixture of normals of ln(last / first): negative is a loss, and size = first × exp of it.

    weights (sum 1), means, shared, apart: one a part. shared: variance of what all pieces of the batch
    have in common; apart: what a piece has of its own besides. A "batch" is the mean of many pieces.
    """

    weights: Floats
    means: Floats
    shared: Floats
    apart: Floats

    @cached_property
    def mean(self) -> float:
        """The mean of ln ratio."""
        return float(self.weights @ self.means)

    def _sd(self, variance: Floats) -> float:
        return math.sqrt(float(self.weights @ (variance + (self.means - self.mean) ** 2)))

    @cached_property
    def sd(self) -> float:
        """The standard deviation for one piece."""
        return self._sd(self.shared + self.apart)

    @cached_property
    def batch_sd(self) -> float:
        """The standard deviation for the mean of many pieces."""
        return self._sd(self.shared)

    def chance_below(self, log_ratio: float, of: Of = "piece") -> float:
        """How likely one piece, or the mean of the batch, comes out with a smaller ratio."""
        variance = self.shared + self.apart if of == "piece" else self.shared
        if not variance.any():  # a size is itself, for sure
            return float(self.weights @ (self.means <= log_ratio))
        return float(self.weights @ below((log_ratio - self.means) / np.sqrt(variance)))

    def quantile(self, p: float, of: Of = "piece") -> float:
        """The ln ratio that one piece, or the mean of the batch, stays below with chance p."""
        sd = self.sd if of == "piece" else self.batch_sd
        if not sd:
            return self.mean
        return _where(lambda x: self.chance_below(x, of), p, self.mean, sd)

    def range(self, p: float = 0.9, of: Of = "piece") -> tuple[float, float]:
        """The ln ratios that hold with chance p, as much chance below as above."""
        return self.quantile((1 - p) / 2, of), self.quantile((1 + p) / 2, of)

    def loss(self, of: Of = "piece") -> float:
        """The middle loss, as a fraction of the first size: 0.1 is a tenth; negative where it grows."""
        return -math.expm1(self.quantile(0.5, of))

    def loss_range(self, p: float = 0.9, of: Of = "piece") -> tuple[float, float]:
        """The least and the greatest loss that hold with chance p, as fractions of the first size."""
        low, high = self.range(p, of)
        return -math.expm1(high), -math.expm1(low)

    def chance_worst_below(self, log_ratio: float, of: int) -> float:
        """How likely the smallest of `of` pieces comes out with a smaller ratio.

        Pieces are alike given what they share, which is summed over by 15 points (Gauss and Hermite).
        """
        if of == 1 or not self.apart.any():
            return self.chance_below(log_ratio)
        centre = self.means[:, None] + np.sqrt(self.shared)[:, None] * _NODES
        one = below((log_ratio - centre) / np.sqrt(self.apart)[:, None])
        return float(self.weights @ ((1 - (1 - one) ** of) @ _WEIGHTS))

    def worst(self, p: float, of: int) -> float:
        """The ln ratio that the smallest of `of` pieces stays below with chance p."""
        if of == 1 or not self.apart.any():
            return self.quantile(p)
        start = self.mean - math.sqrt(2 * math.log(of)) * math.sqrt(float(self.weights @ self.apart))
        return _where(lambda x: self.chance_worst_below(x, of), p, start, self.sd)


def _where(chance: Callable[[float], float], p: float, near: float, scale: float) -> float:
    """The place where a rising chance is p, by halving and regula falsi (Illinois), to 1e-9 of the scale.

    ValueError when p is not between 0 and 1.
    """
    if not 0 < p < 1:
        raise ValueError(f"a chance lies between 0 and 1, not {p}")
    scale = max(scale, 1e-12)
    low, high = near - 4 * scale, near + 4 * scale
    below_low, below_high = chance(low) - p, chance(high) - p
    while below_low > 0:
        low, below_low = low - 4 * scale, chance(low - 4 * scale) - p
    while below_high < 0:
        high, below_high = high + 4 * scale, chance(high + 4 * scale) - p
    side = 0
    for turn in range(200):
        halve = turn < 3 or turn % 4 == 3 or below_high == below_low
        middle = (low + high) / 2 if halve else (low * below_high - high * below_low) / (below_high - below_low)
        at = chance(middle) - p
        if at == 0 or high - low < 1e-9 * scale or abs(at) < 1e-13:
            return middle
        if at < 0:
            low, below_low = middle, at
            below_high = below_high / 2 if side < 0 else below_high
            side = -1
        else:
            high, below_high = middle, at
            below_low = below_low / 2 if side > 0 else below_low
            side = 1
    return (low + high) / 2
