"""What a warp half woven still gives, worked with a pencil."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from journal_tools.planning.left import Left, left_of
from journal_tools.planning.wants import NotPlanned
from tests.ledger.desk import write
from tests.planning.knows import Knows
from tests.planning.test_plan import SHELF, TOWELS

INCH = 25.4
WOUND = "warp:\n  wound: 5 yd\n"
TWO = "pieces:\n  - name: towel 1\n    on_loom: 19 1/2 x 32 1/2\n  - name: towel 2\n    on_loom: 19 1/2 x 33\n"
WENT = "where_it_went:\n  front tie-on: 5 in\n  header: 2 in\n  gaps: 1/2 in\n"


def left(folder: Path, header: str) -> Left:
    """What is left of a warp of towels."""
    made = write(folder, **SHELF, warps__next=TOWELS + header)
    assert [] == [problem.sentence() for problem in made.problems]
    return left_of(made, Knows(), made.warps["next"])


class TestTheRest:
    def test_two_of_four(self, tmp_path: Path) -> None:
        """5 yd, less 65 1/2 in of cloth with 6 % taken up, 7 1/2 in of lines, and 25 more of waste behind."""
        found = left(tmp_path, WOUND + WENT + TWO)
        gone = 65.5 / 0.94 + 7.5

        assert pytest.approx(gone * INCH) == found.gone
        assert pytest.approx(25 * INCH) == found.behind
        assert pytest.approx((180 - gone - 25) * INCH) == found.left
        assert pytest.approx((180 - gone - 25) * 0.94 * INCH) == found.cloth
        assert () == found.reckoned
        assert not found.marked

    def test_how_sure(self, tmp_path: Path) -> None:
        """Take-up of 6 % give or take 2 points of ln (k = 1.64) is in what is woven and in what is left."""
        found = left(tmp_path, WOUND + WENT + TWO)
        assert found.cloth_range is not None
        most, least = (1 - 0.94 * math.exp(way * 1.645 * 0.02) for way in (-1, 1))
        low, high = ((180 - 25 - 7.5 - 65.5 / (1 - one)) * (1 - one) for one in (most, least))

        assert pytest.approx((low * INCH, high * INCH), rel=1e-3) == found.cloth_range
        assert low < found.cloth / INCH < high

    def test_the_next_piece(self, tmp_path: Path) -> None:
        """The third towel takes 32 1/2 in and what that takes up, and a gap before it; one more is wanted after it."""
        coming = left(tmp_path, WOUND + WENT + TWO).next
        assert coming is not None
        takes = 32.5 / 0.94 + 0.5

        assert ("towel", 2) == (coming.name, coming.more)
        assert pytest.approx(takes * INCH) == coming.takes
        assert pytest.approx((180 - 65.5 / 0.94 - 7.5 - 25 - takes) * 0.94 * INCH) == coming.spare

    def test_a_sample_is_no_towel(self, tmp_path: Path) -> None:
        """A sample cut off before counts as gone, and four towels are still to come."""
        sample = "pieces:\n  - name: sample\n    on_loom: 19 1/2 x 7\n    hem: none\n"
        found = left(tmp_path, WOUND + WENT + sample)
        assert found.next is not None

        assert 4 == found.next.more
        assert pytest.approx((7 / 0.94 + 7.5) * INCH) == found.gone

    def test_it_does_not_fit(self, tmp_path: Path) -> None:
        """On a shorter warp it comes up short, and by how much is told."""
        coming = left(tmp_path, WOUND.replace("5 yd", "3 1/2 yd") + WENT + TWO).next
        assert coming is not None

        assert coming.spare < 0

    def test_all_are_woven(self, tmp_path: Path) -> None:
        """Where the plan is filled, nothing is next."""
        assert left(tmp_path, WOUND + TWO.replace("towel 2", "towels 2-4")).next is None

    def test_marks_on_the_warp(self, tmp_path: Path) -> None:
        """Marks on this very warp tell its take-up: 36 in wove 33, which is 8.3 %."""
        found = left(tmp_path, WOUND + "  marked: 36 in wove 33 in\n" + TWO)

        assert found.marked
        assert found.cloth_range is None
        assert pytest.approx(3 / 36) == found.take_up

    def test_not_measured(self, tmp_path: Path) -> None:
        """A piece that nobody measured on the loom counts at its planned 32 1/2 in, and is named."""
        found = left(tmp_path, WOUND + "pieces:\n  - name: towel 1\n")

        assert ("towel 1",) == found.reckoned
        assert pytest.approx(32.5 / 0.94 * INCH) == found.gone

    def test_led_back(self, tmp_path: Path) -> None:
        """A washed towel that nobody measured on the loom was 27 / (.98 x .94) in there, not nothing."""
        found = left(tmp_path, WOUND + "pieces:\n  - name: towel 1\n    washed: 18 x 27\n")

        assert (("towel 1",), ()) == (found.reckoned, found.uncounted)
        assert pytest.approx(27 / (0.98 * 0.94) / 0.94 * INCH, rel=1e-6) == found.gone

    def test_not_counted(self, tmp_path: Path) -> None:
        """Of a piece without any length and without a plan it is said that it is not counted."""
        made = write(tmp_path, **SHELF, warps__next="yarn: cotton\n" + WOUND + "pieces:\n  - name: scarf\n")
        found = left_of(made, Knows(), made.warps["next"])

        assert ((), ("scarf",), 0) == (found.reckoned, found.uncounted, found.gone)

    def test_thrums_that_are_written_down(self, tmp_path: Path) -> None:
        """Thrums that stand in the account are not taken off twice."""
        found = left(tmp_path, WOUND + WENT + "  thrums: 24 in\n" + TWO)

        assert 0 == found.behind
        assert pytest.approx((65.5 / 0.94 + 31.5) * INCH) == found.gone

    def test_not_wound(self, tmp_path: Path) -> None:
        """Without the length that was wound there is nothing to take it off from."""
        with pytest.raises(NotPlanned, match="how long was it wound"):
            left(tmp_path, TWO)
