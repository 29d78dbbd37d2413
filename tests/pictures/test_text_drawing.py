"""A draft in characters: what stands where, what is cut, what is marked."""

from __future__ import annotations

import numpy as np

from journal_tools.drafts import Draft, parse_lift_plan, parse_threading, parse_tie_up, parse_treadling
from journal_tools.pictures.text_drawing import MOST_WIDE, text_drawing

WAYS = "End 1 is at the left and pick 1 at the top; on the loom the cloth grows upwards."


def test_lifts_beside_it() -> None:
    """With a lift plan the shafts of each pick stand beside the cloth, and above them is nothing."""
    draft = Draft(parse_threading("1-3"), lift_plan=parse_lift_plan("1+3, 2"))

    assert [". . 3", ". 2 .", "1 . .", "", "██  ██  1 . 3", "  ██    . 2 .", "", WAYS] == list(text_drawing(draft))


def test_marks() -> None:
    """Marked crossings have signs of their own, with the warp over and with the weft over, and it says which."""
    draft = Draft(parse_threading("1, 2"), lift_plan=parse_lift_plan("1, 2"))
    drawn = list(text_drawing(draft, np.array([[True, True], [False, False]])))

    assert ["▓▓░░  1 .", "  ██  . 2"] == drawn[3:5]
    assert drawn[-1].startswith("▓▓ (warp) and ░░ (weft) are crossings in a float")
    assert WAYS == list(text_drawing(draft, np.zeros((2, 2), dtype=bool)))[-1]


def test_wide_drafts() -> None:
    """What fits with one character to a thread is drawn so; of wider and longer ones the first are, and it says so."""
    narrow = Draft(parse_threading("15 times (1-4)"), parse_tie_up("1-4"), parse_treadling("1-4"))
    wide = Draft(parse_threading("50 times (1-4)"), parse_tie_up("1-4"), parse_treadling("25 times (1-4)"))
    drawn, cut = list(text_drawing(narrow)), list(text_drawing(wide, whole="--to whole.png"))

    assert (60 + 2 + 4, WAYS) == (max(map(len, drawn[:-1])), drawn[-1][:80])
    assert MOST_WIDE == max(map(len, cut[:-2]))
    assert "These are the first 72 of 200 ends and 64 of 100 picks: --to whole.png has all." == cut[-1]


def test_many_lifts() -> None:
    """Lifts that leave no room for the cloth are left out, and it says so."""
    draft = Draft(parse_threading("1-60, 1-60"), lift_plan=parse_lift_plan("1-60"))

    assert "The lifts do not fit beside it." in list(text_drawing(draft))
