"""What the journal's warps and pieces most likely did, with how sure that is, at one set of variances."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from journal_tools.forecast.evidence import Evidence, Journal, Variances, real_covariance, real_effects
from journal_tools.forecast.small import Floats, applied, inverse_of, transposed


@dataclass(frozen=True)
class Moments:
    """Posterior moments. warp, warp_cov: w of each warp. group, group_cov: v = x'u + w of each group.

    fitted: x'u of each group; spread: x C x' of each pair of groups in one warp. scaled: A⁻¹.
    """

    warp: Floats
    warp_cov: Floats
    group: Floats
    group_cov: Floats
    fitted: Floats
    spread: Floats
    scaled: Floats


def moments_of(journal: Journal, found: Evidence) -> Moments:
    """Moments at an Evidence, whose factor is spent by it."""
    rows, design, columns = journal.rows, journal.design, journal.design.columns
    scaled = found.inverse()
    real = real_covariance(scaled, found.sds, columns)
    spread = design.spread(np.append(real.ravel(), 0.0)[design.from_pair])
    fitted = design.effects(real_effects(found.u, found.sds, columns))
    gain = found.warp_gain
    warp = applied(gain, found.warp_pull - journal.by_warp.of(applied(found.told, fitted)))
    onto = spread @ found.told[design.cell_b]
    inside = journal.pairs_by_warp.of(found.told[design.cell_a] @ onto)
    warp_cov = gain + gain @ inside @ gain
    across = journal.pairs_by_group.of(onto) @ gain[rows.warp_of]
    own = spread[design.cell_a == design.cell_b]
    group_cov = own - across - transposed(across) + warp_cov[rows.warp_of]
    return Moments(warp, warp_cov, fitted + warp[rows.warp_of], group_cov, fitted, spread, scaled)


def t_weights(moments: Moments, variances: Variances, lam: Floats, nu: float) -> Floats:
    """λ of each warp by the t law with nu degrees of freedom, given the warps' moments.

    The fixed point of λ = (ν + K) / (ν + E[w' Sw⁻¹ w]), with the steps that the warp says nothing of
    taken out of both sides: the same weights in fewer rounds.
    """
    inverse = inverse_of(variances.warp)
    square = np.einsum("ik,kl,il->i", moments.warp, inverse, moments.warp)
    unseen = lam * np.einsum("kl,ikl->i", inverse, moments.warp_cov)
    found: Floats = (nu + len(inverse) - unseen) / (nu + square)
    return found
