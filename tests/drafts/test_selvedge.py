"""Whether the weft goes round the outermost end, counted by hand where the weft turns."""

from __future__ import annotations

from dataclasses import replace

import pytest

from journal_tools.drafts import drawdown
from journal_tools.drafts.analysis import analysed
from journal_tools.drafts.analysis_words import sentences
from journal_tools.drafts.selvedge import selvedge, shuttles
from tests.drafts.looking import TWILL, draft

PLAIN = ("1, 2", "1, 2", "1, 2")
BIRDS_EYE = ("1-4, 3-2", TWILL, "1-4, 3-2")


@pytest.mark.parametrize(
    ("parts", "turns", "missed", "begin", "otherwise"),
    [
        (PLAIN, 1, (0, 0), "left", 0),
        (("1-4",), 2, (0, 0), "right", 4),
        (("4-1",), 2, (0, 0), "left", 4),
        (("1-4, 1",), 2, (2, 0), "left", 2),
        (BIRDS_EYE, 3, (1, 2), "left", 3),
        (("1, 2, 3", "1, 2, 3", "1-3"), 3, (1, 1), "left", 2),
    ],
)
def test_turns(parts: tuple[str, ...], turns: int, missed: tuple[int, int], begin: str, otherwise: int) -> None:
    """The weft turns at each edge every second pick; a 2/2 twill catches at all of them begun from one side only."""
    found = selvedge(drawdown(draft(*parts)))

    assert (turns, missed, begin) == (found.turns, (found.missed_left, found.missed_right), found.begin)
    assert otherwise == found.missed_otherwise


def said(*parts: str, floating: int = 0) -> str:
    """All that is said of a draft."""
    return " ".join(sentences(analysed(replace(draft(*parts), floating_selvedges=floating))))


def test_where_to_begin() -> None:
    """Where to begin is told where it matters: in a 2/2 twill, not in plain weave."""
    begin = "Begin with the shuttle at the right: then the weft catches the outermost end at every turn."

    assert begin in said("1-4")
    assert "shuttle" not in said("1-4", floating=1)
    assert "shuttle" not in said(*PLAIN)


def test_what_is_missed() -> None:
    """Missed turns are told with how many there are at that edge, and all of them as every turn."""
    some = "misses the outermost end at some turns: 1 of 3 at the left and 2 of 3 at the right."
    every = "Begun from the left, the weft misses the outermost end: every turn at the left."

    assert f"Begun from the left, the weft {some} A floating selvedge catches them all." in said(*BIRDS_EYE)
    assert every in said("1-4, 1")
    assert "selvedge" not in said(*BIRDS_EYE, floating=1)


def test_several_shuttles() -> None:
    """With two shuttles, by role or by colour, nothing is said: each turns for itself."""
    by_role = replace(draft(*BIRDS_EYE), weft_order=("pattern", "tabby"))
    by_colour = replace(draft(*BIRDS_EYE), weft_colours=("slate", "bone"))

    for made in (by_role, by_colour):
        assert 2 == shuttles(made)
        assert not any("outermost end" in line for line in sentences(analysed(made)))
    assert 1 == shuttles(draft(*BIRDS_EYE))
