"""Readings, before they are fitted: what a piece tells of its steps."""

from __future__ import annotations

import math

import numpy as np
import pytest

from journal_tools.forecast.observed import Observed, Reading
from journal_tools.forecast.priors import priors_for
from journal_tools.forecast.rows import kept_sd, pattern_of, rows_of, usable
from tests.forecast.made import PLAIN, piece, random_journal


def fine(moment: str, log: float = 6.0, sd: float = 0.01, yardstick: str = "cloth") -> Reading:
    return Reading(moment, log, kept_sd(sd), yardstick)


def test_three_steps_are_three_rows() -> None:
    """Reed, loom, off and washed tell as much as three losses that share readings: G = M' (T D T')⁻¹ M."""
    readings = [fine("in_reed", sd=0.002), fine("on_loom"), fine("off_loom"), fine("washed 1")]
    differences = np.diff(np.eye(4), axis=0)
    noise = differences @ np.diag([one.sd**2 for one in readings]) @ differences.T
    losses = np.eye(3, 4)  # draw-in, relaxation and wash, one after the other

    assert pytest.approx(losses.T @ np.linalg.inv(noise) @ losses) == pattern_of(readings, "width").information


def test_the_reading_between_does_not_count_twice() -> None:
    """What one shared reading adds to a loss before it, it takes from the loss after: the whole knows nothing of it."""
    ends = [fine("in_reed"), fine("off_loom")]
    middle = fine("on_loom", sd=0.05)
    whole = np.linalg.pinv(pattern_of([*ends, middle], "width").information)[:2, :2].sum()

    assert pytest.approx(ends[0].sd ** 2 + ends[1].sd ** 2) == whole


def test_one_spanning_loss() -> None:
    """Reed to washed tells of the sum of three steps and of no step alone."""
    told = pattern_of([fine("in_reed"), fine("washed 1")], "width").information

    assert 1 == np.linalg.matrix_rank(told)
    assert pytest.approx(np.full((3, 3), told[0, 0])) == told[:3, :3]
    assert pytest.approx(np.zeros(4)) == told[3]


def test_yardsticks_do_not_mix() -> None:
    """A width of the cloth and a distance of marks are never compared; two of each are two losses of one piece."""
    cloth, marks = [fine("on_loom"), fine("off_loom")], [fine("off_loom", 4.6, yardstick="marks")]
    alone = Observed("w", "1", PLAIN, (cloth[0], marks[0]))
    assert () == usable(alone, "width")

    more = [*marks, fine("washed 1", 4.5, yardstick="marks")]
    separate = pattern_of(cloth, "width").information + pattern_of(more, "width").information
    assert pytest.approx(separate) == pattern_of([*cloth, *more], "width").information


def test_two_readings_of_one_moment_say_nothing() -> None:
    """The same size read twice is no loss, and a size that is no number is no size."""
    twice = Observed("w", "1", PLAIN, (fine("washed 1"), fine("washed 1", 6.01)))
    broken = Observed("w", "2", PLAIN, (fine("washed 1"), fine("on_loom", math.nan)))

    assert ((), ()) == (usable(twice, "width"), usable(broken, "width"))
    assert () == rows_of([twice, broken], "width", priors_for("width").hyper(np.zeros(30))).kinds


def test_order_is_nothing() -> None:
    """Warps, pieces and readings in any order are laid out alike, number for number."""
    observed = random_journal("length", 12, seed=3)
    shuffled = [Observed(o.warp, o.piece, o.kind, o.readings[::-1]) for o in reversed(observed)]
    hyper = priors_for("length").hyper(np.zeros(35))
    one, other = rows_of(observed, "length", hyper), rows_of(shuffled, "length", hyper)

    assert (one.warps, one.kinds, one.squared) == (other.warps, other.kinds, other.squared)
    assert one.cell_q.tobytes() == other.cell_q.tobytes()
    assert one.class_qq.tobytes() == other.class_qq.tobytes()


def test_a_moment_that_is_none() -> None:
    """A width has no picks: asked for them, the forecast says which moments there are."""
    with pytest.raises(ValueError, match="'picks' is no moment of width: in_reed, on_loom"):
        usable(piece("w", {"in_reed": 0, "picks": -3}), "width")
