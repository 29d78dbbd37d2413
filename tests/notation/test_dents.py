"""Ends in dents: one number a dent, with the repeats of every list, in words of dents."""

from __future__ import annotations

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from journal_tools.notation import parse_dents, print_dents
from journal_tools.quantities import Unreadable


def ends(text: str) -> list[int]:
    """How many ends are in each dent."""
    return [sum(dent) for dent in parse_dents(text)]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("2, 3, 2", [2, 3, 2]),
        ("3 times (2), none, 4", [2, 2, 2, 0, 4]),
        ("0, 2, None", [0, 2, 0]),
        ("2 Times (2, 2 times (4))", [2, 4, 4, 2, 4, 4]),
        ("pointed (1, 2, 3)", [1, 2, 3, 2, 1]),
        ("100", [100]),
    ],
)
def test_dent_by_dent(text: str, expected: list[int]) -> None:
    """Each number is the ends of one dent; none and 0 are an empty dent."""
    assert expected == ends(text)


@pytest.mark.parametrize(
    ("text", "right"),
    [
        ("2, 2-4", "are two: runs are for shafts; write 2, 4, a number for each dent."),
        ("2+3", "A dent has one number of ends, and at column 1 are two: write 5 for one dent; for two, 2, 3."),
        ("2, 2000", "A dent holds 100 ends at most; 2000 at column 4 is more."),
        ("two", '"two" at column 1 cannot be read. The number of ends in a dent is wanted, such as 20 times (2)'),
        ("2,,2", "The number of ends in a dent is wanted there, or one comma less."),
        ("", "Nothing is written here. It looks like this: 20 times (2), none, 4 times (4)."),
        ("20 x 2", "What is repeated stands in brackets, at column 6: 20 times (2)."),
        ("30000 times (2)", "20,000 dents at most."),
        ("300 times (300 times (2))", "That is 90,000 dents; 20,000 are read at most."),
    ],
)
def test_in_words_of_dents(text: str, right: str) -> None:
    """What cannot be is told of dents and their ends, and never of shafts or treadles."""
    with pytest.raises(Unreadable) as caught:
        parse_dents(text)

    assert right in caught.value.right
    assert "treadle" not in caught.value.right


@given(st.lists(st.integers(0, 9), min_size=1, max_size=60))
def test_written_and_read(numbers: list[int]) -> None:
    """Any dents written one by one are read as they stand."""
    assert numbers == ends(", ".join(map(str, numbers)))


@given(st.lists(st.integers(0, 9), min_size=1, max_size=60))
@example([1, 2, 3, 4, 5])
def test_printed_and_read(numbers: list[int]) -> None:
    """Whatever dents are printed read back as the same dents: no runs, which dents have not."""
    dents = [frozenset({number} - {0}) for number in numbers]

    assert tuple(dents) == parse_dents(print_dents(dents))


@given(st.text("0123456789-+,() timesnoxa;\n", max_size=30))
def test_nothing_else_happens(text: str) -> None:
    """Any text is either read, each dent one number at most, or complained of in a sentence."""
    said, read = "", parse_dents("none")
    try:
        read = parse_dents(text)
    except Unreadable as unreadable:
        said = unreadable.right

    assert said == "" or said.endswith(".")
    assert {0, 1} >= {len(dent) for dent in read}
