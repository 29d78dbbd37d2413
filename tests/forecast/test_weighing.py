"""What an answer rests on, and which figures the rest of the journal does not lead one to expect."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest

from journal_tools.forecast.forecast import Forecast
from journal_tools.forecast.kind import ClothKind
from journal_tools.forecast.priors import priors_for
from journal_tools.forecast.rows import mean_of
from tests.forecast.made import PLAIN, piece, random_journal
from tests.forecast.test_forecast import towels

WHOLE = "in_reed", "washed 1"


@pytest.mark.parametrize("direction", ["width", "length"])
def test_left_out(direction: str) -> None:
    """What the others say of a warp is what a journal without it says, for every warp, of one kind or of two."""
    hyper = priors_for(direction).hyper(np.zeros(priors_for(direction).size))
    observed = random_journal(direction, 14, seed=6, two_kinds=0.4, undated=0)
    weighing = Forecast.fixed(observed, direction, hyper, nu=math.inf).weighing
    rows = weighing.journal.rows
    means, covariances = weighing.left_out()
    for group, kind in enumerate(rows.kinds):
        warp = rows.warps[rows.warp_of[group]]
        without = Forecast.fixed([one for one in observed if one.warp != warp], direction, hyper, nu=math.inf)
        steps = without.steps(kind)
        told = np.diagonal(weighing.evidence.told[group]) > 0  # the others may be asked about more than it tells

        assert pytest.approx(steps.means[0][told], rel=1e-7, abs=1e-11) == (means[group] + mean_of(kind, hyper))[told]
        around = covariances[group] + weighing.variances.warp
        assert pytest.approx(steps.shared[0][np.ix_(told, told)], rel=1e-6, abs=1e-12) == around[np.ix_(told, told)]


def test_who_moves_it() -> None:
    """The warp that moves an answer most is the one whose absence moves it most, by as much as is said."""
    hyper = priors_for("width").hyper(np.zeros(priors_for("width").size))
    observed = [*towels(6), *towels(1, wash=-12.0, first=50)]

    def fixed(without: str = "") -> Forecast:
        return Forecast.fixed([one for one in observed if one.warp != without], "width", hyper, nu=math.inf)

    here = fixed().belief(PLAIN, *WHOLE).mean
    moves = {warp: here - fixed(warp).belief(PLAIN, *WHOLE).mean for warp in {one.warp for one in observed}}
    rests = fixed().rests_on(PLAIN, *WHOLE)

    assert "plain weave 50" == rests.heaviest
    assert pytest.approx(moves[rests.heaviest], rel=1e-7) == rests.moves
    assert sorted(moves, key=lambda warp: -abs(moves[warp])) == list(rests.yarn_warps)


def test_what_it_rests_on() -> None:
    """The nearest cloth that the journal holds is named before the answer: yarn and weave, yarn, fibre, or nothing."""
    twill = replace(PLAIN, weave="2/2 twill")
    thick = replace(twill, warp_yarn="cotton 8/4", weft_yarn="cotton 8/4")
    forecast = Forecast.fit([*towels(3), *towels(2, kind=thick)], "width")
    silk = ClothKind("plain weave", "silk", "silk", "silk", "silk")
    asked = {
        "yarn and weave": PLAIN,
        "yarn": twill,
        "fibre and weave": replace(PLAIN, warp_yarn="cotton 16/2", weft_yarn="cotton 16/2"),
        "fibre": replace(PLAIN, weave="lace", warp_yarn="cotton 16/2", weft_yarn="cotton 16/2"),
        "common practice": silk,
    }
    for basis, kind in asked.items():
        assert basis == forecast.rests_on(kind, *WHOLE).basis
    rests = forecast.rests_on(twill, *WHOLE)
    assert ({"plain weave 0", "plain weave 1", "plain weave 2"}, {"2/2 twill 0", "2/2 twill 1"}, ()) == (
        set(rests.yarn_warps),
        set(rests.weave_warps),
        rests.both,
    )


def test_only_warps_that_tell() -> None:
    """A warp that was never washed is nothing to rest a washed size on; for the loom it is."""
    unwashed = piece("on the loom", {"in_reed": 0, "on_loom": -4})
    forecast = Forecast.fit([unwashed], "width")

    assert () == forecast.rests_on(PLAIN, "on_loom", "washed 1").yarn_warps
    assert ("on the loom",) == forecast.rests_on(PLAIN, "in_reed", "on_loom").yarn_warps


def test_digits_swapped() -> None:
    """19 3/8 on the loom typed as 13 3/8 is asked about, at the loss that it spoils most, once; the others are not."""
    slip = math.log(13.375 / 19.375) * 100
    odd = piece("slipped", {"in_reed": 0, "on_loom": -4 + slip, "off_loom": -1.5 - slip, "washed 1": -6})
    surprises = Forecast.fit([*towels(14), odd], "width").surprises()

    assert ["slipped"] == [one.warp for one in surprises]
    assert ("on_loom", "off_loom") == (surprises[0].first, surprises[0].last)
    assert pytest.approx(-1.5 - slip) == 100 * surprises[0].log_ratio
    assert surprises[0].p < 0.001
    assert pytest.approx(surprises[0].z) == (surprises[0].log_ratio - surprises[0].expected) / surprises[0].sd


def test_nothing_odd() -> None:
    """A calm journal is asked nothing."""
    assert () == Forecast.fit(towels(14), "width").surprises()
