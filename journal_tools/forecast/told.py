"""What a few pieces tell at every node at once: for a sample, for a warp taken out, for a warp added."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from journal_tools.forecast.rows import Rows
from journal_tools.forecast.small import Floats, applied, inverse, inverse_of, solve_for


@dataclass(frozen=True)
class Told:
    """What a handful of pieces of one warp tell, node by node (N).

    information: about the groups' steps, stacked (N × gK × gK). pull: (N × gK). log: ln density of the
    pieces, but for what the groups' steps add (N).
    """

    information: Floats
    pull: Floats
    log: Floats


def told_by(rows: Rows, piece: Floats) -> Told:
    """What the pieces of rows tell. piece: the covariance inside a warp at each node (N × K × K)."""
    nodes, steps, groups = len(piece), rows.steps, len(rows.kinds)
    piece_inverse, minus = inverse(piece)
    gain, det = inverse(piece_inverse[:, None] + rows.information)
    pull_of = piece_inverse[:, None] @ gain  # N × classes × K × K
    told = pull_of @ rows.information
    log = rows.constant - rows.squared / 2 - (det + minus[:, None]) @ rows.class_number / 2
    log = log + np.einsum("nckl,ckl->n", gain, rows.class_qq) / 2
    information = np.zeros((nodes, groups, steps, groups, steps))
    pull = np.zeros((nodes, groups, steps))
    for group, which, number, q in zip(rows.cell_group, rows.cell_class, rows.cell_number, rows.cell_q, strict=True):
        one = told[:, which]
        information[:, group, :, group] += number * (one + one.transpose(0, 2, 1)) / 2
        pull[:, group] += pull_of[:, which] @ q
    size = groups * steps
    return Told(information.reshape(nodes, size, size), pull.reshape(nodes, size), log)


def without_warp(told: Told, warp: Floats, groups: int) -> Told:
    """What is told of the effects alone, the warp's own departure summed over.

    warp: covariance of the departure at each node (N × K × K), λ in it.
    """
    size = told.pull.shape[1]
    shared = stacked(warp, groups)
    pushed = inverse_of(np.eye(size) + told.information @ shared)  # (I + J T)⁻¹
    left = pushed @ told.information
    log = told.log + _gain(told.pull, told.information, shared)
    return Told((left + left.transpose(0, 2, 1)) / 2, applied(pushed, told.pull), log)


def log_density(told: Told, mean: Floats, covariance: Floats) -> Floats:
    """ln density of the pieces when the groups' steps are N(mean, covariance) beforehand (N).

    mean: N × gK. covariance: N × gK × gK.
    """
    moved = applied(told.information, mean)
    start = np.sum(mean * (told.pull - moved / 2), axis=1)
    found: Floats = told.log + start + _gain(told.pull - moved, told.information, covariance)
    return found


def stacked(warp: Floats, groups: int) -> Floats:
    """The covariance of one departure that several groups share (N × gK × gK)."""
    return np.tile(warp, (1, groups, groups))


def _gain(pull: Floats, information: Floats, covariance: Floats) -> Floats:
    """½ r' Σ (I + JΣ)⁻¹ r − ½ ln|I + JΣ|, node by node (N)."""
    whole = np.eye(pull.shape[1]) + information @ covariance
    solved = solve_for(whole, pull)
    square = np.sum(pull * applied(covariance, solved), axis=1)
    found: Floats = (square - np.linalg.slogdet(whole)[1]) / 2
    return found
