"""The demonstration journal: what it holds, and whether its figures hang together.

Limits that are common practice, no source: whole losses by kind of cloth, take-up, weights.
"""

from __future__ import annotations

import os
import re
import subprocess
import sys
from collections import Counter
from functools import cache
from pathlib import Path

import pytest

from journal_tools.checking import check
from journal_tools.records import Journal, Record, read_journal
from tests.workshop.write_entries import ENTRIES, entries

PROJECT = ENTRIES.parent
FOLDERS = ("warps", "yarns", "drafts", "looms", "finishes")


@cache
def _journal() -> Journal:
    return read_journal(ENTRIES)


def _records() -> list[Record]:
    return [record for folder in FOLDERS for record in _journal().kind(folder).values()]


def test_the_script_writes_these_entries() -> None:
    """Every entry is what the script writes, byte for byte, and no entry is of another hand."""
    written = {path: text.encode() for path, text in entries()}
    found = {
        path.relative_to(ENTRIES).as_posix(): path.read_bytes()
        for path in [ENTRIES / "journal.md", *(f for folder in FOLDERS for f in (ENTRIES / folder).glob("*.md"))]
    }

    assert written == found


@pytest.mark.parametrize("seed", ["0", "4711"])
def test_no_hash_seed_changes_an_entry(seed: str, tmp_path: Path) -> None:
    """The journal does not hang on the order in which one run of Python holds its sets."""
    said = f"from pathlib import Path; from tests.workshop.write_entries import write; write(Path({str(tmp_path)!r}))"
    subprocess.run(
        [sys.executable, "-c", said], cwd=PROJECT, check=True, env={**os.environ, "PYTHONHASHSEED": seed}
    )
    written = {path.relative_to(tmp_path).as_posix(): path.read_bytes() for path in tmp_path.rglob("*.md")}

    assert {path: text.encode() for path, text in entries()} == written


def test_it_reads_without_a_fault_and_asks_four_questions() -> None:
    """A slip of the year, a warp that was wound short, a scarf that grew, a yarn without a record: no more."""
    problems = check(_journal())

    assert [] == [problem.sentence() for problem in problems if problem.is_fault]
    assert {
        ("dates-out-of-order", "warps/lap-blanket.md"),
        ("grew", "warps/school-scarf.md"),
        ("no-such-yarn", "warps/tow-scrubbers.md"),
        ("warp-does-not-add-up", "warps/plover-napkins.md"),
    } == {(problem.slug, problem.file) for problem in problems}


def test_there_is_enough_of_everything() -> None:
    """Forty warps and more, a dozen yarns in five fibres and more, drafts from two shafts to eight, two looms."""
    journal = _journal()
    fibres = {yarn.main_fibre for yarn in journal.yarns.values() if yarn.main_fibre}
    shafts = {draft.shafts.number for draft in journal.drafts.values() if draft.shafts}

    assert 40 <= len(journal.warps) <= 48
    assert 12 <= len(journal.yarns) <= 16
    assert {"cotton", "linen", "hemp", "wool", "silk", "alpaca"} <= fibres
    assert 10 <= len(journal.drafts)
    assert {2, 3, 4, 5, 6, 8} == shafts
    assert 2 == len(journal.looms)
    assert 6 <= len(journal.finishes) <= 8


def test_it_runs_over_four_years() -> None:
    """The first warps are of spring 2022 and the last of 2026; one is undated, one has only a season."""
    dated = [warp.started.text for warp in _journal().warps.values() if warp.started]

    assert {"2022", "2023", "2024", "2025", "2026"} == {re.findall(r"\d{4}", text)[0] for text in dated}
    assert "spring 2022" in dated
    assert 1 == sum(warp.started is None for warp in _journal().warps.values())


def test_short_records_and_long_ones() -> None:
    """Eight warps and more say no more than nine lines; one of them is six lines and nothing else."""
    keys = {warp.name: len(warp.lines) for warp in _journal().warps.values()}
    header = (ENTRIES / "warps" / "tideline-towels.md").read_text(encoding="utf-8").split("---\n")[1]

    assert sum(number <= 9 for number in keys.values()) >= 8
    assert (
        "title: Tideline towels\nyarn: cottolin-22-2\nweave: plain weave\nin_reed: 20 1/4\n"
        "on_loom: 19 3/8 x 33\nwashed: 17 7/8 x 30 1/8\n"
    ) == header


def test_about_six_in_ten_are_shared() -> None:
    """Most of the cloth may be seen by everybody, and a good part is private."""
    shared = sum(warp.share is True for warp in _journal().warps.values())

    assert 0.55 <= shared / len(_journal().warps) <= 0.70


def test_what_the_journal_should_show_is_there() -> None:
    """Metric records, repeated washes, fulling, a double cloth, a re-threaded tail, bands, a disaster."""
    warps = _journal().warps

    assert sum(warp.units == "cm" for warp in warps.values()) >= 6
    assert sum(len(piece.washed) > 1 for warp in warps.values() for piece in warp.pieces) >= 8
    assert {"cove-blanket", "fold-blanket"} == {
        warp.name
        for warp in warps.values()
        if any(level.fulling for level in (warp, *warp.pieces))
    }
    assert warps["fold-blanket"].layers is not None
    assert warps["fold-blanket"].layers.number == 2
    assert ["napkins", "bookmarks"] == [stretch.name for stretch in warps["gannet-napkins"].stretches]
    assert {"s16", "s20", "s24"} == set(warps["sett-sampler"].across or ())
    assert [False] == [each.yes for each in warps["the-shrunk-scarf"].learn]


def test_every_finish_has_its_caution() -> None:
    """Hot water, steam, lint, felt and loose fringe can hurt, and every recipe says what of it concerns it."""
    cautions = {name: finish.cautions or "" for name, finish in _journal().finishes.items()}
    said = " ".join(cautions.values()).lower()

    assert all(len(caution.split()) >= 10 for caution in cautions.values())
    assert [] == [word for word in ("hot water", "steam", "lint", "felt", "fringe", "children") if word not in said]


def test_it_says_that_it_is_invented() -> None:
    """The front page says in its first sentence that workshop, place and people are invented."""
    assert _journal().settings.notes.strip().startswith("**All of this is invented.**")
    assert "invented" in (_journal().settings.maker or "")


def _prose(record: Record) -> str:
    kept = [record.notes_for_everyone or "", record.notes]
    kept += [str(getattr(record, key, None) or "") for key in ("done", "care", "cautions")]
    return "\n\n".join(kept)


def test_no_sentence_occurs_twice() -> None:
    """A weaver does not write the same sentence into two records, nor twice into one."""
    texts = [*(_prose(record) for record in _records()), _journal().settings.notes]
    sentences = Counter(
        sentence
        for text in texts
        for paragraph in text.split("\n\n")
        for sentence in re.split(r"(?<=[.!?])\s+", " ".join(paragraph.split()))
        if sentence
    )

    assert len(sentences) > 300
    assert [] == [sentence for sentence, times in sentences.items() if times > 1]


def test_thirty_warps_have_something_to_tell() -> None:
    """Thirty records and more carry 45 words and more of their own."""
    long = [w.name for w in _journal().warps.values() if len(f"{w.notes_for_everyone or ''} {w.notes}".split()) >= 45]

    assert len(long) >= 30


def test_shared_warps_say_something_to_everybody() -> None:
    """A shared warp has words that may be read by everybody, and a private one has none."""
    for warp in _journal().warps.values():
        assert bool(warp.share) == bool(warp.notes_for_everyone), warp.name
