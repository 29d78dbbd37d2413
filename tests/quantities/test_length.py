"""Lengths: every form a weaver writes, exact to the fraction, and shown again."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal_tools.quantities import (
    FOOT,
    INCH,
    YARD,
    Length,
    Units,
    parse_length,
    parse_times_length,
    show_length,
)
from tests.quantities.refusals import refusal_of

METRIC = Units(length="cm")
EIGHTHS = st.integers(0, 8000).map(lambda n: n * INCH / 8)


class TestForms:
    @pytest.mark.parametrize(
        "text",
        [
            "18 1/4", "18-1/4", "18¼", "18 ¼", "18.25", "18,25", "18 1/4 in", "18 1/4in", '18 1/4"', "18¼″",
            "18 1/4 inches", "18 2/8 in.", "  18   1/4  ", "18\u00a01/4", "18 1⁄4", "1 ft 6 1/4 in", "1' 6 1/4\"",
        ],
    )  # fmt: skip
    def test_eighteen_and_a_quarter(self, text: str) -> None:
        """Eighteen inches and a quarter is the same length however it is written."""
        assert Fraction(73, 4) * INCH == parse_length(text).mm

    @pytest.mark.parametrize(
        ("text", "mm", "unit"),
        [
            ("18", 18 * INCH, "in"),
            ("½", INCH / 2, "in"),
            ("1/2", INCH / 2, "in"),
            (".5 in", INCH / 2, "in"),
            ("46,5 cm", 465, "cm"),
            ("46.5cm", 465, "cm"),
            ("465 mm", 465, "mm"),
            ("3.2 m", 3200, "m"),
            ("3 yd 12 in", 3 * YARD + 12 * INCH, "in"),
            ("2 1/2 yd", YARD * 5 / 2, "yd"),
            ("1 ft 6 in", FOOT + 6 * INCH, "in"),
            ("2 m 30 cm", 2300, "cm"),
            ("2 YD", 2 * YARD, "yd"),
            ("1200 m", 1_200_000, "m"),
            ("1,200.5 m", 1_200_500, "m"),
            ("1.200,5 m", 1_200_500, "m"),
            ("1,200,000 mm", 1_200_000, "mm"),
            ("0 in", 0, "in"),
        ],
    )
    def test_exact(self, text: str, mm: Fraction, unit: str) -> None:
        """A length is exact, and its unit is the finest that was written."""
        assert (mm, unit) == (parse_length(text).mm, parse_length(text).unit)

    def test_an_inch_and_a_yard(self) -> None:
        """An inch is 25.4 mm and a yard 0.9144 m, exactly (international yard of 1959, from memory)."""
        assert (Fraction(254, 10), Fraction(9144, 10)) == (INCH, YARD)

    def test_bare_number(self) -> None:
        """A bare number is in the journal's unit."""
        lengths = [parse_length("20", Units(length=unit)).mm for unit in ("in", "cm", "mm")]

        assert [508, 200, 20] == lengths

    @pytest.mark.parametrize("text", ["~18", "about 18", "ca 18", "ca. 18", "approx. 18", "≈18", "About 18 in"])
    def test_about(self, text: str) -> None:
        """A length that is called a rough figure stays one."""
        assert (18 * INCH, True) == (parse_length(text).mm, parse_length(text).about)

    def test_what_was_typed_stays(self) -> None:
        """The text that was typed is kept, blanks and all."""
        expected = Length(mm=18 * INCH, unit="in", mark=INCH, about=True, text="~ 18  in")

        assert expected == parse_length("~ 18  in")


class TestMarks:
    @pytest.mark.parametrize(
        ("text", "mark"),
        [
            ("20 in", INCH),
            ("17 7/8 in", INCH / 8),
            ("17 4/8 in", INCH / 8),
            ("17⅞", INCH / 8),
            ("18.25", INCH / 4),
            ("18.3 in", INCH / 10),
            ("46.5 cm", 1),
            ("46.25 cm", Fraction(1, 10)),
            ("46 cm", 10),
            ("465 mm", 1),
            ("3 yd 12 in", INCH),
            ("2 1/2 yd", YARD / 2),
            ("3.2 m", 100),
        ],
    )
    def test_finest_mark(self, text: str, mark: Fraction) -> None:
        """The mark is the finest that was typed: an eighth in 17 7/8 in, a millimetre in 46.5 cm."""
        assert mark == parse_length(text).mark


class TestCommas:
    def test_refused(self) -> None:
        """1,200 m is refused with both of its readings, for it is 1200 m or 1.2 m."""
        refusal = refusal_of(parse_length, "1,200 m")

        assert (0, "1,200 m") == (refusal.column, refusal.read)
        assert "1200" in refusal.right
        assert "1.2" in refusal.right
        assert "comma" in refusal.right

    def test_settled(self) -> None:
        """The journal says what its comma means, and 1,200 m is read so."""
        assert 1_200_000 == parse_length("1,200 m", Units(comma="thousands")).mm
        assert 1200 == parse_length("1,200 m", Units(comma="decimal")).mm

    def test_decimal_unless_thousands(self) -> None:
        """46,5 cm is decimal, unless the journal's comma stands between thousands."""
        assert 465 == parse_length("46,5 cm", Units(comma="decimal")).mm
        assert "46.5 cm" == refusal_of(parse_length, "46,5 cm", Units(comma="thousands")).mended

    def test_point_between_thousands(self) -> None:
        """Where the comma is decimal, 1.200 m could be a thousand: it is refused too."""
        refusal = refusal_of(parse_length, "1.200 m", Units(comma="decimal"))

        assert "Write 1200 or 1,2." in refusal.right
        assert 1200 == parse_length("1.200 m").mm

    @pytest.mark.parametrize("text", ["1,2,3", "1.2.3", "1,20.5", "1.200,50,3", "12,00,000"])
    def test_no_number(self, text: str) -> None:
        """Points and commas that fit no number are refused."""
        assert "do not fit" in refusal_of(parse_length, text).right


class TestRefusals:
    @pytest.mark.parametrize(
        ("text", "column", "words"),
        [
            ("", 0, "Nothing is written"),
            ("   ", 0, "Nothing is written"),
            ("wide", 0, "A number is missing"),
            ("-5", 0, "less than nothing"),
            ("−5 in", 0, "less than nothing"),
            ("1/0", 0, "divided by 0"),
            ("18 1/0", 3, "divided by 0"),
            ("18 5/4", 3, "not less than one"),
            ("18-19", 2, "not a range"),
            ("18 to 19", 3, '"to" is no unit'),
            ("18 inn", 3, '"inn" is no unit'),
            ("1 200 m", 2, "without a blank"),
            ("18 1/4 1/8", 7, "side by side"),
            ("3 yd 12", 5, "needs its unit"),
            ("12 in 3 yd", 6, "the large one first"),
            ("3 in 12 in", 5, "the large one first"),
            ("1234567890 in", 0, "too many digits"),
            ("1/1000 in", 0, "so finely"),
            ("18 in!", 5, "A number is missing"),
            ("٣ in", 0, "A number is missing"),
        ],
    )
    def test_place_and_words(self, text: str, column: int, words: str) -> None:
        """What is wrong is told in words, with an example, and the place where reading stopped."""
        refusal = refusal_of(parse_length, text)

        assert (text, min(column, len(text.rstrip()))) == (refusal.read, refusal.column)
        assert words in refusal.right
        assert refusal.right.endswith(".")

    def test_lost_blank(self) -> None:
        """17/8 was probably 1 7/8 with its blank lost, so both are asked for."""
        right = refusal_of(parse_length, "17/8").right

        assert "2 1/8" in right
        assert "1 7/8" in right

    def test_improper(self) -> None:
        """5/4 yd can only be 1 1/4 yd, and that is offered to paste."""
        assert "1 1/4 yd" == refusal_of(parse_length, "5/4 yd").mended

    def test_endless(self) -> None:
        """A text of thousands of characters is refused, and not repeated in full."""
        assert 201 == len(refusal_of(parse_length, "1" * 5000).read)


class TestTimes:
    @pytest.mark.parametrize(
        ("text", "count", "each"),
        [
            ("5 of 1/2 in", 5, INCH / 2),
            ("5 x 1/2 in", 5, INCH / 2),
            ("5 gaps of ½", 5, INCH / 2),
            ("5 of 1/2 in each", 5, INCH / 2),
            ("2 in each end", 2, 2 * INCH),
            ("2 in at each end", 2, 2 * INCH),
            ("3 cm both ends", 2, Fraction(30)),
            ("9 in", 1, 9 * INCH),
            ("1 yd 3 in", 1, YARD + 3 * INCH),
        ],
    )
    def test_so_many(self, text: str, count: int, each: Fraction) -> None:
        """Five gaps of half an inch are 2 1/2 in; two inches at each end are four."""
        times = parse_times_length(text)

        assert (count, each, count * each, text) == (times.count, times.each.mm, times.mm, times.text)

    def test_metric(self) -> None:
        """So many of a bare length are in the journal's unit."""
        assert 50 == parse_times_length("5 of 1", METRIC).mm

    @pytest.mark.parametrize("text", ["0 of 3 in", "5 of", "of 3 in", "5 of 3 of 2 in", "each end", "2 in each"])
    def test_refused(self, text: str) -> None:
        """None of something, or so many of nothing, is no length."""
        assert text == refusal_of(parse_times_length, text).read

    def test_place(self) -> None:
        """The place is counted in the whole text."""
        assert 9 == refusal_of(parse_times_length, "5 of 1/2 inn").column


class TestShown:
    @pytest.mark.parametrize(
        ("mm", "unit", "shown"),
        [
            (INCH * 143 / 8, "in", "17 7/8 in"),
            (INCH * 18, "in", "18 in"),
            (INCH / 8, "in", "1/8 in"),
            (INCH * Fraction(17.94), "in", "18 in"),
            (Fraction(465), "cm", "46.5 cm"),
            (460, "cm", "46 cm"),
            (465.4, "mm", "465 mm"),
            (YARD * 5 / 2, "yd", "2 1/2 yd"),
            (3200, "m", "3.2 m"),
            (3204, "m", "3.2 m"),
            (-INCH / 4, "in", "-1/4 in"),
            (-0.1, "in", "0 in"),
        ],
    )
    def test_usual_mark(self, mm: Fraction, unit: str, shown: str) -> None:
        """A length is shown to the eighth of an inch, the millimetre, or the centimetre of metres."""
        assert shown == show_length(mm, unit)

    def test_pretty(self) -> None:
        """On a page 17 7/8 is 17⅞, and sixteenths, which have no sign of their own, stay as they are."""
        assert ["17⅞ in", "½ in", "18 in"] == [show_length(n * INCH / 8, "in", pretty=True) for n in (143, 4, 144)]
        assert "3/16 in" == show_length(INCH * 3 / 16, "in", INCH / 16, pretty=True)

    @pytest.mark.parametrize(
        ("mark", "unit", "shown"),
        [
            (INCH / 16, "in", "18 5/16 in"),
            (INCH / 4, "in", "18 1/4 in"),
            (INCH, "in", "18 in"),
            (INCH / 10, "in", "18.3 in"),
            (Fraction(1), "in", "18 1/4 in"),
            (Fraction(5), "cm", "46.5 cm"),
            (Fraction(1, 10), "cm", "46.48 cm"),
            (INCH / 8, "cm", "46.5 cm"),
            (Fraction(0), "cm", "46.5 cm"),
        ],
    )
    def test_other_marks(self, mark: Fraction, unit: str, shown: str) -> None:
        """A length is shown to the mark that is asked for, where a tape in that unit carries it."""
        assert shown == show_length(Fraction("18.3") * INCH, unit, mark)

    def test_halves_go_up(self) -> None:
        """Half a mark is rounded away from nothing."""
        assert ["1/8 in", "1/4 in"] == [show_length(n * INCH / 16, "in") for n in (1, 3)]

    @given(EIGHTHS)
    def test_eighths_read_back(self, mm: Fraction) -> None:
        """What is shown in inches is the same length when it is read, plain or pretty."""
        assert mm == parse_length(show_length(mm, "in")).mm
        assert mm == parse_length(show_length(mm, "in", pretty=True)).mm

    @given(st.integers(0, 10**6), st.sampled_from(["cm", "mm"]))
    def test_millimetres_read_back(self, mm: int, unit: str) -> None:
        """What is shown in centimetres or millimetres is the same length when it is read."""
        assert mm == parse_length(show_length(mm, unit)).mm

    @given(
        st.fractions(0, 100_000, max_denominator=1000),
        st.sampled_from(["in", "ft", "yd", "mm", "cm", "m"]),
        st.integers(1, 64),
    )
    def test_within_half_a_mark(self, mm: Fraction, unit: str, parts: int) -> None:
        """What is shown is never further than half a mark from the length itself."""
        usual = {"in": INCH / 8, "ft": FOOT / 8, "yd": YARD / 8, "mm": 1, "cm": 1, "m": 10}

        assert abs(mm - parse_length(show_length(mm, unit)).mm) <= Fraction(usual[unit]) / 2
        fine = parse_length(show_length(mm, "in", INCH / parts)).mm
        assert abs(mm - fine) <= INCH / parts / 2

    @given(EIGHTHS)
    def test_typed_mark_shows_what_was_typed(self, mm: Fraction) -> None:
        """A length shown with its own unit and mark is the length that was typed."""
        typed = parse_length(show_length(mm, "in"))

        assert show_length(mm, "in") == show_length(typed.mm, typed.unit, typed.mark)


class TestWords:
    def test_inches_and_centimetres(self) -> None:
        """A length of 1 ft is 12 in and 30.48 cm."""
        foot = parse_length("1 ft")

        assert (12, Fraction(3048, 100)) == (foot.inches, foot.cm)
