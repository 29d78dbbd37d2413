"""Figures that cannot be: told of, or taken as they are, and never the end of the reader."""

from __future__ import annotations

from pathlib import Path

import pytest

from journal_tools.checking import check
from journal_tools.records import read_journal

SIX = "title: T\nyarn: cotton\nin_reed: 20\non_loom: 19 x 30\nwashed: 18 x 28\n"


def told(folder: Path, text: str) -> list[str]:
    """The fields of a warp that faults are told of."""
    (folder / "warps").mkdir(parents=True)
    (folder / "warps" / "one.md").write_text(f"---\n{text}---\n", encoding="utf-8")
    return [problem.field for problem in check(read_journal(folder)) if problem.is_fault]


@pytest.mark.parametrize(
    ("text", "field"),
    [
        ("title: T\nin_reed: 0\n", "in_reed"),
        ("title: T\nreed: 12/in\nin_reed: 0 dents\n", "in_reed"),
        (SIX + "warp:\n  wound: 0\n", "warp: wound"),
        (SIX + "warp:\n  marked: 0 wove 0\n", "warp: marked"),
        (SIX + "warp_used: 0\n", "warp_used"),
        (SIX + "layers: 1000000\nopens: left\n", "layers"),
        ("title: T\nwashed:\n" + "  - 18 x 28\n" * 101, "washed"),
    ],
)
def test_what_cannot_be_is_told_of(tmp_path: Path, text: str, field: str) -> None:
    """A width, a warp or a take-up of nothing, a thousand layers: each is a fault at its own field."""
    assert [field] == told(tmp_path, text)


@pytest.mark.parametrize(
    "text", [SIX + "picks: 99999999\n", "title: T\npieces:\n  - name: napkins 1-9999\n    on_loom: 19 x 30\n"]
)
def test_what_is_only_large_is_read(tmp_path: Path, text: str) -> None:
    """A large count is read as it stands."""
    assert [] == told(tmp_path, text)
