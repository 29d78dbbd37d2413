"""Parts of a draft's record: an accent's colour, and the shafts that all of them take."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal_tools.quantities import USUAL
from journal_tools.records.draft import Draft
from journal_tools.records.front_matter import read_front_matter
from journal_tools.records.model import read_model
from journal_tools.records.spot import Reading, Spot
from tests.ledger.desk import write
from tests.records.reading import record

SLIPPED = st.lists(
    st.sampled_from(["1", "2 ", "34", "1234", "1-4", "1+3", " ", " ", ", ", "(", ")", ";", "2 times ", "3 x ", " b "]),
    min_size=1,
    max_size=30,
).map("".join)
KEYS = st.sampled_from(["threading", "tie_up", "treadling", "lift_plan", "warp_colours", "profile", "ends_in_dents"])


def offered(line: str) -> list[str]:
    """What is offered to paste for a line of a draft."""
    found = read_front_matter(record(line), "drafts/a.md")
    reading = Reading("drafts/a.md", 2, USUAL, (line,))
    read_model(Spot(found.node, reading), Draft)
    return [problem.mended for problem in reading.problems]


@given(KEYS, SLIPPED)
def test_what_is_offered_reads(key: str, text: str) -> None:
    """A line that is offered to paste reads without a fault, however many slips there were."""
    for mended in offered(f"{key}: {text}"):
        assert mended == "" or [] == offered(mended)


@pytest.mark.parametrize(
    ("line", "mended"),
    [
        ("tie_up: 1 2, 2 3, 3 4, 1 4  # standard", "tie_up: 1+2, 2+3, 3+4, 1+4  # standard"),
        ("treadling: 1 2 3 4", "treadling: 1, 2, 3, 4"),
        ("threading: 3 times 1-4", "threading: 3 times (1-4)"),
        ("threading: 1234 1234", "threading: 2 times (1-4)"),
        ("tie_up: 1234 1234", ""),
        ("treadling: " + " ".join("1234" * 40), "treadling: " + ", ".join("1234" * 40)),
    ],
)
def test_what_is_offered_is_what_was_meant(line: str, mended: str) -> None:
    """All slips of a line are mended at once, also of a long one; where it cannot be known, none is offered."""
    assert [mended] == offered(line)


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
