"""How the evidence changes with the variances: its gradient, and the average information.

The gradient comes from posterior moments (Fisher's identity). The average information (Gilmour, Thompson
and Cullis 1995) of two hyperparameters is half of f' P g, with f = (dV / dh) P y as if it had been
measured: a few products with the inverse, where differences would need as many evaluations as there are
hyperparameters.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from journal_tools.forecast.columns import BLOCKS
from journal_tools.forecast.evidence import Evidence, Journal, Variances, to_increments
from journal_tools.forecast.posterior import Moments
from journal_tools.forecast.small import Floats, Indices, applied, inverse_of, transposed


@dataclass(frozen=True)
class Tangents:
    """The hyperparameters: `order`, the (block, step) of each effect's log sd, and after them those that
    change the covariance of warps or of pieces: warp, piece, the changes (H × K × K)."""

    order: Sequence[tuple[int, int]]
    warp: Floats
    piece: Floats

    def belongs(self, block_of: Indices, step_of: Indices) -> Indices:
        """Which log sd each place in the vector of effects goes by, −1 for none (the levels)."""
        index = np.full((len(BLOCKS), self.warp.shape[-1]), -1, dtype=np.intp)
        for number, (block, step) in enumerate(self.order):
            index[block, step] = number
        return index[block_of, step_of]


@dataclass(frozen=True)
class _Pieces:
    """Of each class: pull: Sc⁻¹ (Sc⁻¹ + G)⁻¹, and strain: sum of s s' with s = M'P y. Of each cell: sum of s."""

    pull: Floats
    strained: Floats
    strain: Floats


def _pieces(journal: Journal, variances: Variances, found: Evidence, moments: Moments) -> _Pieces:
    rows = journal.rows
    told, which, number = found.piece_told, rows.cell_class, rows.cell_number
    pull = inverse_of(variances.piece) @ found.piece_gain
    at = moments.group[rows.cell_group]
    pulled = applied(pull[which], rows.cell_q)
    strain = pulled - number[:, None] * applied(told[which], at)
    cross = journal.by_class.of(pulled[:, :, None] * at[:, None, :]) @ told
    square = journal.by_class.of((number[:, None] * at)[:, :, None] * at[:, None, :])
    strained = pull @ rows.class_qq @ transposed(pull) - cross - transposed(cross) + told @ square @ told
    return _Pieces(pull, strained, strain)


def slope_of(
    journal: Journal, variances: Variances, lam: Floats, found: Evidence, moments: Moments, tangents: Tangents
) -> tuple[Floats, Floats]:
    """Gradient (hypers) and average information (hypers × hypers) of ln L."""
    rows, columns = journal.rows, journal.design.columns
    pieces = _pieces(journal, variances, found, moments)
    belongs = tangents.belongs(columns.block_of, columns.step_of)
    mine = belongs >= 0
    doubt = np.diagonal(moments.scaled)
    by_effect = np.bincount(belongs[mine], (found.u**2 + doubt - 1)[mine], minlength=len(tangents.order))

    inverse = inverse_of(variances.warp)
    outer = moments.warp.T @ (lam[:, None] * moments.warp) + np.tensordot(lam, moments.warp_cov, axes=1)
    by_warp = inverse @ (outer - len(lam) * variances.warp) @ inverse / 2
    told = found.piece_told
    unsure = journal.by_class.of(rows.cell_number[:, None, None] * moments.group_cov[rows.cell_group])
    by_piece = np.sum(pieces.strained + told @ unsure @ told, axis=0) - np.tensordot(rows.class_number, told, axes=1)
    by_piece /= 2
    others = np.einsum("hkl,kl->h", tangents.warp, by_warp) + np.einsum("hkl,kl->h", tangents.piece, by_piece)

    solo = np.zeros((columns.many, len(tangents.order)))
    solo[np.nonzero(mine)[0], belongs[mine]] = 2 * found.u[mine]
    return np.concatenate([by_effect, others]), _information(journal, found, moments, tangents, pieces, inverse, solo)


def _information(
    journal: Journal,
    found: Evidence,
    moments: Moments,
    tangents: Tangents,
    pieces: _Pieces,
    warp_inverse: Floats,
    solo: Floats,
) -> Floats:
    """The average information. solo: 2 u, each effect in the column of its log sd."""
    rows, design = journal.rows, journal.design
    told, gain = found.told, found.warp_gain
    many = len(tangents.warp)
    # f in the steps of each group (G × H × K), from its warp, and J f with the pieces' own f
    varied = (moments.warp @ transposed(tangents.warp @ warp_inverse)).transpose(1, 0, 2)[rows.warp_of]
    seen = varied @ told
    pushed = found.piece_told[:, None] @ tangents.piece  # J dSc: classes × H × K × K
    bent = (pieces.strain @ tangents.piece).transpose(1, 0, 2)  # dSc s of each cell: cells × H × K
    own = journal.by_group.of(bent @ found.piece_told[rows.cell_class])
    turned = pieces.strained[:, None] @ tangents.piece
    quadratic = _product(varied, seen)
    mixed = _product(varied, own)
    quadratic += mixed + mixed.T + _product(pushed, transposed(turned))
    # taking the warps out
    line = seen + own
    of_warp = journal.by_warp.of(line)
    gained = of_warp @ gain
    quadratic -= _product(gained, of_warp)
    line = line - gained[rows.warp_of] @ told
    # taking the effects out
    b = to_increments(design.gathered(transposed(line)), design.columns) * found.sds[:, None]
    both = np.hstack([solo, b])
    product = both.T @ (moments.scaled @ both)
    first = len(product) - many
    information = product.copy()
    information[:first, :first] = solo.T @ solo - product[:first, :first]
    information[first:, first:] = quadratic - product[first:, first:]
    halved: Floats = information / 2
    return halved


def _product(left: Floats, right: Floats) -> Floats:
    """Sum over everything but the hyperparameters, which stand second (H × H)."""
    many = left.shape[1]
    turn = (1, 0, *range(2, left.ndim))
    found: Floats = left.transpose(turn).reshape(many, -1) @ right.transpose(turn).reshape(many, -1).T
    return found
