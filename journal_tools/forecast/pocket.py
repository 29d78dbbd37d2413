"""A belief in a handful of numbers, for a page that has no linear algebra."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from journal_tools.forecast.belief import Belief
from journal_tools.forecast.chain import STEPS
from journal_tools.forecast.columns import SLOPE
from journal_tools.forecast.hyper import Hyper
from journal_tools.forecast.kind import ClothKind
from journal_tools.forecast.nodes import Nodes

CHANCES = (0.025, 0.05, 0.1, 0.167, 0.25, 0.5, 0.75, 0.833, 0.9, 0.95, 0.975)


@dataclass(frozen=True)
class Pocket:
    """What is believed of ln(last / first) at any closeness, from its covariate x (kind.covariate):

        x = 10 ln(closeness / 0.75), within ±4; 0 where closeness is unknown
        mean = a + b x        variance of the batch's mean = c + d x + e x²        a piece's: + piece

    multipliers: for each chance p of CHANCES how many standard deviations of one piece the quantile lies
    above the mean (at x of the kind that was asked). The first two moments are exact at every x.
    """

    a: float
    b: float
    c: float
    d: float
    e: float
    piece: float
    multipliers: tuple[tuple[float, float], ...]


def pocket_of(
    nodes: Nodes, hyper: Hyper, kind: ClothKind, span: Sequence[float], weights: Sequence[float], belief: Belief
) -> Pocket:
    """The numbers for a kind of cloth. belief: what is believed at its own closeness, for the multipliers."""
    way = np.array(span)
    steps = len(STEPS[nodes.direction])
    flat = nodes.columns_for(replace(kind, closeness=None), asked=True)
    mean, covariance = nodes.local([flat, {SLOPE: 1.0}]).steps()
    means = mean.reshape(-1, 2, steps) @ way + np.array([hyper.level @ way, hyper.slope_mean @ way])
    blocks = covariance.reshape(-1, 2, steps, 2, steps)
    inside = np.einsum("k,nikjl,l->nij", way, blocks, way)
    share = nodes.weights
    centre = share @ means
    apart = means - centre
    spread = np.einsum("n,nij->ij", share, inside + apart[:, :, None] * apart[:, None, :])
    warp = float(share @ np.einsum("k,nkl,l->n", way, nodes.warp, way)) * float(np.mean(1 / np.array(weights)))
    piece = float(share @ np.einsum("k,nkl,l->n", way, nodes.piece, way))
    return Pocket(
        a=float(centre[0]),
        b=float(centre[1]),
        c=float(spread[0, 0]) + warp,
        d=float(2 * spread[0, 1]),
        e=float(spread[1, 1]),
        piece=piece,
        multipliers=tuple((p, (belief.quantile(p) - belief.mean) / belief.sd) for p in CHANCES),
    )
