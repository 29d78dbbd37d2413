"""The forecast's own problem solved the slow way: one dense normal over all readings, straight from covariances.

No design matrix, no factors, no classes: how alike two cloths are is written down for each pair. For tests.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from journal_tools.forecast.kind import ClothKind
from journal_tools.forecast.observed import Observed
from tests.worlds.law import Law, Vector
from tests.worlds.world import MAIN_SHARE, MIDDLING, span


@dataclass(frozen=True)
class Dense:
    """A law and a journal; `slack` is each warp's weight, 1 where it is not given."""

    law: Law
    observed: Sequence[Observed]
    slack: Mapping[str, float]

    def log_likelihood(self) -> float:
        """ln of the density of all ratios, with every 2 pi: each piece's readings against its first."""
        _, errors, covariance = self._rows()
        if not len(errors):
            return 0.0
        root = np.linalg.cholesky(covariance)
        white = np.linalg.solve(root, errors)
        return float(-0.5 * white @ white - np.log(np.diag(root)).sum() - 0.5 * len(white) * np.log(2 * np.pi))

    def expected(self, kinds: Sequence[ClothKind]) -> tuple[Vector, Vector]:
        """Mean (n, k) and covariance (n, n, k, k) of what causes alone make of these kinds, after the journal."""
        rows, errors, covariance = self._rows()
        prior = np.array([[self._shared(a, b) for b in kinds] for a in kinds])
        mean = np.array([self._mean(kind) for kind in kinds])
        if not len(errors):
            return mean, prior
        cross = np.array([[matrix @ self._shared(o.kind, kind) for kind in kinds] for o, matrix in rows])
        return self._given(mean, prior, cross, errors, covariance)

    def departure(self, warp: str) -> tuple[Vector, Vector]:
        """Mean (k,) and covariance (k, k) of one warp's own departure, after the journal."""
        rows, errors, covariance = self._rows()
        own = self._own("warp") / self.slack.get(warp, 1.0)
        cross = np.array([[matrix @ own * (o.warp == warp)] for o, matrix in rows])
        mean, spread = self._given(np.zeros((1, len(own))), own[None, None], cross, errors, covariance)
        return mean[0], spread[0, 0]

    @staticmethod
    def _given(mean: Vector, prior: Vector, cross: Vector, errors: Vector, covariance: Vector) -> tuple[Vector, Vector]:
        """Condition (n, k) unknowns on the errors; cross is (rows, n, k)."""
        n, k = mean.shape
        flat = cross.reshape(len(errors), n * k)
        gain = np.linalg.solve(covariance, flat).T
        left = prior.transpose(0, 2, 1, 3).reshape(n * k, n * k) - gain @ flat
        return mean + (gain @ errors).reshape(n, k), left.reshape(n, k, n, k).transpose(0, 2, 1, 3)

    def _rows(self) -> tuple[list[tuple[Observed, Vector]], Vector, Vector]:
        """One row a ratio: its piece with the steps it spans (k,), its error against the level, all covariances."""
        direction = self.law.direction
        rows: list[tuple[Observed, Vector]] = []
        errors: list[float] = []
        tape: dict[tuple[int, int], float] = {}
        for piece in self.observed:
            for stick in dict.fromkeys(reading.yardstick for reading in piece.readings):
                base, *others = [reading for reading in piece.readings if reading.yardstick == stick]
                own = range(len(rows), len(rows) + len(others))
                tape |= {(i, j): base.sd**2 for i in own for j in own}
                for i, reading in zip(own, others, strict=True):
                    tape[i, i] += reading.sd**2
                    steps = span(direction, base.moment, reading.moment)
                    rows.append((piece, steps))
                    errors.append(reading.log - base.log - float(steps @ self._mean(piece.kind)))
        covariance = np.zeros((len(rows), len(rows)))
        for i, (a, one) in enumerate(rows):
            for j, (b, other) in enumerate(rows):
                covariance[i, j] = one @ self._between(a, b) @ other + tape.get((i, j), 0.0)
        return rows, np.array(errors), covariance

    def _between(self, a: Observed, b: Observed) -> Vector:
        """(k, k) covariance of the true steps of two pieces."""
        made = self._shared(a.kind, b.kind)
        if a.warp == b.warp:
            made = made + self._own("warp") / self.slack.get(a.warp, 1.0)
            if a.piece == b.piece:
                made = made + self._own("piece")
        return made

    def _own(self, term: str) -> Vector:
        """(k, k) covariance of a warp's or a piece's departure."""
        sd = self.law.sds[term]
        return sd[:, None] * self.law.correlation * sd

    def _shared(self, a: ClothKind, b: ClothKind) -> Vector:
        """(k, k) covariance of what causes make of two kinds."""
        sds, width = self.law.sds, self.law.direction == "width"
        made = self.law.level_sd**2
        made = made + sds["weave"] ** 2 * (a.weave == b.weave) + sds["finish"] ** 2 * (a.finish == b.finish)
        made = made + sds["fibre"] ** 2 * _alike(width, a.warp_fibre, a.weft_fibre, b.warp_fibre, b.weft_fibre)
        made = made + sds["yarn"] ** 2 * _alike(width, a.warp_yarn, a.weft_yarn, b.warp_yarn, b.weft_yarn)
        made = made + sds["closeness"] ** 2 * _close(a) * _close(b)
        return np.diag(made + sds["year"] ** 2 * min(self._since(a), self._since(b)))

    def _mean(self, kind: ClothKind) -> Vector:
        """(k,) what is expected of a kind before the journal."""
        return self.law.level + _close(kind) * self.law.slope

    def _since(self, kind: ClothKind) -> int:
        """Years since the journal's first."""
        first = min((o.kind.year for o in self.observed if o.kind.year is not None), default=kind.year or 0)
        return max(0, (kind.year or first) - first)


def _close(kind: ClothKind) -> float:
    return 0.0 if kind.closeness is None else 10 * float(np.log(kind.closeness / MIDDLING))


def _alike(width: bool, warp_a: str, weft_a: str, warp_b: str, weft_b: str) -> float:
    """What two cloths share of their yarns: the products of the shares of each yarn that both have."""
    main = MAIN_SHARE
    share = (1 - main, main) if width else (main, 1 - main)
    pairs = ((warp_a, share[0]), (weft_a, share[1])), ((warp_b, share[0]), (weft_b, share[1]))
    return sum(one * other for a, one in pairs[0] for b, other in pairs[1] if a == b)
