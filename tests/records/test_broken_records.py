"""What cannot be read is told, all of it in one run, and nothing else is lost."""

from __future__ import annotations

import dataclasses
from pathlib import Path
from typing import Any

import pytest

from journal_tools.records import Warp
from journal_tools.records.model import words_of
from tests.ledger.desk import write
from tests.records.recorded import warp


@dataclasses.dataclass(frozen=True)
class Wrong:
    """A line that cannot be read, and what stays."""

    line: str
    field: str


class TestBroken:
    """What cannot be read is told, and the rest stays."""

    @pytest.mark.parametrize(
        "wrong",
        [
            Wrong("in_reed: twenty", "in_reed"),
            Wrong("washed: 18 by 30 by 2", "washed"),
            Wrong("started: 04/05/2024", "started"),
            Wrong("share: perhaps", "share"),
            Wrong("weave:\n  - plain", "weave"),
            Wrong("pieces:\n  - on_loom: wide", "pieces: 1: on_loom"),
            Wrong("pieces: four", "pieces"),
            Wrong("yarns: linen", "yarns"),
            Wrong("where_it_went:\n  thrums: much", "where_it_went: thrums"),
        ],
        ids=lambda wrong: wrong.field,
    )
    def test_one_line(self, tmp_path: Path, wrong: Wrong) -> None:
        """One line that cannot be read is one fault, and every other line is there."""
        made = write(tmp_path, warps__w=f"title: Towels\n{wrong.line}\nyarn: linen", warps__x="title: Napkins")
        (problem,) = made.problems

        assert wrong.field == problem.field.replace("piece 1", "1")
        assert problem.is_fault
        assert problem.right
        assert ("Towels", "linen") == (made.warps["w"].title, made.warps["w"].yarn)
        assert "Napkins" == made.warps["x"].title

    def test_an_empty_value(self, tmp_path: Path) -> None:
        """A key that nobody filled in yet is no fault; it is as if it were not there."""
        made = warp(tmp_path, "title: Towels\nwashed:\nyarn:\npieces:")

        assert ((), None, ()) == (made.washed, made.yarn, made.pieces)

    def test_a_file_that_is_no_record(self, tmp_path: Path) -> None:
        """A record that cannot be read at all is still a record of that name, and the others are whole."""
        made = write(tmp_path, warps__w="title: [left open", warps__x="title: Napkins")

        assert {"w", "x"} == set(made.warps)
        assert {"warps/w.md"} == {problem.file for problem in made.problems}
        assert "Napkins" == made.warps["x"].title

    def test_all_in_one_run(self, tmp_path: Path) -> None:
        """Every fault of every file comes at once, in the order of files and lines."""
        made = write(
            tmp_path,
            journal="length: feet\ntape: long",
            warps__b="in_reed: x\nwashed: y",
            warps__a="share: maybe",
            yarns__c="price: dear",
            looms__d="width: broad",
            finishes__e="fulling: somewhat",
            drafts__f="threading: one",
        )

        assert [
            ("drafts/f.md", 2),
            ("finishes/e.md", 2),
            ("journal.md", 2),
            ("journal.md", 3),
            ("looms/d.md", 2),
            ("warps/a.md", 2),
            ("warps/b.md", 2),
            ("warps/b.md", 3),
            ("yarns/c.md", 2),
        ] == [(problem.file, problem.line) for problem in made.problems]

    def test_no_journal_at_all(self, tmp_path: Path) -> None:
        """An empty folder is an empty journal, in inches."""
        made = write(tmp_path)

        assert ({}, (), "in") == (made.warps, made.problems, made.settings.units.length)


def test_every_value_has_its_default(tmp_path: Path) -> None:
    """A record with nothing in it has nothing in it: no value is filled in."""
    made: Any = warp(tmp_path, "title: Towels")
    said = {attribute for attribute, _ in words_of(Warp).values() if getattr(made, attribute) not in (None, ())}

    assert {"title"} == said
