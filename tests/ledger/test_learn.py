"""`learn: no`, in all its forms: for a warp, a stretch, a piece, a band, a direction, a state."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.ledger.desk import woven

TWO_STRETCHES = """
in_reed: 20
stretches:
  - name: napkins
    pieces:
      - name: napkin 1
        on_loom: 19 x 21
        washed: 18 x 20
      - name: napkins 2-3
        on_loom: 19 x 21
        washed: 18 x 20
  - name: bookmarks
    in_reed: 3
    pieces:
      - name: bookmarks 1-8
        on_loom: 2 3/4 x 8
        washed: 2 1/2 x 7
"""


def kept_out(folder: Path, header: str) -> dict[str, set[str]]:
    """The labels that are not learned from, by piece."""
    pieces = woven(folder, header).pieces
    found = {piece.name: {row.label for row in piece.rows if not row.learn} for piece in pieces}
    return {name: labels for name, labels in found.items() if labels}


WIDTHS = {"width, reed to loom", "width, loom to washed", "width, reed to washed"}
LENGTHS = {"length, loom to washed"}
ALL = WIDTHS | LENGTHS


class TestForms:
    """What is said is what is kept out."""

    @pytest.mark.parametrize(
        ("said", "labels"),
        [
            ("no", ALL),
            ("no, beamed badly", ALL),
            ("No, beamed badly", ALL),
            ("no widths, pulled in", WIDTHS),
            ("no width", WIDTHS),
            ("no lengths, slack", LENGTHS),
            ("no length, slack", LENGTHS),
            (
                "no on_loom, read at the fell",
                {"width, reed to loom", "width, loom to washed", "length, loom to washed"},
            ),
            ("no on loom", {"width, reed to loom", "width, loom to washed", "length, loom to washed"}),
            ("no washed, in the dryer", {"width, loom to washed", "width, reed to washed", "length, loom to washed"}),
            ("no washed 1, in the dryer", {"width, loom to washed", "width, reed to washed", "length, loom to washed"}),
            ("no washed 2", set()),
            ("yes", set()),
        ],
    )
    def test_form(self, tmp_path: Path, said: str, labels: set[str]) -> None:
        """A rule about a direction keeps that direction out, one about a state the losses that end there."""
        header = f"in_reed: 20\non_loom: 19 x 33\nwashed: 18 x 30\nlearn: {said}"

        assert labels == kept_out(tmp_path, header).get("", set())

    def test_one_wash_of_two(self, tmp_path: Path) -> None:
        """A dryer accident in wash 1: what begins or ends there is out, the whole to wash 2 is in."""
        header = "in_reed: 20\nwashed:\n  - 18 x 30\n  - 17 x 29\nlearn: no washed 1, dryer accident"

        assert {
            "width, reed to washed 1",
            "width, washed 1 to washed 2",
            "length, washed 1 to washed 2",
        } == kept_out(tmp_path, header)[""]

    def test_a_list(self, tmp_path: Path) -> None:
        """Several rules hold together."""
        header = "in_reed: 20\non_loom: 19 x 33\nwashed: 18 x 30\nlearn:\n  - no on_loom\n  - no lengths"

        assert {"width, reed to loom", "width, loom to washed", "length, loom to washed"} == kept_out(tmp_path, header)[
            ""
        ]

    def test_the_reason(self, tmp_path: Path) -> None:
        """The weaver's reason goes with it."""
        made = woven(tmp_path, "in_reed: 20\nwashed: 18 x 30\nlearn: no, moths, and the wrong yarn")

        assert ["moths, and the wrong yarn"] == [row.reason for row in made.rows]


class TestSources:
    """`from` names a stretch, a piece, a kind of piece or a band."""

    @pytest.mark.parametrize("source", ["bookmarks", "bookmark", "Bookmarks", "bookmarks 1-8"])
    def test_a_stretch_or_its_kind(self, tmp_path: Path, source: str) -> None:
        """One or many, the weaver's word for it is enough."""
        header = f"{TWO_STRETCHES}learn: no widths from {source}, pulled in on purpose"

        assert {"bookmarks 1-8": WIDTHS} == kept_out(tmp_path, header)

    def test_one_piece(self, tmp_path: Path) -> None:
        """A word with a number is that piece alone."""
        header = f"{TWO_STRETCHES}learn: no from napkin 1, cut short"

        assert {"napkin 1": ALL} == kept_out(tmp_path, header)

    def test_a_piece_without_a_name(self, tmp_path: Path) -> None:
        """Pieces that nobody named are called by their place."""
        header = "in_reed: 20\nlearn: no from piece 2, moths\npieces:\n  - washed: 18 x 30\n  - washed: 17 x 30"

        assert {"piece 2": {"width, reed to washed"}} == kept_out(tmp_path, header)

    def test_in_the_stretch(self, tmp_path: Path) -> None:
        """A stretch may say it of one of its pieces."""
        header = TWO_STRETCHES.replace(
            "  - name: napkins\n", "  - name: napkins\n    learn: no lengths from napkins 2-3\n", 1
        )

        assert {"napkins 2-3": LENGTHS} == kept_out(tmp_path, header)

    def test_in_the_piece(self, tmp_path: Path) -> None:
        """A piece says it of itself."""
        header = TWO_STRETCHES.replace(
            "      - name: napkin 1\n", "      - name: napkin 1\n        learn: no lengths, slack\n"
        )

        assert {"napkin 1": LENGTHS} == kept_out(tmp_path, header)

    def test_yes_in_the_piece(self, tmp_path: Path) -> None:
        """A piece that says yes is learned from though its warp says no."""
        header = (
            TWO_STRETCHES.replace("      - name: napkin 1\n", "      - name: napkin 1\n        learn: yes\n")
            + "learn: no"
        )

        assert {"napkins 2-3": ALL, "bookmarks 1-8": ALL} == kept_out(tmp_path, header)

    def test_a_band_of_one_piece(self, tmp_path: Path) -> None:
        """A piece may say it of one of its bands."""
        header = (
            "marks: 10 x 10\npieces:\n  - name: a\n    learn: no widths from left\n    across:\n"
            "      left: 9 x 9\n      right: 9 x 9\n  - name: b\n    across:\n      left: 9 x 9"
        )

        assert {"a, left": {"width, off to washed"}} == kept_out(tmp_path, header)


class TestAverages:
    """What is not learned stays out of an average that has others."""

    def test_left_out(self, tmp_path: Path) -> None:
        """Two napkins, one kept out: the mean is the other's."""
        header = (
            "in_reed: 20\npieces:\n  - name: a\n    washed: 18 x 30\n"
            "  - name: b\n    washed: 15 x 30\n    learn: no, wrong yarn"
        )
        (row,) = woven(tmp_path, header).warp_rows

        assert (1, pytest.approx(0.1), True, None) == (row.number, row.loss, row.learn, row.spread)

    def test_all_left_out(self, tmp_path: Path) -> None:
        """When all are kept out their mean is shown, and not learned from."""
        header = (
            "in_reed: 20\nlearn: no, moths\npieces:\n  - name: a\n    washed: 18 x 30\n  - name: b\n    washed: 17 x 30"
        )
        (row,) = woven(tmp_path, header).warp_rows

        assert (2, pytest.approx(0.125), False, "moths") == (row.number, row.loss, row.learn, row.reason)
