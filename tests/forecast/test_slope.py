"""The slope of the likelihood, which the fit climbs by."""

from __future__ import annotations

import numpy as np
import pytest

from journal_tools.forecast.design import design_of
from journal_tools.forecast.evidence import Journal, Variances, gather
from journal_tools.forecast.mode import mode_of, tangents_of, to_theta
from journal_tools.forecast.posterior import moments_of
from journal_tools.forecast.priors import Priors, priors_for
from journal_tools.forecast.rows import rows_of
from journal_tools.forecast.slope import slope_of
from journal_tools.forecast.small import Floats
from tests.forecast.made import random_journal

DIRECTIONS = ("width", "length")


def laid_out(direction: str, warps: int, two_kinds: float = 0.3) -> tuple[Journal, Priors]:
    priors = priors_for(direction)
    observed = random_journal(direction, warps, seed=warps, two_kinds=two_kinds)
    rows = rows_of(observed, direction, priors.hyper(np.zeros(priors.size)))
    return Journal.of(rows, design_of(rows)), priors


def slope(journal: Journal, priors: Priors, theta: Floats, weight: Floats) -> tuple[Floats, Floats]:
    variances = Variances.of(priors.hyper(theta), priors.direction)
    found = gather(journal, variances, weight)
    moments = moments_of(journal, found)
    return to_theta(priors, *slope_of(journal, variances, weight, found, moments, tangents_of(priors, theta)))


@pytest.mark.parametrize("direction", DIRECTIONS)
@pytest.mark.parametrize("two_kinds", [0.0, 0.5])
def test_slope(direction: str, two_kinds: float) -> None:
    """The slope is what the likelihood does when each variance is changed a little, odd warps among them."""
    journal, priors = laid_out(direction, 20, two_kinds)
    rng = np.random.default_rng(1)
    theta, weight = 0.5 * rng.standard_normal(priors.size), rng.gamma(3.5, 1 / 3.5, len(journal.rows.warps))

    def value(at: Floats) -> float:
        return gather(journal, Variances.of(priors.hyper(at), direction), weight).value

    nudges = 1e-5 * np.eye(priors.size)
    expected = [(value(theta + nudge) - value(theta - nudge)) / 2e-5 for nudge in nudges]
    found = slope(journal, priors, theta, weight)[0]

    assert pytest.approx(np.array(expected), abs=2e-6 * float(np.max(np.abs(found)))) == found


@pytest.mark.parametrize("direction", DIRECTIONS)
def test_curvature(direction: str) -> None:
    """Near the top, the average information is the curvature, within thrice in any direction and mostly nearer."""
    journal, priors = laid_out(direction, 60)
    mode = mode_of(journal, priors)
    nudges = 1e-4 * np.eye(priors.size)

    def at(theta: Floats) -> Floats:
        return slope(journal, priors, theta, mode.weight)[0]

    bend = np.array([(at(mode.theta + nudge) - at(mode.theta - nudge)) / 2e-4 for nudge in nudges])
    exact = np.eye(priors.size) - (bend + bend.T) / 2
    ratios = np.linalg.eigvals(np.linalg.solve(mode.curvature, exact)).real

    assert 1 / 3 < ratios.min()
    assert 3 > ratios.max()
    assert 0.2 > abs(float(np.median(ratios)) - 1)


@pytest.mark.parametrize("direction", DIRECTIONS)
def test_the_top(direction: str) -> None:
    """At the end of the climb no change of the variances makes the journal likelier."""
    journal, priors = laid_out(direction, 30)
    mode = mode_of(journal, priors)

    def posterior(theta: Floats) -> float:
        variances = Variances.of(priors.hyper(theta), direction)
        return gather(journal, variances, mode.weight).value - float(theta @ theta) / 2

    top = posterior(mode.theta)
    steps = 0.1 * np.vstack([np.eye(priors.size), -np.eye(priors.size)])
    assert 0.02 > max(posterior(mode.theta + step) for step in steps) - top
