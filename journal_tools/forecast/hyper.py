"""The variances of one direction: what the forecast averages over, and what an oracle would know."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from journal_tools.forecast.chain import DRAW_IN, PICK, RELAXATION, SETTLING, STEPS, TAKE_UP, WASH

Floats = NDArray[np.float64]

_LOOM_AND_WATER = (DRAW_IN, TAKE_UP, RELAXATION, WASH)
# Which steps a term can change. A finish cannot change what was cut off the loom; few journals hold a
# third wash or counted picks, so settling and pick get by with few terms.
TERMS: dict[str, tuple[str, ...]] = {
    "weave": (*_LOOM_AND_WATER, PICK),
    "fibre": (*_LOOM_AND_WATER, SETTLING),
    "yarn": (*_LOOM_AND_WATER, PICK),
    "finish": (WASH, SETTLING),
    "closeness": _LOOM_AND_WATER,
    "year": _LOOM_AND_WATER,
    "warp": (*_LOOM_AND_WATER, PICK, SETTLING),
    "piece": (*_LOOM_AND_WATER, PICK, SETTLING),
}
EFFECTS = ("weave", "fibre", "yarn", "finish", "closeness", "year")  # terms with columns of their own


def scales(direction: str) -> tuple[tuple[str, str], ...]:
    """Every (term, step) of a direction that has a standard deviation, terms in order, then steps."""
    return tuple((term, step) for term, steps in TERMS.items() for step in STEPS[direction] if step in steps)


@dataclass(frozen=True)
class Hyper:
    """One set of variances of a direction with K steps, all of ln ratios.

    level, level_sd: mean of the level of each step and its standard deviation (K). slope_mean: mean of
    the slope a unit of closeness (K). sds: standard deviation of each (term, step) of scales().
    correlation: K × K, between the steps inside a warp and inside a piece alike.
    """

    level: Floats
    level_sd: Floats
    slope_mean: Floats
    sds: Mapping[tuple[str, str], float]
    correlation: Floats

    def sd_of(self, term: str, direction: str) -> Floats:
        """Standard deviations of a term, one a step, 0 where the term says nothing (K)."""
        return np.array([self.sds.get((term, step), 0.0) for step in STEPS[direction]])
