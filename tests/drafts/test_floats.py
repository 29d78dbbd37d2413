"""The longest floats, counted round the repeat."""

from __future__ import annotations

import numpy as np
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.extra.numpy import array_shapes, arrays
from numpy.typing import NDArray

from journal_tools.drafts import LongestFloats, drawdown, longest_floats, named_weave


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
