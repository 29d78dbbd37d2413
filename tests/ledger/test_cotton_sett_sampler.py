"""Three setts side by side, measured between marks sewn 100 mm apart, worked by hand.

Half millimetres were read, so ± of a reading is 2 x 0.5 / √12 mm; between sewn marks there is no edge to
wander, so there is no floor.
"""

from __future__ import annotations

import math

import pytest

from journal_tools.ledger import PieceLedger
from journal_tools.ledger.words import per_cent
from tests.ledger.desk import gaps, ledger, losses, plus_minus, pm

SAMPLER = ledger("cotton-sett-sampler")
PIECES = {each.name: each for each in SAMPLER.pieces}

WASHED = {
    "a, s16": (92, 92),
    "a, s20": (93.5, 93),
    "a, s24": (95, 93),
    "b, s16": (90.5, 92),
    "b, s20": (92, 92.5),
    "b, s24": (94, 93),
    "c, s20": (95.5, 93.5),
}
"""Width and length after the wash, in mm, of what was 100 x 100."""

READ = 2 * 0.5 / math.sqrt(12)


def test_the_bands() -> None:
    """Each band of each piece has its own losses."""
    assert list(WASHED) == list(PIECES)


@pytest.mark.parametrize("name", WASHED)
def test_every_loss(name: str) -> None:
    """Between marks 100 mm apart, millimetres lost are per cent."""
    width, length = WASHED[name]
    expected = {"width, off to washed": (100 - width) / 100, "length, off to washed": (100 - length) / 100}

    assert pytest.approx(expected) == losses(PIECES[name].rows)
    assert [per_cent((100 - width) / 100), per_cent((100 - length) / 100)] == [
        per_cent(row.loss) for row in PIECES[name].rows
    ]


@pytest.mark.parametrize("name", WASHED)
def test_every_plus_minus(name: str) -> None:
    """Two readings to half a millimetre, without a floor."""
    width, length = WASHED[name]
    expected = {
        "width, off to washed": pm(width / 100, READ / 100, READ / width),
        "length, off to washed": pm(length / 100, READ / 100, READ / length),
    }

    assert pytest.approx(expected) == plus_minus(PIECES[name].rows)


def test_what_is_learned() -> None:
    """The outer bands draw in at the edge, so their widths do not teach; all else does."""
    kept_out = {(piece.name, row.direction) for piece in SAMPLER.pieces for row in piece.rows if not row.learn}

    assert {(name, "width") for name in WASHED if not name.endswith("s20")} == kept_out


def test_the_mean_width_is_of_the_middle_band() -> None:
    """An average leaves out what may not be learned."""
    means = {row.direction: row for row in SAMPLER.warp_rows}

    assert pytest.approx((6.5 + 8 + 4.5) / 3 / 100) == means["width"].loss
    assert 3 == means["width"].number
    assert pytest.approx((8 + 7 + 7 + 8 + 7.5 + 7 + 6.5) / 7 / 100) == means["length"].loss
    assert 7 == means["length"].number


def test_no_finished_counts() -> None:
    """Marks say how much the cloth moved, and not how wide it was."""
    assert {(None, None)} == {(each.counts.ends_per_m, each.counts.picks_per_m) for each in SAMPLER.pieces}


def test_account() -> None:
    """Bands lie side by side on the same warp: three pieces were woven, and none was measured on the loom."""
    assert SAMPLER.account is not None

    assert () == SAMPLER.account.lines
    assert ("a", "b", "c") == SAMPLER.account.unmeasured
    assert pytest.approx(3 * 36) == SAMPLER.account.remainder_mm / 25.4


def test_no_gap() -> None:
    """Marks are sewn off the loom, and the wash is the next thing."""
    assert {} == {label: states for each in SAMPLER.pieces for label, states in gaps(each.rows).items()}


def test_bands_have_their_own_ends() -> None:
    """64, 80 and 96 ends."""

    def ends(each: PieceLedger) -> int | None:
        return each.laid.ends

    assert {"a, s16": 64, "a, s20": 80, "a, s24": 96} == {name: ends(PIECES[name]) for name in list(WASHED)[:3]}
