"""The longest floats, counted round the repeat."""

from __future__ import annotations

from itertools import groupby

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.extra.numpy import array_shapes, arrays
from numpy.typing import NDArray

from journal_tools.drafts import LongestFloats, drawdown, longest_floats, named_weave
from journal_tools.drafts.floats import Float, floats
from tests.drafts.looking import TWILL, look


def by_hand(thread: list[bool]) -> int | None:
    """The longest run of equal crossings along a thread that goes round, from the definition."""
    if len(set(thread)) == 1:
        return None
    longest = 0
    for start in range(len(thread)):
        length = 1
        while thread[(start + length) % len(thread)] == thread[start]:
            length += 1
        longest = max(longest, length)
    return longest


@given(arrays(bool, array_shapes(min_dims=2, max_dims=2, max_side=9), elements=st.booleans()))
def test_against_the_definition(over: NDArray[np.bool_]) -> None:
    """A float is as many crossings as its thread stays on one side, on from the last into the first."""

    def longest(threads: NDArray[np.bool_]) -> int | None:
        lengths = [by_hand(thread.tolist()) for thread in threads]
        return None if None in lengths else max(length for length in lengths if length)

    assert LongestFloats(warp=longest(over.T), weft=longest(over)) == longest_floats(over)


def test_plain_weave_has_none_but_single_crossings() -> None:
    """In plain weave every thread changes sides at every crossing."""
    plain = named_weave("plain weave")
    assert plain is not None

    assert LongestFloats(warp=1, weft=1) == longest_floats(drawdown(plain.draft))


@given(arrays(bool, array_shapes(min_dims=2, max_dims=2, max_side=9), elements=st.booleans()), st.booleans())
def test_where_nothing_begins_again(over: NDArray[np.bool_], ends_go_on: bool) -> None:
    """In a cloth that is no repeat floats stop at its edges; a thread on one side throughout is never crossed."""
    found = floats(over, (False, ends_go_on))
    runs = [[len(list(same)) for _, same in groupby(thread.tolist())] for thread in over.T]
    longest = [one.threads for one in found if one.system == "warp"]

    crossed = [thread.any() and not thread.all() for thread in over.T]
    if all(crossed):
        assert max(map(max, runs)) == max(each or 0 for each in longest)
    else:
        assert None in longest
    assert [one for one in found if one.system == "weft"] == [
        one for one in floats(over, (True, ends_go_on)) if one.system == "weft"
    ]


def test_a_whole_width() -> None:
    """Blocks at both edges of a whole width lie apart on the loom: nothing floats from one over into the other."""
    width = "14 times (1, 2), 12 times (3, 4), 80 times (1-4), 14 times (1, 2)"
    found = looked(width, "1+2, 3+4, 1+3, 2+4", "1, 3, 2, 4")

    assert {28} == {one.threads for one in found if one.system == "weft"}


@pytest.mark.parametrize(
    ("threading", "treadling", "threads"), [("1, 2, 1", "1, 2, 1", 1), ("1-4, 3-1", "1-4, 3, 2", 3)]
)
def test_over_the_closing_end(threading: str, treadling: str, threads: int) -> None:
    """A balanced draft floats as its repeat does, without the end that closes it: it stands once on the loom."""
    tie_up = "1, 2" if treadling == "1, 2, 1" else TWILL

    assert {threads} == {one.threads for one in looked(threading, tie_up, treadling) if one.system == "weft"}


def looked(threading: str, tie_up: str, treadling: str) -> tuple[Float, ...]:
    """The longest floats of a draft."""
    return look(threading, tie_up, treadling).floats
