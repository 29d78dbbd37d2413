"""The forecast's quick algebra beside one dense normal over all readings, written without it.

Uncertainties of readings stand where the forecast keeps them, on a grid, so that both see the same numbers.
"""

from __future__ import annotations

import math

import numpy as np
import pytest

from journal_tools.forecast.design import design_of
from journal_tools.forecast.evidence import Journal, Variances, gather
from journal_tools.forecast.forecast import Forecast
from journal_tools.forecast.rows import rows_of
from tests.worlds.dense import Dense
from tests.worlds.known import drawn_law, hyper_of
from tests.worlds.world import SPANS, made_world, on_grid, span

DIRECTIONS = ("width", "length")


@pytest.mark.parametrize("direction", DIRECTIONS)
@pytest.mark.parametrize("warps", [1, 2, 24])
def test_every_answer(direction: str, warps: int) -> None:
    """With gaps, several pieces, tape and years to come, means and spreads are those of the dense reckoning."""
    law = drawn_law(direction, np.random.default_rng(warps))
    world = made_world(law, warps, seed=warps, unseen=6)
    observed, kinds = on_grid(world.observed), [woven.kind for woven in world.unseen]
    means, spreads = Dense(law, observed, {}).expected(kinds)
    own = sum(law.sds[term][:, None] * law.correlation * law.sds[term] for term in ("warp", "piece"))
    forecast = Forecast.fixed(observed, direction, hyper_of(law), nu=math.inf)

    for first, last in SPANS[direction].values():
        way = span(direction, first, last)
        for n, kind in enumerate(kinds):
            belief = forecast.belief(kind, first, last)

            assert pytest.approx(way @ means[n], rel=1e-8, abs=1e-12) == belief.mean
            assert pytest.approx(math.sqrt(way @ (spreads[n, n] + own) @ way), rel=1e-6) == belief.sd


@pytest.mark.parametrize("direction", DIRECTIONS)
@pytest.mark.parametrize("warps", [1, 2, 24])
def test_likelihood(direction: str, warps: int) -> None:
    """How likely a journal is, with some warps odd and some steady, is what the dense reckoning finds."""
    rng = np.random.default_rng(warps)
    law = drawn_law(direction, rng)
    observed = on_grid(made_world(law, warps, seed=warps).observed)
    hyper = hyper_of(law)
    rows = rows_of(observed, direction, hyper)
    weights = rng.gamma(3.5, 1 / 3.5, len(rows.warps))
    journal = Journal.of(rows, design_of(rows))
    found = gather(journal, Variances.of(hyper, direction), weights).value

    dense = Dense(law, observed, dict(zip(rows.warps, weights.tolist(), strict=True)))
    assert pytest.approx(dense.log_likelihood(), abs=1e-7) == found
