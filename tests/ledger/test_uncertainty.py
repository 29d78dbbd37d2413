"""How well a size and a loss are known; every ± is k = 2."""

from __future__ import annotations

import math
from fractions import Fraction
from pathlib import Path

import pytest

from journal_tools.ledger.uncertainty import cloth_uncertainty_mm, reading_uncertainty_mm, tape_mark_mm, tape_unit
from journal_tools.quantities import Length, Units, parse_length, parse_size
from tests.ledger.desk import losses, plus_minus, pm, the_row, woven

INCH = 25.4


def lengths(*texts: str) -> list[Length]:
    """These figures as lengths."""
    return [parse_length(text) for text in texts]


class TestThreeCheckValues:
    """The losses of a cottolin towel whose ± are known beforehand, with a tape marked in eighths."""

    @pytest.mark.parametrize(
        ("header", "label", "shown"),
        [
            ("in_reed: 20 1/4\nwashed: 17 7/8 x 30 1/8", "width, reed to washed", (11.7, 0.7)),
            ("on_loom: 19 1/4 x 33\nwashed: 17 7/8 x 30 1/8", "width, loom to washed", (7.1, 0.9)),
            ("on_loom: 19 1/4 x 33\nwashed: 17 7/8 x 30 1/8", "length, loom to washed", (8.7, 1.1)),
        ],
    )
    def test_check(self, tmp_path: Path, header: str, label: str, shown: tuple[float, float]) -> None:
        """20 1/4 to 17 7/8 is 11.7 ± 0.7, 19 1/4 to 17 7/8 is 7.1 ± 0.9, 33 to 30 1/8 is 8.7 ± 1.1."""
        row = the_row(woven(tmp_path, header).rows, label)

        assert shown == (round(row.loss * 100, 1), round(row.uncertainty * 100, 1))


class TestTheMarkOfATape:
    """The tape that was stated, else the finest mark seen in the record."""

    @pytest.mark.parametrize(
        ("typed", "mark"),
        [
            (["20 1/4", "17 7/8"], Fraction(1, 8)),
            (["20 1/4", "19 1/2"], Fraction(1, 4)),
            (["20", "17 1/2"], Fraction(1, 2)),
            (["20", "18"], Fraction(1)),
            (["20.25", "18.5"], Fraction(1, 4)),
            (["17 11/16", "20"], Fraction(1, 16)),
            (["18 2/8", "20"], Fraction(1, 8)),
        ],
    )
    def test_inches(self, typed: list[str], mark: Fraction) -> None:
        """The coarsest mark on which all readings lie, or a finer one that somebody wrote."""
        assert mark * 254 / 10 == tape_mark_mm(lengths(*typed), True)

    @pytest.mark.parametrize(
        ("typed", "mark"),
        [
            (["153 cm", "220 cm"], 10),
            (["46.5 cm", "80 cm"], 1),
            (["46.0 cm", "80 cm"], 1),
            (["93.5 mm", "92 mm"], Fraction(1, 2)),
            (["2.5 m", "3 m"], 10),
        ],
    )
    def test_metric(self, typed: list[str], mark: Fraction) -> None:
        """Whole centimetres show a centimetre, a decimal of a centimetre shows a millimetre."""
        assert mark == tape_mark_mm(lengths(*typed), False)

    def test_about_shows_no_mark(self) -> None:
        """ "About 18" is no reading off a tape."""
        assert Fraction(254, 80) == tape_mark_mm(lengths("~18", "17 7/8"), True)
        assert Fraction(254, 80) == tape_mark_mm(lengths("~18"), True)

    def test_each_system_has_its_own(self) -> None:
        """Inches say nothing of the marks of a metric tape, which are millimetres unless it shows."""
        assert 1 == tape_mark_mm(lengths("17 1/2"), False)

    @pytest.mark.parametrize(
        ("unit", "marked_in"), [("in", "in"), ("yd", "in"), ("ft", "in"), ("m", "cm"), ("mm", "mm")]
    )
    def test_unit(self, unit: str, marked_in: str) -> None:
        """A piece of 2 1/2 yd is 90 in on a tape."""
        assert marked_in == tape_unit(unit)

    def test_the_record_s_tape(self, tmp_path: Path) -> None:
        """`tape:` in the record holds, though finer figures stand in it."""
        row = the_row(
            woven(tmp_path, "tape: 1/4 in\nin_reed: 20 1/4\nwashed: 17 7/8 x 30").rows, "width, reed to washed"
        )
        read = 2 * (1 / 4) / math.sqrt(12)  # 0.144, larger than the floor of an eighth

        assert pytest.approx(pm(17.875 / 20.25, read / 20.25, read / 17.875)) == row.uncertainty

    def test_the_journal_s_tape(self, tmp_path: Path) -> None:
        """`tape:` in the journal holds where the record has none."""
        settings = {"journal": "tape: 1/16 in"}
        row = the_row(woven(tmp_path, "in_reed: 20 1/4\nwashed: 17 7/8 x 30", **settings).rows, "width, reed to washed")
        read = 2 * (1 / 16) / math.sqrt(12)

        assert pytest.approx(pm(17.875 / 20.25, read / 20.25, (1 / 8) / 17.875)) == row.uncertainty

    def test_a_tape_of_the_other_system(self, tmp_path: Path) -> None:
        """A journal's inch tape did not measure a record in centimetres: its figures show another."""
        header = "units: cm\nin_reed: 51.4\nwashed: 45.4 x 76.5"
        row = the_row(woven(tmp_path, header, journal="tape: 1/8 in").rows, "width, reed to washed")
        read = 2 * 0.1 / math.sqrt(12)

        assert pytest.approx(pm(45.4 / 51.4, read / 51.4, 0.3 / 45.4)) == row.uncertainty


class TestASize:
    """The larger of the reading and the floor, or of the scatter of several readings."""

    def test_a_reading(self) -> None:
        """2 d / √12 for a tape marked in d."""
        assert pytest.approx(2 * INCH / 8 / math.sqrt(12)) == reading_uncertainty_mm(Fraction(254, 80))

    def test_floors_in_inches(self) -> None:
        """1/8 in in width; 1/4 in in 30 in of length, so half of it in 60 in."""
        eighth = Fraction(254, 80)

        assert pytest.approx(INCH / 8) == cloth_uncertainty_mm(lengths("18"), "width", eighth)
        assert pytest.approx(INCH / 4) == cloth_uncertainty_mm(lengths("30"), "length", eighth)
        assert pytest.approx(INCH / 2) == cloth_uncertainty_mm(lengths("60"), "length", eighth)

    def test_floors_in_metric(self) -> None:
        """3 mm in width; 6 mm in 75 cm of length."""
        mark = Fraction(1)

        assert pytest.approx(3) == cloth_uncertainty_mm(lengths("46 cm"), "width", mark)
        assert pytest.approx(6) == cloth_uncertainty_mm(lengths("75 cm"), "length", mark)

    def test_a_coarse_tape(self) -> None:
        """A tape that is coarser than the floor is what counts."""
        assert pytest.approx(2 * INCH / 2 / math.sqrt(12)) == cloth_uncertainty_mm(
            lengths("18 1/2"), "width", Fraction(254, 20)
        )

    def test_several_widths(self) -> None:
        """Three widths far apart say that the cloth wanders: 2 s / √3; close together they keep the floor."""
        wild = list(parse_size("19, 20, 21 x 30").widths)
        calm = list(parse_size("19 3/4, 19 5/8, 19 3/4 x 20", Units()).widths)
        eighth = Fraction(254, 80)

        assert pytest.approx(2 * 1 / math.sqrt(3) * INCH) == cloth_uncertainty_mm(wild, "width", eighth)
        assert pytest.approx(INCH / 8) == cloth_uncertainty_mm(calm, "width", eighth)

    def test_their_mean(self, tmp_path: Path) -> None:
        """Several widths of one piece count as their mean."""
        row = the_row(woven(tmp_path, "in_reed: 21\nwashed: 19 3/4, 19 5/8, 19 1/4 x 20").rows, "width, reed to washed")

        assert pytest.approx(1 - (19.75 + 19.625 + 19.25) / 3 / 21) == row.loss


class TestTheReed:
    """What the width in the reed is known to."""

    def test_dents_are_exact(self, tmp_path: Path) -> None:
        """243 dents of a reed of 12 are 20 1/4 in, with no ± of their own."""
        row = the_row(
            woven(tmp_path, "reed: 12/in\nin_reed: 243 dents\nwashed: 17 7/8 x 30 1/8").rows, "width, reed to washed"
        )

        assert pytest.approx(1 - 17.875 / (243 / 12)) == row.loss
        assert pytest.approx(17.875 / 20.25 * (1 / 8) / 17.875) == row.uncertainty

    def test_dents_of_a_metric_reed(self, tmp_path: Path) -> None:
        """430 dents of a reed of 50 per 10 cm are 86 cm."""
        made = woven(tmp_path, "units: cm\nreed: 50 per 10 cm\nin_reed: 430 dents\nwashed: 80 x 100")

        assert "cm" == made.pieces[0].sizes[0].unit
        assert pytest.approx({"width, reed to washed": 1 - 80 / 86}) == losses(made.rows)

    def test_dents_without_a_reed(self, tmp_path: Path) -> None:
        """Dents of nobody knows what reed are no width: missing is missing."""
        assert {} == losses(woven(tmp_path, "in_reed: 243 dents\nwashed: 17 7/8 x 30 1/8").rows)

    def test_not_ends_over_sett(self, tmp_path: Path) -> None:
        """Ends and sett alone are no width in the reed: crammed and spaced ends would break it."""
        assert {} == losses(woven(tmp_path, "ends: 400\nsett: 20/in\nwashed: 17 7/8 x 30 1/8").rows)


def test_about_is_known_to_what_was_typed(tmp_path: Path) -> None:
    """ "About 18" is 18 to the inch, whatever the tape; it does not spoil the other figures."""
    made = woven(tmp_path, "in_reed: 20 1/4\non_loom: ~19 x 33\nwashed: 17 7/8 x 30 1/8")
    rough = 2 * 1 / math.sqrt(12)
    read = 2 * (1 / 8) / math.sqrt(12)
    expected = {
        "width, reed to loom": pm(19 / 20.25, read / 20.25, rough / 19),
        "width, loom to washed": pm(17.875 / 19, rough / 19, (1 / 8) / 17.875),
        "width, reed to washed": pm(17.875 / 20.25, read / 20.25, (1 / 8) / 17.875),
    }

    assert pytest.approx(expected) == {
        label: u for label, u in plus_minus(made.rows).items() if label.startswith("width")
    }
