"""What pieces of the very warp say of the rest of it."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest

from journal_tools.forecast.forecast import Forecast
from journal_tools.forecast.observed import Observed
from journal_tools.forecast.priors import priors_for
from journal_tools.forecast.rows import mean_of
from tests.forecast.made import random_journal

DIRECTIONS = {"width": ("in_reed", "washed 1"), "length": ("on_loom", "washed 1")}


@pytest.mark.parametrize("direction", DIRECTIONS)
class TestSample:
    """Variances are known here, so that the quick way can be held to the long one."""

    def fixed(self, observed: list[Observed], direction: str) -> Forecast:
        return Forecast.fixed(
            observed, direction, priors_for(direction).hyper(np.zeros(priors_for(direction).size)), nu=math.inf
        )

    def test_held_already(self, direction: str) -> None:
        """A sample that the journal holds counts once: the answer is that of a journal without it, and the sample."""
        observed = random_journal(direction, 15, seed=4, two_kinds=0.5, undated=0)
        warp = next(one.warp for one in observed if len({two.kind for two in observed if two.warp == one.warp}) == 2)
        seen = [one for one in observed if one.warp == warp]
        others = [one for one in observed if one.warp != warp]
        for kind in {one.kind for one in seen}:
            first = self.fixed(observed, direction).belief(kind, *DIRECTIONS[direction], seen=seen)
            then = self.fixed(others, direction).belief(kind, *DIRECTIONS[direction], seen=seen)

            assert pytest.approx((then.mean, then.sd), rel=1e-6) == (first.mean, first.sd)

    def test_as_if_fitted(self, direction: str) -> None:
        """The mean for the warp is what a fit with the sample in it finds: its effects and its departure together."""
        observed = random_journal(direction, 15, seed=4, two_kinds=0.0, undated=0)
        seen = [one for one in observed if one.warp == "warp 3"]
        quick = self.fixed([one for one in observed if one.warp != "warp 3"], direction)
        journal = self.fixed(observed, direction)
        rows = journal.weighing.journal.rows
        group = next(n for n, warp in enumerate(rows.warp_of) if rows.warps[warp] == "warp 3")
        steps = quick.steps(seen[0].kind, seen=seen)
        expected = journal.weighing.moments.group[group] + mean_of(seen[0].kind, journal.hyper)
        assert pytest.approx(expected, rel=1e-8, abs=1e-12) == steps.means[0]
        assert pytest.approx(journal.weighing.moments.group_cov[group], rel=1e-6, abs=1e-12) == steps.shared[0]


@pytest.mark.parametrize("direction", DIRECTIONS)
def test_surer(direction: str) -> None:
    """A washed sample makes the rest of its warp surer, and a width or length on the loom a little."""
    journal = random_journal(direction, 30, seed=7)
    forecast = Forecast.fit(journal, direction)
    kind = journal[0].kind
    whole = next(one for one in journal if {"on_loom", "washed 1"} <= {two.moment for two in one.readings})
    sample = replace(whole, warp="the one on the loom", kind=kind)
    blind, knowing = (forecast.belief(kind, *DIRECTIONS[direction], seen=seen) for seen in ((), (sample,)))

    assert knowing.batch_sd < 0.9 * blind.batch_sd
