"""Yarn numbers: the forms that are read, and what a measured one says."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal_tools.quantities import (
    POUND,
    SYSTEMS,
    YARD,
    Ambiguous,
    Units,
    parse_yarn_number,
    show_grist,
)
from tests.quantities.refusals import refusal_of

METRIC = Units(length="cm")


def yards(text: str, fibre: str | None = None) -> int:
    """Yards in a pound, to the yard."""
    return round(parse_yarn_number(text, fibre).yards_per_pound)


class TestLabels:
    @pytest.mark.parametrize(
        ("text", "yd_lb", "plies"),
        [
            ("8/2 cotton", 3360, 2),
            ("2/8 cotton", 3360, 2),
            ("3/2 cotton", 1260, 2),
            ("8/2 unmercerised cotton", 3360, 2),
            ("100 % cotton 8/2", 3360, 2),
            ("Ne 8/2", 3360, 2),
            ("Ne8/2", 3360, 2),
            ("8/2 rayon", 3360, 2),
            ("10s cotton", 8400, 1),
            ("10 cotton", 8400, 1),
            ("2-40's cotton", 16800, 2),
            ("2/40s cotton", 16800, 2),
            ("16/2 linen", 2400, 2),
            ("10/1 linen", 3000, 1),
            ("NeL 16/2", 2400, 2),
            ("16 lea linen", 4800, 1),
            ("2/20 worsted", 5600, 2),
            ("20/2 worsted", 5600, 2),
            ("2/8 worsted wool", 2240, 2),
            ("NeK 2/20", 5600, 2),
            ("2 1/2 run", 4000, 1),
            ("24 cut", 7200, 1),
            ("30 skein Yorkshire woollen", 7680, 1),
            ("Nm 5.5/2", 1364, 2),
            ("2 plies of Ne 3", 1260, 2),
            ("3 plies of 2 worsted", 373, 3),
            ("2-ply 8 cotton", 3360, 2),
            ("12/6 cotton", 1680, 6),
        ],
    )
    def test_read(self, text: str, yd_lb: int, plies: int) -> None:
        """A label that has one reading is read so, and its plies are counted."""
        number = parse_yarn_number(text)

        assert (yd_lb, plies, False, text) == (yards(text), number.plies, number.measured, number.text)

    def test_metric(self) -> None:
        """Nm 20/2 is two plies of Nm 20, which is 10 000 m to the kilogram, in either order."""
        assert 10_000 == parse_yarn_number("Nm 20/2").metres_per_kg == parse_yarn_number("2/20 Nm").metres_per_kg

    @pytest.mark.parametrize(
        ("text", "reading"),
        [
            ("8/2 cotton", "8/2 cotton: two plies of Ne 8, 3,360 yd/lb"),
            ("10/1 linen", "10/1 linen: a single of 10 lea, 3,000 yd/lb"),
            ("2/20  worsted", "2/20 worsted: two plies of 20 worsted, 5,600 yd/lb"),
            ("R74 tex/2", "R74 tex/2: 74 tex in all, of 2 plies, 6,703 yd/lb"),
            ("20 tex x 2", "20 tex x 2: 2 plies of 20 tex, 12,401 yd/lb"),
            ("~Nm 20/2", "~Nm 20/2: about two plies of Nm 20, 4,961 yd/lb"),
            ("50 m = 12.3 g", "50 m = 12.3 g: 246 tex, 2,016 yd/lb, by its weight"),
        ],
    )
    def test_reading_in_words(self, text: str, reading: str) -> None:
        """How a number was read is said, so that a wrong reading is seen."""
        assert reading == parse_yarn_number(text).reading

    def test_metric_journal(self) -> None:
        """A metric journal is told metres in a kilogram first."""
        assert "6773 m/kg, 3,360 yd/lb" == show_grist(parse_yarn_number("8/2 cotton").tex, METRIC)

    @pytest.mark.parametrize(
        ("fibre", "yd_lb"),
        [
            ("cotton", 3360),
            ("100 % cotton, mercerised", 3360),
            ("linen", 1200),
            ("worsted wool", 2240),
            ("viscose", 3360),
        ],
    )
    def test_fibre_from_elsewhere(self, fibre: str, yd_lb: int) -> None:
        """A bare 8/2 is read by the fibre that the yarn's record names."""
        assert yd_lb == yards("8/2", fibre)

    def test_label_beats_fibre(self) -> None:
        """What the label says of itself holds, whatever the record's fibre is."""
        assert (3360, 1984) == (yards("8/2 cotton", "linen"), yards("Nm 8/2", "cotton"))


class TestDirect:
    @pytest.mark.parametrize(
        ("text", "tex", "plies"),
        [
            ("74 tex", 74, None),
            ("tex 74", 74, None),
            ("R74 tex/2", 74, 2),
            ("R 40 tex / 2", 40, 2),
            ("R74/2 tex", 74, 2),
            ("20 tex x 2", 40, 2),
            ("20 tex × 2", 40, 2),
            ("20 tex x 2 x 3", 120, 6),
            ("150 denier", Fraction(150, 9), None),
            ("150 den polyester", Fraction(150, 9), None),
            ("167 dtex x 2", Fraction(334, 10), 2),
            ("20 tex + 30 tex", 50, 2),
        ],
    )
    def test_read(self, text: str, tex: Fraction, plies: int | None) -> None:
        """Tex is grams in 1000 m: of the single before the x, of the plied yarn after the R."""
        assert (tex, plies) == (parse_yarn_number(text).tex, parse_yarn_number(text).plies)

    def test_single_or_plied(self) -> None:
        """20/2 tex says neither whether the single or the plied yarn is 20 tex: both are told."""
        refusal = refusal_of(parse_yarn_number, "20/2 tex")

        assert "20 tex x 2 (12,401 yd/lb)" in refusal.right
        assert "R 20 tex / 2 (24,803 yd/lb)" in refusal.right
        assert isinstance(refusal, Ambiguous)


class TestMeasured:
    @pytest.mark.parametrize(
        ("text", "yd_lb"),
        [
            ("3360 yd/lb", 3360),
            ("3360 yards per pound", 3360),
            ("3360 ypp", 3360),
            ("210 yd/oz", 3360),
            ("100 yd = 27 g", 1680),
            ("100 yd weighs 27 g", 1680),
            ("27 g = 100 yd", 1680),
            ("27 g/100 yd", 1680),
            ("200 m/100 g", 992),
            ("~3360 yd/lb", 3360),
        ],
    )
    def test_read(self, text: str, yd_lb: int) -> None:
        """The weight of a length, in any units and either order, is a measured number."""
        assert (yd_lb, True) == (yards(text), parse_yarn_number(text).measured)

    @pytest.mark.parametrize(("text", "m_kg"), [("1200 m/kg", 1200), ("6773 m/kg", 6773), ("2 m/g", 2000)])
    def test_metres(self, text: str, m_kg: int) -> None:
        """Metres in a kilogram are read exactly."""
        assert m_kg == parse_yarn_number(text).metres_per_kg

    def test_weighed_length(self) -> None:
        """50 m that weigh 12.3 g are 246 tex."""
        assert 246 == parse_yarn_number("50 m = 12.3 g").tex

    @pytest.mark.parametrize(
        ("text", "yd_lb", "plies"),
        [
            ("8/2 cotton, 3300 yd/lb", 3300, 2),
            ("22/2 cottolin (3200 yd/lb)", 3200, None),
            ("60/2 silk; 15000 yd/lb", 15000, None),
        ],
    )
    def test_beats_the_label(self, text: str, yd_lb: int, plies: int | None) -> None:
        """A measure beside a label beats it, and settles a label that could be several things."""
        number = parse_yarn_number(text)

        assert (yd_lb, plies, True) == (yards(text), number.plies, number.measured)

    @pytest.mark.parametrize(
        "text", ["50 = 12.3 g", "50 m = 12.3", "0 m = 3 g", "50 m = 0 g", "50 m = 3 m", "3360/lb", "m = g", "= 3 g",
                 "3,360 yd/lb", "8/2 cotten, 3360 yd/lb", "9999999 yd/lb", "1 yd/lb"],
    )  # fmt: skip
    def test_refused(self, text: str) -> None:
        """A length without its weight, and a yarn finer or thicker than any, are refused."""
        assert text == refusal_of(parse_yarn_number, text).read

    @given(st.integers(5, 900_000))
    def test_every_yield_reads(self, yd_lb: int) -> None:
        """So many yards in a pound are exactly as many when they are read."""
        assert yd_lb == parse_yarn_number(f"{yd_lb} yd/lb").yards_per_pound


class TestUnequalPlies:
    @pytest.mark.parametrize(
        "text", ["unequal plies 60 + 40 cotton", "60 + 40 cotton", "60s + 40s cotton", "Ne 60 + Ne 40", "Ne 60 + 40"]
    )
    def test_reciprocals(self, text: str) -> None:
        """Plies of 60 and 40 make a yarn of 24, for their weights add (computed from the definition)."""
        assert 24 == SYSTEMS["Ne"].number_of(parse_yarn_number(text).tex)

    @pytest.mark.parametrize("text", ["60 +", "+", "60 + 40", "60 + 40 cotten", "60/2 silk + 40 cotton"])
    def test_refused(self, text: str) -> None:
        """A sum of plies needs all of its parts, and a system for each."""
        assert text == refusal_of(parse_yarn_number, text).read


class TestRefusals:
    @pytest.mark.parametrize(
        ("text", "words"),
        [
            ("", "looks like 8/2 cotton"),
            ("thick", "looks like 8/2 cotton"),
            ("3000", "A bare number"),
            ("8", "A bare number"),
            ("8/0 cotton", "can be 0"),
            ("0/2 cotton", "can be 0"),
            ("R0 tex/2", "weighs nothing"),
            ("20 tex x 0", "at least one ply"),
            ("tex 20 tex", "One unit"),
            ("8/2/2 cotton", "One yarn number"),
            ("8/2 cotton!", "One yarn number"),
            ("Ne 8/2 lea", "Two systems"),
            ("2.5/2.5 cotton", "looks like"),
            ("8/2 zzz", '"zzz" says nothing'),
            ("9/99 cotton", "It can be"),
            ("300/99 cotton", "looks like"),
        ],
    )
    def test_words(self, text: str, words: str) -> None:
        """What is no yarn number is refused with examples of some."""
        refusal = refusal_of(parse_yarn_number, text)

        assert text == refusal.read
        assert words in refusal.right

    def test_mistyped_fibre(self) -> None:
        """A fibre that is nearly right is offered as it should be."""
        assert "8/2 cotton" == refusal_of(parse_yarn_number, "8/2 cotten").mended

    def test_dash(self) -> None:
        """8-2 is offered with its slash."""
        assert "8/2 cotton" == refusal_of(parse_yarn_number, "8-2 cotton").mended


class TestSystems:
    @given(st.fractions(Fraction(1, 100), 1000), st.sampled_from(sorted(SYSTEMS)))
    def test_there_and_back(self, number: Fraction, system: str) -> None:
        """A number in any system is the same again when it has been to tex and back."""
        assert number == SYSTEMS[system].number_of(SYSTEMS[system].tex_of(number))

    def test_hanks(self) -> None:
        """A hank of 840 yd that weighs a pound is Ne 1, and weighs a pound in tex too."""
        assert SYSTEMS["Ne"].tex_of(Fraction(1)) == POUND / (840 * YARD) * 10**6
