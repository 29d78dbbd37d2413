"""A file too large to be answered at once is refused with a word that says what is too many."""

from __future__ import annotations

import pytest

from journal_tools.interchange import read_wif
from journal_tools.interchange.lines import LARGEST, MOST_LINES, MOST_SECTIONS
from journal_tools.interchange.reading import MOST_PARTS

HEAD = b"[WIF]\nVersion=1.1\n"


def some(name: str, number: int, value: str) -> bytes:
    """A section of so many numbered lines."""
    return f"[{name}]\n".encode() + b"".join(f"{n}={value}\n".encode() for n in range(1, number + 1))


@pytest.mark.parametrize(
    ("data", "said"),
    [
        (HEAD + b"x" * LARGEST, "The file has 8,388,626 bytes; 8,388,608 are read at most."),
        (HEAD + b"x\n" * MOST_LINES, "The file has 320,002 lines; 320,000 are read at most."),
        (HEAD + b"[NOTES]\n" + b"1=1\r" * 2_000_000, "The file has 2,000,003 lines; 320,000 are read at most."),
        (HEAD + b"[a]\n" * MOST_SECTIONS, "The file has 1,001 sections; 1,000 are read at most."),
        (HEAD + b"[LIFTPLAN]\n1=1" + b",1" * (MOST_PARTS + 1), "The file has 1,000,001 commas; 1,000,000 are read"),
    ],
)
def test_too_large(data: bytes, said: str) -> None:
    """Bytes, lines, sections and parts of lines are counted before they are read."""
    (problem,) = read_wif(data, "a.wif").told

    assert problem.is_fault
    assert said in problem.right


def test_a_head_of_blanks() -> None:
    """A bracket, blanks and something else is no head, however many blanks there are."""
    found = read_wif(b"[WIF]\n[" + b" " * 5_000_000 + b"x\n", "a.wif")

    assert ["stray"] == [problem.slug for problem in found.told if problem.read]


def test_more_lifted_than_any_loom_lifts() -> None:
    """Two hundred treadles with two hundred shafts each, pressed by the dozen on every pick, are no draft."""
    each = ",".join(map(str, range(1, 201)))
    pressed = ",".join(map(str, range(1, 46)))
    data = HEAD + some("THREADING", 4, "1") + some("TIEUP", 200, each) + some("TREADLING", 20_000, pressed)
    found = read_wif(data, "a.wif")

    assert "The treadling lifts 180,000,000 shafts; 8,000,000 are read at most." in [each.right for each in found.told]
    assert found.draft is None


def test_more_crossings_than_are_drawn() -> None:
    """A file of 20,000 ends and 20,000 picks is answered with how much is drawn at most."""
    found = read_wif(HEAD + some("THREADING", 20_000, "1") + some("LIFTPLAN", 20_000, "1"), "a.wif")

    assert found.draft is None
    assert "40,000,000 crossings at most" in found.told[-1].right
