"""A yarn is found by what its label says, where one yarn says it; else it is told as it was typed."""

from __future__ import annotations

from pathlib import Path

import pytest

from journal_tools.checking import check
from journal_tools.records.yarns_used import all_yarns, warp_yarns
from tests.ledger.desk import write

COTTON = "title: Cotton for towels\nnumber: 8/2\nfibre: cotton\ncolours:\n  flax: c9b58b"


@pytest.mark.parametrize("typed", ["8/2 cotton", "8/2", "8/2 cotton flax", "8/2 flax"])
def test_by_the_label(tmp_path: Path, typed: str) -> None:
    """The number, or the number and the only fibre, with a colour behind it, leads to the yarn's record."""
    made = write(tmp_path, yarns__towel_cotton=COTTON, warps__w=f"yarn: {typed}\nin_reed: 20\non_loom: 19 x 30")
    (yarn,) = all_yarns(made, made.warps["w"])

    assert ("towel-cotton", "flax" if "flax" in typed else "") == (yarn.name, yarn.colour)
    assert yarn.record is made.yarns["towel-cotton"]
    assert () == check(made)


@pytest.mark.parametrize("header", ["warp:\n  yarn: 8/2 cotton", "yarns:\n  main: 8/2 cotton\nwarp:\n  yarn: main"])
def test_wherever_a_yarn_is_named(tmp_path: Path, header: str) -> None:
    """In the warp, and under a short name of the weaver's, a label does as well as a name."""
    made = write(tmp_path, yarns__towel_cotton=COTTON, warps__w=header)

    assert ["towel-cotton"] == [yarn.name for yarn in warp_yarns(made, made.warps["w"])]


def test_several_with_one_label(tmp_path: Path) -> None:
    """Where several yarns have the label it is asked which, with their names, and none is taken."""
    made = write(tmp_path, yarns__a=COTTON, yarns__b=COTTON.replace("towels", "rugs"), warps__w="yarn: 8/2 cotton")
    (problem,) = check(made)

    assert ("which-yarn", "8/2 cotton", "yarn") == (problem.slug, problem.read, problem.field)
    assert "label: a, b." in problem.right
    assert not problem.is_fault
    assert () == check(write(tmp_path, warps__w="yarn: 8/2 cotton\naccepted: which yarn"))


def test_a_name_is_no_label(tmp_path: Path) -> None:
    """A yarn's own name counts before another yarn's label."""
    made = write(tmp_path, yarns__a=COTTON, yarns__8_2_cotton="title: The other", warps__w="yarn: 8/2 cotton")

    assert ["8-2-cotton"] == [yarn.name for yarn in all_yarns(made, made.warps["w"])]


@pytest.mark.parametrize("header", ["warp:\n  yarn: 60/2 silk", "yarn: 60/2 silk", "yarns:\n  s: 60/2 silk"])
def test_a_yarn_without_a_record(tmp_path: Path, header: str) -> None:
    """What is asked about, and what a reader sees, is the yarn as it was typed."""
    made = write(tmp_path, warps__w=header)
    (problem,) = check(made)

    assert ("no-such-yarn", "60/2 silk") == (problem.slug, problem.read)
    assert ["60/2 silk"] == [yarn.heading for yarn in all_yarns(made, made.warps["w"])]
