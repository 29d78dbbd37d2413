"""What a journal says of one set of variances: ln likelihood and the effects that go with it.

A piece with information G about its steps z = v + c, c ~ N(0, Sc), tells J = (Sc⁻¹ + G)⁻¹ Sc⁻¹ G about
the v of its group. The groups of a warp share w ~ N(0, Sw / λ): with K = (λ Sw⁻¹ + ΣJ)⁻¹ what they tell of
the effects is S = J − J K J. With P the effects' standard deviations,

    A = I + P (Σ S ⊗ x x') P,   b = P Σ x ⊗ g,   u = A⁻¹ b,
    ln L = constant + pieces + warps + b'u/2 − ln|A|/2.

Nothing here is as large as the journal but lists of K × K matrices; A grows with the number of effects.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from scipy.linalg import lapack

from journal_tools.forecast.columns import BLOCKS, Columns
from journal_tools.forecast.design import Design
from journal_tools.forecast.hyper import Hyper
from journal_tools.forecast.rows import Rows
from journal_tools.forecast.small import Floats, Sums, applied, inverse, inverse_of, transposed

LEAST = 1e-7  # of the standard deviations inside a warp and a piece, which are divided by


@dataclass(frozen=True)
class Variances:
    """A Hyper as arrays: effect_sd (blocks × K), warp and piece covariances (K × K)."""

    effect_sd: Floats
    warp: Floats
    piece: Floats

    @classmethod
    def of(cls, hyper: Hyper, direction: str) -> Variances:
        """From the variances of a direction."""
        sds = [hyper.level_sd if block == "level" else hyper.sd_of(block, direction) for block in BLOCKS]
        warp, piece = (np.maximum(hyper.sd_of(term, direction), LEAST) for term in ("warp", "piece"))
        return cls(np.array(sds), hyper.correlation * np.outer(warp, warp), hyper.correlation * np.outer(piece, piece))


@dataclass(frozen=True)
class Journal:
    """A journal laid out: its rows, its design, and the sums that a fit does over and over."""

    rows: Rows
    design: Design
    by_group: Sums
    by_class: Sums
    by_warp: Sums
    pairs_by_group: Sums
    pairs_by_warp: Sums

    @classmethod
    def of(cls, rows: Rows, design: Design) -> Journal:
        """Make the sums ready."""
        return cls(
            rows,
            design,
            Sums(rows.cell_group, len(rows.kinds)),
            Sums(rows.cell_class, len(rows.class_number)),
            Sums(rows.warp_of, len(rows.warps)),
            Sums(design.cell_a, len(rows.kinds)),
            Sums(rows.warp_of[design.cell_a], len(rows.warps)),
        )


@dataclass
class Evidence:
    """ln L at one set of variances, and all that was worked out on the way.

    value: ln L, −inf where the arithmetic failed. u: effects in units of their sds, the years as
    increments (many). inverse: A⁻¹ (many × many), None until asked. piece_*: a class; told, pull: J and h
    of each group; warp_gain: K of each warp; warp_pull: h of each warp; left, left_pull: S and g.
    """

    value: float
    sds: Floats
    u: Floats
    factor: Floats
    b: Floats
    piece_gain: Floats
    piece_told: Floats
    told: Floats
    pull: Floats
    warp_gain: Floats
    warp_pull: Floats
    cell_left: Floats
    left_pull: Floats

    def inverse(self) -> Floats:
        """A⁻¹, full (many × many). Spends the factor: to be asked for once."""
        if not self.factor.size:
            return self.factor  # LAPACK complains of a matrix without rows
        found, _ = lapack.dpotri(self.factor.T, lower=False, overwrite_c=True)
        lower: Floats = np.tril(found.T)
        lower += np.tril(lower, -1).T
        return lower


def gather(journal: Journal, variances: Variances, lam: Floats) -> Evidence:
    """ln L and the effects. lam: the weight of each warp, 1 for a warp like the others (warps)."""
    rows, design, columns = journal.rows, journal.design, journal.design.columns
    piece_inverse = inverse_of(variances.piece)
    warp_inverse = inverse_of(variances.warp)
    piece_gain, piece_det = inverse(piece_inverse + rows.information)
    piece_told = piece_inverse @ piece_gain @ rows.information
    piece_told = (piece_told + transposed(piece_told)) / 2
    value = rows.constant - rows.squared / 2
    value -= float(rows.class_number @ (piece_det + log_det_of(variances.piece))) / 2
    value += float(np.sum(piece_gain * rows.class_qq)) / 2

    told = journal.by_group.of(rows.cell_number[:, None, None] * piece_told[rows.cell_class])
    weighed = applied((piece_inverse @ piece_gain)[rows.cell_class], rows.cell_q)
    pull = journal.by_group.of(weighed)
    warp_pull = journal.by_warp.of(pull)
    prior = lam[:, None, None] * warp_inverse
    warp_gain, warp_det = inverse(prior + journal.by_warp.of(told))
    value += float(np.sum(warp_pull * applied(warp_gain, warp_pull))) / 2
    value -= float(np.sum(warp_det + log_det_of(variances.warp) - rows.steps * np.log(lam))) / 2

    gained = told @ warp_gain[rows.warp_of]
    left_pull = pull - applied(gained, warp_pull[rows.warp_of])
    cell_left = -gained[design.cell_a] @ told[design.cell_b]
    cell_left[design.cell_a == design.cell_b] += told

    sds = variances.effect_sd[columns.block_of, columns.step_of]
    b = sds * to_increments(design.gathered(left_pull), columns)
    great = _great(design, cell_left, sds)
    factor, failed = lapack.dpotrf(great.T, lower=False, clean=False, overwrite_a=True)
    if failed or not np.isfinite(value):
        value, u = -np.inf, np.zeros_like(b)
    else:
        u = lapack.dpotrs(factor, b, lower=False)[0] if len(b) else b
        value += float(b @ u) / 2 - float(np.sum(np.log(np.diagonal(factor))))
    return Evidence(
        value, sds, u, factor.T, b, piece_gain, piece_told, told, pull, warp_gain, warp_pull, cell_left, left_pull
    )


def log_det_of(matrix: Floats) -> float:
    """ln determinant of one matrix."""
    return float(np.linalg.slogdet(matrix)[1])


def to_increments(levels: Floats, columns: Columns) -> Floats:
    """What is pulled on a year's level is pulled on every increment up to that year (many × …)."""
    start, years, steps = columns.walk
    if years:
        block = levels[start:].reshape(years, steps, *levels.shape[1:])
        levels[start:] = np.cumsum(block[::-1], axis=0)[::-1].reshape(levels[start:].shape)
    return levels


def _great(design: Design, cell_left: Floats, sds: Floats) -> Floats:
    """A, below the diagonal (many × many)."""
    columns = design.columns
    n = columns.many
    great = np.zeros((n, n))
    target, source = design.to_lower
    great.ravel()[target] = design.gram(cell_left).ravel()[source]
    start, years, steps = columns.walk
    if years:
        rows = np.cumsum(great[start:].reshape(years, steps, n)[::-1], axis=0)[::-1].reshape(-1, n)
        block = rows[:, start:].reshape(-1, years, steps)
        rows[:, start:] = np.cumsum(block[:, ::-1], axis=1)[:, ::-1].reshape(-1, years * steps)
        great[start:] = rows
    great *= sds[:, None]
    great *= sds
    great.ravel()[:: n + 1] += 1.0
    return great


def real_effects(u: Floats, sds: Floats, columns: Columns) -> Floats:
    """Effects in ln ratio, the years as levels (many)."""
    real = u * sds
    start, years, steps = columns.walk
    if years:
        real[start:] = np.cumsum(real[start:].reshape(years, steps), axis=0).ravel()
    return real


def real_covariance(scaled: Floats, sds: Floats, columns: Columns) -> Floats:
    """Their covariance in ln ratio, the years as levels (many × many), from A⁻¹."""
    real = scaled * sds
    real *= sds[:, None]
    start, years, steps = columns.walk
    if years:
        n = len(sds)
        real[start:] = np.cumsum(real[start:].reshape(years, steps, n), axis=0).reshape(-1, n)
        block = real[:, start:].reshape(n, years, steps)
        real[:, start:] = np.cumsum(block, axis=1).reshape(n, -1)
    return real
