"""The forecast on one-way layouts whose variance components and predictions are published.

- Dyestuff: six batches of five (Davies and Goldsmith, Statistical Methods in Research and Production). Means of
  the batches, variance components, predictions and criteria as lme4 prints them in public lecture notes
  (verified there); the single values are from memory, and their means and sums of squares agree.
- Looms: cloth strength, four looms of four (Montgomery, Design and Analysis of Experiments, the example of
  random looms). F 15.68 and the components 1.90 and 6.96 as a public course quotes them, the data as public lecture
  notes have them (verified there); more digits are computed from the definition.
- The interval for one new value of a new group: Lin and Liao, as the notes of a public R package give the formula
  (verified there); its values here are computed from it.
"""

from __future__ import annotations

import math
from statistics import fmean

import pytest

from journal_tools.forecast.forecast import Forecast
from journal_tools.forecast.kind import ClothKind
from tests.worlds.one_step import FINE, FLAT, STEP, log_likelihood, pieces, variances

DYESTUFF = {
    "A": (1545, 1440, 1440, 1520, 1580),
    "B": (1540, 1555, 1490, 1560, 1495),
    "C": (1595, 1550, 1605, 1510, 1560),
    "D": (1445, 1440, 1595, 1465, 1545),
    "E": (1595, 1630, 1515, 1635, 1625),
    "F": (1520, 1455, 1450, 1480, 1445),
}
LOOMS = {"1": (98, 97, 99, 96), "2": (91, 90, 93, 92), "3": (96, 95, 97, 95), "4": (95, 96, 99, 98)}


class Layout:
    """A balanced layout and its analysis of variance, by the textbook; scaled down to sizes as cloth has them."""

    def __init__(self, groups: dict[str, tuple[int, ...]], scale: float) -> None:
        self.scale = scale
        self.groups = {name: [value / scale for value in values] for name, values in groups.items()}
        self.i, self.j = len(groups), len(next(iter(groups.values())))
        means = [fmean(values) for values in groups.values()]
        self.mean = fmean(means)
        self.between_squares = self.j * sum((mean - self.mean) ** 2 for mean in means)
        self.within_squares = sum((v - m) ** 2 for vs, m in zip(groups.values(), means, strict=True) for v in vs)
        self.within = self.within_squares / (self.i * (self.j - 1))
        self.between = (self.between_squares / (self.i - 1) - self.within) / self.j

    def forecast(self) -> Forecast:
        """Fitted with the components of the analysis of variance, and nothing known of the mean."""
        hyper = variances(self.between / self.scale**2, self.within / self.scale**2, level=self.mean / self.scale)
        return Forecast.fixed(pieces(self.groups), "width", hyper, nu=math.inf)

    def deviation(self, group: str) -> float:
        """What is predicted of one of the groups, from the grand mean."""
        own = [piece for piece in pieces(self.groups) if piece.warp == group]
        return self.forecast().belief(ClothKind(), *STEP, seen=own).mean * self.scale - self.mean

    def variance_of_a_new_value(self) -> float:
        """Of one value from a group that nobody has seen, read as the others were."""
        return (self.forecast().belief(ClothKind(), *STEP).sd ** 2 + 2 * FINE**2) * self.scale**2

    def variance_of_a_new_group(self) -> float:
        """Of the mean of a group that nobody has seen."""
        return (self.forecast().belief(ClothKind(), *STEP).batch_sd * self.scale) ** 2


@pytest.fixture(scope="module")
def dyestuff() -> Layout:
    return Layout(DYESTUFF, 1000)


@pytest.fixture(scope="module")
def looms() -> Layout:
    return Layout(LOOMS, 100)


class TestDyestuff:
    def test_the_rows_are_the_published_ones(self, dyestuff: Layout) -> None:
        """The batches have the published means, 1505 to 1470, and the components 1764.05 and 2451.25."""

        assert [1505, 1528, 1564, 1498, 1600, 1470] == [fmean(values) for values in DYESTUFF.values()]
        assert (1764.05, 2451.25) == (round(dyestuff.between, 2), round(dyestuff.within, 2))

    @pytest.mark.parametrize(
        ("batch", "deviation"),
        [("A", -17.6069), ("B", 0.3913), ("C", 28.5622), ("D", -23.0845), ("E", 56.7332), ("F", -44.9953)],
    )
    def test_what_is_predicted_of_each_batch(self, dyestuff: Layout, batch: str, deviation: float) -> None:
        """Each batch is drawn to the grand mean as lme4 draws it."""

        assert pytest.approx(deviation, abs=2e-4) == dyestuff.deviation(batch)

    def test_restricted_likelihood(self, dyestuff: Layout) -> None:
        """With a mean that nobody knows, the likelihood is the restricted one: criterion 319.6543."""
        scale = dyestuff.scale
        hyper = variances(dyestuff.between / scale**2, dyestuff.within / scale**2, level=dyestuff.mean / scale)
        criterion = -2 * log_likelihood(pieces(dyestuff.groups), hyper)
        values = dyestuff.i * dyestuff.j

        flat = math.log(2 * math.pi * (FLAT * scale) ** 2)  # the density of the mean, spread over all it may be
        assert pytest.approx(319.6543, abs=1e-4) == criterion + 2 * values * math.log(scale) - flat

    def test_likelihood(self, dyestuff: Layout) -> None:
        """With the mean known, -2 ln L is 327.3271 at the variances of most likelihood, 37.26² and MSW."""
        scale = dyestuff.scale
        hyper = variances(1388.33 / scale**2, 2451.25 / scale**2, level=1.5275, level_sd=0.0)
        values = dyestuff.i * dyestuff.j

        assert pytest.approx(327.3271, abs=1e-4) == (
            -2 * log_likelihood(pieces(dyestuff.groups), hyper) + 2 * values * math.log(scale)
        )

    def test_a_new_batch(self, dyestuff: Layout) -> None:
        """A value of a new batch has the variance 4591.017 of Lin and Liao; the batch's mean by the textbook."""
        i, j = dyestuff.i, dyestuff.j

        assert pytest.approx(4591.017, abs=2e-3) == dyestuff.variance_of_a_new_value()
        assert pytest.approx(dyestuff.between * (1 + 1 / i) + dyestuff.within / (i * j), rel=1e-6) == (
            dyestuff.variance_of_a_new_group()
        )


class TestLooms:
    def test_the_components(self, looms: Layout) -> None:
        """The analysis of variance gives 1.90 inside a loom and 6.96 between looms."""

        assert (1.90, 6.96) == (round(looms.within, 2), round(looms.between, 2))

    @pytest.mark.parametrize("loom", LOOMS)
    def test_each_loom_is_drawn_to_the_mean(self, looms: Layout, loom: str) -> None:
        """A loom keeps 0.936230 of its distance to the mean: 1 - 1 / F (computed)."""
        distance = fmean(LOOMS[loom]) - looms.mean

        assert pytest.approx(0.936230 * distance, abs=2e-5) == looms.deviation(loom)

    def test_a_new_loom(self, looms: Layout) -> None:
        """A value of a new loom has the variance 10.7122 of Lin and Liao."""

        assert pytest.approx(10.7122, abs=1e-4) == looms.variance_of_a_new_value()
