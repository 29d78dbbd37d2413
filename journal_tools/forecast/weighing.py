"""Which warps an answer hangs on, and which readings nothing else in the journal leads to expect.

Both leave each warp out in turn, at the likeliest variances, without fitting again: with H = x C x' of a
warp's groups, S and g what it told of the effects, H₋ = (I − H S)⁻¹ H and its mean moves to
v₋ = v + H₋ (S v − g).
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from journal_tools.forecast.chain import position
from journal_tools.forecast.evidence import Evidence, Journal, Variances, real_covariance
from journal_tools.forecast.hyper import Hyper
from journal_tools.forecast.normal import t7_beyond
from journal_tools.forecast.observed import Observed
from journal_tools.forecast.posterior import Moments
from journal_tools.forecast.rows import kept_sd, mean_of, usable
from journal_tools.forecast.small import Floats, Indices, applied, solve_for, solve_for_all


@dataclass(frozen=True)
class Surprise:
    """A loss that the rest of the journal does not lead one to expect.

    first, last: the moments, on one yardstick. log_ratio: ln(last / first) as measured; expected, sd:
    what the other warps make of it. z = (log_ratio − expected) / sd, p: chance of a z so far from 0.
    """

    warp: str
    piece: str
    first: str
    last: str
    yardstick: str
    log_ratio: float
    expected: float
    sd: float
    z: float
    p: float


@dataclass(frozen=True)
class Weighing:
    """A fit at its likeliest variances, kept to ask what each warp does to it."""

    journal: Journal
    hyper: Hyper
    variances: Variances
    evidence: Evidence
    moments: Moments

    def _by_size(self) -> Iterator[tuple[Indices, Indices, Floats, Floats, Floats]]:
        """For warps of 1, 2, … groups: the warps (W), their groups (W × k), and S, H (W × kK × kK), g (W × kK)."""
        design, steps = self.journal.design, self.journal.rows.steps
        warp_of_cell = self.journal.rows.warp_of[design.cell_a]
        sizes = np.bincount(warp_of_cell, minlength=len(self.journal.rows.warps))
        for size in np.unique(sizes):
            k = math.isqrt(int(size))
            warps = np.nonzero(sizes == size)[0]
            cells = np.nonzero(np.isin(warp_of_cell, warps))[0].reshape(len(warps), k, k)
            shape = len(warps), k * steps, k * steps
            told = self.evidence.cell_left[cells].transpose(0, 1, 3, 2, 4).reshape(shape)
            spread = self.moments.spread[cells].transpose(0, 1, 3, 2, 4).reshape(shape)
            groups = design.cell_a[cells[:, :, 0]]
            yield warps, groups, told, spread, self.evidence.left_pull[groups].reshape(len(warps), -1)

    @cached_property
    def covariance(self) -> Floats:
        """Of the effects, in ln ratio (many × many)."""
        return real_covariance(self.moments.scaled, self.evidence.sds, self.journal.design.columns)

    def influence(self, answer: Floats) -> Floats:
        """How far an answer, the product of this vector (many) with the effects, moves without each warp (warps)."""
        design = self.journal.design
        reach = design.effects(self.covariance @ answer)  # a' C x' of each group (G × K)
        moves = np.zeros(len(self.journal.rows.warps))
        for warps, groups, told, spread, pull in self._by_size():
            at = self.moments.fitted[groups].reshape(len(warps), -1)
            inner = np.eye(told.shape[1]) - told @ spread
            strain = solve_for(inner, applied(told, at) - pull)
            moves[warps] = np.sum(reach[groups].reshape(len(warps), -1) * strain, axis=1)
        return moves

    def left_out(self) -> tuple[Floats, Floats]:
        """x'u of each group without its own warp: means (G × K) and covariances (G × K × K)."""
        rows = self.journal.rows
        means, covariances = np.zeros((len(rows.kinds), rows.steps)), np.zeros((len(rows.kinds),) + (rows.steps,) * 2)
        for warps, groups, told, spread, pull in self._by_size():
            at = self.moments.fitted[groups].reshape(len(warps), -1)
            wider = solve_for_all(np.eye(told.shape[1]) - spread @ told, spread)
            mean = at + applied(wider, applied(told, at) - pull)
            means[groups] = mean.reshape(*groups.shape, rows.steps)
            for k in range(groups.shape[1]):
                own = slice(k * rows.steps, (k + 1) * rows.steps)
                covariances[groups[:, k]] = wider[:, own, own]
        return means, covariances

    def surprises(self, below: float) -> tuple[Surprise, ...]:
        """The readings that the other warps make likely with p under a bound: the worst of each warp, worst first."""
        rows = self.journal.rows
        means, covariances = self.left_out()
        around = covariances + self.variances.warp + self.variances.piece
        worst: dict[str, Surprise] = {}
        for piece, group in zip(rows.pieces, rows.group_of.tolist(), strict=True):
            mean = means[group] + mean_of(piece.kind, self.hyper)
            for found in _steps_of(piece, rows.direction, mean, around[group]):
                if found.p < below and (piece.warp not in worst or found.p < worst[piece.warp].p):
                    worst[piece.warp] = found
        return tuple(sorted(worst.values(), key=lambda one: (one.p, one.warp)))


def _steps_of(piece: Observed, direction: str, mean: Floats, around: Floats) -> Iterator[Surprise]:
    """Each loss between neighbouring readings of a piece, beside what was expected of it."""
    readings = sorted(usable(piece, direction), key=lambda one: one.yardstick)
    yardsticks = {one.yardstick: [two for two in readings if two.yardstick == one.yardstick] for one in readings}
    for yardstick, mine in yardsticks.items():
        places = {id(one): np.array(position(direction, one.moment)) for one in mine}
        along = sorted(mine, key=lambda one: tuple(_rank(places[id(one)])))
        for earlier, later in itertools.pairwise(along):
            way = places[id(later)] - places[id(earlier)]
            if not way.any():
                continue
            sd = math.sqrt(way @ around @ way + kept_sd(earlier.sd) ** 2 + kept_sd(later.sd) ** 2)
            log_ratio, expected = later.log - earlier.log, float(way @ mean)
            z = (log_ratio - expected) / sd
            yield Surprise(piece.warp, piece.piece, earlier.moment, later.moment, yardstick,
                           log_ratio, expected, sd, z, t7_beyond(z))  # fmt: skip


def _rank(place: Floats) -> Sequence[float]:
    """Earlier moments first: those before the loom are negative."""
    return float(np.sum(place)), *place.tolist()
