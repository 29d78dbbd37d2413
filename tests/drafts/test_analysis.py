"""What a draft makes, told before a single end is threaded."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.extra.numpy import array_shapes, arrays
from numpy.typing import NDArray

from journal_tools.drafts import Draft, named_weave, parse_lift_plan, parse_threading
from journal_tools.drafts.analysis import HELD, analysed
from journal_tools.drafts.analysis_words import sentences
from journal_tools.drafts.fewest import plain_weave_on
from journal_tools.drafts.floats import floats, too_long
from journal_tools.drafts.operations import fewest_shafts
from journal_tools.drafts.places import places
from tests.drafts.looking import INCH, draft, look

MORE_WARP = ("1, 2, 3, 2", "1+2, 2+3, 1+3", "1-3")
CLOTH = arrays(bool, array_shapes(min_dims=2, max_dims=2, max_side=9), elements=st.booleans())
class TestFace:
    @pytest.mark.parametrize(
        ("epi", "ppi", "face", "words"),
        [
            (20, 20, "balanced", ", balanced."),
            (26.7, 45.9, "more weft", ", with more of its weft seen than of its warp."),
            (40, 10, "warp-faced", ", warp-faced."),
            (12.2, 36.6, "weft-faced", ", weft-faced."),
            (None, None, "balanced", "Zigzag twill."),
        ],
    )
    def test_by_the_setts(self, epi: float | None, ppi: float | None, face: str, words: str) -> None:
        """The closer system is seen more, and hides the other at three to one; without setts only the weave tells."""
        per_m = [None if each is None else each / INCH for each in (epi, ppi)]
        found = analysed(draft("1-4, 3-2"), ends_per_m=per_m[0], picks_per_m=per_m[1])

        assert face == found.face
        assert any(line.endswith(words) for line in sentences(found))

    def test_setts_before_the_weave(self) -> None:
        """A weave of more warp than weft is weft-faced where the picks are three times as close as the ends."""
        assert "weft-faced" == analysed(draft(*MORE_WARP), ends_per_m=480, picks_per_m=1441).face
        assert "warp-faced" == analysed(draft(*MORE_WARP)).face


class TestFloats:
    def test_where_and_how_long(self) -> None:
        """Waffle: on the face one pick runs over five ends, a quarter inch at twenty to the inch."""
        waffle = named_weave("waffle")
        assert waffle is not None
        found = analysed(waffle.draft, ends_per_m=20 / INCH, picks_per_m=20 / INCH)
        [weft] = [one for one in found.floats if (one.system, one.side) == ("weft", "face")]

        assert (5, ((0, 1),)) == (weft.threads, weft.at)
        assert pytest.approx(6.35) == found.float_mm(weft)

    @pytest.mark.parametrize(
        ("lifts", "words"),
        [
            ("1+2, 3+4, 1+3, 2+4", "weft: over 2 ends, on both sides, picks 1 and 2."),
            ("1, 2+3+4, 1+3, 2+4", "weft: over 3 ends, on the face in pick 1, on the back in pick 2."),
            ("2 times (1, 3, 2, 4), 3 times (2+3+4)",
             "weft: over 3 ends, on the face in 8 picks, on the back in picks 9, 10 and 11."),
        ],
    )  # fmt: skip
    def test_each_side_has_its_places(self, lifts: str, words: str) -> None:
        """Floats as long on face and back are told with the threads of each, where those are not the same."""
        found = analysed(Draft(parse_threading("1-4"), lift_plan=parse_lift_plan(lifts)))

        assert f"Longest float of the {words}" in list(sentences(found))

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

    def test_a_slip_in_words(self) -> None:
        """The question says where, what was read and what the others have."""
        said = " ".join(sentences(look("6 times (1-4), 1, 3, 3, 4, 4 times (1-4)")))

        assert "The threading repeats after 4 ends but once: end 26 is on 3 where the others have 2. A slip?" in said

    @pytest.mark.parametrize(
        ("threading", "words"),
        [
            ("10 times (1-4), 1, 3, 2, 4, 10 times (1-4)",
             "but once: ends 42 and 43 are crossed: 3, 2 where the others have 2, 3. A slip?"),
            ("11 times (1-4), 1, 2, none, 4, 4 times (1-4)", "but once: end 47 has no heddle. A slip?"),
            ("10 times (1-4), 1, 2, 2, 4, 10 times (1-4), 1, 2, 4, 9 times (1-4)",
             "but twice: end 43 is on 2 where the others have 3; an end on 3 is missing before end 87. Slips?"),
        ],
    )  # fmt: skip
    def test_slips_in_words(self, threading: str, words: str) -> None:
        """Crossed ends are told with what stands there, an end without a heddle as such, and two slips each."""
        assert f"The threading repeats after 4 ends {words}" in list(sentences(look(threading)))

    def test_unused(self) -> None:
        """Shafts that are tied and not threaded, and treadles that are not pressed, are told."""
        said = list(sentences(look("1-3", "1+2, 2+3, 3+4, 1+4", "1-3")))

        assert "Shaft 4 is moved and no end is on it." in said
        assert "Treadle 4 is tied and never pressed." in said

    @pytest.mark.parametrize(
        ("numbers", "words"),
        [([3], "end 3"), ([1, 2, 4, 5, 9], "ends 1, 2, 4, 5 and 9"), ([5, 6, 7, 8, 9, 10], "ends 5 to 10"),
         ([1, 2, 3, 4], "ends 1, 2, 3 and 4"), ([1, 3, 5, 7, 9, 11, 13, 15, 17], "9 ends, from end 1 on")],
    )  # fmt: skip
    def test_which(self, numbers: list[int], words: str) -> None:
        """Threads are told one by one, in a row from the first to the last, and only many by their number."""
        assert words == places("end", numbers)

    def test_loose_and_idle(self) -> None:
        """Threads that nothing binds are told in the plural, treadles in a row as one row."""
        said = list(sentences(look("1, 2, none, 1, 2, none", "1, 2, 1, 1, 1, 1, 1", "1, 2")))

        assert "Nothing binds ends 3 and 6: they would lie loose." in said
        assert "Treadles 3 to 7 are tied and never pressed." in said

    def test_a_treadle_that_is_not_pressed(self) -> None:
        """A shaft that is tied only to a treadle which is never pressed is not said to be moved."""
        said = " ".join(sentences(look("1-3", "1+2, 2+3, 1+3, 1+4", "1-3")))

        assert "Treadle 4 is tied and never pressed." in said
        assert "Shaft 4" not in said

    def test_shafts_are_counted(self) -> None:
        """Two shafts called 1 and 3 are two, and no fewer would do."""
        gap = analysed(Draft(parse_threading("1, 3"), lift_plan=parse_lift_plan("1, 3")))

        assert 2 == gap.needs.shafts_that_move
        assert not any("would do" in line for line in sentences(gap))

    @pytest.mark.parametrize("rising", [True, False])
    def test_as_many_as_the_change_takes(self, rising: bool) -> None:
        """The shafts that would do are those of the draft changed to the fewest, in either shed."""
        made = Draft(parse_threading("1, 2, 3, 3, 4"), lift_plan=parse_lift_plan("1, 2, 1+4"), rising=rising)

        assert fewest_shafts(made).shafts == analysed(made).needs.shafts_that_would_do

    def test_plain_weave_is_not_told_of_itself(self) -> None:
        """Of a plain weave it is not said that plain weave can be woven."""
        assert not any("on this threading" in line for line in sentences(look("1, 2", "1, 2", "1, 2")))

    def test_whose_floats(self) -> None:
        """A float is too long for cloth which is handled, or for a use that was told."""
        by_us, told = (
            " ".join(sentences(analysed(draft("1-4"), ends_per_m=100, picks_per_m=100, bears_mm=bears)))
            for bears in (HELD, 5)
        )

        assert "longer than the 3/8 in that cloth which is handled bears" in by_us
        assert "that its use bears" in told

    def test_fewest_shafts(self) -> None:
        """Four shafts of which pairs move alike could be two."""
        assert 2 == look("1-4", "1+3, 2+4", "1, 2").needs.shafts_that_would_do

    def test_for_programs(self) -> None:
        """The same as plain values, with threads counted from 1."""
        found = analysed(Draft(parse_threading("1-4"), lift_plan=parse_lift_plan("1, 1+3+4, 3, 2+3+1"))).as_json()

        assert (False, "layers", 2) == (found["hangs_together"], found["verdict"], len(found["layers"]))
        assert [1, 3] == found["layers"][0]["ends"]
        assert "2 layers, each plain weave" == found["weave"]
