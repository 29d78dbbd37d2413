"""The forecast for known variances beside the Gaussian process of scikit-learn on the same readings.

A normal model with known variances is a Gaussian process with a linear kernel, which scikit-learn reckons
without knowing of cloth: GaussianProcessRegressor (Rasmussen and Williams, Gaussian Processes for Machine
Learning, 2006, algorithm 2.1). The features that make the two the same model are computed from the definition.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np
import pytest
from sklearn.gaussian_process import GaussianProcessRegressor
from sklearn.gaussian_process.kernels import DotProduct

from journal_tools.forecast.forecast import Forecast
from journal_tools.forecast.kind import ClothKind
from journal_tools.forecast.observed import Observed
from tests.worlds.known import hyper_of
from tests.worlds.law import Law, Vector, plain
from tests.worlds.world import SPANS, World, made_world, on_grid, span


def pairs(world: World) -> list[Observed]:
    """Every piece with two of its readings, so that each has one ratio and ratios share no reading."""
    rng = np.random.default_rng(4)
    made = []
    for piece in on_grid(world.observed):
        cloth = [reading for reading in piece.readings if reading.yardstick == "cloth"]
        if len(cloth) > 1:
            one, other = sorted(rng.choice(len(cloth), size=2, replace=False))
            made.append(Observed(piece.warp, piece.piece, piece.kind, (cloth[one], cloth[other])))
    return made


class Features:
    """Cloth as rows whose products are covariances."""

    def __init__(self, law: Law, pieces: Sequence[Observed], kinds: Sequence[ClothKind]) -> None:
        self.law = law
        every = [piece.kind for piece in pieces] + list(kinds)
        names = {
            "weave": {kind.weave for kind in every},
            "finish": {kind.finish for kind in every},
            "fibre": {fibre for kind in every for fibre in (kind.warp_fibre, kind.weft_fibre)},
            "yarn": {yarn for kind in every for yarn in (kind.warp_yarn, kind.weft_yarn)},
        }
        self.names = {term: sorted(found) for term, found in names.items()}
        self.first = min(piece.kind.year or 0 for piece in pieces)
        self.years = max(kind.year or 0 for kind in every) - self.first
        self.warps = sorted({piece.warp for piece in pieces})

    def shares(self, kind: ClothKind) -> dict[str, list[float]]:
        """How much of each level of each term is in a cloth."""
        main, other = (0.65, 0.35) if self.law.direction == "length" else (0.35, 0.65)
        made = {
            "weave": [float(name == kind.weave) for name in self.names["weave"]],
            "finish": [float(name == kind.finish) for name in self.names["finish"]],
            "closeness": [self.close(kind)],
            "year": [float(n < (kind.year or 0) - self.first) for n in range(self.years)],
        }
        for term, warp, weft in (
            ("fibre", kind.warp_fibre, kind.weft_fibre),
            ("yarn", kind.warp_yarn, kind.weft_yarn),
        ):
            made[term] = [main * (name == warp) + other * (name == weft) for name in self.names[term]]
        return made

    def close(self, kind: ClothKind) -> float:
        """Tenths of ln that the sett is closer than three quarters of the greatest."""
        return 0.0 if kind.closeness is None else 10 * math.log(kind.closeness / 0.75)

    def mean(self, kind: ClothKind, way: Vector) -> float:
        """What is expected beforehand."""
        return float(way @ (self.law.level + self.close(kind) * self.law.slope))

    def row(self, kind: ClothKind, way: Vector, warp: str = "") -> Vector:
        """One cloth, one span of steps."""
        own = way @ np.linalg.cholesky(self.own("warp"))
        blocks = [way * self.law.level_sd]
        blocks += [share * self.law.sds[term] * way for term, found in self.shares(kind).items() for share in found]
        blocks += [own * (name == warp) for name in self.warps]
        return np.concatenate(blocks)

    def own(self, term: str) -> Vector:
        """Covariance of a warp's or a piece's departure."""
        return self.law.sds[term][:, None] * self.law.correlation * self.law.sds[term]


@pytest.mark.parametrize("direction", ["width", "length"])
def test_the_same_means_and_spreads(direction: str) -> None:
    """For known variances, every forecast has the mean and the spread of scikit-learn's Gaussian process."""
    law = plain(direction)
    world = made_world(law, 25, seed=3, unseen=8)
    pieces, kinds = pairs(world), [woven.kind for woven in world.unseen]
    features = Features(law, pieces, kinds)
    ways = [span(direction, *(reading.moment for reading in piece.readings)) for piece in pieces]
    rows = np.array([features.row(p.kind, way, p.warp) for p, way in zip(pieces, ways, strict=True)])
    errors = [
        piece.readings[1].log - piece.readings[0].log - features.mean(piece.kind, way)
        for piece, way in zip(pieces, ways, strict=True)
    ]
    noise = [
        way @ features.own("piece") @ way + sum(reading.sd**2 for reading in piece.readings)
        for piece, way in zip(pieces, ways, strict=True)
    ]
    process = GaussianProcessRegressor(DotProduct(0.0, "fixed"), alpha=np.array(noise), optimizer=None)
    process.fit(rows, np.array(errors))
    forecast = Forecast.fixed(pieces, direction, hyper_of(law), nu=math.inf)

    for first, last in SPANS[direction].values():
        way = span(direction, first, last)
        means, spreads = process.predict(np.array([features.row(kind, way) for kind in kinds]), return_std=True)
        beyond = way @ (features.own("warp") + features.own("piece")) @ way
        for kind, mean, spread in zip(kinds, means, spreads, strict=True):
            belief = forecast.belief(kind, first, last)

            assert pytest.approx(features.mean(kind, way) + mean, rel=1e-8, abs=1e-11) == belief.mean
            assert pytest.approx(math.sqrt(spread**2 + beyond), rel=1e-6) == belief.sd
