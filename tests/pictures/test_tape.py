"""The tape: true eighths and millimetres, the measured end, the plan, and colour only beyond the doubt."""

from __future__ import annotations

import re
from collections.abc import Sequence
from fractions import Fraction
from xml.etree import ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal_tools.pictures.tape import TapeBar, tape_svg
from journal_tools.pictures.tape_scale import scale_for

INCH = 25.4

TOWEL = (
    TapeBar("in the reed", 20.25 * INCH, 20.25 * INCH, 0.0, "20 1/4 in", "20 1/4 in"),
    TapeBar("on the loom", 19.375 * INCH, None, INCH / 8, "19 3/8 in"),
    TapeBar("off the loom", None, 19.25 * INCH, 0.0, "", "19 1/4 in"),
    TapeBar("washed", 17.875 * INCH, 18 * INCH, INCH / 8, "17 7/8 in", "18 in"),
)


def drawn(bars: Sequence[TapeBar], unit: str = "in") -> str:
    """The tape of these bars."""
    return tape_svg(bars, direction="width", unit=unit, title="Width")


def ticks_of(svg: str) -> list[float]:
    """Where the ticks stand, in thousandths of the tape, from its paths."""
    paths = re.findall(r'<path class="tick[^"]*" d="([^"]*)"', svg)
    return sorted(float(at) for path in paths for at in re.findall(r"M([\d.]+) ", path))


def ends_of(svg: str) -> list[float]:
    """Where the bars end, in thousandths of the tape."""
    return [float(width) * 10 for width in re.findall(r'<rect class="ink-\d" y="\d+" width="([\d.]+)%"', svg)]


class TestTicks:
    """What stands on the tape."""

    def test_a_tape_in_inches_has_a_tick_at_every_eighth(self) -> None:
        """From 17 to 21 inches there are 32 eighths, so 33 ticks at equal distances."""
        expected = [n * 1000 / 32 for n in range(33)]

        assert expected == pytest.approx(ticks_of(drawn(TOWEL)), abs=0.01)

    def test_a_tape_in_centimetres_has_a_tick_at_every_millimetre(self) -> None:
        """From 46 to 52 cm there are 60 millimetres, so 61 ticks at equal distances."""
        svg = drawn([TapeBar("reed", 515), TapeBar("washed", 467)], "cm")

        expected = [n * 1000 / 60 for n in range(61)]
        assert expected == pytest.approx(ticks_of(svg), abs=0.01)

    def test_whole_inches_are_numbered(self) -> None:
        """The tape of the towel says 17, 18, 19 and 20."""
        numbers = re.findall(r'<text class="number[^"]*" [^>]*>(\d+)</text>', drawn(TOWEL))

        assert ["17", "18", "19", "20"] == numbers

    def test_coarser_ticks_are_taller(self) -> None:
        """An inch is taller than a half, a half than a quarter, a quarter than an eighth."""
        heights = {
            float(at): int(tall)
            for path in re.findall(r'<path class="tick[^"]*" d="([^"]*)"', drawn(TOWEL))
            for at, tall in re.findall(r"M([\d.]+) \d+v-(\d+)", path)
        }

        assert heights[250.0] > heights[125.0] > heights[62.5] > heights[31.25]


class TestBars:
    """Where a bar ends and what it says."""

    def test_a_bar_ends_at_its_measured_eighth(self) -> None:
        """On a tape from 17 to 21 inches, 17 7/8 stands at seven of its 32 eighths."""
        assert 7 * 1000 / 32 == pytest.approx(ends_of(drawn(TOWEL))[-1], abs=0.01)

    def test_every_measured_size_is_written_and_read_out(self) -> None:
        """The size stands by its bar, and in the sentence for those who cannot see it."""
        svg = drawn(TOWEL)

        assert ">17 7/8 in</text>" in svg
        assert "washed 17 7/8 in, planned 18 in" in ElementTree.fromstring(svg).get("aria-label", "")

    def test_what_nobody_measured_is_said_to_be_so(self) -> None:
        """A state without a size has no bar, and the words "not measured"."""
        svg = drawn(TOWEL)

        assert 3 == len(ends_of(svg))
        assert 1 == svg.count(">not measured</text>")

    def test_nothing_measured_and_nothing_planned_makes_no_tape(self) -> None:
        """Without any size there is nothing to draw."""
        assert "" == drawn([TapeBar("washed", None)])

    def test_a_name_is_text_whatever_it_holds(self) -> None:
        """A state named with a tag shows the tag as letters."""
        svg = drawn([TapeBar("<script>", 500, text='"&<')])

        assert "<script" not in svg
        assert "<script>" in "".join(ElementTree.fromstring(svg).itertext())


class TestPlan:
    """The planned mark, and when it warns."""

    def test_the_planned_mark_has_a_legend(self) -> None:
        """A dashed mark for each planned state, and one more in the legend that explains it."""
        svg = drawn(TOWEL)

        assert 3 == svg.count('<line class="planned"')
        assert ">planned</text>" in svg

    def test_without_a_plan_there_is_no_legend_of_it(self) -> None:
        """A tape that shows no plan explains none."""
        assert "planned" not in drawn([TapeBar("washed", 500, text="50 cm")])

    @pytest.mark.parametrize("eighths", [-1, 0, 1])
    def test_within_its_doubt_a_bar_is_ink_alone(self, eighths: int) -> None:
        """An eighth off with a doubt of an eighth cannot be told from the plan."""
        bar = TapeBar("washed", (18 + eighths / 8) * INCH, 18 * INCH, INCH / 8, "w", "18 in")

        assert not bar.beyond
        assert "off" not in re.findall(r'class="([a-z ]+)"', drawn([bar]))
        assert "planned beyond" not in drawn([bar])

    @pytest.mark.parametrize("eighths", [-2, 2])
    def test_beyond_its_doubt_the_difference_is_marked(self, eighths: int) -> None:
        """A quarter off with a doubt of an eighth is marked, from the plan to the measured end."""
        measured = 18 + eighths / 8
        svg = drawn([TapeBar("washed", measured * INCH, 18 * INCH, INCH / 8, "w", "18 in")])

        found = re.search(r'<rect class="off" x="([\d.]+)%" y="\d+" width="([\d.]+)%"', svg)
        assert found is not None
        scale = scale_for([measured, 18.0], "in")
        low, high = sorted((scale.at(measured), scale.at(18.0)))
        assert (low / 10, (high - low) / 10) == pytest.approx(
            (float(found[1]), float(found[2])), abs=0.001
        )
        assert '<line class="planned beyond"' in svg


class TestTears:
    """Where the tape is torn."""

    def test_the_tape_begins_a_little_before_the_smallest_size(self) -> None:
        """17 7/8 and 20 1/4 inches are drawn from 17 to 21: an eighth is a thirty-second of it."""
        assert ((17, 21),) == scale_for([17.875, 20.25], "in").runs

    def test_a_stretch_where_nothing_happens_is_torn_out(self) -> None:
        """Sizes about 30 and about 40 inches leave the inches between them out."""
        scale = scale_for([40.0, 38.5, 30.5], "in")

        assert ((29, 31), (37, 41)) == scale.runs
        assert 1 == len(scale.tears())

    def test_no_tick_stands_in_a_tear(self) -> None:
        """What is torn out has no inches."""
        scale = scale_for([40.0, 38.5, 30.5], "in")
        (begin, end), *_ = scale.tears()

        assert [] == [tick for tick in scale.ticks(3) if begin + 0.01 < tick.at < end - 0.01]

    def test_a_tape_from_nought_has_no_torn_start(self) -> None:
        """A bookmark of half an inch is drawn from nought, which is the true end of a tape."""
        assert 'class="torn"' not in drawn([TapeBar("washed", 0.5 * INCH)])

    @given(st.lists(st.integers(min_value=1, max_value=2400), min_size=1, max_size=8))
    def test_a_larger_size_is_drawn_further_along(self, eighths: list[int]) -> None:
        """Torn or not, sizes keep their order, stay on the tape, and stand on a tick of their own."""
        scale = scale_for([n / 8 for n in eighths], "in")
        places = [scale.at(n / 8) for n in sorted(set(eighths))]

        assert places == sorted(set(places))
        assert all(0 <= place <= 1000 for place in places)
        ticks = {tick.value: tick.at for tick in scale.ticks(3)}
        for n in eighths:
            assert ticks[Fraction(n, 8)] == pytest.approx(scale.at(n / 8))


TORN = (
    TapeBar("on the loom (1 of 4)", 33 * INCH, text="33 in"),
    TapeBar("washed", 20.5 * INCH, text="20 1/2 in"),
    TapeBar("sample (2 of 5)", 7.5 * INCH, text="7 1/2 in"),
)


class TestWords:
    """Where words stand beside the bars and on them."""

    def test_what_is_said_beside_a_state_has_its_own_line(self) -> None:
        """How many were measured stands below the state, so that neither is cut where the tape is narrow."""
        svg = drawn([TapeBar("hemmed (4 of 5)", 500, text="19 3/4 in")])

        assert re.search(r">hemmed<tspan [^>]*>4 of 5</tspan>", svg)
        assert "hemmed (4 of 5)" in ElementTree.fromstring(svg).get("aria-label", "")

    @pytest.mark.parametrize(("place", "needed"), [("desk", 140), ("phone", 340)])
    def test_no_size_stands_across_a_tear(self, place: str, needed: float) -> None:
        """On a torn tape a size stands in a part of its bar that is whole, or behind the bar."""
        sizes = [bar.mm / INCH for bar in TORN if bar.mm is not None]
        scale = scale_for(sizes, "in")
        assert 2 == len(scale.tears())
        found = re.findall(r'<text class="value([^"]*)" x="([\d.]+)%"', drawn(TORN))
        inside = [float(at) * 10 for kind, at in found if " in " in kind and (place in kind or "desk" not in kind)]

        crossed = [(at, tear) for at in inside for tear in scale.tears() if at - needed < tear[0] and tear[1] < at]
        assert [] == crossed

    def test_a_size_without_room_behind_its_bar(self) -> None:
        """A bar that ends by the edge of the tape keeps its size inside, and within the page."""
        found = re.findall(r'<text class="value( in)?[^"]*" x="([\d.]+)%"', drawn(TORN))

        assert [] == [at for within, at in found if not within and float(at) > 95]
