"""Where the warp went, and what take-up on the loom can be called."""

from __future__ import annotations

from pathlib import Path

import pytest

from journal_tools.ledger import Account
from tests.ledger.desk import woven

TWO_TOWELS = """
warp:
  wound: 3 yd
where_it_went:
  front tie-on: 6 in
  gap: 1 in
  thrums: 25 in
pieces:
  - name: towel 1
    on_loom: 19 x 35
  - name: towel 2
    on_loom: 19 x 34 1/2
"""


def account(folder: Path, header: str) -> Account:
    """The account of one warp."""
    found = woven(folder, header).account
    assert found is not None
    return found


class TestAtMost:
    """Without marks all that nothing else accounts for may be take-up, so it is at most that."""

    def test_two_towels(self, tmp_path: Path) -> None:
        """108 in wound, 32 gone, 69 1/2 of cloth: 6 1/2 left over, at most 8.6 % of what wove."""
        made = account(tmp_path, TWO_TOWELS)
        left = 3 * 36 - (6 + 1 + 25) - (35 + 34.5)

        assert made.take_up is not None
        assert pytest.approx(left) == made.remainder_mm / 25.4
        assert pytest.approx(35 + 34.5) == made.cloth_mm / 25.4
        assert pytest.approx(left / (left + 69.5)) == made.take_up.loss
        assert ("at most", "at most") == (made.take_up.basis, made.take_up.words)
        assert made.unaccounted_mm is None

    def test_the_lines_meet_what_was_wound(self, tmp_path: Path) -> None:
        """Every line and the remainder come to the length that was wound."""
        made = account(tmp_path, TWO_TOWELS)

        assert pytest.approx(3 * 36) == (sum(line.mm for line in made.lines) + made.remainder_mm) / 25.4

    def test_not_with_a_piece_unmeasured(self, tmp_path: Path) -> None:
        """Cloth that nobody measured is still in the remainder, so nothing is said of take-up."""
        made = account(tmp_path, TWO_TOWELS + "  - name: towel 3\n    washed: 18 x 30")

        assert made.take_up is None
        assert ("towel 3",) == made.unmeasured

    def test_not_without_lines(self, tmp_path: Path) -> None:
        """With no line of where it went, the remainder is mostly waste and no take-up."""
        assert account(tmp_path, "warp:\n  wound: 3 yd\non_loom: 19 x 70").take_up is None

    def test_too_many_lines(self, tmp_path: Path) -> None:
        """An account that does not add up shows how far, and no take-up."""
        made = account(tmp_path, TWO_TOWELS.replace("25 in", "45 in"))

        assert pytest.approx(6.5 - 20) == made.remainder_mm / 25.4
        assert made.take_up is None


class TestMarks:
    """Coloured threads in the outer end, a yard apart."""

    def test_one(self, tmp_path: Path) -> None:
        """36 in that wove 33 1/4 are 7.6 % take-up; the rest of the remainder is unaccounted for."""
        made = account(tmp_path, TWO_TOWELS.replace("wound: 3 yd", "wound: 3 yd\n  marked: 36 in wove 33 1/4 in"))
        taken = 1 - 33.25 / 36

        assert made.take_up is not None
        assert pytest.approx(taken) == made.take_up.loss
        assert ("marks", "by marks on the warp") == (made.take_up.basis, made.take_up.words)
        assert pytest.approx(69.5 / (1 - taken) - 69.5) == (made.taken_up_mm or 0) / 25.4
        assert pytest.approx(6.5 - (69.5 / (1 - taken) - 69.5)) == (made.unaccounted_mm or 0) / 25.4

    def test_several(self, tmp_path: Path) -> None:
        """Several marks count by their length."""
        marks = "marked:\n    - 36 in wove 33 1/4 in\n    - 18 in wove 17 in"
        made = account(tmp_path, TWO_TOWELS.replace("wound: 3 yd", f"wound: 3 yd\n  {marks}"))

        assert made.take_up is not None
        assert pytest.approx(1 - (33.25 + 17) / (36 + 18)) == made.take_up.loss


def test_warp_measured_for_a_piece(tmp_path: Path) -> None:
    """A towel of 35 in that took 37 3/4 of warp measures take-up as well as marks do."""
    made = account(tmp_path, TWO_TOWELS.replace("on_loom: 19 x 35\n", "on_loom: 19 x 35\n    warp_used: 37 3/4\n"))

    assert made.take_up is not None
    assert pytest.approx(1 - 35 / 37.75) == made.take_up.loss
    assert ("measured", "by warp measured for a piece") == (made.take_up.basis, made.take_up.words)
    assert pytest.approx(69.5 * 37.75 / 35 - 69.5) == (made.taken_up_mm or 0) / 25.4


class TestLines:
    """What makes a line."""

    def test_pieces_alike(self, tmp_path: Path) -> None:
        """`towels 1-4` are four times their length on the loom."""
        made = account(tmp_path, "warp:\n  wound: 6 yd\npieces:\n  - name: towels 1-4\n    on_loom: 19 x 35")

        assert [("towels 1-4", 4 * 35, "4 pieces")] == [(line.name, line.mm / 25.4, line.how) for line in made.lines]

    def test_fringes(self, tmp_path: Path) -> None:
        """A fringe is warp that was not woven; a line of the weaver's own for it comes first."""
        header = (
            "warp:\n  wound: 6 yd\nfringe: 4 in each end\non_loom: 10 x 70\ncount: 2\nwhere_it_went:\n  thrums: 20 in"
        )
        own = header + "\n  fringes and knots: 15 in"

        assert pytest.approx({"thrums": 20, "cloth": 140, "fringes": 2 * 2 * 4}) == {
            line.name: line.mm / 25.4 for line in account(tmp_path / "a", header).lines
        }
        assert pytest.approx({"thrums": 20, "fringes and knots": 15, "cloth": 140}) == {
            line.name: line.mm / 25.4 for line in account(tmp_path / "b", own).lines
        }

    def test_no_account(self, tmp_path: Path) -> None:
        """Nobody wrote how long it was wound, so there is nothing to account for."""
        assert woven(tmp_path, "on_loom: 19 x 35\nwhere_it_went:\n  thrums: 20 in").account is None

    def test_metric(self, tmp_path: Path) -> None:
        """An account in metres and centimetres adds up to the millimetre."""
        went = "where_it_went:\n  front: 12\n  fringes: 2 of 20 cm\n  thrums: 74"
        header = f"units: cm\nwarp:\n  wound: 3.9 m\non_loom: 83 x 250\n{went}"

        assert pytest.approx(3900 - 2500 - 120 - 400 - 740) == account(tmp_path, header).remainder_mm
