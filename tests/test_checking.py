"""Drafts whose parts do not fit together, told of with the others."""

from __future__ import annotations

from pathlib import Path

import pytest

from journal_tools.checking import check
from tests.ledger.desk import write


class TestDrafts:
    """Each part can be read, and together they are no draft."""

    @pytest.mark.parametrize(
        ("header", "line", "field"),
        [
            ("threading: 1-4\ntie_up: 1+2, 3+4\ntreadling: 1-3", 4, "treadling"),
            ("threading: 1-4\nshafts: 3\nlift_plan: 1, 2", 2, "threading"),
            ("shafts: 4\nthreading: 1-4\nlift_plan: 5", 4, "lift_plan"),
            ("threading: 1-4\ntreadles: 1\ntie_up: 1+2, 3+4\ntreadling: 1-2", 4, "tie_up"),
            ("threading: 1-4\nlift_plan: 1\ntie_up: 1", 3, "lift_plan"),
            ("title: Nothing", 0, "draft"),
        ],
    )
    def test_the_part(self, tmp_path: Path, header: str, line: int, field: str) -> None:
        """The part that the sentence names has its line."""
        (problem,) = check(write(tmp_path, drafts__d=header))

        assert ("drafts/d.md", line, field, True) == (problem.file, problem.line, problem.field, problem.is_fault)

    def test_in_a_warp(self, tmp_path: Path) -> None:
        """A draft of a warp's own is told of in the warp."""
        header = "stretches:\n  - name: a\n    draft:\n      threading: 1-4\n      tie_up: 1\n      treadling: 2"
        (problem,) = check(write(tmp_path, warps__w=header))

        assert ("warps/w.md", 7, "draft: treadling") == (problem.file, problem.line, problem.field)

    def test_a_part_that_cannot_be_read(self, tmp_path: Path) -> None:
        """What is missing because it could not be read is told of once."""
        (problem,) = check(write(tmp_path, drafts__d="threading: 1-4\nlift_plan: 1, two"))

        assert "lift_plan" == problem.field
