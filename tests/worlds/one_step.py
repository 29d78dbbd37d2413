"""Figures from outside weaving, dressed as one step of cloth: what statisticians call a one-way layout.

A group is a warp and a value is a piece of it: the draw-in of its width, read twice very finely.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence

import numpy as np

from journal_tools.forecast.design import design_of
from journal_tools.forecast.evidence import Journal, Variances, gather
from journal_tools.forecast.hyper import Hyper
from journal_tools.forecast.kind import ClothKind
from journal_tools.forecast.observed import Observed, Reading
from journal_tools.forecast.rows import rows_of
from tests.worlds.law import STEPS

FINE = math.exp(-8)
"""Uncertainty of each of two readings, an e^(n/8) as the forecast keeps them; its variance is taken off the pieces'."""
FLAT = 1e4
"""Standard deviation of something nobody knows anything of."""
STEP = ("in_reed", "on_loom")


def pieces(groups: Mapping[str, Sequence[float]], kinds: Mapping[str, ClothKind] | None = None) -> list[Observed]:
    """Each value a piece, each group a warp."""
    return [
        Observed(
            warp=group,
            piece=str(n),
            kind=(kinds or {}).get(group, ClothKind()),
            readings=(Reading(STEP[0], 0.0, FINE), Reading(STEP[1], value, FINE)),
        )
        for group, values in groups.items()
        for n, value in enumerate(values)
    ]


def variances(between: float, within: float, level: float = 0.0, level_sd: float = FLAT, **terms: float) -> Hyper:
    """Variance between groups and inside them; other terms of the step by name, as variances too."""
    many = len(STEPS["width"])
    first = np.eye(many)[0]
    sds = {("warp", step): 1.0 for step in STEPS["width"]} | {("piece", step): 1.0 for step in STEPS["width"]}
    sds |= {("warp", "draw-in"): math.sqrt(between), ("piece", "draw-in"): math.sqrt(within - 2 * FINE**2)}
    sds |= {(term, "draw-in"): math.sqrt(variance) for term, variance in terms.items()}
    return Hyper(
        level=level * first,
        level_sd=np.where(first > 0, level_sd, 1.0),
        slope_mean=np.zeros(many),
        sds=sds,
        correlation=np.eye(many),
    )


def log_likelihood(observed: Iterable[Observed], hyper: Hyper) -> float:
    """ln of the density of all values."""
    rows = rows_of(list(observed), "width", hyper)
    journal = Journal.of(rows, design_of(rows))
    return gather(journal, Variances.of(hyper, "width"), np.ones(len(rows.warps))).value
