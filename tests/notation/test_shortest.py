"""The natural form of a long order of threads: runs, repeats, mirrors, blocks."""

from __future__ import annotations

import random
from itertools import groupby

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from journal_tools.notation import (
    found_blocks,
    parse_colours,
    parse_lift_plan,
    parse_profile,
    parse_threading,
    print_colours,
    print_lift_plan,
    print_profile,
    print_sets,
    print_tie_up,
)
from journal_tools.notation.palindromes import widest
from journal_tools.notation.periods import periods
from journal_tools.quantities import Unreadable

UNIT = st.lists(
    st.sampled_from([frozenset({n}) for n in range(1, 7)] + [frozenset(), frozenset({1, 3})]), min_size=1, max_size=7
)


@st.composite
def threadings(draw: st.DrawFn) -> list[frozenset[int]]:
    """Threads in repeats, mirrors and odd ones between."""
    found: list[frozenset[int]] = []
    for _ in range(draw(st.integers(1, 4))):
        unit = draw(UNIT) * draw(st.integers(1, 5))
        found += draw(st.sampled_from([unit, unit + unit[::-1], unit + unit[-2::-1]]))
    return found


@given(threadings())
def test_expands_to_what_came_in(threads: list[frozenset[int]]) -> None:
    """Whatever is printed reads back as the same threads."""
    assert tuple(threads) == parse_threading(print_sets(threads))


@given(st.lists(st.sampled_from(["bone", "slate", "mirrored", "pointed"]), min_size=1, max_size=40))
def test_colours_too(order: list[str]) -> None:
    """Colours mirror as threads do, also those that are called so."""
    assert tuple(order + order[::-1]) == parse_colours(print_colours(order + order[::-1]))


@pytest.mark.parametrize(
    ("written", "read"),
    [
        ("pointed (1-4)", "1, 2, 3, 4, 3, 2, 1"),
        ("mirrored (1-4)", "1, 2, 3, 4, 4, 3, 2, 1"),
        ("2 times (pointed (1, 2))", "1, 2, 1, 1, 2, 1"),
        ("mirrored (2 times (1, 2), 3)", "1, 2, 1, 2, 3, 3, 2, 1, 2, 1"),
        ("pointed (1)", "1"),
    ],
)
def test_mirrors_are_read(written: str, read: str) -> None:
    """A mirror stands for its threads and the same backwards; pointed, the last of them stands once."""
    assert parse_threading(read) == parse_threading(written)


@pytest.mark.parametrize(
    "written",
    [
        "100 times (1-4)",
        "12 times (1-8, 7-2), 1",
        "6 times (1-4, 3-2), 1",
        "1-4, 3-2",
        "2 times (1-4), 2 times (2, 1, 4, 3)",
        "20 times (1, 2), 30 times (3, 4), 20 times (1, 2)",
        "pointed (1-8, 4-1, 5-8, 3, 6, 2, 7)",
        "8 times (1, 3, 1, 3, 1, 2, 4, 2, 4, 2)",
        "mirrored (20 times (1-8), 5 times (1, 3, 5, 7), 8, 2, 6, 4)",
        "1, 1, 2, 2, 3, 3, 4, 4",
        "none, 1-4, none",
        "2 times (1-4), 1, 2, 2, 4, 2 times (1-4)",
        "2 times (2, 3, 2, 4), 1, 3, 1, 4, 2 times (2, 3, 2, 4), 10 times (3, 4)",
        "2 times (1, 2, 1, 3 times (2, 3), 4, 3, 4, 3, 2, 3, 2), 1, 2, 1, 2",
        "3 times (1-4), 10 times (1-4, 3-2), 8 times (1, 2), 10 times (1-4, 3-2), 1",
        "6 times (1-4), 12 times (1-8, 7-2), 1, 6 times (4-1)",
        "6 times (1-4), 25 times (1-8, 7-2), 1, 6 times (4-1)",
        "6 times (1-4), 1-8, 7-1, 6 times (4-1)",
        "6 times (1, 2), 3 times (3, 4), 2 times (1, 2), 3 times (3, 4)",
        "3 times (1-4), 3 times (2, 1, 4, 3)",
        "4-1, 10 times (4-1, 2-3), 4-1",
        "4 times (1-4), 3-1, 3 times (4-1), 4, 3",
        "12 times (1-4, 2-5, 3-6, 4-7, 5-8)",
        "6 times (1-3, 2-4, 3-5, 4-6)",
        "8 times (1-8), 8 times (8-1)",
        "1, 2 times (4-1)",
        "3, 4, 10 times (1-4)",
        "1, 2, 4 times (3, 1, 1), 2",
    ],
)
def test_as_a_weaver_writes_it(written: str) -> None:
    """What a weaver would write is what is printed again."""
    assert written == print_sets(parse_threading(written))


@pytest.mark.parametrize(
    "written",
    [
        "20 bone, 12 times (4 slate, 24 bone), 4 slate, 20 bone",
        "38 times (4 black, 4 ecru), 4 black",
        "8 times (dark, light), 8 times (light, dark)",
        "8 a, 3 times (b, a), 12 c, 8 d, 12 c, 3 times (a, b), 8 a",
    ],
)
def test_colours_as_a_weaver_writes_them(written: str) -> None:
    """Repeats of colours begin with a stripe and never within one."""
    assert written == print_colours(parse_colours(written))


def test_overshot_keeps_its_first_end() -> None:
    """A mirror does not split the first ends off: the whole is turned, or nothing."""
    half = "1, 2, 1, 2, 3, 2, 3, 2, 3, 4, 3, 4, 3, 4, 1, 4, 1, 2, 1"
    whole = parse_threading(f"pointed ({half})")

    assert print_sets(whole).startswith("pointed (1, 2, 1, 2, 3, 2, 3, 2,")
    assert print_sets((whole[1], *whole)).startswith("2, 1, 2, 1, 2, 3, ")


def test_tie_ups_and_lift_plans_have_no_runs() -> None:
    """Four treadles with one shaft each are 1, 2, 3, 4: 1-4 would be read as one treadle with four shafts."""
    sets = parse_threading("1-4")

    assert print_tie_up(sets) == print_lift_plan(sets) == "1, 2, 3, 4"
    assert "1, 2, 1, 2, 1, 2" == print_tie_up(parse_threading("3 times (1, 2)"))
    assert "6 times (1, 2, 3, 4)" == print_lift_plan(sets * 6)
    assert "4 times (1+2, 2+3, 3+4, 1+4)" == print_lift_plan(parse_threading("4 times (1+2, 2+3, 3+4, 4+1)"))


@given(threadings())
def test_lift_plans_read_back(sheds: list[frozenset[int]]) -> None:
    """Whatever is printed of a tie-up or a lift plan reads back as the same, and holds no run."""
    for printed in (print_tie_up(sheds), print_lift_plan(sheds)):
        assert tuple(sheds) == parse_lift_plan(printed)
        assert "-" not in printed


@given(st.text("abcd", max_size=30))
@example("abababbababab")
def test_every_stretch_that_repeats(order: str) -> None:
    """Each stretch of a unit at least twice over is found, as wide as it is, by its shortest unit."""
    expected = set()
    for length in range(1, len(order) // 2 + 1):
        alike = [one == other for one, other in zip(order, order[length:], strict=False)]
        start = 0
        for same, places in groupby(alike):
            many = len(list(places))
            unit = order[start : start + length]
            if same and many >= length and unit not in (unit + unit)[1:-1]:
                expected.add((start, start + many + length, length))
            start += many

    assert sorted(expected) == periods(order)


def test_four_hundred_ends() -> None:
    """A threading of 400 ends that turns in the middle is a line, whatever its parts are."""
    dice = random.Random(3)
    half = [frozenset({dice.randint(1, 8)}) for _ in range(16)]
    whole = (half * 12 + [frozenset({n}) for n in range(1, 9)]) * 1
    whole += whole[-2::-1]

    assert 399 == len(whole)
    assert len(print_sets(whole)) < 80


class TestBlocks:
    @pytest.mark.parametrize("written", ["A", "4 A, 2 B, A", "12 times (A, B), A", "mirrored (3 A, 2 B)"])
    def test_read_and_printed(self, written: str) -> None:
        """Blocks in turn are letters with a number, in repeats and mirrors like threads."""
        assert parse_profile(written) == parse_profile(print_profile(parse_profile(written)))

    @pytest.mark.parametrize("written", ["a", "AB", "4", "1 A B"])
    def test_what_is_none(self, written: str) -> None:
        """A block is one capital letter."""
        with pytest.raises(Unreadable):
            parse_profile(written)

    def test_found(self) -> None:
        """Units of four ends that come in no simple order are named A and B as they first appear."""
        order = "2 A, B, 2 A, 3 B, 3 A, 2 B, A, 4 B"
        units = {"A": "1, 3, 1, 4", "B": "2, 3, 2, 4"}
        text = ", ".join(units[letter] for letter in parse_profile(order))
        found = found_blocks(parse_threading(text))
        assert found is not None

        assert units == {letter: print_sets(unit) for letter, unit in found.units.items()}
        assert order == print_profile(found.order)
        assert parse_threading(text) == found.threads

    @pytest.mark.parametrize(
        "written", ["100 times (1-4)", "12 times (1-8, 7-2), 1", "1-8", "6 times (1, 2), 3 times (3, 4)"]
    )
    def test_none_where_repeats_say_it(self, written: str) -> None:
        """Where a repeat says it as shortly, no blocks are named."""
        assert found_blocks(parse_threading(written)) is None


@given(st.text("ab", max_size=14))
def test_the_widest_mirror(order: str) -> None:
    """It is as wide as the widest stretch that reads the same backwards and is not one letter over and over."""
    every = [(start, end) for start in range(len(order)) for end in range(start + 2, len(order) + 1)]
    wide = [end - start for start, end in every if (part := order[start:end]) == part[::-1] and len(set(part)) > 1]
    start, end = widest(order)

    assert max(wide, default=0) == end - start


@pytest.mark.parametrize("wrong", ["mirrored 1-4", "pointed", "mirrored (1-4", "pointed ()"])
def test_a_mirror_without_its_brackets(wrong: str) -> None:
    """What is mirrored stands in brackets, and the message says so."""
    with pytest.raises(Unreadable) as caught:
        parse_threading(wrong)

    assert "bracket" in caught.value.right
