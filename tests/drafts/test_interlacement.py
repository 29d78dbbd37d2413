"""Which thread lies on top: the one function against two independent ways to reckon it."""

from __future__ import annotations

import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from journal_tools.drafts import Draft, drawdown, parse_lift_plan, parse_threading, parse_tie_up, parse_treadling


@st.composite
def drafts(draw: st.DrawFn) -> Draft:
    """Any small draft, with ends on no shaft or several, and picks with no treadle or several."""
    shafts = draw(st.integers(1, 8))
    some_shafts = st.frozensets(st.integers(1, shafts), max_size=3)
    threading = tuple(draw(st.lists(some_shafts, min_size=1, max_size=12)))
    rising = draw(st.booleans())
    if draw(st.booleans()):
        return Draft(threading, lift_plan=tuple(draw(st.lists(some_shafts, min_size=1, max_size=12))), rising=rising)
    tie_up = tuple(draw(st.lists(some_shafts, min_size=1, max_size=8)))
    pressed = st.frozensets(st.integers(1, len(tie_up)), max_size=2)
    return Draft(threading, tie_up, tuple(draw(st.lists(pressed, min_size=1, max_size=12))), rising=rising)


def by_hand(draft: Draft) -> list[list[bool]]:
    """The interlacement crossing by crossing, from the definition."""
    rows = []
    for pick in range(len(draft.lift_plan or draft.treadling or ())):
        row = []
        for end_shafts in draft.threading:
            moved = False
            for shaft in end_shafts:
                if draft.lift_plan is not None:
                    moved = moved or shaft in draft.lift_plan[pick]
                else:
                    assert draft.treadling is not None
                    assert draft.tie_up is not None
                    for treadle in draft.treadling[pick]:
                        moved = moved or shaft in draft.tie_up[treadle - 1]
            row.append(moved if draft.rising else not moved)
        rows.append(row)
    return rows


def matrix(sets: tuple[frozenset[int], ...], numbers: int) -> np.ndarray[tuple[int, int], np.dtype[np.int64]]:
    """A row of ones and noughts a set."""
    return np.array([[int(n in some) for n in range(1, numbers + 1)] for some in sets])


@given(drafts())
def test_against_the_definition(draft: Draft) -> None:
    """A rising shed lifts an end when any shaft it hangs on is tied to a treadle pressed; a sinking one lowers it."""

    assert by_hand(draft) == drawdown(draft).tolist()


@given(drafts())
def test_against_a_product_of_matrices(draft: Draft) -> None:
    """Treadling times tie-up times threading, each as a matrix, is above nought where an end moves."""
    threading = matrix(draft.threading, draft.shafts)
    if draft.lift_plan is not None:
        lifted = matrix(draft.lift_plan, draft.shafts)
    else:
        lifted = matrix(draft.treadling or (), draft.treadles) @ matrix(draft.tie_up or (), draft.shafts)
    moved = (lifted @ threading.T) > 0

    assert np.array_equal(moved if draft.rising else ~moved, drawdown(draft))


@given(drafts())
def test_a_sinking_shed_is_the_other_side(draft: Draft) -> None:
    """The same draft in a sinking shed shows at every crossing the thread that a rising one hides."""
    other = Draft(draft.threading, draft.tie_up, draft.treadling, draft.lift_plan, rising=not draft.rising)

    assert np.array_equal(drawdown(draft), ~drawdown(other))


def test_picks_down_and_ends_across() -> None:
    """The first row is the first pick, the first column the first end as written."""
    draft = Draft(parse_threading("1, 2, 3"), lift_plan=parse_lift_plan("1, 3"))

    assert [[True, False, False], [False, False, True]] == drawdown(draft).tolist()


def test_an_end_without_a_heddle() -> None:
    """An end on no shaft stays under every pick of a rising shed and over every pick of a sinking one."""
    parts = parse_threading("1, none"), parse_tie_up("1"), parse_treadling("1")

    assert [[True, False]] == drawdown(Draft(*parts)).tolist()
    assert [[False, True]] == drawdown(Draft(*parts, rising=False)).tolist()


def test_a_wide_draft() -> None:
    """A thousand ends on forty shafts are reckoned end by end the same as the first forty."""
    plan = parse_lift_plan("1+3+40, 2-4, 39+40")
    narrow = drawdown(Draft(parse_threading("1-40"), lift_plan=plan))
    wide = drawdown(Draft(parse_threading("25 times (1-40)"), lift_plan=plan))

    assert (5, 1000) == wide.shape
    assert np.array_equal(np.tile(narrow, 25), wide)
