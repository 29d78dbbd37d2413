"""Heddles wanted against heddles there."""

from __future__ import annotations

from pathlib import Path

from journal_tools.dressing.heddles import Move, OnShaft, moves
from tests.dressing.made import LOOM, NAPKINS, dressed


def test_what_a_point_takes(tmp_path: Path) -> None:
    """116 ends of a point on four are 19 repeats and 1, 2: 20 on shaft 1, 39 on 2, 38 on 3, 19 on 4."""
    made = dressed(tmp_path, NAPKINS)

    assert [20, 39, 38, 19] == [each.needed for each in made.shafts]
    assert [60] * 4 == [each.has for each in made.shafts]
    assert () == made.moves


def test_floating_selvedges_have_none(tmp_path: Path) -> None:
    """Two floating selvedges are ends, and take no heddle."""
    made = dressed(tmp_path, NAPKINS)

    assert 2 == made.floating
    assert 116 == sum(each.needed for each in made.shafts)


def test_moved_before_added() -> None:
    """A shaft that is 9 short takes 5 from the one that has most over, 3 from the next, and one is added."""
    shafts = (OnShaft(1, 29, 20), OnShaft(2, 17, 20), OnShaft(3, 15, 20), OnShaft(4, 20, 20))

    assert (Move(1, 5, 3), Move(1, 3, 2), Move(1, 1, None)) == moves(shafts)


def test_a_loom_that_does_not_say(tmp_path: Path) -> None:
    """Where nobody wrote down how many heddles there are, none is called short."""
    made = dressed(tmp_path, NAPKINS, loom="title: Loom\nshafts: 4\n")

    assert {None} == {each.has for each in made.shafts}
    assert () == made.moves


def test_plain_weave_may_be_drawn_out(tmp_path: Path) -> None:
    """200 ends on two shafts want 100 heddles each; of 60 a shaft, a straight draw over four takes 50."""
    plain = "threading: 1, 2\ntie_up: 1, 2\ntreadling: 1, 2\n"
    warp = "title: Plain\nloom: loom\nwarp: {order: 200 bone}\ndraft: point\n"
    made = dressed(tmp_path, warp, draft=plain)

    assert [100, 100, 0, 0] == [each.needed for each in made.shafts]
    assert (Move(1, 40, 3), Move(2, 40, 4)) == made.moves
    assert (4, 50) == made.instead


def test_beyond_the_loom(tmp_path: Path) -> None:
    """A draft of eight shafts and eight treadles takes four of each that the loom has not got."""
    eight = "threading: 1-8\ntie_up: 1, 2, 3, 4, 5, 6, 7, 8\ntreadling: 1-8\n"
    made = dressed(tmp_path, NAPKINS, draft=eight)

    assert (4, 4) == (made.shafts_short, made.treadles_short)
    assert [None] * 4 == [each.has for each in made.shafts[4:]]


def test_two_shafts_from_a_name(tmp_path: Path) -> None:
    """Plain weave by its name alone goes straight over all four shafts, odd ones tied against even ones."""
    made = dressed(tmp_path, "title: Plain\nloom: loom\nwarp: {order: 80 bone}\nweave: plain weave\n", loom=LOOM)

    assert made.tied is not None
    assert made.tied.spread
    assert ("plain weave", "") == (made.tied.weave, made.tied.draft)
    assert (frozenset({1, 3}), frozenset({2, 4})) == made.tied.treadles
    assert [20] * 4 == [each.needed for each in made.shafts]
