"""Closeness of sett: which figure of a yarn counts, and what a weave's interlacing is."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from journal_tools.drafts import Draft, parse_lift_plan, parse_threading
from journal_tools.forecast.closeness import closeness, coefficient, interlacing, setts
from journal_tools.forecast.cloth_kind import kind_of
from journal_tools.records import Yarn, read_journal
from tests.ledger.desk import woven, write

INCH_M = 0.0254


def yarn(folder: Path, header: str) -> Yarn:
    """A yarn's record, read."""
    return write(folder, yarns__yarn=header).yarns["yarn"]


class TestInterlacing:
    @pytest.mark.parametrize(
        ("weave", "share"),
        [
            ("plain weave", 2 / 4),
            ("tabby", 2 / 4),
            ("2/2 twill", 4 / 6),
            ("2/2 twill, double width", 4 / 6),
            ("3/1 twill", 4 / 6),
            ("2/2 basket", 4 / 6),
            ("5-end satin", 5 / 7),
            ("8-end satin", 8 / 10),
            ("weft-faced", 2 / 4),
            ("warp-faced rep", 1),
        ],
    )
    def test_of_named_weaves(self, weave: str, share: float) -> None:
        """Ends in the repeat over ends and interlacings: 4 and 2 in 2/2 twill, 5 and 2 in a satin of 5."""
        found = interlacing(weave)

        assert found is not None
        assert math.isclose(share, found)

    def test_waffle_lies_between(self) -> None:
        """A weave with tight and loose picks lies between plain weave and satin."""
        found = interlacing("waffle weave")

        assert found is not None
        assert 1 / 2 < found < 5 / 7

    def test_of_a_draft(self) -> None:
        """A weave without a known name goes by its draft: three up, three down is 6 ends and 2 interlacings."""
        draft = Draft(parse_threading("3 times (1), 3 times (2)"), lift_plan=parse_lift_plan("1, 2"))
        found = interlacing("a weave of mine", draft)

        assert found is not None
        assert math.isclose(6 / 8, found)
        assert interlacing("a weave of mine") is None


class TestWhichFigureCounts:
    def test_weighed_before_label(self, tmp_path: Path) -> None:
        """A yarn that was weighed at half its label's weight is set closer by √2, and the label is not asked."""
        labelled = setts(yarn(tmp_path / "a", "fibre: cotton\nnumber: 8/2 cotton"), "plain weave")
        weighed = setts(yarn(tmp_path / "b", "fibre: cotton\nnumber: 8/2 cotton\nyield: 6720 yd/lb"), "plain weave")

        assert ("label", "weighed") == (labelled.basis, weighed.basis)
        assert labelled.greatest is not None
        assert weighed.greatest is not None
        assert math.isclose(math.sqrt(2), weighed.greatest / labelled.greatest)

    def test_number_before_wraps(self, tmp_path: Path) -> None:
        """Wraps stand in only where no number is known, and are told beside it where one is."""
        known = setts(yarn(tmp_path / "a", "fibre: cotton\nnumber: 8/2 cotton\nwraps: 30/in"), "plain weave")
        unknown = setts(yarn(tmp_path / "b", "fibre: unknown\nwraps: 30/in"), "plain weave")

        assert ("label", "wraps") == (known.basis, unknown.basis)
        assert known.by_wraps == unknown.by_wraps
        assert known.greatest is not None
        assert 26 == round(known.greatest * INCH_M)

    def test_nothing_known(self) -> None:
        """Without a yarn, a number or a weave there is no sett to be had."""
        for found in (setts(None, "plain weave"), setts(Yarn(), "plain weave"), setts(Yarn(), "no such weave")):
            assert (None, None, None, "") == (found.greatest, found.working, found.by_wraps, found.basis)
        assert closeness(800, None, "plain weave") is None

    @pytest.mark.parametrize(
        ("fibre", "k"),
        [
            ("wool", 0.84),
            ("wool Nm 8/2", 0.84),
            ("merino wool 2/20 worsted", 0.9),
            ("superwash wool", 0.9),
            ("cotton", 0.9),
            ("", 0.9),
        ],
    )
    def test_soft_and_firm(self, fibre: str, k: float) -> None:
        """Wool is soft unless it is called merino, worsted or superwash."""
        assert k == coefficient(fibre)


class TestOfACloth:
    COTTON = "fibre: cotton\nnumber: 8/2 cotton"

    def test_reed_and_sley(self, tmp_path: Path) -> None:
        """20 ends to the inch of 8/2 cotton in plain weave are 20 of the 26 that it takes."""
        header = "yarn: cotton-8-2\nweave: plain weave\nreed: 10/in\nsley: 2\nin_reed: 20\nwashed: 18 x 30"
        ledger = woven(tmp_path, header, yarns__cotton_8_2=self.COTTON)
        found = kind_of(read_journal(tmp_path), ledger.pieces[0].laid).closeness

        assert found is not None
        assert math.isclose(20 / 26.084, found, rel_tol=1e-4)

    def test_ends_over_the_reed(self, tmp_path: Path) -> None:
        """Where nobody wrote a sett, 400 ends in 20 in are 20 to the inch."""
        header = "yarn: cotton-8-2\nweave: plain weave\nends: 400\nin_reed: 20\nwashed: 18 x 30"
        ledger = woven(tmp_path, header, yarns__cotton_8_2=self.COTTON)
        found = kind_of(read_journal(tmp_path), ledger.pieces[0].laid).closeness

        assert found is not None
        assert math.isclose(20 / 26.084, found, rel_tol=1e-4)

    def test_two_layers(self, tmp_path: Path) -> None:
        """40 ends to the inch in two layers are 20 in each."""
        header = """
yarn: cotton-8-2
weave: plain weave
layers: 2
opens: along the left edge
sett: 40/in
in_reed: 20 folded
washed: 36 x 30
"""
        ledger = woven(tmp_path, header, yarns__cotton_8_2=self.COTTON)
        found = kind_of(read_journal(tmp_path), ledger.pieces[0].laid).closeness

        assert found is not None
        assert math.isclose(20 / 26.084, found, rel_tol=1e-4)
