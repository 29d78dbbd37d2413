"""The forecast as a whole: what more cloth, other cloth and odd cloth do to an answer."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest

from journal_tools.forecast.forecast import Forecast
from journal_tools.forecast.kind import ClothKind
from journal_tools.forecast.observed import Observed
from journal_tools.forecast.priors import priors_for
from tests.forecast.made import PLAIN, piece, random_journal

DIRECTIONS = {"width": ("in_reed", "washed 1"), "length": ("on_loom", "settled")}
WHOLE = "in_reed", "washed 1"


def towels(count: int, wash: float = -6.0, first: int = 0, kind: ClothKind = PLAIN) -> list[Observed]:
    """Warps of two pieces that lose 4, 1.5 and `wash` points, give or take a little."""
    scatter = (0.7, -0.4, 0.1, -0.8, 0.5, -0.2, 0.3, 0.0)
    return [
        piece(
            f"{kind.weave} {first + warp}",
            {"in_reed": 0, "on_loom": -4 + scatter[warp % 8], "off_loom": -1.5, "washed 1": wash + scatter[-warp % 8]},
            kind,
            name=name,
        )
        for warp in range(count)
        for name in ("1", "2")
    ]


@pytest.fixture(scope="module")
def learned() -> Forecast:
    return Forecast.fit(towels(12), "width")


@pytest.mark.parametrize("direction", DIRECTIONS)
def test_same_journal_same_bytes(direction: str) -> None:
    """The same journal gives the same answer to the last bit, and in whatever order its warps come."""
    observed = random_journal(direction, 25, seed=1)
    first, again, turned = (Forecast.fit(one, direction) for one in (observed, observed, observed[::-1]))
    beliefs = [one.belief(PLAIN, *DIRECTIONS[direction]) for one in (first, again, turned)]

    assert {first.nodes.covariance.tobytes()} == {one.nodes.covariance.tobytes() for one in (again, turned)}
    assert [beliefs[0].quantile(0.05)] * 2 == [belief.quantile(0.05) for belief in beliefs[1:]]


@pytest.mark.parametrize("direction", DIRECTIONS)
def test_other_names(direction: str) -> None:
    """What yarns and warps are called is nothing: named the other way round, they give the same answer."""
    observed = random_journal(direction, 25, seed=2)

    def renamed(kind: ClothKind) -> ClothKind:
        swap = {"warp_yarn": kind.warp_yarn[::-1], "weft_yarn": kind.weft_yarn[::-1], "weave": kind.weave[::-1]}
        return replace(kind, **swap)

    others = [replace(one, warp=one.warp[::-1], kind=renamed(one.kind)) for one in observed]
    kind = observed[0].kind
    here = Forecast.fit(observed, direction).belief(kind, *DIRECTIONS[direction])
    there = Forecast.fit(others, direction).belief(renamed(kind), *DIRECTIONS[direction])

    assert pytest.approx((here.mean, here.sd), rel=1e-9) == (there.mean, there.sd)


def test_learns(learned: Forecast) -> None:
    """After twelve warps that lost about 11 %, one more of the kind is expected to; before, nobody could say."""
    before = Forecast.fit([], "width").belief(PLAIN, *WHOLE)
    after = learned.belief(PLAIN, *WHOLE)

    assert pytest.approx(1 - math.exp(-0.115), abs=0.004) == after.loss()
    assert after.sd < before.sd / 3


def test_a_yarn_never_used(learned: Forecast) -> None:
    """For a yarn never used the answer is about the fibre's, and wider; for another fibre wider still."""
    used = learned.belief(PLAIN, *WHOLE)
    yarn = learned.belief(replace(PLAIN, warp_yarn="cotton 16/2", weft_yarn="cotton 16/2"), *WHOLE)
    fibre = learned.belief(ClothKind("plain weave", "tow", "tow", "linen", "linen", "machine 40", 0.75, 2020), *WHOLE)

    assert pytest.approx(used.mean, abs=used.sd) == yarn.mean
    assert used.sd < yarn.sd < fibre.sd


def test_a_finish_changes_no_draw_in(learned: Forecast) -> None:
    """Another wash changes what the water does and not a bit of what the loom did."""
    other = replace(PLAIN, finish="hand wash")
    drawn = [learned.belief(kind, "in_reed", "off_loom") for kind in (PLAIN, other)]
    washed = [learned.belief(kind, "off_loom", "washed 1") for kind in (PLAIN, other)]

    assert (drawn[0].mean, drawn[0].sd) == (drawn[1].mean, drawn[1].sd)
    assert washed[0].sd < washed[1].sd


def test_steps_that_make_up_for_each_other() -> None:
    """Where cloth that draws in less shrinks the more, the whole is surer than its steps taken alone."""
    observed = [
        piece(f"warp {n}", {"in_reed": 0, "on_loom": -4 + pull, "off_loom": -1.5, "washed 1": -6 - pull}, name=name)
        for n, pull in enumerate((2.0, -1.5, 1.0, -2.5, 0.5, 1.8, -0.7, -1.1, 2.2, -1.9, 0.3, -0.4))
        for name in ("1", "2")
    ]
    forecast = Forecast.fit(observed, "width")
    drawn, washed = (forecast.belief(PLAIN, *way).sd for way in (("in_reed", "on_loom"), ("off_loom", "washed 1")))

    assert 0.75 * math.hypot(drawn, washed) > forecast.belief(PLAIN, *WHOLE).sd


def test_one_wild_warp() -> None:
    """A warp that lost twice as much counts little: it moves the answer less than a third of what plain sums would."""
    calm, wild = towels(12), towels(1, wash=-25.0, first=99)
    mode = Forecast.fit([*calm, *wild], "width")
    hyper = priors_for("width").hyper(np.zeros(priors_for("width").size))
    plain = [
        Forecast.fixed(one, "width", hyper, nu=math.inf).belief(PLAIN, *WHOLE).mean for one in (calm, [*calm, *wild])
    ]
    moved = mode.belief(PLAIN, *WHOLE).mean - Forecast.fit(calm, "width").belief(PLAIN, *WHOLE).mean

    assert 0.3 > mode.held["plain weave 99"][1]
    assert abs(moved) < abs(plain[1] - plain[0]) / 3


def test_a_clear_head() -> None:
    """Enough nodes count in every journal, their variances stay where one could believe them, and nothing is said."""
    for direction in DIRECTIONS:
        for warps in (0, 1, 3, 25):
            forecast = Forecast.fit(random_journal(direction, warps, seed=warps), direction)

            assert forecast.effective_nodes > 4
            assert forecast.said == ""


def test_an_astray_climb_is_said() -> None:
    """Figures that no cloth ever had still give an answer, and the forecast says what it did."""
    mad = [
        piece(f"warp {n}", {"in_reed": 0, "on_loom": (-1) ** n * 40.0 * n, "washed 1": 300.0 * (-1) ** n})
        for n in range(9)
    ]
    forecast = Forecast.fit(mad, "width")

    assert math.isfinite(forecast.belief(PLAIN, *WHOLE).quantile(0.05))


def test_newer_years(learned: Forecast) -> None:
    """The further ahead, the wider: studios change."""
    spread = [learned.belief(replace(PLAIN, year=year), *WHOLE).sd for year in (2020, 2021, 2025)]

    assert sorted(spread) == spread
    assert learned.belief(replace(PLAIN, year=None), *WHOLE).sd == spread[0]


@pytest.mark.parametrize("direction", DIRECTIONS)
def test_effects_updated(direction: str) -> None:
    """With the variances known, warps added later, of new yarns and years, count as if they were there before."""
    hyper = priors_for(direction).hyper(np.zeros(priors_for(direction).size))
    observed = random_journal(direction, 20, seed=5, undated=0)
    fresh = {one.warp for one in observed if one.kind.year == 2018 or one.kind.warp_yarn == "yarn 3"}
    early, late = ([one for one in observed if (one.warp in fresh) == wanted] for wanted in (False, True))
    whole = Forecast.fixed(observed, direction, hyper, nu=math.inf)
    grown = Forecast.fixed(early, direction, hyper, nu=math.inf).with_more(late)

    for kind in {one.kind for one in observed}:
        expected, found = (one.belief(kind, *DIRECTIONS[direction]) for one in (whole, grown))
        assert pytest.approx((expected.mean, expected.sd), rel=1e-6) == (found.mean, found.sd)
