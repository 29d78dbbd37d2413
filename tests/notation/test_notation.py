"""The notation reads what a weaver writes, prints it as short, and says what is wrong where."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence

import pytest
import yaml
from hypothesis import example, given
from hypothesis import strategies as st

from journal_tools.notation import (
    HIGHEST,
    NOTATION,
    is_colour,
    parse_colours,
    parse_dents,
    parse_lift_plan,
    parse_profile,
    parse_threading,
    parse_tie_up,
    parse_treadling,
    print_colours,
    print_sets,
)
from journal_tools.quantities import Unreadable

SETS = st.lists(st.frozensets(st.integers(1, 16), max_size=4), min_size=1, max_size=60)
COLOURS = st.lists(st.sampled_from(["bone", "slate", "dark-slate", "16-2-linen", "grün"]), min_size=1, max_size=60)
SLIPPED = st.lists(
    st.sampled_from(["1", "34", "1234", "1-4", "1+3", " ", " ", ",", ", ", "(", ")", ";", "2 times ", "3 x ", " x 2"]),
    max_size=14,
).map("".join)
READERS = [parse_threading, parse_tie_up, parse_lift_plan, parse_treadling, parse_colours, parse_dents, parse_profile]


def numbers(text: str) -> list[list[int]]:
    """A threading as lists of numbers."""
    return [sorted(some) for some in parse_threading(text)]


def complaint(text: str) -> Unreadable:
    """What is said of a threading that cannot be read."""
    with pytest.raises(Unreadable) as caught:
        parse_threading(text)
    return caught.value


class TestReading:
    @pytest.mark.parametrize(
        ("text", "expected"),
        [
            ("1, 2, 3, 4", [[1], [2], [3], [4]]),
            ("1-4", [[1], [2], [3], [4]]),
            ("4-1", [[4], [3], [2], [1]]),
            ("1–3", [[1], [2], [3]]),
            ("2-2", [[2]]),
            ("1+3, 2", [[1, 3], [2]]),
            (" 1 - 3 ,\n 1 + 2 ", [[1], [2], [3], [1, 2]]),
            ("none, 1", [[], [1]]),
            ("2 times (1-2, 3)", [[1], [2], [3], [1], [2], [3]]),
            ("2 times (2 times (1), 2), 3", [[1], [1], [2], [1], [1], [2], [3]]),
            ("(1, 2)", [[1], [2]]),
            ("None, 1", [[], [1]]),
            ("2 Times (1)", [[1], [1]]),
            ("Pointed (1-3), MIRRORED (1)", [[1], [2], [3], [2], [1], [1], [1]]),
        ],
    )
    def test_items(self, text: str, expected: list[list[int]]) -> None:
        """Commas part the ends; runs, sets, repeats and brackets write many at once."""

        assert expected == numbers(text)

    def test_all_lists_of_numbers_read_alike(self) -> None:
        """Threading, tie-up, treadling and lift plan have one notation."""
        text = "1+2, none, 3 times (4-1)"

        assert parse_threading(text) == parse_tie_up(text) == parse_treadling(text) == parse_lift_plan(text)

    def test_colours(self) -> None:
        """A number before a colour is so many threads of it; no number is one thread."""

        assert ("bone", "bone", "slate", "bone", "bone", "slate", "gold") == parse_colours(
            "2 times (2 bone, slate), gold"
        )

    def test_a_napkin_warp(self) -> None:
        """20 bone, twelve times 4 slate and 24 bone, 4 slate and 20 bone are 380 ends, 52 of them slate."""
        order = parse_colours("20 bone, 12 times (4 slate, 24 bone), 4 slate, 20 bone")

        assert (380, 52) == (len(order), order.count("slate"))


class TestPrinting:
    @given(SETS)
    @example([frozenset({1}), frozenset({2})] * 400)
    def test_sets_read_back(self, sets: list[frozenset[int]]) -> None:
        """Whatever is printed of a threading reads back as the same threading."""

        assert tuple(sets) == parse_threading(print_sets(sets))

    @given(COLOURS)
    @example(["bone"] * 20 + (["slate"] * 4 + ["bone"] * 24) * 12)
    def test_colours_read_back(self, colours: list[str]) -> None:
        """Whatever is printed of a colour order reads back as the same order."""

        assert tuple(colours) == parse_colours(print_colours(colours))

    @given(SETS, COLOURS)
    def test_yaml_takes_it(self, sets: list[frozenset[int]], colours: list[str]) -> None:
        """What is printed can stand in a record as it is, without quotes."""
        printed = {"threading": print_sets(sets), "colours": print_colours(colours)}
        record = "".join(f"{key}: {text}\n" for key, text in printed.items())

        assert printed == yaml.load(record, Loader=yaml.BaseLoader)

    @pytest.mark.parametrize(
        "text",
        [
            "1-4, 3-2",
            "12 times (1-4)",
            "12 times (1-4, 3-2), 1",
            "2 times (8 times (1, 2), 8 times (3, 4))",
            "1+2, 2+3, 3+4, 1+4",
            "none, 1",
            "2 times (1-4), 2, 1, 4, 3",
            "8 times (1-4), 8 times (2, 1, 4, 3)",
        ],
    )
    def test_as_a_weaver_would_write_it(self, text: str) -> None:
        """Repeats and runs are found again, so that short writing stays short."""

        assert text == print_sets(parse_threading(text))

    def test_colour_repeats_are_found(self) -> None:
        """A colour order is printed in stripes and repeats, not thread by thread."""
        text = "20 bone, 12 times (4 slate, 24 bone), 4 slate, 20 bone"

        assert text == print_colours(parse_colours(text))


class TestComplaints:
    @pytest.mark.parametrize(
        ("text", "column", "right", "mended"),
        [
            ("12 times (1-4, 3-2", 9, "a bracket opened at column 10 that nothing closes", "12 times (1-4, 3-2)"),
            ("1-4), 3", 3, "a bracket closed at column 4 that nothing opens", "1-4, 3"),
            ("1-4 3-2", 4, 'A comma is wanted before "3-2" at column 5', "1-4, 3-2"),
            ("1,,2", 2, "Nothing stands before the comma at column 3", "1,2"),
            ("1, 2,", 5, "Nothing stands after the last comma", "1, 2"),
            ("1, (", 4, "Nothing stands after the last bracket", ""),
            ("1, ()", 4, "Nothing stands before the bracket closed at column 5", ""),
            ("12 x (1-4)", 0, 'A repeat is written with "times"', "12 times (1-4)"),
            ("1, 12 (1-4)", 3, 'A repeat is written with "times"', "1, 12 times (1-4)"),
            ("3 times 1-4", 8, "What is repeated stands in brackets, at column 9: 3 times (1-4).", "3 times (1-4)"),
            ("2 x 1-4", 4, "What is repeated stands in brackets, at column 5: 2 times (1-4).", "2 times (1-4)"),
            ("1 2 3 4", 2, 'A comma is wanted before "2" at column 3.', "1, 2, 3, 4"),
            ("1234 1234", 0, "Where each figure is a shaft: 2 times (1-4).", "2 times (1-4)"),
            ("123 123", 4, 'A comma is wanted before "123"', "2 times (1, 2, 3)"),
            ("12 12", 3, 'A comma is wanted before "12"', "12, 12"),
            ("1034", 0, "1034 at column 1 is none of them.", ""),
            ("12 x (1-4, 3 (1 2", 0, 'A repeat is written with "times"', "12 times (1-4, 3 times (1, 2))"),
            ("1, 2 Times 1-4, 3", 11, "What is repeated stands in brackets, at column 12: 2 times (1-4).", ""),
            ("1-4 times 3", 0, "How many times stands first, at column 1: 3 times (1-4).", "3 times (1-4)"),
            ("1, 1-4 x 3, 2", 3, "How many times stands first, at column 4", "1, 3 times (1-4), 2"),
            ("(1-4) times 3", 6, "stands before the brackets, and not at column 7: 3 times (…).", ""),
            ("1,2;3", 3, 'A comma is wanted in place of ";" at column 4.', "1,2,3"),
            ("1, A", 3, '"A" at column 4 cannot be read. The number of a shaft is wanted', ""),
            ("1.5", 1, '".5" at column 2 cannot be read', ""),
            ("0-4", 0, "Shafts are counted from 1", ""),
            ("1-4000", 2, "4000 at column 3 is none of them", ""),
            ("2, 1+1", 3, "A shaft stands twice in the set at column 4", ""),
            ("0 times (1)", 0, "None at all at column 1", ""),
            ("30000 times (1)", 0, "20,000 threads at most", ""),
            ("", None, "Nothing is written here", ""),
            ("9999 times (9999 times (1))", None, "99,980,001 threads; 20,000 are read at most", ""),
        ],
    )
    def test_what_is_wrong_and_where(self, text: str, column: int | None, right: str, mended: str) -> None:
        """A slip is told with its place, what would be right and, where it is sure, the mended text."""
        said = complaint(text)

        assert right in said.right
        assert (text, column, mended) == (said.read, said.column, said.mended)

    @pytest.mark.parametrize("parse", [parse_tie_up, parse_lift_plan])
    @pytest.mark.parametrize(
        ("text", "mended"),
        [
            ("1 2, 2 3, 3 4, 1 4", "1+2, 2+3, 3+4, 1+4"),
            ("1+2 2+3 3+4", "1+2, 2+3, 3+4"),
            ("1 2 3 4", ""),
            ("12 23 34 41", ""),
            ("1234 1234", ""),
            ("4 times (1 2, 2 3)", "4 times (1+2, 2+3)"),
        ],
    )
    def test_shafts_of_one_treadle(self, parse: Callable[[str], object], text: str, mended: str) -> None:
        """Blanks between commas part the shafts of one treadle; where they may part treadles, none is offered."""
        with pytest.raises(Unreadable) as caught:
            parse(text)

        assert mended == caught.value.mended

    @pytest.mark.parametrize(
        ("text", "right"),
        [
            ("4 dark slate", 'A comma is wanted before "slate" at column 8, or a hyphen if dark-slate is one colour.'),
            ("20 bone 4 slate", 'A comma is wanted before "4" at column 9.'),
            ("4", '"4" at column 1 cannot be read. The colour of a thread is wanted, such as 20 bone, 4 slate.'),
            ("0 bone", "None at all at column 1: leave it out, or write how many."),
            ("4 slate x 2", "How many times stands first, at column 1: 2 times (4 slate)."),
            ("12x bone", "What is repeated stands in brackets, at column 5: 12 times (bone)."),
            ("12X (bone)", 'A repeat is written with "times", at column 1: 12 times (…).'),
            ("3 x (bone)", 'A repeat is written with "times", at column 1: 3 times (…).'),
        ],
    )
    def test_what_is_wrong_with_colours(self, text: str, right: str) -> None:
        """A slip in a colour order is told in the words of colours."""
        with pytest.raises(Unreadable) as caught:
            parse_colours(text)

        assert right == caught.value.right

    @pytest.mark.parametrize(
        ("text", "parted", "hyphened", "mended"),
        [
            ("20bone, 4 slate", "20 bone", "20-bone", "20 bone, 4 slate"),
            ("4 slate, 20_bone", "20 bone", "20-bone", "4 slate, 20 bone"),
            ("2 times (3Dark-slate)", "3 Dark-slate", "3-Dark-slate", "2 times (3 Dark-slate)"),
        ],
    )
    def test_a_missing_blank(self, text: str, parted: str, hyphened: str, mended: str) -> None:
        """20bone would be one thread of a colour 20bone, so it is refused; with a hyphen it is a name."""
        with pytest.raises(Unreadable) as caught:
            parse_colours(text)

        assert f": {parted}. Where it is all one name, a hyphen: {hyphened}." in caught.value.right
        assert mended == caught.value.mended
        assert parse_colours(mended)
        assert (hyphened,) == parse_colours(hyphened)

    @given(st.text("0123456789 x_-times,bone", max_size=12))
    @example("x")
    @example("20bone")
    def test_what_can_be_a_colour(self, name: str) -> None:
        """A name can stand for a colour where a colour order of it alone is one thread of that name."""
        try:
            alone = parse_colours(name) == (name,)
        except Unreadable:
            alone = False

        assert alone == is_colour(name)

    @pytest.mark.parametrize("number", [0, HIGHEST + 1])
    def test_what_cannot_be_read_is_not_printed(self, number: int) -> None:
        """A shaft or treadle below the first or above the highest is refused, read or printed."""
        with pytest.raises(Unreadable, match=rf"counted from 1 to 200, and {number} stands at place 2"):
            print_sets([frozenset({1}), frozenset({number})])
        with pytest.raises(Unreadable, match="counted from 1 to 200"):
            parse_threading(str(number))

    def test_the_highest_is_printed(self) -> None:
        """The highest shaft or treadle that is read is the highest that is printed."""
        assert f"1-{HIGHEST}" == print_sets(parse_threading("1-200"))

    def test_a_long_list_is_answered(self) -> None:
        """A slip behind a hundred thousand blanks is found."""
        assert 100_001 == complaint("1" + " " * 100_000 + "y").column

    def test_the_word_is_the_one_of_the_list(self) -> None:
        """A treadling is told of treadles, not of shafts."""
        with pytest.raises(Unreadable, match="Treadles are counted from 1"):
            parse_treadling("0")

    def test_a_tie_up_of_a_thousand_treadles(self) -> None:
        """A tie-up longer than any loom is refused."""
        with pytest.raises(Unreadable, match="200 at most, and here are 1,000"):
            parse_tie_up("1000 times (1)")

    @given(st.text("0123456789-+,() timesnoxa\n", max_size=40) | SLIPPED, st.sampled_from(READERS))
    def test_nothing_else_happens(self, text: str, parse: Callable[[str], Sequence[object]]) -> None:
        """Any text is either read or complained of; a mended text stands only where it differs and reads."""
        said = None
        try:
            read = parse(text)
        except Unreadable as unreadable:
            said, read = unreadable, ()

        assert bool(read) == (said is None)
        if said is not None:
            assert said.right.endswith(".")
            assert said.column is None or 0 <= said.column <= len(text)
            assert said.mended == "" or (said.mended != text and bool(parse(said.mended)))

    @given(st.integers(1, 6000))
    def test_deep_brackets(self, depth: int) -> None:
        """Brackets may stand in brackets as deep as anybody writes them, and deeper."""

        assert (frozenset({1}),) == parse_threading("(" * depth + "1" + ")" * depth)


def test_the_field_guide_reads() -> None:
    """Every example of the notation that the field guide shows can be read."""
    examples = re.findall(r"^\| `([^`]+)` \|", NOTATION, re.MULTILINE)

    assert 10 == len(examples)
    for text in examples:
        assert len((parse_colours if "bone" in text else parse_threading)(text)) > 0
    assert parse_threading("1, 2, 3, 4") == parse_threading("1-4")
