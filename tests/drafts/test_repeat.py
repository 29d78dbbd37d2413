"""One repeat of a cloth, and how alike two cloths are woven, wherever their repeats begin."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.extra.numpy import array_shapes, arrays
from numpy.typing import NDArray

from journal_tools.drafts import drawdown, named_weave
from journal_tools.drafts.likeness import MOST, distance, same_cloth, windows
from journal_tools.drafts.repeat import period, same_begun_elsewhere, true_repeat, whole_repeat

CLOTH = arrays(bool, array_shapes(min_dims=2, max_dims=2, max_side=9), elements=st.booleans())


class TestRepeat:
    @pytest.mark.parametrize(
        ("order", "length"),
        [("abab", 2), ("ababa", 2), ("abcab", 5), ("a", 1), ("aaa", 1), ("abcabcab", 3), ("ababaababa", 5)],
    )
    def test_period(self, order: str, length: int) -> None:
        """An order repeats after so many threads if it does so twice; the last time may be cut short."""
        assert length == period(order)

    @pytest.mark.parametrize(
        ("order", "length"),
        [("abcdcba", 6), ("aba", 2), ("abcddcba", 8), ("aabaa", 5), ("abca", 4), ("ababa", 2), ("abcdcb", 6),
         ("x" + "ab" * 30 + "c" + "ba" * 30 + "x", 123)],
    )  # fmt: skip
    def test_the_closing_end(self, order: str, length: int) -> None:
        """A last end that closes a pattern which turns on one end belongs to the next repeat, in a short draft only."""
        over = np.array([[bool(ord(each) >> bit & 1) for each in order] for bit in range(7)])

        assert length == true_repeat(over).shape[1]

    @given(CLOTH, st.integers(0, 8), st.integers(0, 8))
    def test_begun_elsewhere(self, over: NDArray[np.bool_], pick: int, end: int) -> None:
        """A cloth begun at another pick and end is the same, and one crossing more or less is another."""
        other = np.roll(over, (pick, end), axis=(0, 1))
        assert same_begun_elsewhere(over, other)
        other[0, 0] = not other[0, 0]
        assert not same_begun_elsewhere(over, other)

    @given(CLOTH)
    def test_set_side_by_side(self, over: NDArray[np.bool_]) -> None:
        """The true repeat of a cloth woven twice over each way is no larger than the cloth, and makes it again."""
        repeat = true_repeat(np.tile(over, (2, 2)))
        picks, ends = over.shape

        assert repeat.shape[0] <= picks
        assert repeat.shape[1] <= ends
        assert np.array_equal(over, np.tile(repeat, (picks, ends))[:picks, :ends])

    @given(CLOTH)
    def test_a_repeat_is_its_own_repeat(self, over: NDArray[np.bool_]) -> None:
        """A true repeat, looked at again as a repeat, is the same: the last one is taken as cut short only once."""
        repeat = true_repeat(over)

        assert np.array_equal(repeat, whole_repeat(repeat))

    @given(CLOTH, st.integers(0, 8), st.integers(0, 8))
    def test_a_repeat_begun_elsewhere(self, over: NDArray[np.bool_], pick: int, end: int) -> None:
        """A repeat begun at another pick and end is as large."""
        assert whole_repeat(over).shape == whole_repeat(np.roll(over, (pick, end), axis=(0, 1))).shape


class TestLikeness:
    @given(CLOTH, st.integers(0, 8), st.booleans(), st.booleans())
    def test_what_does_not_count(self, over: NDArray[np.bool_], by: int, exchanged: bool, back: bool) -> None:
        """Begun elsewhere, mirrored, with warp and weft exchanged, seen from the back: it is the same cloth."""
        other = np.roll(over, by, axis=1)[::-1]
        other = ~other.T if exchanged else other
        other = ~other[:, ::-1] if back else other

        assert same_cloth(over, other)
        assert pytest.approx(0) == distance(windows(over), windows(other))

    def test_a_repeat_that_ends_as_it_begins(self) -> None:
        """Five ends of which the last is like the first are five ends in a repeat, wherever it begins."""
        over = np.array([[False, True, False, True, True]])

        assert same_cloth(over, np.roll(over, 1, axis=1))
        assert 0 == distance(windows(over), windows(np.roll(over, 1, axis=1)))

    def test_a_long_repeat(self) -> None:
        """Of a repeat too long to be looked at whole, no window is made of threads that are no neighbours."""
        bands = np.zeros((1, MOST + 4), dtype=bool)
        bands[:, MOST // 2 :] = True  # one turn from under to over, which three windows straddle

        assert pytest.approx(1 - 3 / MOST) == windows(bands).max()

    def test_near_and_far(self) -> None:
        """A broken twill is nearer to the straight one than plain weave is; nothing is farther than 1."""
        plain, twill, broken = (windows(drawdown(named.draft)) for name in ("plain", "2/2 twill", "broken twill")
                                if (named := named_weave(name)))  # fmt: skip

        assert 0 < distance(twill, broken) < distance(twill, plain) <= 1
