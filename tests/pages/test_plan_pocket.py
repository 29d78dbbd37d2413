"""What pages are told of the forecast: a few numbers that give what the forecast itself gives."""

from __future__ import annotations

import dataclasses
import json
import re
import shutil
from pathlib import Path
from typing import Any

import pytest

from journal_tools.forecast.cloth_kind import kind_in
from journal_tools.forecast.forecast import Forecast
from journal_tools.forecast.kind import ClothKind
from journal_tools.forecast.memory import Memory
from journal_tools.forecast.observed import Observed, Reading
from journal_tools.pages.archive import Archive
from journal_tools.pages.plan_page import plan_data
from journal_tools.pages.plan_pocket import SPANS, Pocket
from journal_tools.pictures.store import PictureStore
from journal_tools.planning.steered import fulled_belief
from journal_tools.records import Journal, public, read_journal
from journal_tools.records.warp import Warp
from tests.built import TINY
from tests.house import PROJECT

POINT = 0.01
"""A point of loss."""

JOURNAL = read_journal(PROJECT / "entries")


@pytest.fixture(scope="module")
def memory() -> Memory:
    """What the demonstration journal has learned."""
    return Memory.of(JOURNAL)


@pytest.fixture(scope="module")
def pocket(memory: Memory) -> Pocket:
    """The same, pocketed."""
    return Pocket(memory.forecasts, kind_in(JOURNAL, "cotton-8-2", "plain weave"))


KINDS = {
    "woven before": kind_in(JOURNAL, "cottolin-22-2", "plain weave", "", "machine-40-line-pressed"),
    "two yarns, one closely set": dataclasses.replace(
        kind_in(JOURNAL, "cotton-8-2", "2/2 twill", "linen-16-2"), closeness=0.9
    ),
    "a weave new to the yarn": kind_in(JOURNAL, "alpaca-12-2", "waffle weave", "", "hand-30-flat"),
    "a recipe that nobody knows": kind_in(JOURNAL, "merino-2-20", "2/2 twill", "", "moonlight"),
    "nothing known": ClothKind(),
    "all of it new": ClothKind("zigzag", "ramie", "nettle", "ramie", "nettle", "moonlight", 0.6),
}


@pytest.mark.parametrize("asked", SPANS, ids=" ".join)
@pytest.mark.parametrize("kind", KINDS.values(), ids=KINDS)
def test_it_is_the_forecasts_answer(
    memory: Memory, pocket: Pocket, kind: ClothKind, asked: tuple[str, str, str]
) -> None:
    """Mean and spreads are the forecast's to a thousandth of a point, and nine in ten within half of one."""
    belief = memory.belief(asked[0], kind, *asked[1:])
    answer = pocket.answer(kind, asked)

    assert pytest.approx(belief.mean, abs=POINT / 1000) == answer.mean
    assert pytest.approx(belief.batch_sd, abs=POINT / 1000) == answer.shared
    assert pytest.approx(belief.sd, abs=POINT / 1000) == answer.sd
    for chance in (0.05, 0.95):
        assert pytest.approx(belief.quantile(chance, "batch"), abs=POINT) == answer.quantile(chance, "batch")


@pytest.mark.parametrize("direction", ["width", "length"])
def test_of_an_empty_journal(direction: str) -> None:
    """A journal without a warp has common practice in its pocket."""
    forecasts = {way: Forecast.fit((), way) for way in ("width", "length")}
    asked = next(span for span in SPANS if span[0] == direction and span[2] == "washed 1")
    belief = forecasts[direction].belief(ClothKind(), *asked[1:])
    answer = Pocket(forecasts, ClothKind()).answer(ClothKind(), asked)

    assert pytest.approx(belief.mean, abs=POINT / 1000) == answer.mean
    assert pytest.approx(belief.batch_sd, abs=POINT / 1000) == answer.shared


def data_of(archive: Archive) -> dict[str, Any]:
    """What the page's script is given."""
    script = plan_data(archive, archive.shelf, archive.pocket.as_data()).decode()
    found: dict[str, Any] = json.loads(script.split("journal = ", 1)[1].rstrip(";\n"))
    return found


def woven(number: int, direction: str) -> Observed:
    """One piece of a made-up shelf of 60 yarns, 12 weaves, 12 fibres and 10 recipes over 10 years."""
    yarn, fibre = f"yarn-{number % 60}", f"fibre-{number % 12}"
    kind = ClothKind(f"weave-{number % 12}", yarn, yarn, fibre, fibre, f"recipe-{number % 10}", 0.7, 2015 + number % 10)
    moments = [("in_reed", 0.0), ("on_loom", -0.04), ("off_loom", -0.06), ("washed 1", -0.12)]
    moments[0] = ("warp", 0.0) if direction == "length" else moments[0]
    readings = tuple(Reading(moment, log - number % 7 / 1000, 0.003) for moment, log in moments)
    return Observed(f"warp-{number}", "towel", kind, readings)


def test_a_shelf_of_sixty_yarns() -> None:
    """With 60 yarns, 12 weaves and 10 recipes, what the page is told of the forecast weighs no more than 200 KB."""
    observed = {way: tuple(woven(number, way) for number in range(120)) for way in ("width", "length")}
    told = Pocket(Memory.from_observed(observed).forecasts, ClothKind()).as_data()

    assert 60 == len(told["columns"]["width"]["yarn"])
    assert len(json.dumps(told, separators=(",", ":"))) <= 200_000


def test_what_others_are_told(tmp_path: Path) -> None:
    """The shared journal's page knows no price, no stock, no wraps, no heddles and no warp that is not shared."""
    journal = read_journal(TINY / "entries")
    own = data_of(Archive(journal, PictureStore(tmp_path / "own")))
    shared = data_of(Archive(public(journal), PictureStore(tmp_path / "shared"), public=True))

    assert "stock" in own
    assert "stock" not in shared
    assert shared["shared"]
    assert len({warp for warp, *_ in shared["woven"]}) <= sum(warp.share is True for warp in journal.warps.values())
    assert [] == [name for name, yarn in shared["yarns"].items() if "wraps" in yarn]
    assert [] == [name for name, loom in shared["looms"].items() if {"heddles", "reeds"} & set(loom)]


def fulled_in(journal: Journal, yarn: str) -> dict[str, tuple[float, float, int]]:
    """What a plan with no record yet expects of fulling a yarn: mean, spread and how many warps, by direction."""
    found = {way: fulled_belief(journal, Warp(), way, yarn) for way in ("width", "length")}
    return {way: (round(belief.mean, 5), round(belief.shared, 5), warps) for way, (belief, warps) in found.items()}


@pytest.mark.parametrize("yarn", ["woollen-8-2", "merino-2-20"])
@pytest.mark.parametrize("lengths", [True, False], ids=["both ways", "widths alone"])
def test_fulled_cloth(tmp_path: Path, yarn: str, lengths: bool) -> None:
    """Each direction of fulled cloth goes by its own yarn where that was measured, else by all that was fulled."""
    shutil.copytree(PROJECT / "entries", tmp_path / "entries")
    cove = tmp_path / "entries" / "warps" / "cove-blanket.md"
    text = cove.read_text(encoding="utf-8").replace("woollen-8-2", "merino-2-20")
    cove.write_text(text if lengths else re.sub(r" x [\d.]+$", "", text, flags=re.MULTILINE), encoding="utf-8")
    journal = read_journal(tmp_path / "entries")
    shown = data_of(Archive(journal, PictureStore(tmp_path / "cache")))["fulled"][yarn]
    told = fulled_in(journal, yarn)

    assert told["width"][2] == shown["warps"]
    for way, (mean, shared, _) in told.items():
        assert pytest.approx((mean, shared)) == (shown[way]["mean"], shown[way]["shared"])
