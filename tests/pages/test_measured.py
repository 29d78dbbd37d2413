"""The tapes and losses of a stretch: means over pieces that are alike, and said where they are not of all."""

from __future__ import annotations

from pathlib import Path

import pytest

from journal_tools.ledger import ledger_of
from journal_tools.pages.cards import finished_size
from journal_tools.pages.measured import measured
from journal_tools.pages.views import Measured, Tape
from tests.ledger.desk import write

PLANS = """\
in_reed: 20
plan:
  - piece: napkin
    washed: 17 x 17
  - piece: runner
    washed: 17 x 40
pieces:
  - name: napkin 1
    on_loom: 19 x 19
    washed: 17 1/4 x 17
  - name: napkin 2
    on_loom: 19 x 19
    washed: 17 1/4 x 17 1/2
  - name: runner
    on_loom: 19 x 44
    washed: 17 1/4 x 40
"""


def page(folder: Path, header: str) -> tuple[Measured, str]:
    """What the warp's page shows as measured, and the size on its card."""
    journal = write(folder, warps__w=header)
    assert () == journal.problems
    ledger = ledger_of(journal, journal.warps["w"])
    shown = measured(ledger, ledger.pieces[0].stretch)
    size = finished_size(ledger)
    assert shown is not None
    return shown, size.text if size is not None else ""


def labels(tape: Tape | None) -> list[str]:
    """The names of a tape's bars."""
    assert tape is not None
    return [bar.label for bar in tape.bars]


class TestAlike:
    def test_napkins_and_a_runner(self, tmp_path: Path) -> None:
        """A mean of two napkins and a runner is the size of nothing: the tape shows the napkins."""
        shown, size = page(tmp_path, PLANS)

        assert shown.length is not None
        assert "length, mean of 2 pieces" == shown.length.title
        assert ("17 in", "17 1/4 in") == (shown.length.rows[-1].planned, shown.length.rows[-1].measured)
        assert "17¼ × 17¼ in" == size

    def test_losses_are_of_all(self, tmp_path: Path) -> None:
        """The losses are of all three, so that no one plan is said beside them."""
        shown, _ = page(tmp_path, PLANS)

        assert ["", ""] == [loss.so for loss in shown.losses if loss.step.endswith("loom to washed")]

    def test_a_plan_without_its_piece(self, tmp_path: Path) -> None:
        """A piece that nobody planned stands on no tape with those that were, though it comes first."""
        header = """\
pieces:
  - name: long
    on_loom: 19 x 22
  - name: short
    on_loom: 19 x 22
    washed: 17 x 20
plan:
  piece: short
  washed: 17 x 20
"""
        shown, _ = page(tmp_path, header)

        assert shown.length is not None
        assert ("length", "", "22 in") == (
            shown.length.title,
            shown.length.rows[-1].planned,
            shown.length.rows[-1].measured,
        )

    def test_not_all_were_measured(self, tmp_path: Path) -> None:
        """Where only one of two was measured, the bar says so."""
        header = "pieces:\n  - name: a\n    on_loom: 9 x 9\n    washed: 8 x 8\n  - name: b\n    on_loom: 9 x 9\n"
        shown, _ = page(tmp_path, header)

        assert "washed (1 of 2)" == labels(shown.width)[-1]

    def test_a_wash_with_and_without_its_number(self, tmp_path: Path) -> None:
        """One piece's `washed` and another's `washed 1` are the same moment, and one bar."""
        header = (
            "pieces:\n  - name: a\n    on_loom: 9 x 9\n    washed: 8 x 8\n"
            "  - name: b\n    on_loom: 9 x 9\n    washed 1: 8 x 8\n    washed 2: 7 x 7\n"
        )
        shown, _ = page(tmp_path, header)

        assert ["washed 1", "washed 2 (1 of 2)"] == labels(shown.width)[-2:]

    @pytest.mark.parametrize(("unit", "shown_as"), [("mm", "178 mm"), ("cm", "17.8 cm"), ("in", "17 3/4 in")])
    def test_the_unit_it_was_typed_in(self, tmp_path: Path, unit: str, shown_as: str) -> None:
        """A size is shown in the unit that the weaver measured in."""
        size = {"mm": "178 x 178 mm", "cm": "17.8 x 17.8 cm", "in": "17 3/4 x 17 3/4 in"}[unit]
        shown, _ = page(tmp_path, f"on_loom: {size}\nwashed: {size}")

        assert shown.width is not None
        assert shown_as == shown.width.rows[-1].measured
