"""The sley order in its reed."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

from tests.dressing.made import NAPKINS, dressed

INCH = Fraction(254, 10)


def test_by_hand(tmp_path: Path) -> None:
    """116 ends at 1-2 in a 12: 38 pairs of dents hold 114, two more hold 1 and 1; 78 dents and 2, 6 2/3 in."""
    sleyed = dressed(tmp_path, NAPKINS).sleyed
    assert sleyed is not None

    assert (78, 1) == (sleyed.bands[0].dents, sleyed.bands[0].last)
    assert not sleyed.bands[0].full
    assert (2, 80) == (sleyed.floating, sleyed.dents)
    assert Fraction(80, 12) * INCH == sleyed.mm
    assert 18 == sleyed.sett * INCH / 1000
    assert Fraction(25, 4) * INCH == sleyed.said_mm


def test_the_order_from_the_sett(tmp_path: Path) -> None:
    """A record with a sett alone is sleyed in the reed that gives it: 24 to the inch is two in each dent of a 12."""
    sleyed = dressed(tmp_path, "title: A\nloom: loom\nsett: 24/in\nwarp: {order: 96 bone}\n").sleyed
    assert sleyed is not None

    assert sleyed.found
    assert ((2,), 48) == (sleyed.bands[0].order, sleyed.dents)
    assert 4 * INCH == sleyed.mm


def test_bands(tmp_path: Path) -> None:
    """Bands side by side keep their own orders: 16 ends at 1-1-2 and 24 at 2 take 12 dents each of a 12, 2 in."""
    bands = "across:\n  open: {ends: 16, sley: 1-1-2}\n  close: {ends: 24, sley: 2}\n"
    made = dressed(tmp_path, f"title: B\nreed: 12/in\nwarp: {{order: 40 bone}}\n{bands}weave: plain\n")
    assert made.sleyed is not None

    assert [("open", 12), ("close", 12)] == [(band.name, band.dents) for band in made.sleyed.bands]
    assert [16, 24] == [band.sett * INCH / 1000 for band in made.sleyed.bands]
    assert 2 * INCH == made.sleyed.mm
    assert 20 == made.sleyed.sett * INCH / 1000


def test_no_reed(tmp_path: Path) -> None:
    """Without a reed, or without a sley and a sett, nothing is said of dents."""
    assert dressed(tmp_path / "a", "title: A\nwarp: {order: 40 bone}\nsley: 2\n").sleyed is None
    assert dressed(tmp_path / "b", "title: A\nwarp: {order: 40 bone}\nreed: 12/in\n").sleyed is None


def test_layers(tmp_path: Path) -> None:
    """Two layers at four in a dent of a 10 have 40 ends to the inch together."""
    made = dressed(tmp_path, "title: D\nlayers: 2\nreed: 10/in\nsley: 4\nwarp: {order: 80 bone}\nweave: 2/2 twill\n")
    assert made.sleyed is not None

    assert (2, 40) == (made.sleyed.layers, made.sleyed.sett * INCH / 1000)
    assert made.tied is None  # the weave's name tells the threading of one layer only


def test_bands_that_do_not_add_up(tmp_path: Path) -> None:
    """Bands of 40 at 2 and 50 at 1 take 20 and 50 dents, and hold 90 of 100 ends."""
    bands = "across: {open: {ends: 40, sley: 2}, close: {ends: 50, sley: 1}}\n"
    sleyed = dressed(tmp_path, f"title: B\nreed: 10/in\nends: 100\nyarn: linen-20-2\n{bands}").sleyed
    assert sleyed is not None

    assert [20, 50] == [band.dents for band in sleyed.bands]
    assert (90, 100, False) == (sleyed.ends, sleyed.wanted, sleyed.all_held)
