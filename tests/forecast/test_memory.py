"""Both forecasts of a journal, kept together."""

from __future__ import annotations

import math
from functools import cache

import pytest
from threadpoolctl import threadpool_info

from journal_tools.forecast.cloth_kind import kind_in
from journal_tools.forecast.forecast import Forecast
from journal_tools.forecast.learned import observed_of
from journal_tools.forecast.memory import Memory
from journal_tools.records import Journal, read_journal
from tests.house import PROJECT

RANGES = {
    ("cotton-8-2", "plain weave", ""): ((8, 14), (6, 12)),
    ("cotton-8-2", "2/2 twill", ""): ((8, 15), (6, 12)),
    ("cotton-10-2-mercerised", "plain weave", ""): ((7, 12), (5, 10)),
    ("cotton-16-2", "huck lace", ""): ((12, 18), (7, 13)),
    ("cotton-8-2", "waffle weave", ""): ((18, 28), (15, 25)),
    ("cotton-10-2-mercerised", "warp-faced rep", "cotton-filler"): ((2, 7), (6, 12)),
    ("cottolin-22-2", "plain weave", ""): ((7, 13), (6, 11)),
    ("linen-16-2", "plain weave", ""): ((5, 10), (3, 7)),
    ("linen-20-2", "huck lace", ""): ((7, 12), (3, 7)),
    ("merino-2-20", "2/2 twill", ""): ((8, 15), (7, 13)),
    ("superwash-12-2", "2/2 twill", ""): ((5, 11), (1, 8)),
    ("silk-30-2", "2/2 twill", ""): ((4, 9), (2, 6)),
    ("alpaca-12-2", "plain weave", ""): ((6, 13), (0, 7)),
    ("woollen-8-2", "2/2 twill", ""): ((9, 17), (8, 16)),
    ("linen-16-2", "weft-faced", "rug-wool-5-2"): ((1, 5), (2, 5)),
}
"""Per cent of width, reed to washed, and of length, loom to washed, of common cloths (common practice, no source)."""


@cache
def demo() -> Journal:
    """The demonstration journal."""
    return read_journal(PROJECT / "entries")


@cache
def memory() -> Memory:
    """What it remembers."""
    return Memory.of(demo())


class TestTheDemonstration:
    @pytest.mark.parametrize("cloth", sorted(RANGES))
    def test_common_cloths(self, cloth: tuple[str, str, str]) -> None:
        """What is expected of a common cloth lies in the range that weavers know, to a point."""
        width, length = RANGES[cloth]
        kind = kind_in(demo(), *cloth[:2], cloth[2])
        found = (
            100 * memory().belief("width", kind, "in_reed", "washed 1").loss(),
            100 * memory().belief("length", kind, "on_loom", "washed 1").loss(),
        )

        for (least, most), loss in zip((width, length), found, strict=True):
            assert least - 1 <= loss <= most + 1

    def test_no_false_alarm(self) -> None:
        """None of its warps is beyond belief: the one that was ruined is kept out by its own record."""
        assert () == memory().surprises()

    def test_rep_takes_up_most(self) -> None:
        """Rep takes up 10 to 25 % of its warp, plain weave far less (common practice, no source)."""
        rep, plain = (
            memory().belief("length", kind_in(demo(), yarn, weave, weft), "warp", "on_loom").loss()
            for yarn, weave, weft in (
                ("cotton-10-2-mercerised", "warp-faced rep", "cotton-filler"),
                ("cottolin-22-2", "plain weave", ""),
            )
        )

        assert 0.10 < rep < 0.25
        assert plain < 0.10

    def test_what_it_rests_on(self) -> None:
        """Every warp that had the cottolin is named, and no other."""
        on = memory().rests_on("width", kind_in(demo(), "cottolin-22-2", "plain weave"), "in_reed", "washed 1")
        used = {piece.warp for piece in memory().observed["width"] if piece.kind.warp_yarn == "cottolin-22-2"}

        assert "yarn and weave" == on.basis
        assert used == set(on.yarn_warps)


class TestTogether:
    def test_as_alone(self) -> None:
        """Side by side, each direction learns what it learns alone."""
        kind = kind_in(demo(), "linen-16-2", "plain weave")
        alone = Forecast.fit(observed_of(demo())["width"], "width").belief(kind, "in_reed", "settled")

        assert math.isclose(alone.mean, memory().belief("width", kind, "in_reed", "settled").mean, rel_tol=1e-9)

    def test_threads_are_given_back(self) -> None:
        """One thread for each library is asked for while it learns, and not kept after."""
        before = [pool["num_threads"] for pool in threadpool_info()]
        Memory.from_observed({"width": (), "length": ()})

        assert before == [pool["num_threads"] for pool in threadpool_info()]

    def test_an_empty_journal(self) -> None:
        """An empty journal expects common practice: about a tenth, and says that nothing stands behind it."""
        empty = Memory.from_observed({"width": (), "length": ()})
        kind = kind_in(Journal(PROJECT), "cottolin-22-2", "plain weave")

        assert 0.07 < empty.belief("width", kind, "in_reed", "washed 1").loss() < 0.16
        assert "common practice" == empty.rests_on("width", kind, "in_reed", "washed 1").basis
        assert () == empty.surprises()
