"""Points spread evenly in many dimensions, the same every time."""

from __future__ import annotations

import numpy as np

from journal_tools.forecast.normal import quantile
from journal_tools.forecast.small import Floats


def normal_points(pairs: int, dimensions: int) -> Floats:
    """Points like draws of N(0, I), each followed by its negative (2 pairs × dimensions).

    The additive lattice of the generalised golden ratio, the root of x^(d + 1) = x + 1 (Roberts 2018),
    through the normal quantile.
    """
    ratio = 2.0
    for _ in range(60):
        ratio = (1 + ratio) ** (1 / (dimensions + 1))
    steps = ratio ** -np.arange(1, dimensions + 1)
    places = (0.5 + np.outer(np.arange(1, pairs + 1), steps)) % 1
    points = np.array([[quantile(place) for place in row] for row in places.tolist()])
    return np.stack([points, -points], axis=1).reshape(-1, dimensions)
