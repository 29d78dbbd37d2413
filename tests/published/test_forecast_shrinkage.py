"""Shrinkage by Efron and Morris: eighteen batting averages after 45 turns each, drawn to their mean.

Stein's Paradox in Statistics, Scientific American, May 1977: factor 0.212, the drawn averages, 16 of 18 nearer
to the season's, total squared error .077 and .022 (quoted in a public worked reproduction, verified there).
The seasons' averages are from memory; copies of them differ in a few players, and with these the errors come
out as .0755 and .0214 (computed). The transformed version of 1975 (Journal of the American Statistical
Association 70, 311-319) has the factor 0.209: its drawn averages are computed here, and agree with its table
as remembered.
"""

from __future__ import annotations

import math
from statistics import fmean

import numpy as np
import pytest

from journal_tools.forecast.forecast import Forecast
from journal_tools.forecast.kind import ClothKind
from tests.worlds.one_step import STEP, pieces, variances

TURNS = 45
HITS = (18, 17, 16, 15, 14, 14, 13, 12, 11, 11, 10, 10, 10, 10, 10, 9, 8, 7)
SEASON = (
    *(0.346, 0.298, 0.276, 0.222, 0.273, 0.270, 0.263, 0.210, 0.269),
    *(0.230, 0.264, 0.256, 0.303, 0.264, 0.226, 0.286, 0.316, 0.200),
)
DRAWN = (*(0.294, 0.289, 0.285, 0.280, 0.275, 0.275, 0.270, 0.266, 0.261, 0.261), *[0.256] * 5, 0.252, 0.247, 0.242)
DRAWN_1975 = (
    *(0.290, 0.286, 0.281, 0.277, 0.273, 0.273, 0.268, 0.264, 0.259, 0.259),
    *[0.254] * 5,
    *(0.249, 0.244, 0.239),
)


def drawn(values: list[float], noise: float, keep: float) -> list[float]:
    """What the forecast says of each, when the variance between them is such that they keep so much of their own."""
    groups = {f"{n:02}": [value] for n, value in enumerate(values)}
    hyper = variances(between=noise * keep / (1 - keep), within=noise, level=fmean(values))
    forecast = Forecast.fixed(pieces(groups), "width", hyper, nu=math.inf)
    return [
        forecast.belief(ClothKind(), *STEP, seen=[piece for piece in pieces(groups) if piece.warp == name]).mean
        for name in groups
    ]


@pytest.fixture(scope="module")
def averages() -> list[float]:
    return [hits / TURNS for hits in HITS]


@pytest.fixture(scope="module")
def by_the_forecast(averages: list[float]) -> list[float]:
    mean = fmean(averages)
    noise = mean * (1 - mean) / TURNS
    keep = 1 - (len(HITS) - 3) * noise / sum((average - mean) ** 2 for average in averages)
    assert round(keep, 3) == 0.212
    return drawn(averages, noise, keep)


def test_the_published_averages(by_the_forecast: list[float]) -> None:
    """Each average is drawn to the grand mean as printed, .294 for .400 and .242 for .156."""

    assert list(DRAWN) == [round(average, 3) for average in by_the_forecast]


def test_nearer_to_the_season(averages: list[float], by_the_forecast: list[float]) -> None:
    """Drawn to their mean, 16 of 18 are nearer to the season's average, and the squared error is a third and less."""

    def squares(said: list[float]) -> list[float]:
        return [(one - season) ** 2 for one, season in zip(said, SEASON, strict=True)]

    before, after = squares(averages), squares(by_the_forecast)
    assert 16 == sum(b > a for b, a in zip(before, after, strict=True))
    assert (0.0755, 0.0214) == (round(sum(before), 4), round(sum(after), 4))


def test_the_version_of_1975(averages: list[float]) -> None:
    """On the scale of √45 arcsin(2 y - 1), where the noise is 1, they keep 0.209, and come back as .290 to .239."""
    values = [math.sqrt(TURNS) * math.asin(2 * average - 1) for average in averages]
    keep = 1 - (len(HITS) - 3) / (np.var(values) * len(values))
    back = [(1 + math.sin(value / math.sqrt(TURNS))) / 2 for value in drawn(values, 1.0, float(keep))]

    assert 0.209 == round(float(keep), 3)
    assert list(DRAWN_1975) == [round(average, 3) for average in back]
