"""Parts of a draft's record: an accent's colour, and the shafts that all of them take."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.ledger.desk import write


@pytest.mark.parametrize(
    ("typed", "mended"),
    [("dark gold", "dark-gold"), ("4 gold", ""), ("gold, red", ""), ("2 times (gold)", ""), ("12", "")],
)
def test_an_accents_colour_is_one_word(tmp_path: Path, typed: str, mended: str) -> None:
    """An accent's colour is one word, since a colour order could not be read with it otherwise."""
    header = f"threading: 1-4\nlift_plan: 1\naccents:\n  - end: 2\n    colour: {typed}"
    [problem] = write(tmp_path, drafts__one=header).problems

    assert (6, typed) == (problem.line, problem.read)
    assert problem.right.startswith("a colour's name is one word, as in a colour order")
    assert (f"    colour: {mended}" if mended else "") == problem.mended


def test_an_accents_colour(tmp_path: Path) -> None:
    """A hyphen joins two words to one colour."""
    header = "threading: 1-4\nlift_plan: 1\naccents:\n  - end: 2\n    colour: dark-gold"
    [accent] = write(tmp_path, drafts__one=header).drafts["one"].accents

    assert "dark-gold" == accent.colour


@pytest.mark.parametrize(
    ("typed", "said"), [("1+2", "dent"), ("2-4", "dent"), ("101", "dent"), ("two", "number of ends in a dent")]
)
def test_dents_that_cannot_be(tmp_path: Path, typed: str, said: str) -> None:
    """A dent has one number of ends: what is none is told of as dents, and not as treadles."""
    [problem] = write(tmp_path, drafts__one=f"threading: 1-4\nlift_plan: 1\nends_in_dents: {typed}").problems

    assert ("ends_in_dents", 4) == (problem.field, problem.line)
    assert said in problem.right
    assert "readle" not in problem.right


def test_no_ends_in_a_dent(tmp_path: Path) -> None:
    """An empty dent is written none, or 0."""
    read = write(tmp_path, drafts__one="threading: 1-4\nlift_plan: 1\nends_in_dents: 2, 0, none, 2").drafts["one"]

    assert read.ends_in_dents is not None
    assert (frozenset({2}), frozenset(), frozenset(), frozenset({2})) == read.ends_in_dents.items


@pytest.mark.parametrize(
    ("more", "highest"),
    [
        ("lift_plan: 1-4", 4),
        ("lift_plan: 1-4\naccents:\n  - end: 2\n    shaft: 6", 6),
        ("lift_plan: 1-4\ntabby_between: 5, 7", 7),
        ("tie_up: 1, 2, 3, 4\ntreadling: 1-4\ntabby_between: 5, 7", 4),
    ],
)
def test_shafts_that_it_takes(tmp_path: Path, more: str, highest: int) -> None:
    """Accents take shafts, and so do tabby picks where they are lifts; where they are treadles they take none."""
    header = f"threading: 1-4\n{more}"

    assert highest == write(tmp_path, drafts__one=header).drafts["one"].highest_shaft
