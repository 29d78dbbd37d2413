"""Counts, times, money, percentages, yes and no."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal_tools.quantities import (
    CountOf,
    Units,
    parse_count,
    parse_hours,
    parse_minutes,
    parse_money,
    parse_percent,
    parse_yes_no,
    show_minutes,
)
from tests.quantities.refusals import refusal_of

THOUSANDS = Units(comma="thousands")


class TestCounts:
    @pytest.mark.parametrize(
        ("text", "number", "about"),
        [("378", 378, False), ("~18", 18, True), ("378 picks", 378, False), ("396 ends", 396, False), ("0", 0, False)],
    )
    def test_whole_numbers(self, text: str, number: int, about: bool) -> None:
        """A count is a whole number, with or without what is counted."""
        assert CountOf(number, about, text) == parse_count(text)

    def test_comma(self) -> None:
        """1,200 picks are twelve hundred only where the journal's comma says so."""
        assert 1200 == parse_count("1,200", THOUSANDS).number
        assert "1200" in refusal_of(parse_count, "1,200").right
        assert "whole" in refusal_of(parse_count, "1,200", Units(comma="decimal")).right

    @pytest.mark.parametrize("text", ["", "many", "1.5", "1/2", "-3", "3 4", "20/in", "48 from the middle"])
    def test_refused(self, text: str) -> None:
        """Half a pick, fewer than none and a density are no count."""
        assert text == refusal_of(parse_count, text).read

    @given(st.integers(0, 10**8))
    def test_every_count_reads(self, number: int) -> None:
        """Any number of threads is read as it stands."""
        assert number == parse_count(str(number)).number


class TestTimes:
    @pytest.mark.parametrize(
        ("text", "minutes", "words"),
        [
            ("0 min", 0, ""),
            ("8 min", 8, ""),
            ("8", 8, ""),
            ("8 min, hot", 8, "hot"),
            ("8 min 40 degrees", 8, "40 degrees"),
            ("20 min, edges felted", 20, "edges felted"),
            ("1 h 10 min", 70, ""),
            ("2 1/2 minutes", Fraction(5, 2), ""),
            ("90 s", Fraction(3, 2), ""),
        ],
    )
    def test_minutes(self, text: str, minutes: Fraction, words: str) -> None:
        """A fulling check stands under its minutes, and words may follow them."""
        assert (minutes, words) == (parse_minutes(text).minutes, parse_minutes(text).words)

    def test_hours(self) -> None:
        """A bare time at the loom is hours."""
        assert Fraction(25, 2) == parse_hours("12 1/2").hours == parse_hours("12 h 30 min").hours

    @pytest.mark.parametrize("text", ["", "hot", "-3 min", "min 8"])
    def test_refused(self, text: str) -> None:
        """Words without a figure are no time."""
        assert text == refusal_of(parse_minutes, text).read

    def test_shown(self) -> None:
        """Minutes are shown to the half."""
        assert ["8 min", "2.5 min"] == [show_minutes(Fraction(m)) for m in ("8", "2.4")]


class TestMoney:
    @pytest.mark.parametrize(
        ("text", "amount", "currency"),
        [
            ("12.50 EUR", "12.5", "EUR"),
            ("12,50 €", "12.5", "€"),
            ("€12,50", "12.5", "€"),
            ("$ 40", "40", "$"),
            ("kr 40", "40", "kr"),
            ("40", "40", None),
        ],
    )
    def test_sums(self, text: str, amount: str, currency: str | None) -> None:
        """A sum of money is exact, and its currency stays as it was typed."""
        assert (Fraction(amount), currency) == (parse_money(text).amount, parse_money(text).currency)

    @pytest.mark.parametrize("text", ["", "EUR", "EUR 12 EUR", "12 EUR a kilo", "1,200 EUR", "-3"])
    def test_refused(self, text: str) -> None:
        """One sum has one currency."""
        assert text == refusal_of(parse_money, text).read


class TestPercentages:
    @pytest.mark.parametrize("text", ["8.5 %", "8,5%", "8.5", "8 1/2 percent"])
    def test_parts_of_a_hundred(self, text: str) -> None:
        """8.5 % is 0.085 of the whole."""
        assert (Fraction("8.5"), Fraction("0.085")) == (parse_percent(text).percent, parse_percent(text).share)

    @pytest.mark.parametrize("text", ["", "half", "101 %", "-2 %", "8 % wool"])
    def test_refused(self, text: str) -> None:
        """There is nothing above a hundred, and nothing below none."""
        assert text == refusal_of(parse_percent, text).read


class TestYesAndNo:
    @pytest.mark.parametrize(("text", "answer"), [("yes", True), ("No", False), (" y ", True), ("false", False)])
    def test_answers(self, text: str, answer: bool) -> None:
        """Yes is yes and no is no, in small letters or large."""
        assert answer is parse_yes_no(text)

    @pytest.mark.parametrize("text", ["", "maybe", "on", "off", "1"])
    def test_refused(self, text: str) -> None:
        """Anything else is asked for again: off is a state of the cloth, and no answer."""
        assert "Write yes or no." == refusal_of(parse_yes_no, text).right
