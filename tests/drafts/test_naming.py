"""Weaves named by what they weave, wherever the draft begins. The names are common practice, no source."""

from __future__ import annotations

from itertools import product

import numpy as np
import pytest

from journal_tools.drafts import drawdown, named_weave, weave_names
from journal_tools.drafts.analysis_words import sentences
from journal_tools.drafts.naming import Name, name_of
from journal_tools.drafts.repeat import true_repeat
from tests.drafts.looking import TWILL, draft, look

THREE_UP = "1+2+3, 2+3+4, 3+4+1, 4+1+2"
EIGHT = "1+2+3+4, 2+3+4+5, 3+4+5+6, 4+5+6+7, 5+6+7+8, 6+7+8+1, 7+8+1+2, 8+1+2+3"
HUCK = ("1+4, 2, 2+3, 1", "1, 2, 1, 2, 1, 3, 4, 3, 4, 3")
SIX_OFF = ", ".join("+".join(str(n) for n in range(1, 7) if n != off) for off in range(1, 7))
BELT = "3 times (1, 2), 4 times (3, 4), 1, 2"
ON_ONE, ON_TWO = "3 times (1, 3, 1, 4)", "2 times (2, 3, 2, 4)"
OVERSHOT = "1, 2, 1, 2, 3, 2, 3, 4, 3, 4, 1, 4, 1, 4"
FOUR = ", ".join(f"{pattern}, 5, {pattern}, 6" for pattern in (1, 2, 3, 4))
WINTER = "5, 1, 6, 2, 5, 2, 6, 1, 5, 3, 6, 4, 5, 4, 6, 3"
MS_AND_OS = "4 times (1, 2), 4 times (3, 4)"
FOUND = [
    ("1, 2", "1, 2", "1, 2", "plain weave", ""),
    ("1-4", "1+3, 2+4", "1, 2", "plain weave", ""),
    ("1, 1, 2, 2", "1, 2", "1, 1, 2, 2", "2/2 basket", ""),
    ("1, 1, 2, 2", "1, 2", "1, 2", "plain weave with ends in groups of 2", ""),
    ("1, 2", "1, 2", "1, 1, 1, 2, 2, 2", "plain weave with 3 picks in each shed", ""),
    ("1, 2, 2, 1, 2", "1, 2", "1, 2", "plain weave with doubled ends", ""),
    ("1, 2, 2, 1, 2", "1, 2", "1, 2, 1, 1, 2", "plain weave with doubled ends and picks", ""),
    ("1, 2, 2, 2, 1, 2", "1, 2", "1, 2", "plain weave in groups that differ", ""),
    ("1-4", TWILL, "1-4", "2/2 twill", "Z"),
    ("1-4", TWILL, "4-1", "2/2 twill", "S"),
    ("4-1", TWILL, "1-4", "2/2 twill", "S"),
    ("1-4", "1, 2, 3, 4", "4-1", "1/3 twill", "S"),
    ("1-4", THREE_UP, "1-4", "3/1 twill", "Z"),
    ("1-6", "1+2+4, 2+3+5, 3+4+6, 4+5+1, 5+6+2, 6+1+3", "1-6", "2/1/1/2 twill", "Z"),
    ("1-4, 3-2", TWILL, "1-4", "zigzag twill", ""),
    ("1-4, 3-2", TWILL, "1-4, 3-2", "point twill", ""),
    ("3, 2, 1, 2, 3, 4", TWILL, "4, 3, 2, 1, 2, 3", "point twill", ""),
    ("1-8, 7-2", EIGHT, "1-8", "zigzag of 4/4 twill", ""),
    ("1-8, 7-2", EIGHT, "1-8, 7-2", "point twill of 4/4 twill, in diamonds", ""),
    ("3 times (1-4), 3 times (2, 1, 4, 3)", TWILL, "1-4", "herringbone of 2/2 twill", ""),
    ("1, 2, 4, 3", TWILL, "1-4", "broken 2/2 twill", ""),
    ("1-4", THREE_UP, "1, 2, 4, 3", "3/1 broken twill", ""),
    ("1-4, 2, 4, 1", TWILL, "1, 3, 2, 2", "not named", ""),
    ("1-4, 3-2, 1", TWILL, "1-4", "zigzag twill", ""),
    ("1-4, 3-2, 1", TWILL, "1-4, 3-2", "point twill", ""),
    ("1-4, 3-2, 1", TWILL, "1-4, 3-2, 1", "point twill", ""),
    ("1, 2, 1", "1, 2", "1, 2, 1", "plain weave", ""),
    ("1-4, 4-1", TWILL, "1-4", "zigzag of 2/2 twill, with doubled ends where it turns", ""),
    ("2 times (1-4), 2 times (4-1)", TWILL, "1-4", "zigzag of 2/2 twill, with doubled ends where it turns", ""),
    ("1, 1, 2, 2, 3, 3, 4, 4", TWILL, "1-4", "2/2 twill, its ends in pairs", "Z"),
    ("1-4", TWILL, "1, 1, 1, 2, 2, 2, 3, 3, 3, 4, 4, 4", "2/2 twill, its picks in groups of 3", "Z"),
    ("1, 1, 2, 2, 3, 3, 4, 4", TWILL, "4, 4, 3, 3, 2, 2, 1, 1", "2/2 twill, its ends and picks in pairs", "S"),
    ("1-6, 5-2", "1+2+3+4+6, 1+2+3+5, 1+2+4+6, 1+3+5, 2+4, 1+3", "1-6, 5-2", "waffle weave", ""),
    ("1-5, 4-2", "1+2+3+4, 1+2+4+5, 1+3+5, 1+2+4, 1+3", "1-5, 4-2", "not named", ""),
    ("1-5, 4-2", "1+2+3+5, 1+2+4, 1+3+5, 2+4, 1+3", "1-5, 4-2", "waffle weave", ""),
    ("1, 3, 1, 3, 1, 2, 4, 2, 4, 2", *HUCK, "huck", ""),
    ("1-6", "1, 2, 3, 4, 5, 6", "1, 3, 5, 2, 6, 4", "6-end sateen, irregular", ""),
    ("1, 3, 5, 2, 6, 4", SIX_OFF, "1-6", "6-end satin, irregular", ""),
    (BELT, "1+2, 3+4, 1+3, 2+4", f"{ON_ONE}, {ON_TWO}", "monk's belt", ""),
    (BELT, "1+2, 3+4, 1+3, 2+4", f"{ON_ONE}, {ON_TWO}, 4 times (3, 4)", "monk's belt", ""),
    (BELT, "1+2, 3+4, 1+3, 2+4", "1, 2, 3, 4", "not named", ""),
    (OVERSHOT, "1+2, 2+3, 3+4, 1+4, 1+3, 2+4", FOUR, "pattern weft over plain ground, in 4 blocks", ""),
    ("1-4, 3-2", "1+2, 2+3, 3+4, 1+4, 1+3, 2+4", FOUR, "pattern weft over plain ground, in 4 blocks", ""),
    (OVERSHOT, "1+2, 2+3, 3+4, 1+4", "3 times (1), 3 times (2), 3 times (3), 3 times (4)", "not named", ""),
    ("2 times (1, 3, 2, 3), 1, 4, 2, 4", "1+3, 2+3, 1+4, 2+4, 1+2, 3+4", WINTER, "summer and winter in 2 blocks", ""),
    ("1, 2, 1, 2, 3, 4, 3, 4, 1, 3, 1, 3, 2, 4, 2, 4", "1+2, 3+4, 1+3, 2+4", MS_AND_OS, "M's and O's", ""),
]


@pytest.mark.parametrize(("threading", "tie_up", "treadling", "text", "direction"), FOUND)
def test_by_the_interlacement(threading: str, tie_up: str, treadling: str, text: str, direction: str) -> None:
    """A cloth is named by what it weaves; lines that rise to the right as it is woven are Z, that fall are S."""
    found = look(threading, tie_up, treadling).name

    assert (text, direction) == (found.text, found.direction)


@pytest.mark.parametrize(("threading", "tie_up", "treadling", "text", "direction"), FOUND)
def test_wherever_it_begins(threading: str, tie_up: str, treadling: str, text: str, direction: str) -> None:
    """A repeat has one name, whichever of its ends and picks is written first."""
    repeat = true_repeat(drawdown(draft(threading, tie_up, treadling)))
    picks, ends = repeat.shape
    begun = [np.roll(repeat, by, axis=(0, 1)) for by in {*((n % picks, n % ends) for n in range(40)), (0, 1), (1, 0)}]

    assert {(text, direction)} == {(found.text, found.direction) for found in map(name_of, begun)}


@pytest.mark.parametrize("name", weave_names())
def test_named_weaves_wherever_they_begin(name: str) -> None:
    """A weave of the table has one name at each of its ends and picks."""
    weave = named_weave(name)
    assert weave is not None
    over = drawdown(weave.draft)
    shifts = product(*map(range, over.shape))

    assert 1 == len({name_of(np.roll(over, by, axis=(0, 1))) for by in shifts})


def test_where_it_is_doubled() -> None:
    """Of plain weave with a thread too many it is told where."""
    said = list(sentences(look("1, 2, 2, 1, 2", "1, 2", "1, 2")))

    assert "Plain weave with doubled ends (end 3), balanced." in said


class TestSatins:
    @pytest.mark.parametrize(("ends", "step"), [(5, 2), (5, 3), (7, 2), (8, 3), (8, 5), (10, 3), (12, 7)])
    def test_satins(self, ends: int, step: int) -> None:
        """A satin is told with its step, and its back is the sateen of the same step."""
        over = np.ones((ends, ends), dtype=bool)
        over[np.arange(ends), np.arange(ends) * step % ends] = False

        assert ("satin", f"{ends}-end satin", step) == (name_of(over).kind, name_of(over).text, name_of(over).step)
        assert ("sateen", step) == (name_of(~over).kind, name_of(~over).step)


@pytest.mark.parametrize("times", [2, 3, 5])
def test_a_slip_makes_no_other_weave(times: int) -> None:
    """A straight 2/2 twill with one end wrong, missing or too many has no name: its lines do not break regularly."""
    straight, names = [1, 2, 3, 4] * times, set()
    for place, shaft in product(range(len(straight)), range(1, 5)):
        before, after = straight[:place], straight[place + 1 :]
        for threading in ([*before, shaft, *after], [*before, *after], [*before, shaft, *straight[place:]]):
            if threading != straight:
                names.add(look(", ".join(map(str, threading))).name.text)

    # 1-4 twice with the last end missing is 1-4, 1-3, and so on: none of them goes straight on either.
    assert {"not named"} == names - {"2/2 twill"}


def test_a_slip_in_huck() -> None:
    """Huck with one end on another shaft is no broken twill, though it too has four different ends and picks."""
    ends = ["1", "3", "1", "3", "1", "2", "4", "2", "4", "2"]
    names = {
        look(", ".join([*ends[:place], str(shaft), *ends[place + 1 :]]), *HUCK).name.text
        for place, shaft in product(range(10), range(1, 5))
    }

    assert {"huck", "not named"} == names


def test_as_it_is_woven_and_as_it_is_drawn() -> None:
    """Lines that rise in the cloth before the weaver fall in a drawing with the first pick at the top."""
    said = list(sentences(look("1-4")))

    assert Name("twill", "2/2 twill", "Z") == look("1-4").name
    assert "2/2 twill, its lines rising to the right as it is woven, first end at the left, balanced." in said
    assert "In the drawing, which has its first pick at the top, they fall." in said
