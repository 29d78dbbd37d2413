"""Operations on drafts, each held to its inverse or to the cloth that must not change."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from journal_tools.drafts import Draft, drawdown, parse_lift_plan, parse_threading
from journal_tools.drafts.operations import (
    as_lift_plan,
    as_tie_up,
    fewer_treadles,
    fewest_shafts,
    mirrored,
    other_shed,
    reversed_picks,
    turned,
)
from journal_tools.quantities import Unreadable
from tests.drafts.any_draft import ONE, drafts

SEVEN_SHEDS = Draft(parse_threading("1-4"), lift_plan=parse_lift_plan("1, 2, 3, 4, 1+2, 3+4, 1+2+3+4"))
"""Two sheds make the last one, and two shafts each of those: with two feet not both at once."""


@given(drafts())
def test_mirrored(draft: Draft) -> None:
    """Left for right turns the cloth and its colours over sideways, and twice it is the draft again."""
    assert np.array_equal(drawdown(draft)[:, ::-1], drawdown(mirrored(draft)))
    assert np.array_equal(drawdown(draft), drawdown(mirrored(mirrored(draft))))
    assert draft.threading == mirrored(mirrored(draft)).threading


@given(drafts())
def test_reversed_picks(draft: Draft) -> None:
    """The last pick first, and twice the draft again."""
    assert np.array_equal(drawdown(draft)[::-1], drawdown(reversed_picks(draft)))
    assert draft.picks == reversed_picks(reversed_picks(draft)).picks


@given(drafts())
def test_turned(draft: Draft) -> None:
    """By a quarter: each pick has become an end that lies as the weft lay; twice it is the same cloth."""
    assert np.array_equal(~drawdown(draft).T, drawdown(turned(draft)))
    assert draft.rising == turned(draft).rising
    assert np.array_equal(drawdown(draft), drawdown(turned(turned(draft))))


@given(drafts())
def test_tie_up_and_lift_plan(draft: Draft) -> None:
    """By lifts and by treadles it is the same cloth, and there and back the same lift plan."""
    lifted = as_lift_plan(draft)

    assert np.array_equal(drawdown(draft), drawdown(lifted))
    assert lifted == as_lift_plan(as_tie_up(lifted))
    assert len(set(draft.picks)) == as_tie_up(draft).treadles


@given(drafts(), st.integers(1, 3))
@example(SEVEN_SHEDS, 2)
def test_fewer_treadles(draft: Draft, at_once: int) -> None:
    """With several pressed at once it is the same cloth, never on more treadles, and never more at once than feet."""
    fewer = fewer_treadles(draft, at_once)

    assert np.array_equal(drawdown(draft), drawdown(fewer))
    assert fewer.treadles <= max(1, len(set(draft.picks)))
    assert all(len(pressed) <= at_once for pressed in fewer.treadling or ())


def test_two_feet_on_four_shafts() -> None:
    """The six sheds of a 2/2 twill with its tabby are woven with two feet on four treadles."""
    draft = Draft(parse_threading("1-4"), lift_plan=parse_lift_plan("1+2, 2+3, 3+4, 4+1, 1+3, 2+4"))

    assert 6 == as_tie_up(draft).treadles
    assert 4 == fewer_treadles(draft).treadles


@given(drafts(ONE))
def test_other_shed(draft: Draft) -> None:
    """On a loom whose shafts move the other way the same cloth is woven, and back again the same sheds are named."""
    changed = other_shed(draft)

    assert draft.rising != changed.rising
    assert np.array_equal(drawdown(draft), drawdown(changed))


def test_an_end_without_a_heddle_keeps_the_shed() -> None:
    """An end on no shaft lies under in a rising shed and over in a sinking one, so the shed cannot be changed."""
    with pytest.raises(Unreadable) as caught:
        other_shed(Draft(parse_threading("1, none"), lift_plan=parse_lift_plan("1")))
    assert "End 2 is on no shaft; the shed cannot be changed for it." == caught.value.right


@given(drafts())
def test_fewest_shafts(draft: Draft) -> None:
    """It is the same cloth in the same shed and treadling, on as many shafts as there are different ends that move."""
    fewest = fewest_shafts(draft)
    over = drawdown(draft)
    moved = over if draft.rising else ~over

    assert np.array_equal(over, drawdown(fewest))
    assert (draft.rising, draft.treadling) == (fewest.rising, fewest.treadling)
    assert len({column.tobytes() for column in moved.T if column.any()}) == fewest.shafts


def test_two_feet_save_what_they_can() -> None:
    """Of seven sheds on four shafts six keep a treadle: with two feet, four cannot be pressed for one shed."""
    assert 6 == fewer_treadles(SEVEN_SHEDS).treadles
    assert 4 == fewer_treadles(SEVEN_SHEDS, at_once=4).treadles


def test_a_colour_order_longer_than_the_threading() -> None:
    """Mirrored, an order of more threads than the threading keeps them all, the last one first."""
    draft = Draft(parse_threading("1, 2"), lift_plan=parse_lift_plan("1, 2"), warp_colours=("a", "a", "b", "c"))

    assert ("c", "b", "a", "a") == mirrored(draft).warp_colours


def test_floating_selvedges_stay_when_turned() -> None:
    """A draft with a floating selvedge has one when it is turned."""
    draft = Draft(parse_threading("1, 2"), lift_plan=parse_lift_plan("1, 2"), floating_selvedges=1)

    assert 1 == turned(draft).floating_selvedges


def sets_of(shafts: int, first: int) -> tuple[frozenset[int], ...]:
    """All different sets of so many shafts, from the so-manieth on."""
    return tuple(frozenset(n for n in range(1, shafts + 1) if k >> (n - 1) & 1) for k in range(first, 2**shafts))


@pytest.mark.parametrize(("change", "what"), [(turned, "shafts"), (as_tie_up, "treadles")])
def test_more_sheds_than_can_be_tied(change: Callable[[Draft], Draft], what: str) -> None:
    """Of 246 different sheds no tie-up and no threading is made, since no loom and no reader takes so many."""
    with pytest.raises(Unreadable) as caught:
        change(Draft(parse_threading("1-8"), lift_plan=sets_of(8, 10)))
    assert f"246 {what} would be wanted, and 200 are the most." == caught.value.right


def test_more_ends_than_shafts_are_counted() -> None:
    """Ends that move in 246 different ways are not put on one shaft each."""
    with pytest.raises(Unreadable) as caught:
        fewest_shafts(Draft(sets_of(8, 10), lift_plan=parse_lift_plan("1-8")))
    assert "246 shafts would be wanted, and 200 are the most." == caught.value.right


def test_two_feet_and_many_sheds() -> None:
    """246 sheds on eight shafts are woven with two feet on few treadles; beyond 1,000 none are looked for."""
    draft = Draft(parse_threading("1-8"), lift_plan=sets_of(8, 10))
    fewer = fewer_treadles(draft)

    assert draft.picks == fewer.picks
    assert fewer.treadles < 60
    with pytest.raises(Unreadable) as caught:
        fewer_treadles(Draft(parse_threading("1-10"), lift_plan=sets_of(10, 10)))
    assert "It has 1,014 different sheds; which of them others make is looked for among 1,000." == caught.value.right
