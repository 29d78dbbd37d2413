"""What an oracle knows: a law in the forecast's own words, and back."""

from __future__ import annotations

import numpy as np

from journal_tools.forecast.hyper import Hyper
from journal_tools.forecast.priors import priors_for
from tests.worlds.law import STEPS, WILD, Law, Vector

TERMS = ("weave", "fibre", "yarn", "finish", "closeness", "year", "warp", "piece")


def drawn_law(direction: str, rng: np.random.Generator) -> Law:
    """A law as the forecast believes in before any cloth, departures Student's t with 7 degrees of freedom."""
    hyper = priors_for(direction).draw(rng)
    sds = {term: np.array([hyper.sds.get((term, step), 0.0) for step in STEPS[direction]]) for term in TERMS}
    return Law(direction, hyper.level, hyper.level_sd, hyper.slope_mean, sds, hyper.correlation, nu=7.0)


def hyper_of(law: Law) -> Hyper:
    """The variances of a law; a trend counts as a walk of its size, wild warps with all their variance."""
    sds = law.sds | {"warp": law.sds["warp"] * _wildness(law)}
    if law.trend.size:
        sds["year"] = np.hypot(sds["year"], law.trend)
    named = {
        (term, step): float(sd) for term in TERMS for step, sd in zip(STEPS[law.direction], sds[term], strict=True)
    }
    return Hyper(
        level=law.level,
        level_sd=law.level_sd,
        slope_mean=law.slope,
        sds={name: sd for name, sd in named.items() if sd > 0},
        correlation=law.correlation,
    )


def _wildness(law: Law) -> Vector:
    """How much larger wild warps make a warp's standard deviation, step by step."""
    wild = np.array([law.wild if law.wild_step in ("", step) else 0.0 for step in STEPS[law.direction]])
    return np.sqrt(1 + wild * (WILD**2 - 1))
