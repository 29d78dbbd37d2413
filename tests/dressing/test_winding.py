"""What is wound: bouts by colour, ends and yarn of each, spools at once."""

from __future__ import annotations

from collections import Counter
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal_tools.dressing.bouts import bouts_of
from journal_tools.dressing.colour_words import colour_words
from journal_tools.dressing.winding import spools_of
from journal_tools.notation import parse_colours
from tests.dressing.made import NAPKINS, POINT, dressed

ORDERS = st.lists(st.tuples(st.sampled_from(["bone", "slate", "rust"]), st.integers(1, 90)), min_size=1, max_size=12)


def texts(order: str, aimed: int) -> list[str]:
    """Each bout of an order as a weaver would write it."""
    return [colour_words(bout.order) for bout in bouts_of(parse_colours(order), aimed)]


class TestBouts:
    def test_of_whole_repeats(self) -> None:
        """About 36 ends of 16-end repeats are two repeats, 32; what stands at the edges is a bout or goes with one."""
        assert [
            "8 bone, 4 slate, 12 bone, 4 slate, 12 bone",
            "4 slate, 12 bone, 4 slate, 12 bone",
            "4 slate, 12 bone, 4 slate, 12 bone",
        ] == [text.replace("2 times (4 slate, 12 bone)", "4 slate, 12 bone, 4 slate, 12 bone") for text in texts(
            "8 bone, 6 times (4 slate, 12 bone)", 36
        )]

    def test_one_colour_is_cut_evenly(self) -> None:
        """100 ends of one colour in bouts of about 36 are three: 34, 33 and 33."""
        assert ["34 ecru", "33 ecru", "33 ecru"] == texts("100 ecru", 36)

    def test_a_long_repeat_is_cut_between_stripes(self) -> None:
        """Of a repeat of 100 ends a bout of 40 holds whole stripes: 50 red, then 50 blue, each in one."""
        assert ["50 red", "50 blue"] * 2 == texts("2 times (50 red, 50 blue)", 40)

    def test_a_repeat_of_a_bout_and_a_half_stays_whole(self) -> None:
        """A repeat of 60 ends is one bout where 40 are aimed at, since a cut inside it is worse."""
        assert ["30 red, 30 blue"] * 3 == texts("3 times (30 red, 30 blue)", 40)

    def test_a_short_rest_goes_with_the_last(self) -> None:
        """Four ends at the edge are no bout of their own: they are wound with the one before them."""
        assert ["20 red, 20 blue", "20 red, 20 blue, 4 red"] == texts("2 times (20 red, 20 blue), 4 red", 40)

    def test_two_colours_in_turn(self) -> None:
        """Two colours by turns are cut where the order says, though one colour ends a repeat and begins the next."""
        order = "4 times (8 times (black, gold), 8 times (gold, black))"

        assert 4 * ["8 times (black, gold), 8 times (gold, black)"] == [
            text for text in texts(order, 32) if text.startswith("8 times")
        ]

    @given(ORDERS, st.integers(4, 100))
    def test_nothing_is_lost(self, stripes: list[tuple[str, int]], aimed: int) -> None:
        """Put end to end, the bouts are the order as it was written, and their numbers run on."""
        items = [colour for colour, ends in stripes for _ in range(ends)]
        bouts = bouts_of(items, aimed)

        assert items == [colour for bout in bouts for colour in bout.order]
        assert [bout.last + 1 for bout in bouts[:-1]] == [bout.first for bout in bouts[1:]]
        assert (1, len(items)) == (bouts[0].first, bouts[-1].last)

    @given(ORDERS)
    def test_words_read_back(self, stripes: list[tuple[str, int]]) -> None:
        """An order in words reads back as the same ends."""
        items = tuple(colour for colour, ends in stripes for _ in range(ends))

        assert items == parse_colours(colour_words(items))


class TestSpools:
    def test_by_hand(self) -> None:
        """`6 red, 2 blue, 4 red` by fours is 4 red, 2 red with 2 blue, 4 red: four spools of red, two of blue."""
        bouts = bouts_of(parse_colours("6 red, 2 blue, 4 red"), 12)

        assert 1 == len(bouts)
        assert {"red": 4, "blue": 2} == spools_of(bouts, 4).of
        assert {"red": 2, "blue": 2} == spools_of(bouts, 2).of
        assert {"red": 10, "blue": 2} == spools_of(bouts, 0).of
        assert 12 == spools_of(bouts, 0).number

    def test_single_ends(self) -> None:
        """Red and blue by turns, two at once, want one spool of each."""
        assert {"red": 1, "blue": 1} == spools_of(bouts_of(parse_colours("6 times (red, blue)"), 12), 2).of


class TestAWarp:
    def test_ends_and_yarn(self, tmp_path: Path) -> None:
        """116 ends are 88 bone and 28 slate; two more of bone are for the floating selvedges. 3 yd each."""
        yards = 3 * Fraction(9144, 10)
        (winding,) = dressed(tmp_path, NAPKINS).windings

        assert 116 == winding.ends
        assert {"bone": 90, "slate": 28} == {strand.name: strand.ends for strand in winding.strands}
        assert [90 * yards, 28 * yards] == [strand.length_mm for strand in winding.strands]
        assert "bone" == winding.floating
        assert Counter(bone=88, slate=28) == Counter(colour for bout in winding.bouts for colour in bout.order)

    def test_a_handful_is_two_inches(self, tmp_path: Path) -> None:
        """At 18 ends to the inch a bout is to have 36."""
        assert 36 == dressed(tmp_path, NAPKINS).windings[0].aimed

    def test_several_warps(self, tmp_path: Path) -> None:
        """A ground and a second warp are wound each by itself, and threaded together."""
        two = "warp: [{order: 80 bone, role: ground}, {order: 40 slate, role: supplementary}]\ndraft: point\n"
        made = dressed(tmp_path, "title: Two\nyarn: linen-20-2\n" + two)

        assert [("ground", 80), ("supplementary", 40)] == [(each.role, each.ends) for each in made.windings]
        assert 120 == made.ends

    @pytest.mark.parametrize(
        ("warps", "floating", "wound"),
        [
            ("[{order: 40 bone}, {order: 40 slate}]", 2, [42, 40]),
            ("[{order: 40 bone}, {order: 40 slate, floating_selvedges: slate}]", 2, [40, 42]),
            ("[{order: 40 bone, floating_selvedges: bone}, {order: 40 slate, floating_selvedges: slate}]", 4, [42, 42]),
            ("{order: 80 bone}", 2, [82]),
        ],
    )
    def test_floating_selvedges_are_wound(self, tmp_path: Path, warps: str, floating: int, wound: list[int]) -> None:
        """Floating selvedges are wound with the warp that names them, else with the first: none is forgotten."""
        made = dressed(tmp_path, WARP + warps, draft=POINT + "floating_selvedges: 1\n")
        assert made.sleyed is not None

        assert (80, floating) == (len(made.threading), made.floating)
        assert wound == [sum(strand.ends for strand in each.strands) for each in made.windings]
        assert sum(wound) == made.ends + made.floating
        assert 40 + floating == made.sleyed.dents

    def test_the_drafts_colours(self, tmp_path: Path) -> None:
        """A warp that says no order takes its draft's, begun again as often as there are ends."""
        draft = POINT_IN_TWO
        made = dressed(tmp_path, "title: Check\nends: 20\ndraft: point\nwarp: {wound: 3 yd}\n", draft=draft)
        (winding,) = made.windings

        assert winding.by_draft
        assert {"dark": 12, "light": 8} == {strand.name: strand.ends for strand in winding.strands}


WARP = "title: Two\nyarn: linen-20-2\nreed: 10/in\nsley: 2\ndraft: point\nwarp: "
POINT_IN_TWO = "threading: 1-4\ntie_up: 1+2, 2+3, 3+4, 4+1\ntreadling: 1-4\nwarp_colours: 4 dark, 4 light\n"
