"""A double-width blanket, fulled to size, in centimetres, worked by hand.

86 cm folded in the reed is 172 opened; 83 folded on the loom is 166; then 163, 153 when only scoured, 141,
and 132 where the weaver stopped. Whole centimetres were read, so the tape's mark here is 1 cm.
"""

from __future__ import annotations

import math

import pytest

from tests.ledger.desk import gaps, ledger, losses, piece, plus_minus, pm

BLANKET = piece("fold-blanket", "")

MARK = 2 * 1 / math.sqrt(12)
"""± of a reading to the centimetre, in cm: larger than the floor of 0.3 cm in width."""

LENGTH = 6 / 750
"""The floor of a length in metric: 6 mm in 75 cm."""


def test_every_width() -> None:
    """Folded sizes are doubled before they are compared with opened ones."""
    expected = {
        "width, reed to loom": 1 - (2 * 83) / (2 * 86),
        "width, loom to off": 1 - 163 / (2 * 83),
        "width, off to scoured": 1 - 153 / 163,
        "width, scoured to fulled 8 min": 1 - 141 / 153,
        "width, fulled 8 min to fulled 12 min": 1 - 132 / 141,
        "width, fulled 12 min to washed": 1 - 132 / 132,
        "width, reed to washed": 1 - 132 / (2 * 86),
    }

    assert pytest.approx(expected) == losses(tuple(row for row in BLANKET.rows if row.direction == "width"))


def test_every_length() -> None:
    """Lengths are the same folded and opened."""
    expected = {
        "length, loom to off": 1 - 236 / 250,
        "length, off to scoured": 1 - 220 / 236,
        "length, scoured to fulled 8 min": 1 - 203 / 220,
        "length, fulled 8 min to fulled 12 min": 1 - 190 / 203,
        "length, fulled 12 min to washed": 1 - 190 / 190,
        "length, loom to washed": 1 - 190 / 250,
    }

    assert pytest.approx(expected) == losses(tuple(row for row in BLANKET.rows if row.direction == "length"))


def test_every_plus_minus() -> None:
    """A folded width has its ± doubled with it; lengths have the floor, which is larger than a mark."""
    reed, loom = 2 * MARK / 172, 2 * MARK / 166
    expected = {
        "width, reed to loom": pm(166 / 172, reed, loom),
        "width, loom to off": pm(163 / 166, loom, MARK / 163),
        "width, off to scoured": pm(153 / 163, MARK / 163, MARK / 153),
        "width, scoured to fulled 8 min": pm(141 / 153, MARK / 153, MARK / 141),
        "width, fulled 8 min to fulled 12 min": pm(132 / 141, MARK / 141, MARK / 132),
        "width, fulled 12 min to washed": pm(1, MARK / 132, MARK / 132),
        "width, reed to washed": pm(132 / 172, reed, MARK / 132),
        "length, loom to off": pm(236 / 250, LENGTH, LENGTH),
        "length, off to scoured": pm(220 / 236, LENGTH, LENGTH),
        "length, scoured to fulled 8 min": pm(203 / 220, LENGTH, LENGTH),
        "length, fulled 8 min to fulled 12 min": pm(190 / 203, LENGTH, LENGTH),
        "length, fulled 12 min to washed": pm(1, LENGTH, LENGTH),
        "length, loom to washed": pm(190 / 250, LENGTH, LENGTH),
    }

    assert pytest.approx(expected) == plus_minus(BLANKET.rows)


def test_what_was_steered() -> None:
    """Scouring shows what the yarn does; from there on the weaver decided, and the whole with it."""
    expected = [
        "scoured to fulled 8 min",
        "fulled 8 min to fulled 12 min",
        "fulled 12 min to washed",
    ]
    steered = [row.label for row in BLANKET.rows if row.steered]

    assert [
        *(f"width, {each}" for each in expected),
        "width, reed to washed",
        *(f"length, {each}" for each in expected),
        "length, loom to washed",
    ] == steered


def test_no_gaps() -> None:
    """Every state was measured."""
    assert {} == gaps(BLANKET.rows)


def test_finished_ends_and_picks() -> None:
    """All 860 ends lie side by side once it is opened; a row of weft across it is a pick of each layer."""
    assert pytest.approx(860 / 132) == (BLANKET.counts.ends_per_m or 0) / 100
    assert pytest.approx((2300 / 2) / 190) == (BLANKET.counts.picks_per_m or 0) / 100


def test_the_weight() -> None:
    """1.2 kg of yarn in oil, of which the first wash takes 8 to 15 %; the fringe hangs outside the area."""
    assert BLANKET.mass is not None
    tex = 1000 / (8 / 2)  # Nm 8/2: eight km/kg, two plies
    end = 2.50 / (1 - 0.06) + 2 * 0.20
    warp, weft = 860 * end * tex / 1000, 2300 * 0.86 * 1.05 * tex / 1000
    bought, washed = warp + weft, (warp + weft) * (1 - (0.08 + 0.15) / 2)
    fringe = warp * (1 - (0.08 + 0.15) / 2) * (2 * 0.20) / end

    assert pytest.approx(bought) == BLANKET.mass.bought
    assert pytest.approx(washed) == BLANKET.mass.washed
    assert pytest.approx((bought * (1 - 0.15) * 0.87, bought * (1 - 0.08) * 1.13)) == (
        BLANKET.mass.low,
        BLANKET.mass.high,
    )
    assert pytest.approx((washed - fringe) / (1.32 * 1.90)) == BLANKET.mass.areal_mass
    assert pytest.approx((945 - fringe) / (1.32 * 1.90)) == BLANKET.mass.areal_mass_weighed
    assert not BLANKET.mass.far


def test_no_account() -> None:
    """Nobody wrote how long it was wound."""
    assert ledger("fold-blanket").account is None


def test_minutes_and_sizes_are_kept() -> None:
    """What can be learned from a fulling is size against time; the weaver's words stay beside the minutes."""
    checks = ledger("fold-blanket").warp.fulling

    assert [(0, "scoured only"), (8, ""), (12, "stopped at size")] == [(each.minutes, each.words) for each in checks]
