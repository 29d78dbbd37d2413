"""The forecast beside the mixed model of statsmodels (MixedLM, by restricted likelihood) on the same made cloth.

statsmodels chooses the variances; with these the forecast must predict the same and see the same gain in
likelihood. Weave, warp yarn, weft yarn and warp are crossed terms, closeness and level are fixed ones.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

import numpy as np
import pytest
from statsmodels.regression.mixed_linear_model import MixedLM, MixedLMParams, VCSpec

from journal_tools.forecast.forecast import Forecast
from journal_tools.forecast.kind import ClothKind
from tests.worlds.law import Vector
from tests.worlds.one_step import FLAT, STEP, log_likelihood, pieces, variances

WEAVES, YARNS, WARPS = 4, 9, 60


@dataclass(frozen=True)
class Cloth:
    """Made warps with their draw-in, and how much of each weave, yarn and warp is in each piece."""

    kinds: dict[str, ClothKind]
    values: dict[str, list[float]]

    def rows(self) -> Iterator[tuple[str, ClothKind, float]]:
        """One a piece."""
        for name, values in self.values.items():
            for value in values:
                yield name, self.kinds[name], value


def made() -> Cloth:
    """Sixty warps of one to four pieces; all in points, which statsmodels likes better than hundredths of them."""
    rng = np.random.default_rng(11)
    yarn, weave = 2 * rng.standard_normal(YARNS), 2.5 * rng.standard_normal(WEAVES)
    kinds, values = {}, {}
    for n in range(WARPS):
        warp, weft, of = int(rng.integers(YARNS)), int(rng.integers(YARNS)), int(rng.integers(WEAVES))
        close = 0.75 * float(np.exp(rng.normal(0, 0.15)))
        kinds[f"{n:02}"] = ClothKind(weave=f"w{of}", warp_yarn=f"y{warp}", weft_yarn=f"y{weft}", closeness=close)
        whole = -5 + 0.4 * far(close) + weave[of] + 0.35 * yarn[warp] + 0.65 * yarn[weft]
        whole += 1.1 * rng.standard_normal()
        values[f"{n:02}"] = [whole + 0.6 * float(rng.standard_normal()) for _ in range(1 + rng.integers(4))]
    return Cloth(kinds, values)


def far(closeness: float | None) -> float:
    """Closeness as the forecast takes it in: tenths of ln from three quarters of the greatest sett."""
    return 10 * math.log((closeness or 0.75) / 0.75)


def shares(kind: ClothKind) -> tuple[Vector, Vector]:
    """How much of each weave and of each yarn is in a width."""
    yarns = np.zeros(YARNS)
    yarns[int(kind.warp_yarn[1:])] += 0.35
    yarns[int(kind.weft_yarn[1:])] += 0.65
    return np.eye(WEAVES)[int(kind.weave[1:])], yarns


@dataclass(frozen=True)
class Both:
    """The cloth, what statsmodels made of it, and the forecast with the variances that statsmodels found."""

    cloth: Cloth
    model: Any
    result: Any

    def spread(self) -> dict[str, float]:
        """Its variance components by name, and the one inside a warp as within."""
        found = dict(zip(self.model.exog_vc.names, self.result.vcomp.tolist(), strict=True))
        return found | {"within": float(self.result.scale)}

    def forecast(self) -> Forecast:
        return Forecast.fixed(
            pieces(self.cloth.values, self.cloth.kinds), "width", hyper_of(self.spread()), nu=math.inf
        )

    def effect(self, *path: str) -> float:
        """Its prediction of one effect."""
        return float(self.result.random_effects[1.0][f"{path[0]}[{path[1]}]"])


def hyper_of(spread: dict[str, float]) -> Any:
    """The forecast's words for it."""
    return variances(
        between=spread["warp"],
        within=spread["within"],
        weave=spread["weave"],
        yarn=spread["yarn"],
        closeness=FLAT**2,
    )


@pytest.fixture(scope="module")
def both() -> Both:
    cloth = made()
    rows = list(cloth.rows())
    parts = [shares(kind) for _, kind, _ in rows]
    names = list(cloth.values)
    designs = {
        "weave": ([f"w{n}" for n in range(WEAVES)], np.array([weave for weave, _ in parts])),
        "yarn": ([f"y{n}" for n in range(YARNS)], np.array([yarn for _, yarn in parts])),
        "warp": (names, np.array([np.eye(WARPS)[names.index(name)] for name, _, _ in rows])),
    }
    columns = [[list(found)] for found, _ in designs.values()]
    crossed = VCSpec(list(designs), columns, [[matrix] for _, matrix in designs.values()])
    fixed = np.array([(1.0, far(kind.closeness)) for _, kind, _ in rows])
    model = MixedLM(np.array([value for _, _, value in rows]), fixed, np.ones(len(rows)), exog_vc=crossed)
    return Both(cloth, model, model.fit(reml=True))


def test_each_cloth(both: Both) -> None:
    """For every warp that was woven, a new one like it is predicted as statsmodels predicts it."""
    forecast = both.forecast()
    level, slope = both.result.fe_params
    for kind in both.cloth.kinds.values():
        expected = level + slope * far(kind.closeness) + both.effect("weave", kind.weave)
        expected += 0.35 * both.effect("yarn", kind.warp_yarn) + 0.65 * both.effect("yarn", kind.weft_yarn)

        assert pytest.approx(expected, rel=1e-6, abs=1e-8) == forecast.belief(kind, *STEP).mean


def test_each_warp(both: Both) -> None:
    """Every warp's own departure is drawn in as statsmodels draws it."""
    forecast = both.forecast()
    observed = pieces(both.cloth.values, both.cloth.kinds)
    for name, kind in both.cloth.kinds.items():
        own = [piece for piece in observed if piece.warp == name]
        departure = forecast.belief(kind, *STEP, seen=own).mean - forecast.belief(kind, *STEP).mean

        assert pytest.approx(both.effect("warp", name), rel=1e-6, abs=1e-8) == departure


@pytest.mark.parametrize("factor", [{}, {"yarn": 3.0}, {"weave": 0.2}, {"warp": 0.5, "yarn": 0.1}])
def test_likelihood(both: Both, factor: dict[str, float]) -> None:
    """At the best variances and away from them, both find the same restricted likelihood.

    statsmodels puts in the scale that fits best, so the forecast is asked about that one.
    """
    ratios = [
        value * factor.get(name, 1.0) / both.result.scale
        for name, value in zip(both.model.exog_vc.names, both.result.vcomp, strict=True)
    ]
    none = np.empty((0, 0))
    fixed, _ = both.model.get_fe_params(none, np.array(ratios))
    scale = both.model.get_scale(fixed, none, np.array(ratios))
    params = MixedLMParams.from_components(fe_params=fixed, cov_re=none, vcomp=np.array(ratios))
    asked = {name: ratio * scale for name, ratio in zip(both.model.exog_vc.names, ratios, strict=True)}
    found = log_likelihood(pieces(both.cloth.values, both.cloth.kinds), hyper_of(asked | {"within": scale}))

    flat = 2 * math.log(2 * math.pi * FLAT**2) / 2  # level and slope, spread over all they may be
    assert pytest.approx(both.model.loglike(params), abs=1e-4) == found + flat
