"""The records of yarns, looms and drafts."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.ledger.desk import write
from tests.records.recorded import problems, warp


class TestYarn:
    """A yarn's own record."""

    def test_measured_wins(self, tmp_path: Path) -> None:
        """A weighed length comes before a stated yield, and both before the label."""
        label = "fibre: cotton\nnumber: 8/2 cotton"
        stated = f"{label}\nyield: 3000 yd/lb"
        weighed = f"{stated}\nlength_weight: 50 m = 12.5 g"
        tex = [
            float(write(tmp_path / str(n), yarns__a=text).yarns["a"].tex or 0)
            for n, text in enumerate((label, stated, weighed))
        ]

        assert pytest.approx([590.541247 / 4, 496_054.648 / 3000, 250]) == tex

    def test_an_ambiguous_label(self, tmp_path: Path) -> None:
        """60/2 silk has several readings; it is refused with all of them, unless something was measured."""
        (problem,) = problems(tmp_path, "fibre: silk\nnumber: 60/2 silk", "yarns__a")
        measured = problems(tmp_path / "b", "fibre: silk\nnumber: 60/2 silk\nyield: 14800 yd/lb", "yarns__a")

        assert ("yarns/a.md", 3, "number", True) == (problem.file, problem.line, problem.field, problem.is_fault)
        assert all(reading in problem.right.replace(",", "") for reading in ("25200", "50400", "14882"))
        assert [] == measured

    def test_fibres(self, tmp_path: Path) -> None:
        """Shares are fractions of the weight; one fibre is all of it; unknown is allowed."""
        made = write(
            tmp_path, yarns__a="fibre: 55 % cotton, 45 % linen", yarns__b="fibre: Wool", yarns__c="fibre: unknown"
        ).yarns

        assert {"cotton": 0.55, "linen": 0.45} == {f: float(s or 0) for f, s in (made["a"].fibre or {}).items()}
        assert ("cotton", "wool", None) == (made["a"].main_fibre, made["b"].main_fibre, made["c"].main_fibre)

    @pytest.mark.parametrize("typed", ["55 % cotton, 55 % linen", "half linen, 5"])
    def test_fibres_that_are_none(self, tmp_path: Path, typed: str) -> None:
        """Shares come to 100 %."""
        assert 1 == len(problems(tmp_path, f"fibre: {typed}", "yarns__a"))

    @pytest.mark.parametrize(("typed", "hexed"), [("c9b58b", "c9b58b"), ('"#C9B58B"', "c9b58b"), ("fa0", "ffaa00")])
    def test_colours(self, tmp_path: Path, typed: str, hexed: str) -> None:
        """Six digits, with a quoted `#` or without, or three."""
        assert {"flax": hexed} == write(tmp_path, yarns__a=f"colours:\n  flax: {typed}").yarns["a"].colours

    def test_not_a_colour(self, tmp_path: Path) -> None:
        """One colour that cannot be read leaves the others."""
        made = write(tmp_path, yarns__a="colours:\n  flax: beige\n  slate: 43536b")

        assert {"slate": "43536b"} == made.yarns["a"].colours
        assert ["colours: flax"] == [problem.field for problem in made.problems]


class TestLoom:
    """A loom's own record."""

    def test_heddles(self, tmp_path: Path) -> None:
        """A count for every shaft, or one for each."""
        made = write(tmp_path, looms__a="heddles: 200", looms__b="heddles:\n  1: 200\n  2: 180").looms

        assert ({0: 200}, {1: 200, 2: 180}) == (made["a"].heddles, made["b"].heddles)

    def test_reeds(self, tmp_path: Path) -> None:
        """A list of reeds; on one line with commas they are asked for as a list."""
        made = write(tmp_path, looms__a="reeds:\n  - 12/in\n  - 50 per 10 cm").looms["a"]
        (problem,) = problems(tmp_path / "b", "reeds: 8, 10, 12", "looms__a")

        assert [12, pytest.approx(12.7)] == [float(reed.per_inch) for reed in made.reeds]
        assert "as a list" in problem.right


class TestDraft:
    """A draft, by itself or in a warp."""

    def test_by_name_or_of_its_own(self, tmp_path: Path) -> None:
        """A warp names its draft, or has it."""
        own = warp(tmp_path, "draft:\n  threading: 1-4\n  lift_plan: 1+2, 3+4").draft

        assert "huck-squares" == warp(tmp_path, "draft: huck-squares").draft
        assert not isinstance(own, str)
        assert own is not None
        assert 4 == own.highest_shaft

    def test_the_column(self, tmp_path: Path) -> None:
        """In a long threading the message shows the place, and not the whole."""
        long = ", ".join(["1-4"] * 30) + ", 5*, 1-4"
        (problem,) = problems(tmp_path, f"threading: {long}", "drafts__d")

        assert "5*" in problem.read
        assert len(problem.read) < 60
