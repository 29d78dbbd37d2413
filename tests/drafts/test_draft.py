"""The parts of a draft fit together, or it says which do not."""

from __future__ import annotations

import pytest

from journal_tools.drafts import Draft, parse_lift_plan, parse_threading, parse_tie_up, parse_treadling
from journal_tools.quantities import Unreadable

STRAIGHT = parse_threading("1-4")
TIED = parse_tie_up("1+2, 2+3, 3+4, 4+1")


def test_picks_of_a_treadling() -> None:
    """A pick lifts what its treadle is tied to; of two treadles pressed together, both."""
    draft = Draft(STRAIGHT, TIED, parse_treadling("1, 1+3, none"))

    assert (frozenset({1, 2}), frozenset({1, 2, 3, 4}), frozenset()) == draft.picks


def test_picks_of_a_lift_plan() -> None:
    """A lift plan says itself what each pick lifts."""
    plan = parse_lift_plan("1+3, 2+4")

    assert plan == Draft(STRAIGHT, lift_plan=plan).picks


def test_shafts_and_treadles() -> None:
    """A draft takes as many shafts as the highest it names, threaded or tied, and a treadle a tie."""
    draft = Draft(parse_threading("1, 2"), parse_tie_up("1, 2, 5"), parse_treadling("1-3"))

    assert (5, 3) == (draft.shafts, draft.treadles)


@pytest.mark.parametrize(
    ("parts", "right"),
    [
        ({"threading": ()}, "A draft wants a threading"),
        ({"threading": STRAIGHT}, "or a lift plan; here is neither"),
        ({"threading": STRAIGHT, "tie_up": TIED}, "here is a tie-up alone"),
        ({"threading": STRAIGHT, "treadling": TIED}, "here is a treadling alone"),
        ({"threading": STRAIGHT, "tie_up": TIED, "treadling": STRAIGHT, "lift_plan": TIED}, "and not both"),
    ],
)
def test_a_part_missing(parts: dict[str, tuple[frozenset[int], ...]], right: str) -> None:
    """A draft is a threading with either tie-up and treadling or a lift plan."""
    with pytest.raises(Unreadable, match=right):
        Draft(**parts)  # type: ignore[arg-type]


def test_a_treadle_that_is_not_tied() -> None:
    """A treadle pressed that the tie-up does not have is named with its pick."""
    with pytest.raises(Unreadable, match="Pick 3 presses treadle 5, and the tie-up has 4"):
        Draft(STRAIGHT, TIED, parse_treadling("1, 2, 5"))


def test_a_loom_too_small() -> None:
    """A draft for more shafts or treadles than there are says where it needs them."""
    draft = Draft(parse_threading("1-4, 6, 5"), TIED, parse_treadling("1-4"))

    draft.refuse_beyond(shafts=6, treadles=4)
    with pytest.raises(Unreadable, match="The threading has it at end 5, and there are 4 shafts"):
        draft.refuse_beyond(shafts=4)
    with pytest.raises(Unreadable, match="The tie-up has 4 treadles, and there are 3"):
        draft.refuse_beyond(treadles=3)


def test_too_much_to_draw() -> None:
    """A draft of more crossings than are drawn is refused before anything is drawn."""
    with pytest.raises(Unreadable, match="20,000 ends by 5,000 picks"):
        Draft(parse_threading("5000 times (1-4)"), TIED, parse_treadling("1250 times (1-4)"))
