"""Records written and read for a test: one warp, or what is said of a record."""

from __future__ import annotations

from pathlib import Path

from journal_tools.problems import Problem
from journal_tools.records import Warp
from tests.ledger.desk import write


def warp(folder: Path, header: str) -> Warp:
    """A warp that reads without a problem."""
    made = write(folder, warps__w=header)
    assert [] == [problem.sentence() for problem in made.problems]
    return made.warps["w"]


def problems(folder: Path, header: str, file: str = "warps__w") -> list[Problem]:
    """What is said of a record."""
    return list(write(folder, **{file: header}).problems)
