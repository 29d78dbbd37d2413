"""A draft beside the name that is on it."""

from __future__ import annotations

import pytest

from journal_tools.drafts.analysis import agreement
from journal_tools.drafts.analysis_words import sentences
from tests.drafts.looking import TWILL, draft, look

THREE_UP = "1+2+3, 2+3+4, 3+4+1, 4+1+2"
BELT = "3 times (1, 2), 4 times (3, 4), 1, 2"
ONE_UP = "1, 2, 3, 4"


@pytest.mark.parametrize(
    ("parts", "said", "agrees"),
    [
        (("1-4",), "2/2 twill", True),
        (("1-4",), "twill", True),
        (("1-4", THREE_UP), "twill", True),
        (("1-4",), "plain weave", False),
        (("1-4",), "3/1 twill", False),
        (("1-4",), "broken twill", False),
        (("1-4",), "a word of my own", None),
        (("1, 2, 4, 3",), "broken twill", True),
        (("1, 2, 4, 3",), "2/2 broken twill", True),
        (("1, 2, 4, 3",), "3/1 broken twill", False),
        (("1-4", THREE_UP, "1, 2, 4, 3"), "3/1 broken twill", True),
        (("1-4", THREE_UP, "1, 2, 4, 3"), "2/2 broken twill", False),
        (("1-4, 3-2",), "point twill", None),
        (("1-4, 3-2",), "herringbone", False),
        (("1-4, 3-2", TWILL, "1-4, 3-2"), "bird's eye", True),
        (("3 times (1-4), 3 times (2, 1, 4, 3)",), "herringbone", True),
        (("1, 1, 2, 2, 3, 3, 4, 4",), "2/2 twill", None),
        (("1-5", "2+3+4+5, 1+2+4+5, 1+2+3+4, 1+3+4+5, 1+2+3+5", "1-5"), "satin", True),
        (("1-5", "2+3+4+5, 1+2+4+5, 1+2+3+4, 1+3+4+5, 1+2+3+5", "1-5"), "8-end satin", False),
        (("1-6, 5-2", "1+2+3+4+6, 1+2+3+5, 1+2+4+6, 1+3+5, 2+4, 1+3", "1-6, 5-2"), "waffle", True),
        (("1, 2", "1, 2", "1, 2"), "weft-faced plain weave", True),
        (("1-4",), "weft-faced", None),
        ((BELT, "1+2, 3+4, 1+3, 2+4", "3 times (1, 3, 1, 4), 2, 3, 2, 4"), "monk's belt", True),
        (("1-4, 1, 4-2",), "rosepath", True),
        (("1-4, 3-1, 4",), "rosepath", True),
        (("2 times (1-4, 1, 4-2), 1",), "rosepath, with a border", True),
        (("1-4, 3-2",), "rosepath", None),
        (("1-4", TWILL, "1-4, 1, 4-2"), "rose path", None),
    ],
)
def test_said_and_found(parts: tuple[str, ...], said: str, agrees: bool | None) -> None:
    """A draft must be what it is said to be, in kind and in figures; where either says too little nobody can tell."""
    assert agrees is look(*parts, said=said).agrees
    assert (look(*parts).name.text if agrees is False else "") == agreement(draft(*parts), said)


@pytest.mark.parametrize(
    ("tie_up", "treadling", "said"),
    [
        (ONE_UP, "1-4", "3/1 twill"),
        (THREE_UP, "1-4", "1/3 twill"),
        (ONE_UP, "1, 2, 4, 3", "3/1 broken twill"),
    ],
)
def test_the_other_side(tie_up: str, treadling: str, said: str) -> None:
    """A draft of which the back is what it is said to be is told so, and is no mistake and no plain yes."""
    found = look("1-4", tie_up, treadling, said)

    assert ("its other side", None) == (found.answer, found.agrees)
    assert f"It is said to be {said}, and that is its other side: on the loom this one is up." in list(sentences(found))
    assert "" == agreement(found.draft, said)


def test_in_words() -> None:
    """What it is said to be and what it weaves are told together."""
    said = list(sentences(look("1-4", said="plain weave")))

    assert "It is said to be plain weave, and what it weaves is 2/2 twill." in said
