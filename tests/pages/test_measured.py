"""The tapes and losses of a stretch: means over pieces that are alike, and said where they are not of all."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from journal_tools.ledger import ledger_of
from journal_tools.pages.archive import Archive
from journal_tools.pages.cards import finished_size
from journal_tools.pages.kinds import called
from journal_tools.pages.measured import measured
from journal_tools.pages.pieces import pieces_table
from journal_tools.pages.views import Measured, Tape
from journal_tools.pictures.store import PictureStore
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


LINEN = """\
in_reed: 20
hem:
  depth: 1
  turn: 3/8
  sewn: before washing
pieces:
  - name: sample
    on_loom: 19 1/2 x 8
    washed: 18 3/4 x 7 5/8
    hem: none
  - name: towel 1
    on_loom: 19 1/2 x 33
    hemmed: 19 3/8 x 29 3/4
    washed:
      - 18 5/8 x 28 1/2
      - 18 3/8 x 28
  - name: towel 2
    hemmed: 19 3/8 x 29 1/4
    washed: 18 5/8 x 28 1/4
"""


class TestUnlike:
    def test_a_sample_and_towels(self, tmp_path: Path) -> None:
        """Eight inches and thirty-three have no mean: the tapes show the two towels, and say so."""
        shown, _ = page(tmp_path, LINEN)

        assert shown.length is not None
        assert [
            ("on the loom (1 of 2)", "33 in"),
            ("off the loom", ""),
            ("hemmed", "29 1/2 in"),
            ("washed 1 (hemmed)", "28 3/8 in"),
            ("washed 2 (hemmed, 1 of 2)", "28 in"),
        ] == [(row.state, row.measured) for row in shown.length.rows]
        assert (
            "The tapes show towels 1-2, the mean of 2 pieces;"
            " sample is of another plan or size, and is among the pieces below."
        ) == shown.shown

    def test_hemmed_and_not(self, tmp_path: Path) -> None:
        """One washed hemmed and one washed as it was are two rows: a hem is no loss."""
        header = (
            "on_loom: 9 x 20\npieces:\n  - name: a\n    washed: 8 x 19\n"
            "  - name: b\n    hem:\n      depth: 1/2\n      sewn: before washing\n    washed: 8 x 18\n"
        )
        shown, _ = page(tmp_path, header)

        assert ["washed (1 of 2)", "washed (hemmed, 1 of 2)"] == labels(shown.length)[-2:]
        assert "washed" == labels(shown.width)[-1]

    def test_nearly_alike(self, tmp_path: Path) -> None:
        """Pieces that differ by less than a tenth are of one kind: 30 and 33 inches."""
        header = "pieces:\n  - name: a\n    on_loom: 9 x 30\n  - name: b\n    on_loom: 9 x 33\n"
        shown, _ = page(tmp_path, header)

        assert "The tapes show the mean of 2 pieces." == shown.shown

    def test_as_many_of_each(self, tmp_path: Path) -> None:
        """Of kinds with as many pieces the first is shown, by its name where it is one piece."""
        header = "pieces:\n  - name: mat\n    on_loom: 9 x 9\n  - name: runner\n    on_loom: 9 x 50\n"
        shown, _ = page(tmp_path, header)

        assert "The tapes show mat; runner is of another plan or size, and is among the pieces below." == shown.shown

    def test_one_name_for_the_first_wash(self, tmp_path: Path) -> None:
        """Where one piece was washed twice, the first wash is washed 1 in every row and every column."""
        journal = write(tmp_path, warps__w=LINEN)
        ledger = ledger_of(journal, journal.warps["w"])
        shown = measured(ledger, "")
        table = pieces_table(Archive(journal, PictureStore(tmp_path / "pictures")), ledger, "")

        assert shown is not None
        assert [] == [loss.step for loss in shown.losses if re.search(r"washed(?! \d)", loss.step)]
        assert table is not None
        assert ["on the loom, in", "hemmed, in", "washed 1, in", "washed 2, in"] == [
            column.text for column in table.columns[-4:]
        ]


class TestPieces:
    def test_the_verdict_comes_first(self, tmp_path: Path) -> None:
        """How it stands to the plan and what it lost come before the sizes; columns without a word are not there."""
        journal = write(tmp_path, warps__w=PLANS)
        table = pieces_table(
            Archive(journal, PictureStore(tmp_path / "pictures")), ledger_of(journal, journal.warps["w"]), ""
        )

        assert table is not None
        assert ["piece", "off plan", "width lost", "length lost", "on the loom, in", "washed, in"] == [
            column.text for column in table.columns
        ]
        assert ["napkin 1", "1/4 in wider"] == [cell.text for cell in table.rows[0][:2]]

    def test_what_was_sampled(self, tmp_path: Path) -> None:
        """Beside a band's losses stand its sett, and the weave and weft of a piece that has its own."""
        header = (
            "warp:\n  yarn: a\nweave: plain weave\nmarks: 100 x 100 mm\n"
            "across:\n  wide:\n    sett: 16/in\n  close:\n    sett: 24/in\n"
            "pieces:\n  - name: s\n    weave: 2/2 twill\n    weft: b blue\n    beat: 20/in\n    half_kept: unwashed\n"
            "    across:\n      wide: 92 x 92 mm\n      close: 95 x 93 mm\n"
        )
        journal = write(tmp_path, warps__w=header)
        table = pieces_table(
            Archive(journal, PictureStore(tmp_path / "pictures")), ledger_of(journal, journal.warps["w"]), ""
        )

        assert table is not None
        assert ["s, wide", "s, close"] == [row[0].text for row in table.rows]
        assert "half kept: unwashed" == table.rows[0][0].small
        assert "sett 24/in; 2/2 twill; weft b blue; beat 20/in" == table.rows[1][1].text

    @pytest.mark.parametrize(
        ("names", "said"),
        [
            ("towel 1|towel 2|towel 3", "towels 1-3"),
            ("towel 1|towels 2-6", "towels 1-6"),
            ("mat|runner", "mat and runner"),
            ("towel 1|towel 3", "towel 1 and towel 3"),
            ("a|b|c|d|e", "5 pieces"),
        ],
    )
    def test_names(self, names: str, said: str, tmp_path: Path) -> None:
        """Pieces numbered in turn are named from the first to the last; others one by one, or counted."""
        pieces = "".join(f"  - name: {name}\n    on_loom: 9 x 9\n" for name in names.split("|"))
        journal = write(tmp_path, warps__w=f"pieces:\n{pieces}")

        assert said == called(ledger_of(journal, journal.warps["w"]).pieces)


class TestWords:
    def test_two_comparisons_are_two_sentences(self, tmp_path: Path) -> None:
        """Narrower than in the reed and yet wider than planned is no contradiction: each is said by itself."""
        shown, _ = page(tmp_path, "in_reed: 20\nwashed: 18 1/8 x 30\nplan:\n  washed: 17 5/8 x 30\n")

        assert "From reed to washed it lost 9.4 % of its width. It came out 1/2 in wider than planned." == shown.said[0]

    def test_what_it_gained(self, tmp_path: Path) -> None:
        """Cloth that grew is said to have gained."""
        shown, _ = page(tmp_path, "on_loom: 20 x 30\nwashed: 18 x 30 3/4\n")

        assert ("From loom to washed it gained 2.5 % in its length.",) == shown.said

    def test_fulling_is_explained_once(self, tmp_path: Path) -> None:
        """Rows of fulled cloth are marked, and why that matters is said once below all of them."""
        header = "on_loom: 20 x 30\nfulling:\n  0 min: 19 x 29\n  8 min: 17 x 26\nwashed: 16 x 25\n"
        shown, _ = page(tmp_path, header)

        assert 4 < sum("fulled to size" in loss.note for loss in shown.losses)
        assert [] == [loss.note for loss in shown.losses if "decision" in loss.note]
        assert "decision" in shown.note
