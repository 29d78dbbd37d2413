"""A crammed and spaced warp in the reed, by the ends that its draft has in each dent."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

from tests.dressing.made import dressed

INCH = Fraction(254, 10)
STRIPES = """\
threading: 28 times (1, 2)
ends_in_dents: 8 times (2), 4 times (4), 2 times (none), 8 times (2), 2 times (4)
tie_up: 1, 2
treadling: 1, 2
floating_selvedges: 1
"""
"""56 ends in 24 dents: 16, 16, 0, 16 and 8."""
CURTAIN = "title: Curtain\nyarn: linen-20-2\nreed: 12/in\nends: 282\ndraft: point\nwarp: {order: 280 bone}\n"


def test_by_hand(tmp_path: Path) -> None:
    """280 ends are five rounds of 56 in 24 dents: 120 dents, and one at each edge; 122 in a 12 are 10 1/6 in."""
    sleyed = dressed(tmp_path, CURTAIN, draft=STRIPES).sleyed
    assert sleyed is not None

    assert (True, True, True) == (sleyed.by_draft, sleyed.crammed, sleyed.keeps_step)
    assert [(8, 2), (4, 4), (2, 0), (8, 2), (2, 4)] == [(run.dents, run.each) for run in sleyed.bands[0].runs]
    assert (120, 122) == (sleyed.bands[0].dents, sleyed.dents)
    assert Fraction(122, 12) * INCH == sleyed.mm
    assert 28 == sleyed.sett * INCH / 1000


def test_every_dent(tmp_path: Path) -> None:
    """The ends of all dents, one after the other, are the warp's; the last one holds what is left."""
    sleyed = dressed(tmp_path, CURTAIN.replace("282", "93").replace("280", "91"), draft=STRIPES).sleyed
    assert sleyed is not None
    held = sleyed.bands[0].held

    assert 91 == sum(held)
    assert (2,) * 8 + (4,) * 4 + (0, 0) + (2,) * 8 + (4, 4) == held[:24]
    assert (4, 4, 0, 0, 2, 1) == held[-6:]


def test_out_of_step(tmp_path: Path) -> None:
    """One end added to the 56 of the threading does not fit 56 ends in dents: it is told, not mended."""
    added = STRIPES + "accents:\n  - {end: 13, shaft: 1, way: added, colour: rust}\nwarp_colours: bone\n"
    sleyed = dressed(tmp_path, CURTAIN, draft=added).sleyed
    assert sleyed is not None

    assert (57, 56) == (sleyed.threaded, sum(sleyed.bands[0].order))
    assert not sleyed.keeps_step


def test_the_warps_own_sley_stands(tmp_path: Path) -> None:
    """A sley in the warp's record goes before the draft's dents, which are kept to be told of."""
    sleyed = dressed(tmp_path, CURTAIN + "sley: 2\n", draft=STRIPES).sleyed
    assert sleyed is not None

    assert (False, (2,), 24) == (sleyed.by_draft, sleyed.bands[0].order, len(sleyed.set_aside))


def test_ends_from_the_width(tmp_path: Path) -> None:
    """Without a count, 10 in of a 12 are 120 dents, two of them for floating selvedges: 118 dents hold 272 ends."""
    made = dressed(tmp_path, "title: A\nyarn: linen-20-2\nreed: 12/in\nin_reed: 10\ndraft: point\n", draft=STRIPES)

    assert (272, True) == (made.ends, made.reckoned)


def test_what_is_missing(tmp_path: Path) -> None:
    """Where the sleying cannot be told, it is known what the record lacks: the reed, the sley or both."""
    warp = "title: A\nwarp: {order: 40 bone}\n"

    assert ("reed", "sley") == dressed(tmp_path / "a", warp).sley_lacks
    assert ("sley",) == dressed(tmp_path / "b", warp + "reed: 12/in\n").sley_lacks
    assert ("reed",) == dressed(tmp_path / "c", warp + "draft: point\n", draft=STRIPES).sley_lacks
    assert () == dressed(tmp_path / "d", warp + "reed: 12/in\nsley: 2\n").sley_lacks
