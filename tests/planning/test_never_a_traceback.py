"""However odd a record is, it is planned in words and figures, or it is said what is missing."""

from __future__ import annotations

import json
from contextlib import suppress
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as some

from journal_tools.forecast.learned import observed_of
from journal_tools.planning.left import left_of
from journal_tools.planning.plan import plan_of
from journal_tools.planning.told import as_json
from journal_tools.planning.wants import Asked, NotPlanned
from journal_tools.planning.words import Words
from tests.ledger.desk import write
from tests.planning.knows import Knows
from tests.planning.test_plan import SHELF

SIZES = (
    *("made_up: 18 x 27", "washed: 1/8 x 1/8", "washed: ? x 30", "washed: 20 x ?", "on_loom: 19 x 33"),
    *("off_loom: 100 x 2000", "hemmed: 18 x 20", "in_reed: 20", "picks: 300", "washed 3: 18 x 20"),
)
SETTS = ("", "sett: 24/in", "sett: 1/in", "sett: 200/in", "reed: 12/in\nsley: 1-2", "reed: 50 per 10 cm\nsley: 0-1")
WEAVES = ("", "weave: plain weave", "weave: waffle", "weave: nonsense", "draft: none-such")
ENDS = ("", "hem: 1 in", "hem: none", "fringe: 4 in each end", "hem:\n  depth: 40 in\n  edges: all four")
WARPS = (
    *("", "warp:\n  order: a", "warp:\n  order: 20 a, 12 times (4 b, 24 a), 20 a"),
    *("warp:\n  ends: 3\n  floating_selvedges: cotton\n  wound: 5 yd", "warp:\n  order: 3 times (a, b)\n  wound: 1 in"),
    "warp:\n  - yarn: cotton\n    ends: 200\n  - yarn: x\n    ends: 30",
)
MORE = (
    *("", "layers: 2\nopens: along the left edge", "units: cm", "ends: 1", "beat: 400/in", "temple: yes"),
    "stretches:\n  - name: one\n  - name: two\n    ends: 48 from the middle",
    "pieces:\n  - name: s\n    on_loom: 18 x 7\n    washed: 17 x 6 1/2",
)


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """One journal, whose warp is written anew each time."""
    return tmp_path_factory.mktemp("odd")


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    some.sampled_from(SIZES),
    some.tuples(*(some.sampled_from(each) for each in (SETTS, WEAVES, ENDS, WARPS, MORE))),
    some.sampled_from((1, 4, 1000)),
    some.sampled_from((0.0, 0.02, 0.3)),
    some.sampled_from((Asked(), Asked(1.0, 10.0, 0.0, 5), Asked(600.0, 500.0))),
)
def test_any_record(folder: Path, size: str, parts: tuple[str, ...], count: int, shared: float, asked: Asked) -> None:
    """Whatever is wanted of whatever warp, every sentence and every figure can be said."""
    plan = f"plan:\n  - piece: towel\n    count: {count}\n    {size}"
    header = "\n".join(part for part in ("yarn: cotton", "loom: big", *parts, plan) if part)
    made = write(folder, **SHELF, warps__odd=header)
    warp, seen, knows = made.warps["odd"], observed_of(made), Knows(shared=shared)
    with suppress(NotPlanned):
        left_of(made, knows, warp, seen)
    with suppress(NotPlanned):
        found = plan_of(made, knows, warp, asked, seen)
        words = Words(found)
        said = [words.wound(), words.money(), words.left_out(), *words.limits(), *map(str, words.lines())]
        said += [line for yarn in found.yarns for line in words.yarn(yarn)]
        for stretch in found.stretches:
            said += [words.rests(stretch), words.sley(stretch), words.sample(stretch), *words.repeats(stretch)]
            for piece in stretch.pieces:
                said += [words.weave(piece), *words.expects(stretch, piece), *words.losses(piece)]

        assert "nan" not in " ".join(said).split()
        assert as_json(found) == json.loads(json.dumps(as_json(found), allow_nan=False))
