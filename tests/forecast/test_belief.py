"""A belief: chances, ranges and the worst of a batch."""

from __future__ import annotations

import math

import numpy as np
import pytest

from journal_tools.forecast.belief import Belief
from journal_tools.forecast.normal import below, quantile, t7_beyond, t_weights_of

PLAIN = Belief(np.array([1.0]), np.array([-0.1]), np.array([0.0004]), np.array([0.0001]))
MIXED = Belief(
    np.array([0.5, 0.3, 0.2]),
    np.array([-0.1, -0.12, -0.05]),
    np.array([4e-4, 1e-4, 9e-4]),
    np.array([1e-4, 2e-4, 1e-4]),
)


def test_one_normal() -> None:
    """With one part the quantiles are the normal's: 5 % of pieces lose more than the mean and 1.645 deviations."""
    assert pytest.approx(-0.1 + quantile(0.05) * math.sqrt(0.0005), abs=1e-9) == PLAIN.quantile(0.05)
    assert pytest.approx(-0.1 + quantile(0.05) * 0.02, abs=1e-9) == PLAIN.quantile(0.05, of="batch")
    assert pytest.approx(0.05, abs=1e-9) == PLAIN.chance_below(-0.1 + quantile(0.05) * math.sqrt(0.0005))


@pytest.mark.parametrize("p", [0.001, 0.05, 0.5, 0.9])
def test_back_and_forth(p: float) -> None:
    """The chance to lie below a quantile is that quantile's, for a piece, a batch and the worst of four."""
    assert pytest.approx(p, abs=1e-8) == MIXED.chance_below(MIXED.quantile(p))
    assert pytest.approx(p, abs=1e-8) == MIXED.chance_below(MIXED.quantile(p, of="batch"), of="batch")
    assert pytest.approx(p, abs=1e-8) == MIXED.chance_worst_below(MIXED.worst(p, of=4), of=4)


def test_the_worst_of_one() -> None:
    """The worst of one piece is the piece, and of more pieces the worst is worse."""
    worst = [MIXED.worst(0.1, of=count) for count in (1, 2, 4, 8)]

    assert MIXED.quantile(0.1) == worst[0]
    assert sorted(worst, reverse=True) == worst


def test_the_worst_by_trial() -> None:
    """The worst of six is where a hundred thousand made batches say, within their own scatter."""
    rng = np.random.default_rng(1)
    part = rng.choice(3, 100_000, p=MIXED.weights)
    shared = MIXED.means[part] + np.sqrt(MIXED.shared[part]) * rng.standard_normal(len(part))
    pieces = shared[:, None] + np.sqrt(MIXED.apart[part])[:, None] * rng.standard_normal((len(part), 6))

    assert pytest.approx(float(np.mean(pieces.min(axis=1) < -0.13)), abs=0.005) == MIXED.chance_worst_below(-0.13, of=6)


def test_losses() -> None:
    """A range of losses is the range of ratios turned round: the least loss belongs to the largest cloth."""
    low, high = PLAIN.loss_range(0.8)

    assert pytest.approx(1 - math.exp(-0.1), abs=1e-8) == PLAIN.loss()
    assert (pytest.approx(1 - math.exp(PLAIN.quantile(0.9))), pytest.approx(1 - math.exp(PLAIN.quantile(0.1)))) == (
        low,
        high,
    )


def test_chances_are_chances() -> None:
    """No quantile is asked for at certainty."""
    with pytest.raises(ValueError, match="between 0 and 1"):
        PLAIN.quantile(1.0)


def test_normal_law() -> None:
    """The quick normal law is that of erfc to a millionth of a millionth."""
    at = np.linspace(-8.5, 8.5, 3001)
    exact = np.array([math.erfc(-x / math.sqrt(2)) / 2 for x in at.tolist()])

    assert 1e-12 > float(np.max(np.abs(below(at) - exact)))


@pytest.mark.parametrize(("t", "p"), [(2.364624, 0.05), (3.499483, 0.01), (5.407883, 0.001)])
def test_student(t: float, p: float) -> None:
    """Beyond the tabled values of t with 7 degrees of freedom lie 5, 1 and 0.1 % (common tables, from memory)."""
    assert pytest.approx(p, rel=1e-5) == t7_beyond(t)
    assert pytest.approx(p, rel=1e-5) == t7_beyond(-t)


def test_weights_of_the_t_law() -> None:
    """Weights are equally likely parts of chi-square over its degrees: their middle is its median, 6.34581 / 7
    (common table, from memory); without scatter there is one weight of 1."""
    assert pytest.approx(6.34581 / 7, rel=1e-5) == t_weights_of(7.0, 9)[4]
    assert (1.0,) == t_weights_of(math.inf, 9)


def test_a_size_is_itself() -> None:
    """From a state to the very same nothing is lost, for sure, by any of the questions."""
    sure = Belief(np.array([0.4, 0.6]), np.zeros(2), np.zeros(2), np.zeros(2))

    assert {0.0} == {sure.quantile(0.05), sure.quantile(0.95, of="batch"), sure.worst(0.05, 4), *sure.range()}
    assert (0.0, 0.0) == (sure.chance_below(-0.001), sure.chance_worst_below(-0.001, 4))
    assert pytest.approx(1) == sure.chance_below(0.001)
