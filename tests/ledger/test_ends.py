"""Ends that are counted: with heddles, floating, in dents, and in two places that should agree."""

from __future__ import annotations

from pathlib import Path

import pytest

from journal_tools.ledger.ends import dents_for, floating_ends, heddled_ends, miscounted
from tests.ledger.desk import write

DRAFT = "title: Point\nthreading: 1-4, 3-2\nlift_plan: 1+2, 3+4\nfloating_selvedges: 1\n"
AGREE = [
    "warp: {order: 50 red, ends: 50}",
    "ends: 52\nwarp: {order: 50 red, floating_selvedges: red}",
    "ends: 42\nwarp: {order: 40 red}\ndraft: point",
    "ends: 48 from the middle\nwarp: {order: 50 red}",
    "warp: {order: 50 red}\nstretches: [{name: a, ends: 50}, {name: b, ends: 30}]",
    "ends: 100\nwarp: [{order: 50 red}, {yarn: cotton}]",
]
DIFFER = {
    "ends: 120\nwarp: {order: '50 red, 50 blue'}": "the order has 100 ends",
    "warp: {order: '50 red, 50 blue', ends: 120}": "the order has 100 ends",
    "ends: 50\nwarp: {order: 50 red, floating_selvedges: red}": "the order has 52 ends with 2 floating selvedges",
    "ends: 40\nwarp: {order: 40 red}\ndraft: point": "the order has 42 ends with 2 floating selvedges",
    "ends: 60\nwarp: [{ends: 40}, {order: 40 red}]": "the warp has 80 ends",
    "warp: {order: 50 red}\nstretches: [{name: a, ends: 60}]": "the order has 50 ends",
    "ends: 60\nwarp: {order: 50 red}\nstretches: [{name: a}, {name: b, ends: 30}]": "the order has 50 ends",
}


def words(folder: Path, header: str) -> list[str]:
    """What is said of a warp whose counts do not agree."""
    journal = write(folder, warps__cloth=header, drafts__point=DRAFT)
    warp = journal.warps["cloth"]
    return [each.words for each in miscounted(warp, floating_ends(journal, warp, warp.woven()[0]))]


@pytest.mark.parametrize("header", AGREE)
def test_they_agree(tmp_path: Path, header: str) -> None:
    """`ends` counts floating selvedges too; a middle part, one of several stretches, or half a count tells nothing."""
    assert [] == words(tmp_path, header)


@pytest.mark.parametrize("header", DIFFER)
def test_they_differ(tmp_path: Path, header: str) -> None:
    """An order, or the warps together, with more or fewer ends than the record says, is told once."""
    assert [DIFFER[header]] == words(tmp_path, header)


def test_floating_selvedges_of_two_warps(tmp_path: Path) -> None:
    """Each warp that names floating selvedges has one at each edge, and they have no heddles: 84 ends, 80 heddles."""
    two = "warp:\n  - {order: 40 red, floating_selvedges: red}\n  - {order: 40 blue, floating_selvedges: blue}"
    journal = write(tmp_path, warps__cloth=two)
    warp = journal.warps["cloth"]

    assert 4 == floating_ends(journal, warp, warp)
    assert 80 == heddled_ends(warp, warp, 4)
    assert 84 == sum(wound.end_count or 0 for wound in warp.warp)


@pytest.mark.parametrize(
    ("ends", "sley", "dents"), [(100, (1, 2), 67), (99, (1, 2), 66), (6, (2, 0, 1), 6), (0, (2,), 0)]
)
def test_dents(ends: int, sley: tuple[int, ...], dents: int) -> None:
    """100 ends at 1-2 are 33 pairs of dents that hold 99, and one dent more."""
    assert dents == dents_for(ends, sley)
