"""What is believed before the first warp, in one place, with the reason beside each figure.

All of it is judgement from handweaving practice: typical losses and scatter of common cloths, no
measured sample. Sds and levels are in points (hundredths of ln ratio). A journal soon overrules them.

Log sds are normal round the logs of the medians, with a covariance of three parts: HAND for a weaver
who is steady or careless in everything, TERM for what a term does in every step, ALONE for each. With C
the Cholesky factor of that covariance, log sd = log median + C theta and theta is N(0, I). The
correlations are partial ones, tanh(CENTRE + SPREAD theta), so any theta gives a valid matrix.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from journal_tools.forecast.chain import DRAW_IN, PICK, RELAXATION, SETTLING, STEPS, TAKE_UP, WASH
from journal_tools.forecast.hyper import Floats, Hyper, scales

HAND = 0.35  # a steady hand halves every scatter at most: 2 sds
TERM = {"year": 0.8}  # some studios change water, loom and habits, some never do
TERM_OTHERS = 0.45
ALONE = 0.40
SPREAD = 0.5  # partial correlations within about ±.4 of the centre, 1 sd; tried .35: strong ones fare worse

# Step: (level, its sd). Width: cotton, cottolin and linen in plain weave and twill, the commonest cloth.
# Length: take-up about 5.5 %, cut-off 3 %, first wash 6 %. Picks: beaten as intended, give or take 3 %.
# Settling: later washes take 0.5 to 2 % more of cotton and linen, in both directions.
LEVELS: dict[str, dict[str, tuple[float, float]]] = {
    "width": {DRAW_IN: (-4.2, 2.0), RELAXATION: (-1.5, 1.0), WASH: (-6.2, 3.5), SETTLING: (-1.5, 0.8)},
    "length": {
        TAKE_UP: (-5.66, 2.0), PICK: (0.0, 3.0), RELAXATION: (-3.05, 1.2),
        WASH: (-6.19, 3.5), SETTLING: (-1.5, 0.8),
    },
}

# (median sd, step by step). Width: waffle and lace against plain are 5 to 10 points in the wash, 1 to 2
# on the loom; wool, cotton and silk differ by as much; two yarns of a fibre by less. Ten per cent closer
# takes about a point off the width loss. Warps alike scatter by 1.2 points, pieces of a warp by 0.5.
# Length: rep takes up 10 points more than plain, wool relaxes 2 to 4 more than linen; warps alike
# scatter by 1.8 points, pieces by 0.9. Picks: an intended pitch is kept within 3 to 5 %.
MEDIANS: dict[str, dict[str, dict[str, float]]] = {
    "width": {
        "weave": {DRAW_IN: 1.2, RELAXATION: 0.8, WASH: 2.2},
        "fibre": {DRAW_IN: 1.0, RELAXATION: 0.6, WASH: 2.4, SETTLING: 0.5},
        "yarn": {DRAW_IN: 0.8, RELAXATION: 0.5, WASH: 1.6},
        "finish": {WASH: 1.6, SETTLING: 0.5},
        "closeness": {DRAW_IN: 0.5, RELAXATION: 0.2, WASH: 0.7},
        "year": {DRAW_IN: 0.20, RELAXATION: 0.125, WASH: 0.30},
        "warp": {DRAW_IN: 0.9, RELAXATION: 0.6, WASH: 1.1, SETTLING: 0.4},
        "piece": {DRAW_IN: 0.35, RELAXATION: 0.30, WASH: 0.40, SETTLING: 0.25},
    },
    "length": {
        "weave": {TAKE_UP: 2.0, PICK: 2.5, RELAXATION: 1.0, WASH: 2.2},
        "fibre": {TAKE_UP: 1.0, RELAXATION: 1.0, WASH: 2.4, SETTLING: 0.5},
        "yarn": {TAKE_UP: 0.8, PICK: 2.0, RELAXATION: 0.6, WASH: 1.6},
        "finish": {WASH: 1.6, SETTLING: 0.5},
        "closeness": {TAKE_UP: 0.5, RELAXATION: 0.2, WASH: 0.5},
        "year": {TAKE_UP: 0.20, RELAXATION: 0.15, WASH: 0.30},
        "warp": {TAKE_UP: 1.2, PICK: 3.0, RELAXATION: 1.1, WASH: 1.7, SETTLING: 0.6},
        "piece": {TAKE_UP: 0.5, PICK: 1.5, RELAXATION: 0.55, WASH: 0.85, SETTLING: 0.4},
    },
}

# Mean slope for each 10 % closer. Width: open cloth draws in and shrinks more, a point in all. Length:
# more threads to cross take up more warp, and leave the wash less room.
SLOPES: dict[str, dict[str, float]] = {
    "width": {DRAW_IN: 0.35, RELAXATION: 0.05, WASH: 0.6},
    "length": {TAKE_UP: -0.4, WASH: 0.3},
}

# Partial correlations inside a warp and a piece: the two steps, the steps held fixed, and atanh of the
# centre. What was not lost in one step is lost in the next. More picks than intended take up more warp.
PARTIAL: dict[str, tuple[tuple[str, str, float], ...]] = {
    "width": ((DRAW_IN, RELAXATION, -0.5), (DRAW_IN, WASH, -0.25), (RELAXATION, WASH, -0.25), (WASH, SETTLING, -0.25)),
    "length": (
        *((TAKE_UP, RELAXATION, -0.5), (TAKE_UP, WASH, -0.25), (RELAXATION, WASH, -0.25)),
        *((WASH, SETTLING, -0.25), (TAKE_UP, PICK, 0.25)),
    ),
}


@dataclass(frozen=True)
class Priors:
    """What is believed of one direction, in points; the tables of this file unless others are given.

    theta, of `size` numbers, stands for one set of variances: first the log sds of scales(), then the
    partial correlations. Beforehand it is N(0, I).
    """

    direction: str
    levels: Mapping[str, tuple[float, float]]
    medians: Mapping[str, Mapping[str, float]]
    slopes: Mapping[str, float]
    partial: tuple[tuple[str, str, float], ...]
    spread: float = SPREAD

    @cached_property
    def scales(self) -> tuple[tuple[str, str], ...]:
        """The (term, step) of each log sd, in the order of theta."""
        return scales(self.direction)

    @property
    def size(self) -> int:
        """How many numbers theta has."""
        return len(self.scales) + len(self.partial)

    @cached_property
    def log_medians(self) -> Floats:
        """ln of the median sds, as fractions, one a scale."""
        return np.log([self.medians[term][step] / 100 for term, step in self.scales])

    @cached_property
    def factor(self) -> Floats:
        """C, the Cholesky factor of the covariance of the log sds (scales × scales)."""
        terms = np.array([term for term, _ in self.scales])
        within = np.array([TERM.get(term, TERM_OTHERS) for term in terms])
        same = terms[:, None] == terms[None, :]
        covariance = HAND**2 + np.where(same, within[:, None] ** 2, 0.0) + ALONE**2 * np.eye(len(terms))
        return np.asarray(np.linalg.cholesky(covariance), dtype=np.float64)

    def correlation(self, partial_theta: Floats) -> Floats:
        """The correlation of the steps (K × K) from the last numbers of theta: always positive definite.

        A vine: the first three steps that meet on the loom and in the water are free; settling hangs on
        the wash alone and pick on the take-up alone.
        """
        steps = STEPS[self.direction]
        rho = [np.tanh(centre + self.spread * theta) for (_, _, centre), theta in
               zip(self.partial, partial_theta, strict=True)]  # fmt: skip
        first, relax, wash, settling = (steps.index(step) for step in (steps[0], RELAXATION, WASH, SETTLING))
        found = np.eye(len(steps))

        def put(a: int, b: int, value: float) -> None:
            found[a, b] = found[b, a] = value

        put(first, relax, rho[0])
        put(first, wash, rho[1])
        put(relax, wash, rho[0] * rho[1] + rho[2] * np.sqrt((1 - rho[0] ** 2) * (1 - rho[1] ** 2)))
        for other in (first, relax):
            put(settling, other, rho[3] * found[wash, other])
        put(settling, wash, rho[3])
        if PICK in steps:
            pick = steps.index(PICK)
            for other in (relax, wash, settling):
                put(pick, other, rho[4] * found[first, other])
            put(pick, first, rho[4])
        return found

    def hyper(self, theta: Floats) -> Hyper:
        """The variances that theta stands for."""
        many = len(self.scales)
        sds = np.exp(self.log_medians + self.factor @ theta[:many])
        steps = STEPS[self.direction]
        return Hyper(
            level=np.array([self.levels[step][0] / 100 for step in steps]),
            level_sd=np.array([self.levels[step][1] / 100 for step in steps]),
            slope_mean=np.array([self.slopes.get(step, 0.0) / 100 for step in steps]),
            sds=dict(zip(self.scales, sds.tolist(), strict=True)),
            correlation=self.correlation(theta[many:]),
        )

    def draw(self, rng: np.random.Generator) -> Hyper:
        """One set of variances drawn from what is believed."""
        return self.hyper(rng.standard_normal(self.size))


def priors_for(direction: str) -> Priors:
    """What this project believes of "width" or of "length" beforehand."""
    tables = LEVELS[direction], MEDIANS[direction], SLOPES[direction], PARTIAL[direction]
    return Priors(direction, *tables)
