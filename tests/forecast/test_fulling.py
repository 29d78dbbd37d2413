"""Fulled cloth, answered by time: minutes to a width that is wanted, and length against width."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from journal_tools.forecast.fulling import Fulling, fulled_cloths
from journal_tools.records import Journal
from tests.ledger.desk import journal, write

TENTH = -math.log(0.9)
"""A tenth narrower than scoured, as ln."""

YARN = "fibre: wool\nnumber: Nm 8/2"


def blanket(*checks: str, yarn: str = "woollen-8-2", more: str = "") -> str:
    """A record of a blanket with these checks of its fulling."""
    lines = "\n".join(f"  {check}" for check in checks)
    return f"yarn: {yarn}\nweave: 2/2 twill\nunits: cm\nin_reed: 105\nfulling:\n{lines}\n{more}"


COVE = blanket("0 min: 92 x 195", "4 min: 87.5 x 183", "8 min: 81 x 168", "11 min stopped: 76 x 157")
FOLD = blanket("0 min: 153 x 220", "8 min: 141 x 203", "12 min: 132 x 190")
SLOW = blanket("0 min: 92 x 195", "10 min: 90 x 190", "20 min: 83 x 176", "30 min: 76 x 160")


def told(folder: Path, yarn: str = "woollen-8-2", **warps: str) -> Fulling:
    """What some blankets tell of a yarn."""
    made: Journal = write(folder, yarns__woollen_8_2=YARN, **{f"warps__{name}": text for name, text in warps.items()})
    return Fulling.of(made, yarn, fulled_cloths(made))


class TestChecks:
    def test_from_the_scouring(self) -> None:
        """Loss by fulling is counted from the cloth when only scoured: 153 to 141 cm after 8 minutes."""
        [cloth] = fulled_cloths(journal())

        assert [8.0, 12.0] == [check.minutes for check in cloth.checks]
        assert [round(math.log(153 / 141), 9), round(math.log(153 / 132), 9)] == [
            round(check.lost["width"], 9) for check in cloth.checks
        ]

    def test_without_the_scoured_size(self, tmp_path: Path) -> None:
        """Without its size when only scoured, nobody knows what the fulling took."""
        assert () == told(tmp_path, cove=blanket("4 min: 87 x 183", "8 min: 81 x 168")).cloths

    def test_kept_out(self, tmp_path: Path) -> None:
        """A blanket that the weaver keeps out of learning says nothing of minutes."""
        assert () == told(tmp_path, cove=COVE + "learn: no, the boiler failed").cloths

    def test_washed_cloth_is_no_fulled_cloth(self, tmp_path: Path) -> None:
        """Cloth that was only washed says nothing of minutes."""
        found = told(tmp_path, scarf="yarn: woollen-8-2\nin_reed: 10\nwashed: 9 x 60")

        assert ((), "", 0.0) == (found.cloths, found.basis, found.longest)


class TestMinutes:
    def test_between_what_was_seen(self, tmp_path: Path) -> None:
        """Cove was 12 % narrower after 8 minutes, and Fold 8 %: a tenth takes about 8."""
        minutes = told(tmp_path, cove=COVE, fold=FOLD).minutes("width", TENTH)

        assert 7 < minutes.likely < 10
        assert minutes.least < 6
        assert minutes.most > 11

    def test_one_blanket_says_less_than_two(self, tmp_path: Path) -> None:
        """With one blanket the range is wider than with two that agree, and with none it is far wider."""
        two = told(tmp_path / "two", cove=COVE, again=COVE).minutes("width", TENTH)
        one = told(tmp_path / "one", cove=COVE).minutes("width", TENTH)
        none = told(tmp_path / "none").minutes("width", TENTH)

        assert two.most / two.least < one.most / one.least < none.most / none.least

    def test_tubs_that_differ(self, tmp_path: Path) -> None:
        """A slow tub beside a quick one widens the range beyond that of two quick ones."""
        alike = told(tmp_path / "alike", cove=COVE, fold=FOLD).minutes("width", TENTH)
        unlike = told(tmp_path / "unlike", cove=COVE, slow=SLOW).minutes("width", TENTH)

        assert alike.most / alike.least < unlike.most / unlike.least
        assert alike.likely < unlike.likely

    def test_more_takes_longer(self, tmp_path: Path) -> None:
        """To lose more takes longer, and its least and most take longer too."""
        found = told(tmp_path, cove=COVE, fold=FOLD)
        times = [found.minutes("width", -math.log(1 - loss)) for loss in (0.05, 0.1, 0.15, 0.2)]

        for each in ("likely", "least", "most"):
            assert sorted(getattr(time, each) for time in times) == [getattr(time, each) for time in times]

    def test_there_and_back(self, tmp_path: Path) -> None:
        """What is lost after the likely minutes is, as likely as not, what was wanted."""
        found = told(tmp_path, cove=COVE, fold=FOLD)
        minutes = found.minutes("width", TENTH).likely

        assert math.isclose(TENTH, found.lost("width", minutes, 0.5), rel_tol=1e-6)

    def test_order_does_not_matter(self, tmp_path: Path) -> None:
        """The same blankets under other names tell the same."""
        one = told(tmp_path / "one", a=COVE, b=FOLD).minutes("width", TENTH)
        other = told(tmp_path / "other", a=FOLD, b=COVE).minutes("width", TENTH)

        assert math.isclose(one.likely, other.likely, rel_tol=1e-9)


class TestLengthAgainstWidth:
    def test_about_as_much(self, tmp_path: Path) -> None:
        """Cove and Fold lost about as much of their length as of their width, Cove a little more."""
        found = told(tmp_path, cove=COVE, fold=FOLD).length_for(TENTH)

        assert 0.9 * TENTH < found.likely < 1.2 * TENTH
        assert found.least < TENTH < found.most

    def test_in_proportion(self, tmp_path: Path) -> None:
        """Twice the loss of width goes with twice the loss of length, on the log scale."""
        found = told(tmp_path, cove=COVE)

        assert math.isclose(2 * found.length_for(TENTH).likely, found.length_for(2 * TENTH).likely, rel_tol=1e-9)


class TestWhatItRestsOn:
    @pytest.mark.parametrize(
        ("yarn", "fibre", "basis"),
        [("woollen-8-2", "wool", "yarn"), ("lamb-6-1", "wool", "fibre"), ("goat-4-1", "mohair", "other")],
    )
    def test_nearest_first(self, tmp_path: Path, yarn: str, fibre: str, basis: str) -> None:
        """Blankets of the yarn itself count, else of its fibre, else all of them."""
        yarns = {"yarns__woollen_8_2": YARN, f"yarns__{yarn.replace('-', '_')}": f"fibre: {fibre}"}
        made = write(tmp_path, warps__cove=COVE, **yarns)

        assert basis == Fulling.of(made, yarn, fulled_cloths(made)).basis

    def test_another_yarn_is_known_less(self, tmp_path: Path) -> None:
        """What another yarn did tells less than what this one did."""
        own = told(tmp_path / "own", cove=COVE).minutes("width", TENTH)
        other = told(tmp_path / "other", "alpaca-12-2", cove=COVE).minutes("width", TENTH)

        assert own.most / own.least < other.most / other.least

    def test_longest(self, tmp_path: Path) -> None:
        """The longest time that was ever tried is known, so that nothing is promised beyond it unsaid."""
        assert 12.0 == told(tmp_path, cove=COVE, fold=FOLD).longest
