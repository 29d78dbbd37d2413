"""Six flat lines, worked by hand: in_reed 20 1/4, on_loom 19 3/8 x 33, washed 17 7/8 x 30 1/8."""

from __future__ import annotations

import pytest

from tests.ledger.desk import LENGTH, REED, WIDTH, gaps, ledger, losses, plus_minus, pm

TIDELINE = ledger("tideline-towels")


def test_every_loss() -> None:
    """Each step and each whole is 1 - later/earlier, named by both of its ends."""
    expected = {
        "width, reed to loom": 1 - (19 + 3 / 8) / (20 + 1 / 4),
        "width, loom to washed": 1 - (17 + 7 / 8) / (19 + 3 / 8),
        "width, reed to washed": 1 - (17 + 7 / 8) / (20 + 1 / 4),
        "length, loom to washed": 1 - (30 + 1 / 8) / 33,
    }

    assert pytest.approx(expected) == losses(TIDELINE.rows)


def test_every_plus_minus() -> None:
    """The reed has the tape's ±, cloth the floor's."""
    expected = {
        "width, reed to loom": pm((19 + 3 / 8) / (20 + 1 / 4), REED / (20 + 1 / 4), WIDTH / (19 + 3 / 8)),
        "width, loom to washed": pm((17 + 7 / 8) / (19 + 3 / 8), WIDTH / (19 + 3 / 8), WIDTH / (17 + 7 / 8)),
        "width, reed to washed": pm((17 + 7 / 8) / (20 + 1 / 4), REED / (20 + 1 / 4), WIDTH / (17 + 7 / 8)),
        "length, loom to washed": pm((30 + 1 / 8) / 33, LENGTH, LENGTH),
    }

    assert pytest.approx(expected) == plus_minus(TIDELINE.rows)


def test_what_a_weaver_reads() -> None:
    """11.7 ± 0.7 % narrower from reed to washed, 8.7 ± 1.1 % shorter from loom to washed."""
    shown = {row.label: (round(row.loss * 100, 1), round(row.uncertainty * 100, 1)) for row in TIDELINE.rows}

    assert (11.7, 0.7) == shown["width, reed to washed"]
    assert (8.7, 1.1) == shown["length, loom to washed"]


def test_what_nobody_measured() -> None:
    """Off the loom was never measured: the losses go over it and say so."""
    expected = {
        "width, loom to washed": ["off the loom"],
        "width, reed to washed": ["off the loom"],
        "length, loom to washed": ["off the loom"],
    }

    assert expected == gaps(TIDELINE.rows)


def test_what_stands_for_the_warp() -> None:
    """The whole losses, to the wash, stand for the warp; nothing else can be told from six lines."""
    width, length = TIDELINE.whole("width"), TIDELINE.whole("length")
    counts = TIDELINE.pieces[0].counts

    assert width is not None
    assert length is not None
    assert "width, reed to washed" == width.label
    assert "length, loom to washed" == length.label
    assert TIDELINE.account is None
    assert (None, None) == (counts.ends_per_m, counts.picks_per_m)
    assert TIDELINE.pieces[0].mass is None
