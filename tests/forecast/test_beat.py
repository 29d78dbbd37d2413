"""The beat that a yarn and weave really had, reckoned by hand from small journals."""

from __future__ import annotations

from pathlib import Path

import pytest

from journal_tools.forecast.beat import PastBeat, past_beat
from journal_tools.forecast.cloth_kind import kind_in
from tests.ledger.desk import write

COTTON = "number: 8/2 cotton\nfibre: cotton"
COUNTED = "yarn: cotton\nweave: plain weave\nsett: 20/in\nbeat: 30/in\non_loom: 18 x 30\npicks: 540"
STATED = "yarn: cotton\nweave: plain weave\nsett: 24/in\nbeat: 24/in"
INCH_M = 0.0254


def beat(folder: Path, weave: str = "plain weave", but: str = "", **warps: str) -> PastBeat | None:
    """The beat of cotton in a weave."""
    made = write(folder, yarns__cotton=COTTON, **warps)
    return past_beat(made, kind_in(made, "cotton", weave), but)


def test_counted_before_meant(tmp_path: Path) -> None:
    """540 picks over 30 in are 18 to the inch, whatever beat was meant; at 20 ends that is .9 picks an end."""
    found = beat(tmp_path, warps__one=COUNTED)
    assert found is not None

    assert pytest.approx(18) == found.per_m * INCH_M
    assert pytest.approx(0.9) == found.ratio
    assert pytest.approx(0.9 * 24) == found.at(24 / INCH_M) * INCH_M
    assert pytest.approx(18) == found.at(None) * INCH_M


def test_a_warp_counts_once(tmp_path: Path) -> None:
    """A warp of many pieces counts like a warp of one: .9 and 1 make .95."""
    many = COUNTED + "\npieces:\n" + "".join(f"  - name: towel {each}\n" for each in range(1, 6))
    found = beat(tmp_path, warps__many=many, warps__one=STATED)
    assert found is not None

    assert pytest.approx(0.95) == found.ratio
    assert {"many", "one"} == set(found.warps)


def test_planned_and_not_woven(tmp_path: Path) -> None:
    """The beat that a plan wants teaches nothing until something of that warp is measured."""
    planned = STATED + "\nplan:\n  - piece: towel\n    washed: 18 x 28\n"

    assert beat(tmp_path / "wanted", warps__one=planned) is None
    assert beat(tmp_path / "woven", warps__one=planned + "on_loom: 19 x 31") is not None


def test_other_cloth(tmp_path: Path) -> None:
    """Another weave, the warp that is asked about, and tabby left out of the count tell nothing."""
    twill, tabby = COUNTED.replace("plain weave", "2/2 twill"), COUNTED.replace("beat: 30/in\n", "tabby: not counted\n")

    assert beat(tmp_path, warps__twill=twill, warps__tabby=tabby, warps__self=STATED, but="self") is None


def test_where_the_warp_is_hidden(tmp_path: Path) -> None:
    """A weft that hides the warp is beaten as close as ever, whatever the sett."""
    found = beat(tmp_path, "weft-faced", warps__one=STATED.replace("plain weave", "weft-faced"))
    assert found is not None

    assert found.ratio is None
    assert pytest.approx(24) == found.at(8 / INCH_M) * INCH_M


def test_two_layers(tmp_path: Path) -> None:
    """Cloth in two layers tells the picks of one: 40 of both to the inch are 20."""
    found = beat(tmp_path, warps__one=STATED.replace("24/in", "40/in") + "\nlayers: 2\nopens: along the left edge")
    assert found is not None

    assert pytest.approx(20) == found.per_m * INCH_M
    assert pytest.approx(1) == found.ratio
