"""Figures written down twice: what is near enough, and what is told apart from a slip."""

from __future__ import annotations

from pathlib import Path

import pytest

from journal_tools.ledger import ledger_of, questions
from tests.ledger.desk import write


def slugs(folder: Path, header: str) -> list[str]:
    """What is asked about one warp."""
    made = write(folder, warps__cloth=header)
    assert () == made.problems
    return [each.slug for each in questions(made, ledger_of(made, made.warps["cloth"]))]


def told(folder: Path, **files: str) -> list[str]:
    """What is asked about one warp, in words."""
    made = write(folder, **files)
    return [each.right for each in questions(made, ledger_of(made, made.warps["cloth"]))]


FLOATING = "threading: 1, 2\nlift_plan: 1, 2\nfloating_selvedges: 1"


class TestStretch:
    @pytest.mark.parametrize(
        "header",
        [
            "reed: 12/in\nsley: 2\nsett: 25/in",  # the next sley of a reed at hand
            "reed: 12/in\nsley: 1-1-2\nsett: 16/in",
            "reed: 10/in\nsley: 2\nin_reed: 20\nwarp:\n  ends: 406",  # edges doubled, a floating selvedge each side
            "reed: 50 per 10 cm\nsley: 2\nin_reed: 86 cm folded\nlayers: 2\nopens: at the left\nwarp:\n  ends: 600",
            "reed: 12/in\nin_reed: 20\nwarp:\n  ends: 300",  # nobody said how it was sleyed
        ],
    )
    def test_near_enough(self, tmp_path: Path, header: str) -> None:
        """A sett near the sley, ends for the edges, and layers are not asked about."""
        assert [] == slugs(tmp_path, header)

    def test_a_stretch_of_its_own(self, tmp_path: Path) -> None:
        """A tail sleyed anew is held against its own reed, width and ends."""
        tail = "reed: 10/in\nsley: 2\nstretches:\n  - name: tail\n    reed: 12/in\n    ends: 48 from the middle\n"

        assert [] == slugs(tmp_path / "a", tail + "    in_reed: 2\n")
        assert ["ends-do-not-fill-the-width"] == slugs(tmp_path / "b", tail + "    in_reed: 4\n")

    def test_counted_in_dents(self, tmp_path: Path) -> None:
        """100 ends at 1-2 in a 12 are 67 dents, 5 5/8 in; with two floating selvedges 69, 5 3/4 in."""
        header = "reed: 12/in\nsley: 1-2\nin_reed: 4\nwarp:\n  ends: 100\n"
        (bare,) = told(tmp_path / "a", warps__cloth=header)
        (edged,) = told(tmp_path / "b", warps__cloth=header + "draft: d\n", drafts__d=FLOATING)

        assert "stand 5 5/8 in wide" in bare
        assert "stand 5 3/4 in wide" in edged


class TestPiece:
    @pytest.mark.parametrize(
        "header",
        [
            "washed: 18 x 29\nhem:\n  depth: 1 in\n  turn: 1/4 in\n  sewn: after washing\nmade_up: 18 x 26 1/2",
            "hem:\n  depth: 1 in\n  sewn: before washing\nhemmed: 19 x 28\nwashed: 18 x 26\nmade_up: 18 x 26",
            "washed: 18 x 29\nfringe: 4 in each end\nmade_up: 18 x 37",
            "marks: 100 x 100 mm\nwashed: 93 x 92 mm\nmade_up: 45 x 70 cm",
        ],
    )
    def test_adds_up(self, tmp_path: Path, header: str) -> None:
        """Hems taken off, hems that were in the size already, fringes and sewn marks are not asked about."""
        assert [] == slugs(tmp_path, header)
