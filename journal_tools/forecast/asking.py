"""One question put to the nodes: what the steps of a cloth will be, and what else is known of its warp."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from journal_tools.forecast.belief import Belief
from journal_tools.forecast.nodes import Nodes, shares_of
from journal_tools.forecast.rows import Rows
from journal_tools.forecast.small import Floats, applied, solve_for, solve_for_all
from journal_tools.forecast.told import Told, log_density, stacked, told_by, without_warp


@dataclass(frozen=True)
class Held:
    """A warp that the nodes know already: its pieces, and the weight λ that it was fitted with."""

    rows: Rows
    weight: float


@dataclass(frozen=True)
class Steps:
    """A mixture of P normals of the K steps. shared: what a batch has in common, apart: a piece's own."""

    weights: Floats
    means: Floats
    shared: Floats
    apart: Floats

    def along(self, span: Sequence[float]) -> Belief:
        """The belief of the ratio that spans some steps."""
        way = np.array(span)
        shared = np.einsum("k,pkl,l->p", way, self.shared, way)
        apart = np.einsum("k,pkl,l->p", way, self.apart, way)
        return Belief(self.weights, self.means @ way, shared, apart)


def asked(
    nodes: Nodes,
    touched: Sequence[dict[tuple[str, str | int], float]],
    mean: Floats,
    weights: Sequence[float],
    seen: Rows | None = None,
    held: Held | None = None,
) -> Steps:
    """The steps of a cloth. touched: its columns, then those of the groups of seen, then of held.

    mean: its steps before anything was measured (K). weights: equally likely λ. seen: pieces of its own
    warp. held: the same warp as the nodes know it; it is taken out, so that nothing counts twice.
    """
    steps = len(mean)
    local = nodes.local(touched)
    score = nodes.score
    effects = local.effects.reshape(len(score), -1)
    covariance = local.covariance
    wide: Floats = np.kron(local.shares, np.eye(steps)).astype(np.float64)
    groups = len(seen.kinds) if seen is not None else 0
    if held is not None:
        effects, covariance, gone = _taken_out(nodes, held, effects, covariance, wide[(1 + groups) * steps :])
        score = score - gone
    wide = wide[: (1 + groups) * steps]
    at = effects @ wide.T
    spread = wide @ covariance @ wide.T
    many = len(weights)
    parts = [np.repeat(one, many, axis=0) for one in (score, at, spread, nodes.warp, nodes.piece)]
    score, at, spread, warp, piece = parts
    warp = warp / np.tile(weights, len(nodes.score))[:, None, None]
    shared = spread + stacked(warp, 1 + groups)
    if seen is None:
        return Steps(shares_of(score), at + mean, shared, piece)
    told = told_by(seen, nodes.piece)
    told = Told(*(np.repeat(one, many, axis=0) for one in (told.information, told.pull, told.log)))
    score = score + log_density(told, at[:, steps:], shared[:, steps:, steps:])
    inner = np.eye(groups * steps) + told.information @ shared[:, steps:, steps:]
    strain = told.pull - applied(told.information, at[:, steps:])
    onto = shared[:, :steps, steps:]
    means = at[:, :steps] + applied(onto, solve_for(inner, strain))
    sure = onto @ solve_for_all(inner, told.information) @ onto.transpose(0, 2, 1)
    left = shared[:, :steps, :steps] - sure
    return Steps(shares_of(score), means + mean, (left + left.transpose(0, 2, 1)) / 2, piece)


def _taken_out(
    nodes: Nodes, held: Held, effects: Floats, covariance: Floats, wide: Floats
) -> tuple[Floats, Floats, Floats]:
    """Effects and covariance as if a warp had never been, and ln of how likely it then was."""
    groups = len(held.rows.kinds)
    told = without_warp(told_by(held.rows, nodes.piece), nodes.warp / held.weight, groups)
    onto = covariance @ wide.T
    spread = wide @ onto
    at = effects @ wide.T
    inner = np.eye(groups * nodes.warp.shape[1]) - told.information @ spread
    strain = applied(told.information, at) - told.pull
    effects = effects + applied(onto, solve_for(inner, strain))
    covariance = covariance + onto @ solve_for_all(inner, told.information @ onto.transpose(0, 2, 1))
    return effects, covariance, log_density(told, effects @ wide.T, wide @ covariance @ wide.T)


def with_warp(
    nodes: Nodes, touched: Sequence[dict[tuple[str, str | int], float]], rows: Rows, weights: Sequence[float]
) -> tuple[Nodes, float]:
    """The nodes with one more warp in them, and its weight λ. touched: the columns of its groups.

    The variances of each node stay; effects move, and nodes that foresaw the warp count for more.
    """
    years = [int(name) for one in touched for term, name in one if term in ("year", "step")]
    nodes = nodes.grown({column for one in touched for column in one}, max(years, default=None))
    steps, groups = rows.steps, len(rows.kinds)
    touched = [nodes.columns_for(kind, asked=False) for kind in rows.kinds]
    local = nodes.local(touched)
    at, spread = local.steps()
    told = told_by(rows, nodes.piece)
    scores = np.array([log_density(told, at, spread + stacked(nodes.warp / one, groups)) for one in weights])
    weight = float(np.sum(shares_of((scores + nodes.score).ravel()).reshape(scores.shape).sum(axis=1) * weights))
    told = without_warp(told, nodes.warp / weight, groups)
    score = nodes.score + log_density(told, at, spread)
    flat = local.place.ravel()
    known = flat >= 0
    wide = np.kron(local.shares, np.eye(steps))[:, known]
    onto = nodes.covariance[:, :, flat[known]] @ wide.T
    inner = np.eye(groups * steps) + told.information @ spread
    strain = told.pull - applied(told.information, at)
    effects = nodes.effects + applied(onto, solve_for(inner, strain))
    covariance = nodes.covariance - onto @ solve_for_all(inner, told.information @ onto.transpose(0, 2, 1))
    return replace(nodes, score=score, effects=effects, covariance=covariance), weight
