"""Drafts go into an interchange file and come out the same; garbage never stops the reader."""

from __future__ import annotations

import dataclasses
import random
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal_tools.checking import woven_draft
from journal_tools.drafts import Draft, drawdown
from journal_tools.interchange import Extras, read_wif, record_text, write_wif
from journal_tools.interchange.threads import repeated
from journal_tools.records import read_journal
from tests.house import PROJECT

SHAFTS = 6
DRAFTS = read_journal(PROJECT / "entries").drafts


def sets(most: int) -> st.SearchStrategy[frozenset[int]]:
    """Some of the numbers from 1."""
    return st.frozensets(st.integers(1, most), max_size=3)


@st.composite
def drafts(draw: st.DrawFn) -> Draft:
    """Any draft that the file can hold, its orders as short as they repeat."""
    threading = draw(st.lists(sets(SHAFTS), min_size=1, max_size=12).filter(any))
    colours = st.lists(st.sampled_from(["slate", "bone", "sea-green"]), max_size=5)
    beside = st.lists(st.sampled_from([0.5, 1.0, 2.0]), max_size=4)
    picks = draw(st.integers(1, 10))
    by_treadles = draw(st.booleans())
    tie_up = draw(st.lists(sets(SHAFTS), min_size=1, max_size=5)) if by_treadles else None
    treadling = tuple(draw(sets(len(tie_up))) for _ in range(picks)) if tie_up else None
    lifts = None if by_treadles else tuple(draw(sets(SHAFTS)) for _ in range(picks))
    ends = len(threading)

    def order(found: list[str], number: int) -> tuple[str, ...]:
        return repeated([found[n % len(found)] for n in range(number)]) if found else ()

    def figures(found: list[float], number: int) -> tuple[float, ...]:
        whole = [found[n % len(found)] for n in range(number)] if found else []
        return repeated(whole) if any(figure != 1 for figure in whole) else ()

    return Draft(
        tuple(threading), tuple(tie_up) if tie_up else None, treadling, lifts, draw(st.booleans()),
        order(draw(colours), ends), order(draw(colours), picks),
        draw(st.sampled_from([(), ("ground", "pattern")])), draw(st.sampled_from([(), ("pattern", "tabby")])),
        figures(draw(beside), ends), figures(draw(beside), picks),
        figures(draw(beside), ends), figures(draw(beside), picks), draw(st.integers(0, 2)),
    )  # fmt: skip


@given(drafts())
def test_the_same_draft(draft: Draft) -> None:
    """What was written is read as the same draft, and only a lift plan that sinks is asked about."""
    read = read_wif(write_wif(draft), "a.wif")

    assert draft == read.draft
    assert {problem.slug for problem in read.told} <= {"sinking-lifts"}


@given(drafts())
def test_the_same_file(draft: Draft) -> None:
    """Written, read and written again it is the same file, byte for byte."""
    first = write_wif(draft, Extras({"Title": "Sea wall"}, "one\n\nthree", ends_per_m=20 / 0.0254, developers="nobody"))

    assert first == write_wif(read_wif(first, "a.wif").draft or draft, Extras.of(read_wif(first, "a.wif")))


def shortest(draft: Draft) -> Draft:
    """The same draft, its orders as short as they repeat."""
    ends, picks = len(draft.threading), len(draft.picks)
    orders = {
        "warp_colours": ends, "weft_colours": picks, "warp_spacing": ends, "weft_spacing": picks,
    }  # fmt: skip
    found = {key: getattr(draft, key) for key in orders}
    return dataclasses.replace(
        draft,
        **{
            key: repeated([order[n % len(order)] for n in range(orders[key])]) if order else ()
            for key, order in found.items()
        },
    )


@pytest.mark.parametrize("name", DRAFTS)
def test_the_demonstration(name: str) -> None:
    """Every draft of the demonstration comes back as it went, its orders as short as they repeat."""
    draft = woven_draft(DRAFTS[name])
    read = read_wif(write_wif(draft, Extras({"Title": name})), f"{name}.wif")

    assert shortest(draft) == read.draft
    assert (name, ()) == (read.title, read.told)


@pytest.mark.parametrize("name", DRAFTS)
def test_as_a_record(name: str, tmp_path: Path) -> None:
    """The record that is made of a file is read without a fault, and weaves the same cloth."""
    draft = woven_draft(DRAFTS[name])
    read = read_wif(write_wif(draft, Extras({"Title": 'A "quoted": title'}, "--- not the end\nnotes")), "a.wif")
    (tmp_path / "drafts").mkdir()
    (tmp_path / "drafts" / "read.md").write_text(record_text(read), encoding="utf-8")
    journal = read_journal(tmp_path)

    assert () == journal.problems
    assert 'A "quoted": title' == journal.drafts["read"].title
    assert (drawdown(draft) == drawdown(woven_draft(journal.drafts["read"]))).all()


@given(st.binary(max_size=400))
def test_garbage(data: bytes) -> None:
    """Any bytes at all are answered, with a word where they hold no draft."""
    read = read_wif(data, "a.wif")

    assert read.draft is not None or any(problem.is_fault for problem in read.told)


def test_good_files_gone_wrong() -> None:
    """A thousand good files, each spoilt in a few places, are all answered."""
    whole = write_wif(woven_draft(DRAFTS["huck-squares"]), Extras({"Title": "x"}, ends_per_m=800))
    dice = random.Random(7)
    parts = [
        b"=",
        b"\r\n",
        b"[",
        b"]",
        b"999999999",
        b"-1",
        b"0",
        b",",
        b"\x00",
        b"\xff",
        b"WARP",
        b"1e999",
        b"Threads",
    ]
    for _ in range(1_000):
        spoilt = bytearray(whole)
        for _ in range(dice.randint(1, 6)):
            at = dice.randrange(len(spoilt))
            spoilt[at : at + dice.randint(0, 30)] = dice.choice(parts)
        read = read_wif(bytes(spoilt), "a.wif")

        assert read.draft is not None or any(problem.is_fault for problem in read.told)


@pytest.mark.parametrize("spoilt", ["Threads=1000000000000", "Threads=999999999", "Threads=-4", "Threads=many"])
def test_huge_numbers(spoilt: str) -> None:
    """A number of threads that no loom has is told, and those that are listed are taken."""
    whole = write_wif(woven_draft(DRAFTS["straight-four"])).decode()
    read = read_wif(whole.replace("Threads=4", spoilt).encode(), "a.wif")
    assert read.draft is not None

    assert (4, 4) == (len(read.draft.threading), len(read.draft.picks))
    assert "WARP: Threads" in [problem.field for problem in read.told]
