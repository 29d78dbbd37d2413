"""The variances that a journal makes likeliest, and how sharply: the centre of what is averaged over.

Newton steps in theta with the average information as the curvature, each at most CAP long, halved until
ln posterior rises; between them the warps' weights λ are set by the t law. About fifteen evaluations.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from journal_tools.forecast.columns import BLOCKS
from journal_tools.forecast.evidence import Evidence, Journal, Variances, gather
from journal_tools.forecast.hyper import EFFECTS, Hyper
from journal_tools.forecast.posterior import Moments, moments_of, t_weights
from journal_tools.forecast.priors import Priors
from journal_tools.forecast.slope import Tangents, slope_of
from journal_tools.forecast.small import Floats

NU = 7.0  # of the warps' t law: 4, 7 and 15 fare alike, and 7 asks about the right warps
CAP = 1.5  # length of a step in theta, where the prior is N(0, I)
ENOUGH = 0.2  # of the gradient: within a tenth of a standard deviation of the top
NEAR = 1.0  # enough while the weights are not yet set
ROUNDS = 4
STEADY = 0.05  # of ln λ


def tangents_of(priors: Priors, theta: Floats) -> Tangents:
    """The changes of the covariances with every log sd and every partial correlation at theta."""
    hyper = priors.hyper(theta)
    steps = list(dict.fromkeys(step for term, step in priors.scales if term == "warp"))
    many = len(priors.scales)
    order, warp, piece = [], [], []
    sd = {term: hyper.sd_of(term, priors.direction) for term in ("warp", "piece")}
    covariance = {term: hyper.correlation * np.outer(sd[term], sd[term]) for term in sd}
    nothing = np.zeros_like(hyper.correlation)
    for term, step in priors.scales:
        place = steps.index(step)
        if term in EFFECTS:
            order.append((BLOCKS.index(term), place))
            continue
        change = nothing.copy()
        change[place] += covariance[term][place]
        change[:, place] += covariance[term][:, place]
        warp.append(change if term == "warp" else nothing)
        piece.append(change if term == "piece" else nothing)
    for number in range(len(priors.partial)):
        nudge = np.zeros(len(priors.partial))
        nudge[number] = 1e-5
        ahead, behind = priors.correlation(theta[many:] + nudge), priors.correlation(theta[many:] - nudge)
        change = (ahead - behind) / 2e-5
        warp.append(change * np.outer(sd["warp"], sd["warp"]))
        piece.append(change * np.outer(sd["piece"], sd["piece"]))
    return Tangents(order, np.array(warp), np.array(piece))


def to_theta(priors: Priors, gradient: Floats, information: Floats) -> tuple[Floats, Floats]:
    """Gradient and information by the numbers of theta, from those by log sds and partial correlations."""
    many = len(priors.scales)
    turned = gradient.copy()
    turned[:many] = priors.factor.T @ gradient[:many]
    bent = information.copy()
    bent[:many] = priors.factor.T @ bent[:many]
    bent[:, :many] = bent[:, :many] @ priors.factor
    return turned, bent


@dataclass(frozen=True)
class Mode:
    """Where the posterior of theta is highest. curvature: of −ln posterior there (size × size).

    weight: λ of each warp. gradient: its length, that is, how near the top. evaluations: how many.
    variances, evidence, moments: what goes with it there.
    """

    theta: Floats
    weight: Floats
    curvature: Floats
    gradient: float
    evaluations: int
    variances: Variances
    evidence: Evidence
    moments: Moments


@dataclass
class _Point:
    theta: Floats
    value: float
    evidence: Evidence
    variances: Variances


def _at(journal: Journal, priors: Priors, theta: Floats, weight: Floats) -> _Point:
    hyper: Hyper = priors.hyper(theta)
    variances = Variances.of(hyper, priors.direction)
    evidence = gather(journal, variances, weight)
    return _Point(theta, evidence.value - float(theta @ theta) / 2, evidence, variances)


def mode_of(journal: Journal, priors: Priors, cap: float = CAP) -> Mode:
    """Climb to the mode from theta = 0."""
    theta = np.zeros(priors.size)
    weight = np.ones(len(journal.rows.warps))
    evaluations = 0
    for turn in range(ROUNDS + 1):
        point = _at(journal, priors, theta, weight)
        evaluations += 1
        for _ in range(40):
            moments = moments_of(journal, point.evidence)
            tangents = tangents_of(priors, point.theta)
            gradient, curvature = to_theta(
                priors, *slope_of(journal, point.variances, weight, point.evidence, moments, tangents)
            )
            gradient = gradient - point.theta
            curvature = curvature + np.eye(priors.size)
            size = float(np.linalg.norm(gradient))
            if size < (ENOUGH if turn else NEAR):
                break
            step = np.linalg.solve(curvature, gradient)
            step *= min(1.0, cap / float(np.linalg.norm(step)))
            rise = float(gradient @ step)
            for _ in range(12):
                ahead = _at(journal, priors, point.theta + step, weight)
                evaluations += 1
                if ahead.value >= point.value + 1e-4 * rise:
                    break
                step, rise = step / 2, rise / 2
            else:
                break
            point = ahead
        theta = point.theta
        found = t_weights(moments, point.variances, weight, NU)
        moved = float(np.max(np.abs(np.log(found / weight)), initial=0.0))
        if turn == ROUNDS or moved < STEADY:
            break
        weight = found
    return Mode(theta, weight, curvature, size, evaluations, point.variances, point.evidence, moments)
