"""The table of yarn labels: what is read, what is refused, and that a refusal can be answered."""

from __future__ import annotations

import re
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal_tools.quantities import Ambiguous, YarnNumber, parse_yarn_number
from journal_tools.quantities.yarn_labels import LABELS, Order, family_of, shape_of
from tests.quantities.refusals import refusal_of

WORDS = {"metric": "Nm", "linen": "linen", "unknown": "yarn", "synthetic": "acrylic"}
SHAPES = ("8/2", "2/8", "3/2", "2/3", "2/2", "8")


def readings_in(refusal: Ambiguous) -> dict[str, int]:
    """Each reading that a refusal names, and its yards in a pound."""
    found = re.findall(r"(?:can be |, | or )([^,()]+) \([^()]*?([\d,]+) yd/lb\)", refusal.right)
    return {label.strip(): int(yd_lb.replace(",", "")) for label, yd_lb in found}


def ambiguity_of(text: str, fibre: str | None = None) -> dict[str, int]:
    """The readings of a label that has several."""
    refusal = refusal_of(parse_yarn_number, text, fibre)
    assert isinstance(refusal, Ambiguous)
    return readings_in(refusal)


@pytest.mark.parametrize(
    ("text", "readings"),
    [
        ("60/2 silk", {"Ne 60/2": 25200, "60s-2 spun silk": 50400, "Nm 60/2": 14882}),
        ("2/60 silk", {"Ne 2/60": 25200, "Nm 2/60": 14882}),
        ("22/2 cottolin", {"Ne 22/2": 9240, "22/2 lea": 3300, "Nm 22/2": 5457}),
        ("2/8 wool", {"2/8 worsted": 2240, "Nm 2/8": 1984}),
        ("2/3 cotton", {"2 plies of Ne 3": 1260, "3 plies of Ne 2": 560}),
        ("3/2 worsted", {"2 plies of 3 worsted": 840, "3 plies of 2 worsted": 373}),
        ("8/2", {"Ne 8/2": 3360, "8/2 worsted": 2240, "8/2 lea": 1200, "Nm 8/2": 1984}),
        (
            "3/2",
            {
                "Ne 3/2": 1260,
                "3 plies of Ne 2": 560,
                "2 plies of 3 worsted": 840,
                "3 plies of 2 worsted": 373,
                "3/2 lea": 450,
                "3 plies of 2 lea": 200,
                "2 plies of Nm 3": 744,
                "3 plies of Nm 2": 331,
            },
        ),
        (
            "2/3",
            {
                "2 plies of Ne 3": 1260,
                "3 plies of Ne 2": 560,
                "2 plies of 3 worsted": 840,
                "3 plies of 2 worsted": 373,
                "2 plies of 3 lea": 450,
                "3 plies of 2 lea": 200,
                "2 plies of Nm 3": 744,
                "3 plies of Nm 2": 331,
            },
        ),
    ],
)
def test_all_readings_are_told(text: str, readings: dict[str, int]) -> None:
    """A label that could be several yarns is refused with all of them and their yards in a pound."""
    assert readings == ambiguity_of(text)


@pytest.mark.parametrize("fibre", ["55 % cotton, 45 % linen", "cottolin", "linen and cotton"])
def test_fibre_of_the_record_can_be_ambiguous(fibre: str) -> None:
    """22/2 of a yarn of cotton and linen is refused, for both of its fibres have a count."""
    assert {"Ne 22/2": 9240, "22/2 lea": 3300, "Nm 22/2": 5457} == ambiguity_of("22/2", fibre)


@pytest.mark.parametrize("fibre", [None, "", "unknown", "dog hair"])
def test_no_fibre_is_no_help(fibre: str | None) -> None:
    """Where nobody knows the fibre, 8/2 has the readings of all the common ones."""
    assert 4 == len(ambiguity_of("8/2", fibre))


@pytest.mark.parametrize("family", sorted(LABELS))
def test_the_table_is_whole(family: str) -> None:
    """Every fibre has something to say to every order, and says nothing twice."""
    row = LABELS[family]

    assert set(SHAPES) == set(row)
    assert all(readings and len(readings) == len(set(readings)) for readings in row.values())


@pytest.mark.parametrize("family", sorted(LABELS))
def test_the_table_agrees_with_its_columns(family: str) -> None:
    """Where only one number can be the plies, no reading takes the other for them."""
    row = LABELS[family]

    assert not [r for r in row["8/2"] if r.order is Order.PLIES_FIRST]
    assert not [r for r in row["2/8"] if r.order is not Order.PLIES_FIRST]
    assert {r.system for r in row["8/2"]} == {r.system for r in row["2/8"]} == {r.system for r in row["8"]}


@pytest.mark.parametrize("family", sorted(LABELS))
@pytest.mark.parametrize("label", ["8/2", "2/8", "20/2", "3/2", "2/3", "2/2", "12/6", "6/12", "8/1", "1/8", "5.5/2"])
def test_every_reading_can_be_pasted(family: str, label: str) -> None:
    """Each reading that a refusal names is read as that yarn when it is typed in its place."""
    text = f"{label} {WORDS.get(family, family)}"
    for reading, yd_lb in readings_of(text).items():
        assert yd_lb == round(parse_yarn_number(reading).yards_per_pound)


def readings_of(text: str) -> dict[str, int]:
    """The readings of a label, be it one or many."""
    try:
        number = parse_yarn_number(text)
    except Ambiguous as refusal:
        readings = readings_in(refusal)
        assert len(readings) > 1
        return readings
    return {text: round(number.yards_per_pound)}


@pytest.mark.parametrize(
    ("first", "second", "shape"),
    [
        ("8", "2", "8/2"),
        ("8", "1", "8/2"),
        ("5", "4", "8/2"),
        ("2", "8", "2/8"),
        ("4", "5", "2/8"),
        ("3", "2", "3/2"),
        ("12", "6", "3/2"),
        ("2", "3", "2/3"),
        ("8", "12", "2/3"),
        ("2", "2", "2/2"),
        ("1.5", "2", "8/2"),
        ("2", "1.5", "2/8"),
    ],
)
def test_columns(first: str, second: str, shape: str) -> None:
    """A number above four, or a broken one, is not taken for the plies while the other can be."""
    assert shape == shape_of(Fraction(first), Fraction(second))


@pytest.mark.parametrize(
    ("words", "family"),
    [
        ("cotton", "cotton"),
        ("flax", "linen"),
        ("merino lambswool", "wool"),
        ("woollen wool", "woollen"),
        ("cotton linen", "cottolin"),
        ("silk noil", "silk"),
        ("wool nylon", "unknown"),
        ("", "unknown"),
    ],
)
def test_rows(words: str, family: str) -> None:
    """Words of a fibre lead to its row, and a blend of fibres that share none to no row."""
    assert family == family_of(words.split())


@given(st.integers(5, 400), st.integers(1, 4), st.sampled_from(["cotton", "linen", "worsted", "Nm"]))
def test_either_order_is_one_yarn(size: int, plies: int, word: str) -> None:
    """Where only one of the numbers can be the plies, the order does not matter."""
    one, other = parse_yarn_number(f"{size}/{plies} {word}"), parse_yarn_number(f"{plies}/{size} {word}")

    assert (one.tex, one.plies) == (other.tex, other.plies)


@given(st.integers(1, 60), st.integers(1, 12), st.sampled_from(["Ne {}", "{} worsted", "{} lea", "Nm {}"]))
def test_plies_in_words(size: int, plies: int, system: str) -> None:
    """So many plies of a size weigh as many times the single, whatever the two numbers are."""
    single = parse_yarn_number(system.format(size))
    plied: YarnNumber = parse_yarn_number(f"{plies} plies of {system.format(size)}")

    assert (single.tex * plies, plies) == (plied.tex, plied.plies)
