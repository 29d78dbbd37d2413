"""The handful of numbers that a page gets instead of the forecast."""

from __future__ import annotations

from dataclasses import replace

import pytest

from journal_tools.forecast.forecast import Forecast
from journal_tools.forecast.kind import covariate
from tests.forecast.made import random_journal

DIRECTIONS = {"width": ("in_reed", "washed 1"), "length": ("picks", "settled")}


@pytest.mark.parametrize("direction", DIRECTIONS)
@pytest.mark.parametrize("closeness", [None, 0.55, 0.75, 0.9, 3.0])
def test_at_any_closeness(direction: str, closeness: float | None) -> None:
    """Open or close, the page's line and curve give the forecast's own mean and deviations."""
    journal = random_journal(direction, 20, seed=8)
    forecast = Forecast.fit(journal, direction)
    kind = replace(journal[0].kind, closeness=closeness)
    belief = forecast.belief(kind, *DIRECTIONS[direction])
    pocket = forecast.pocket(replace(kind, closeness=0.7), *DIRECTIONS[direction])
    x = covariate(closeness)
    batch = pocket.c + pocket.d * x + pocket.e * x * x

    assert pytest.approx(belief.mean, rel=1e-9) == pocket.a + pocket.b * x
    assert pytest.approx((belief.batch_sd**2, belief.sd**2), rel=1e-9) == (batch, batch + pocket.piece)


def test_quantiles() -> None:
    """The page's multipliers are those of the cloth asked about: mean and so many deviations is the quantile."""
    journal = random_journal("width", 20, seed=8)
    forecast = Forecast.fit(journal, "width")
    belief = forecast.belief(journal[0].kind, *DIRECTIONS["width"])

    for p, times in forecast.pocket(journal[0].kind, *DIRECTIONS["width"]).multipliers:
        assert pytest.approx(belief.quantile(p), abs=1e-9) == belief.mean + times * belief.sd
