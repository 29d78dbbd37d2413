"""The whole of a warp's dressing, and what is done again for a later stretch."""

from __future__ import annotations

from pathlib import Path

import pytest

from journal_tools.dressing import dressing_of
from journal_tools.records import public, read_journal
from tests.dressing.made import NAPKINS, POINT, dressed
from tests.house import PROJECT

TWO = """\
stretches:
  - name: napkins
    draft: point
  - name: more napkins
    draft: point
  - name: bookmarks
    weave: 2/2 twill
    ends: 48 from the middle
    in_reed: 2 5/8
"""


def test_every_count_agrees(tmp_path: Path) -> None:
    """Order, threading, boxes and dents tell of the same 116 ends."""
    made = dressed(tmp_path, NAPKINS)

    assert 116 == made.ends == len(made.threading)
    assert 116 == sum(section.ends for section in made.sections)
    assert made.sleyed is not None
    assert 116 == sum(band.ends for band in made.sleyed.bands)
    assert [(19, 6), (1, 2)] == [(section.times, section.repeat_ends) for section in made.sections]


def test_a_sinking_shed(tmp_path: Path) -> None:
    """The shed is the draft's, and so are the treadles."""
    tied = dressed(tmp_path, NAPKINS).tied
    assert tied is not None

    assert not tied.rising
    assert ("point", 4, "1-4, 3-2") == (tied.draft, len(tied.treadles), tied.written)


def test_a_lift_plan(tmp_path: Path) -> None:
    """A draft with a lift plan has no treadles to tie."""
    tied = dressed(tmp_path, NAPKINS, draft="threading: 1-4\nlift_plan: 1+2, 2+3, 3+4, 4+1\n").tied
    assert tied is not None

    assert () == tied.treadles
    assert [{1, 2}, {2, 3}, {3, 4}, {1, 4}] == [set(lifted) for lifted in tied.picks]


def test_later_stretches(tmp_path: Path) -> None:
    """More of the same is woven on; 48 ends from the middle in another weave are threaded, sleyed and tied anew."""
    made = dressed(tmp_path, NAPKINS.replace("draft: point\n", "") + TWO)
    more, bookmarks = made.later

    assert 116 == made.ends
    assert more.only_woven
    assert (True, True, True) == (bookmarks.rethreaded, bookmarks.resleyed, bookmarks.retied)
    assert (48, True, 3) == (bookmarks.ends, bookmarks.from_the_middle, bookmarks.number)
    assert bookmarks.sleyed is not None
    assert 32 == bookmarks.sleyed.dents


def test_a_draft_that_cannot_be_read(tmp_path: Path) -> None:
    """A later stretch whose draft or weave tells no threading is unknown, and not simply woven on."""
    two = "stretches: [{name: a, weave: 2/2 twill}, {name: b, %s}, {name: c, weave: 2/2 twill}]\n"
    warp = "title: T\nwarp: {order: 80 bone}\n"
    missing, again = dressed(tmp_path / "a", warp + two % "draft: nosuch").later
    strange, _ = dressed(tmp_path / "b", warp + two % "weave: seaweed").later

    assert ("the draft `nosuch`", False) == (missing.unread, missing.only_woven)
    assert ("seaweed", False) == (strange.unread, strange.only_woven)
    assert (True, True, "") == (again.rethreaded, again.retied, again.unread)


def test_another_lift_plan_is_other_work(tmp_path: Path) -> None:
    """Without treadles it is the lift plan that may change from one stretch to the next."""
    plans = "".join(
        f"  - draft: {{threading: 1-4, lift_plan: '{lifts}'}}\n" for lifts in ("1+2, 3+4", "1+3, 2+4", "1+3, 2+4")
    )
    other, same = dressed(tmp_path, f"title: T\nwarp: {{order: 80 bone}}\nstretches:\n{plans}").later

    assert (False, True) == (other.rethreaded, other.retied)
    assert same.only_woven


@pytest.mark.parametrize(
    ("threading", "ends", "doubled"),
    [
        ("1, 1, 2-4, 1-3, 4, 4", 10, 2),
        ("1, 1, 1, 2, 3, 4, 4, 4", 8, 3),
        ("1, 1, 2, 2", 8, 0),
        ("1, 1, 2, 3", 8, 0),
        ("1-4", 8, 0),
        ("1", 40, 0),
        ("none", 40, 0),
        ("none, none, 1-4, none, none", 8, 0),
        ("1, 1, 2, 2", 4, 0),
        ("1, 1, 3, 2, 2", 5, 2),
    ],
)
def test_doubled_selvedges(tmp_path: Path, threading: str, ends: int, doubled: int) -> None:
    """Ends that share a shaft at both edges, and no others inside, are doubled selvedges; basket is none."""
    draft = POINT.replace("1-4, 3-2", threading, 1)
    made = dressed(tmp_path, f"title: A\nwarp: {{order: {ends} bone}}\ndraft: point\n", draft=draft)

    assert doubled == made.doubled


def test_ends_that_nobody_wrote_down(tmp_path: Path) -> None:
    """24 to the inch over 10 in are 240 ends, and it is said that they are reckoned."""
    made = dressed(tmp_path, "title: Six lines\nyarn: linen-20-2\nsett: 24/in\nin_reed: 10\nweave: plain weave\n")

    assert (240, True) == (made.ends, made.reckoned)


@pytest.mark.parametrize(
    "warp",
    [
        "title: Old\nyarn: linen-20-2\nin_reed: 20\nweave: plain weave\n",
        "title: Nothing\n",
        "title: No such weave\nends: 100\nweave: seaweed\n",
    ],
)
def test_nothing_to_dress_by(tmp_path: Path, warp: str) -> None:
    """A warp with neither ends nor order, or with neither order nor threading, has no sheet."""
    assert not dressed(tmp_path, warp).worth_a_page


def test_every_warp_of_the_demonstration() -> None:
    """Of every warp of the demonstration boxes and bouts add up to its ends, shared or whole, and dents hold them."""
    journal = read_journal(PROJECT / "entries")
    many = 0
    for each in (journal, public(journal)):
        for warp in each.warps.values():
            made = dressing_of(each, warp)
            if made.sections:
                many += 1
                assert made.ends == sum(section.ends for section in made.sections)
            if made.windings:
                assert made.ends == sum(winding.ends for winding in made.windings)
            if made.sleyed is not None:
                assert made.ends == sum(band.ends for band in made.sleyed.bands)

    assert many > 40
