"""What a draft makes, told before a single end is threaded."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.extra.numpy import array_shapes, arrays
from numpy.typing import NDArray

from journal_tools.drafts import (
    Draft,
    drawdown,
    named_weave,
    parse_lift_plan,
    parse_threading,
    parse_tie_up,
    parse_treadling,
)
from journal_tools.drafts.analysis import Analysis, analysed
from journal_tools.drafts.analysis_words import sentences
from journal_tools.drafts.fewest import plain_weave_on
from journal_tools.drafts.floats import floats, too_long
from journal_tools.drafts.naming import name_of
from journal_tools.drafts.selvedge import selvedge
from journal_tools.drafts.slips import slip_in

CLOTH = arrays(bool, array_shapes(min_dims=2, max_dims=2, max_side=9), elements=st.booleans())
TWILL = "1+2, 2+3, 3+4, 4+1"
INCH = 0.0254


def draft(threading: str, tie_up: str = TWILL, treadling: str = "1-4") -> Draft:
    """A draft in notation."""
    return Draft(parse_threading(threading), parse_tie_up(tie_up), parse_treadling(treadling))


def look(threading: str, tie_up: str = TWILL, treadling: str = "1-4", said: str = "") -> Analysis:
    """Its analysis at 20 ends and 20 picks to the inch."""
    return analysed(draft(threading, tie_up, treadling), ends_per_m=20 / INCH, picks_per_m=20 / INCH, said_weave=said)


class TestNames:
    @pytest.mark.parametrize(
        ("threading", "tie_up", "treadling", "text", "direction"),
        [
            ("1, 2", "1, 2", "1, 2", "plain weave", ""),
            ("1-4", "1+3, 2+4", "1, 2", "plain weave", ""),
            ("1, 1, 2, 2", "1, 2", "1, 1, 2, 2", "2/2 basket", ""),
            ("1, 1, 2, 2", "1, 2", "1, 2", "plain weave with ends in groups of 2", ""),
            ("1, 2", "1, 2", "1, 1, 1, 2, 2, 2", "plain weave with 3 picks in each shed", ""),
            ("1-4", TWILL, "1-4", "2/2 twill", "S"),
            ("1-4", TWILL, "4-1", "2/2 twill", "Z"),
            ("1-4", "1-4", "4-1", "1/3 twill", "Z"),
            ("1-4", "1+2+3, 2+3+4, 3+4+1, 4+1+2", "1-4", "3/1 twill", "S"),
            ("1-6", "1+2+4, 2+3+5, 3+4+6, 4+5+1, 5+6+2, 6+1+3", "1-6", "2/1/1/2 twill", "S"),
            ("1-4, 3-2", TWILL, "1-4", "zigzag twill", ""),
            ("1-4, 3-2", TWILL, "1-4, 3-2", "point twill", ""),
            ("1-8, 7-2", "1+2+3+4, 2+3+4+5, 3+4+5+6, 4+5+6+7, 5+6+7+8, 6+7+8+1, 7+8+1+2, 8+1+2+3", "1-8",
             "zigzag of 4/4 twill", ""),
            ("1, 2, 4, 3", TWILL, "1-4", "broken 2/2 twill", ""),
            ("1-4, 2, 4, 1", TWILL, "1, 3, 2, 2", "not named", ""),
        ],
    )  # fmt: skip
    def test_by_the_interlacement(self, threading: str, tie_up: str, treadling: str, text: str, direction: str) -> None:
        """A cloth is named by what it weaves; lines that fall to the right in the drawing are S, that rise are Z."""
        if text == "1/3 twill":
            tie_up = "1, 2, 3, 4"
        found = look(threading, tie_up, treadling).name

        assert (text, direction) == (found.text, found.direction)

    @pytest.mark.parametrize(("ends", "step"), [(5, 2), (5, 3), (7, 2), (8, 3), (8, 5), (10, 3), (12, 7)])
    def test_satins(self, ends: int, step: int) -> None:
        """A satin is told with its step, and its back is the sateen of the same step."""
        over = np.ones((ends, ends), dtype=bool)
        over[np.arange(ends), np.arange(ends) * step % ends] = False

        assert ("satin", f"{ends}-end satin", step) == (name_of(over).kind, name_of(over).text, name_of(over).step)
        assert ("sateen", step) == (name_of(~over).kind, name_of(~over).step)

    def test_said_and_found(self) -> None:
        """A draft that is said to be what it is not is told so; one that is a kind of it, or has no name, is not."""
        assert look("1-4", said="plain weave").agrees is False
        assert look("1-4", said="2/2 twill").agrees is True
        assert look("1-4", said="a word of my own").agrees is None
        assert look("1, 2, 4, 3", said="broken twill").agrees is True
        assert "It is said to be plain weave, and what it weaves is 2/2 twill." in list(
            sentences(look("1-4", said="plain weave"))
        )

    def test_its_face(self) -> None:
        """Plain weave is warp-faced by its sett, a 3/1 twill by its weave."""
        plain = draft("1, 2", "1, 2", "1, 2")

        assert "warp-faced" == analysed(plain, ends_per_m=1600, picks_per_m=400).face
        assert "weft-faced" == analysed(plain, ends_per_m=250, picks_per_m=1500).face
        assert "balanced" == analysed(plain).face
        assert "warp-faced" == look("1-4", "1+2+3, 2+3+4, 3+4+1, 4+1+2").face


class TestFloats:
    def test_where_and_how_long(self) -> None:
        """Waffle: on the face one pick runs over five ends, a quarter inch at twenty to the inch."""
        waffle = named_weave("waffle")
        assert waffle is not None
        found = analysed(waffle.draft, ends_per_m=20 / INCH, picks_per_m=20 / INCH)
        [weft] = [one for one in found.floats if (one.system, one.side) == ("weft", "face")]

        assert (5, ((0, 1),)) == (weft.threads, weft.at)
        assert pytest.approx(6.35) == found.float_mm(weft)

    @given(CLOTH)
    def test_the_back_is_the_face_turned_over(self, over: NDArray[np.bool_]) -> None:
        """What floats on the back floats on the face of the same cloth with every crossing changed."""
        back = {(one.system, one.threads) for one in floats(over) if one.side == "back"}
        face = {(one.system, one.threads) for one in floats(~over) if one.side == "face"}

        assert back == face

    def test_too_long(self) -> None:
        """In a 5-end satin every float of four is marked where three are borne, and none where four are."""
        over = np.ones((5, 5), dtype=bool)
        over[np.arange(5), np.arange(5) * 2 % 5] = False

        assert 20 == int(too_long(over, 3, None).sum())
        assert not too_long(over, 4, 4).any()

    def test_never_crossed(self) -> None:
        """An end that is never under is no float of so many picks, but one without end."""
        over = np.array([[True, True], [True, False]])
        [warp] = [one for one in floats(over) if (one.system, one.side) == ("warp", "face")]

        assert (None, ((0, 0),)) == (warp.threads, warp.at)


class TestBeforeThreading:
    @pytest.mark.parametrize(
        ("threading", "lifts"),
        [("1-4", ({1, 3}, {2, 4})), ("1-4, 3-2", ({1, 3}, {2, 4})), ("1-4, 3-1", ({1, 3}, {2, 4})),
         ("12 times (1-4), 1", ({1, 3}, {2, 4})), ("5 times (1, 2), 1", ({1}, {2})), ("1-5", None), ("1-3", None),
         ("1, 2, 2, 3", None), ("1, 2, none, 2", None)],
    )  # fmt: skip
    def test_plain_weave(self, threading: str, lifts: tuple[set[int], set[int]] | None) -> None:
        """Plain weave wants every other end on shafts of its own; a last end like the first does no harm, and five
        in a straight draw do not close."""
        found = plain_weave_on(draft(threading, "1+2+3+4+5", "1"))

        assert lifts == (None if found is None else tuple(map(set, found)))

    @pytest.mark.parametrize(
        ("order", "kind", "place"),
        [
            ([1, 2, 3, 4] * 4 + [1, 3, 3, 4] + [1, 2, 3, 4] * 3, "wrong", 17),
            ([1, 2, 3, 4] * 4 + [1, 3, 4] + [1, 2, 3, 4] * 3, "missing", 17),
            ([1, 2, 3, 4] * 4 + [1, 2, 2, 3, 4] + [1, 2, 3, 4] * 3, "extra", 18),
            ([1, 2, 2, 4] + [1, 2, 3, 4] * 7, "wrong", 2),
        ],
    )
    def test_a_slip(self, order: list[int], kind: str, place: int) -> None:
        """One end that breaks a repeat which holds before and after is asked about, with its place."""
        found = slip_in(order)
        assert found is not None

        assert (kind, place, 4) == (found.kind, found.place, found.repeat)

    @pytest.mark.parametrize(
        "order",
        [
            [1, 2, 3, 4] * 8,
            [1, 2, 3, 4] * 8 + [1],
            [1, 2, 3, 4] * 8 + [3, 2, 1, 4] * 8,
            [1, 2, 3, 4, 3, 2] * 5 + [1],
            [1, 2, 1, 2, 3, 4, 3, 4] * 3 + [1, 2],
        ],
    )
    def test_no_slip(self, order: list[int]) -> None:
        """A balancing end, a border and a pattern that turns are no slips."""
        assert slip_in(order) is None

    def test_a_slip_in_words(self) -> None:
        """The question says where, what was read and what the others have."""
        said = " ".join(sentences(look("6 times (1-4), 1, 3, 3, 4, 4 times (1-4)")))

        assert "The threading repeats after 4 ends but once: end 26 is on 3 where the others have 2. A slip?" in said

    def test_selvedge(self) -> None:
        """Plain weave catches its edges, a 2/2 twill when it is begun from the right side, and not with edges alike."""
        plain, twill = (drawdown(w.draft) for name in ("plain", "2/2 twill") if (w := named_weave(name)))

        assert selvedge(plain).catches
        assert selvedge(twill).catches
        alike = selvedge(twill[:, [0, 1, 0]])  # both edges stay for the same two picks: at one every turn slips
        assert {0, alike.turns} == {alike.missed_left, alike.missed_right}

    def test_a_floating_selvedge_catches(self) -> None:
        """An edge that misses is told, and not where the draft has floating selvedges."""
        plain = draft("1-4, 3-2", TWILL, "1-4, 3-2")
        floating = replace(plain, floating_selvedges=1)

        assert any("floating selvedge catches" in line for line in sentences(analysed(plain)))
        assert not any("floating selvedge" in line for line in sentences(analysed(floating)))

    def test_unused(self) -> None:
        """Shafts that are tied and not threaded, and treadles that are not pressed, are told."""
        said = list(sentences(look("1-3", "1+2, 2+3, 3+4, 1+4", "1-3")))

        assert "Shaft 4 is moved and no end is on it." in said
        assert "Treadle 4 is tied and never pressed." in said

    def test_fewest_shafts(self) -> None:
        """Four shafts of which pairs move alike could be two."""
        assert 2 == look("1-4", "1+3, 2+4", "1, 2").needs.shafts_that_would_do

    def test_for_programs(self) -> None:
        """The same as plain values, with threads counted from 1."""
        found = analysed(Draft(parse_threading("1-4"), lift_plan=parse_lift_plan("1, 1+3+4, 3, 2+3+1"))).as_json()

        assert (False, "layers", 2) == (found["hangs_together"], found["verdict"], len(found["layers"]))
        assert [1, 3] == found["layers"][0]["ends"]
        assert "not named" == found["weave"]
