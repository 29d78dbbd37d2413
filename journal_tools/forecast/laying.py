"""Nodes laid round the mode: where to stand, and how much each counts."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from journal_tools.forecast.evidence import Journal, Variances, gather
from journal_tools.forecast.lattice import normal_points
from journal_tools.forecast.mode import Mode
from journal_tools.forecast.nodes import Node, Nodes, shares_of
from journal_tools.forecast.priors import Priors

PAIRS = 16  # of nodes laid at once, a point of the lattice and its negative
ROUNDS = 8  # at most
ENOUGH = 8.0  # effective nodes: with fewer, one lucky node is taken for the truth
KEPT = 0.998  # of the weight: nodes that count for nothing cost as much as others


def nodes_round(journal: Journal, priors: Priors, mode: Mode) -> Nodes:
    """The lattice laid round the mode, each node weighed by its posterior.

    More are laid until enough count. The points are all of one length, so that the density they were
    laid with is one for all and the weight is the posterior alone.
    """
    values, turned = np.linalg.eigh(mode.curvature)
    # The symmetric root: single eigenvectors turn with the last bit of the curvature, and the nodes would too.
    root = (turned / np.sqrt(values)) @ turned.T
    points = normal_points(PAIRS * ROUNDS, priors.size)
    found: list[Node] = []
    for turn in range(ROUNDS):
        for point in points[2 * PAIRS * turn : 2 * PAIRS * (turn + 1)]:
            theta = mode.theta + root @ point
            variances = Variances.of(priors.hyper(theta), priors.direction)
            evidence = gather(journal, variances, mode.weight)
            score = evidence.value - float(theta @ theta) / 2
            if np.isfinite(score):
                found.append(Node.of(score, variances, evidence, journal.design.columns))
        share = shares_of(np.array([node.score for node in found]))
        if np.sum(share**2) < 1 / ENOUGH:
            break
    share = np.minimum(share, len(share) ** -0.5)
    order = np.argsort(-share, kind="stable")
    many = int(np.searchsorted(np.cumsum(share[order]), KEPT * share.sum())) + 1
    kept = [replace(found[node], score=float(np.log(share[node]))) for node in order[:many]]
    found.clear()
    return Nodes.of(kept, journal.design.columns)
