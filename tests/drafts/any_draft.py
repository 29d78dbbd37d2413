"""Drafts at random, for rules that hold for every draft."""

from __future__ import annotations

from hypothesis import strategies as st

from journal_tools.drafts import Draft

SHAFTS = 5
SETS = st.frozensets(st.integers(1, SHAFTS), max_size=4)
ONE = st.integers(1, SHAFTS).map(lambda shaft: frozenset({shaft}))


@st.composite
def drafts(draw: st.DrawFn, end: st.SearchStrategy[frozenset[int]] = SETS) -> Draft:
    """Any draft, by treadles or by lifts, rising or sinking, its orders as long as its threads."""
    threading = tuple(draw(st.lists(end, min_size=1, max_size=9)))
    picks = draw(st.integers(1, 8))
    tie_up = tuple(draw(st.lists(SETS, min_size=1, max_size=4))) if draw(st.booleans()) else None
    pressed = st.frozensets(st.integers(1, len(tie_up or ()) or 1), max_size=2)
    treadling = tuple(draw(pressed) for _ in range(picks)) if tie_up else None
    lifts = None if tie_up else tuple(draw(SETS) for _ in range(picks))
    colours = tuple(draw(st.lists(st.sampled_from("abc"), min_size=len(threading), max_size=len(threading))))
    return Draft(threading, tie_up, treadling, lifts, draw(st.booleans()), colours, ("x", "y"))
