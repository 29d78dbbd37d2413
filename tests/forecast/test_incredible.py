"""Figures that the other warps make incredible: asked about once, with the likeliest slip."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from journal_tools.checking import check
from journal_tools.forecast.incredible import FEWEST, SLUG, with_incredible, worth_asking
from journal_tools.forecast.memory import Memory
from journal_tools.ledger.doubts import SLUGS
from journal_tools.problems import Problem
from journal_tools.records import Journal, read_journal
from tests.house import PROJECT


def problems_of(journal: Journal) -> list[Problem]:
    """What is asked about sizes: by the ledger, and for the memory's sake."""
    found = with_incredible(journal, Memory.of(journal), check(journal))
    return [problem for problem in found if problem.slug in (*SLUGS, SLUG)]


def asked(folder: Path, warp: str, was: str, typed: str) -> list[Problem]:
    """What is asked about one warp of the demonstration journal once a figure in it is typed otherwise."""
    entries = folder / "entries"
    shutil.copytree(PROJECT / "entries", entries)
    record = entries / "warps" / f"{warp}.md"
    text = record.read_text(encoding="utf-8")
    assert was in text
    record.write_text(text.replace(was, typed, 1), encoding="utf-8")
    return [problem for problem in problems_of(read_journal(entries)) if problem.file == f"warps/{warp}.md"]


def shelf(folder: Path, number: int, *more: str) -> Journal:
    """So many warps in one cotton, all alike but for a little, and then those given."""
    yarn = "---\nfibre: cotton\nnumber: 8/2 cotton\n---\n"
    warps = [
        f"yarn: cotton-8-2\nweave: plain weave\nstarted: {2015 + n}\nin_reed: 20\non_loom: 19 {n % 3 + 1}/8 x 33\n"
        f"washed: 17 {n % 4 + 3}/8 x {29 + n % 2} 5/8\n"
        for n in range(number)
    ]
    (folder / "yarns").mkdir(parents=True)
    (folder / "warps").mkdir()
    (folder / "yarns" / "cotton-8-2.md").write_text(yarn, encoding="utf-8")
    for n, header in enumerate([*warps, *more]):
        (folder / "warps" / f"warp-{n:02}.md").write_text(f"---\n{header}---\n", encoding="utf-8")
    return read_journal(folder)


WILD = "yarn: cotton-8-2\nweave: plain weave\nstarted: 2024\nin_reed: 20\non_loom: 19 1/4 x 33\nwashed: 13 x 29 1/2\n"
"""35 % narrower, where its fellows lose 12: less than the ledger asks about, more than anybody believes."""


class TestAsking:
    def test_once(self, tmp_path: Path) -> None:
        """A width a third narrower is asked about at its line, beside what the others would make it."""
        [problem] = problems_of(shelf(tmp_path, 10, WILD))

        assert ("warps/warp-10.md", 7, "washed", "13") == (problem.file, problem.line, problem.field, problem.read)
        assert problem.told.startswith(
            "The width goes from 19 1/4 in on the loom to 13 in washed, where your other warps would make it 1"
        )
        assert problem.told.endswith("If it is so, write `accepted: incredible figure`.")
        assert not problem.is_fault

    def test_accepted(self, tmp_path: Path) -> None:
        """What the weaver has accepted is not asked again."""
        assert [] == problems_of(shelf(tmp_path, 10, WILD + "accepted: incredible figure\n"))

    def test_kept_out(self, tmp_path: Path) -> None:
        """A warp that is not learned from is not judged by what was learned."""
        assert [] == problems_of(shelf(tmp_path, 10, WILD + "learn: no, it was boiled\n"))

    def test_one_a_warp(self, tmp_path: Path) -> None:
        """Two wild figures in one warp are one question."""
        assert 1 == len(problems_of(shelf(tmp_path, 10, WILD.replace("29 1/2", "22"))))

    def test_few_warps_know_nothing(self, tmp_path: Path) -> None:
        """A journal of a few warps does not cry, however odd one of them is."""
        few = shelf(tmp_path, FEWEST - 2, WILD)

        assert not worth_asking(few, check(few))
        assert [] == problems_of(few)

    def test_worth_asking_from_a_few_on(self, tmp_path: Path) -> None:
        """With one warp more it begins to know what is odd."""
        enough = shelf(tmp_path, FEWEST - 1, WILD)

        assert worth_asking(enough, check(enough))

    def test_ordinary_cloth(self, tmp_path: Path) -> None:
        """Cloth like the others is not asked about."""
        assert [] == problems_of(shelf(tmp_path, 12))


class TestLikeliestSlip:
    @pytest.mark.parametrize(
        ("warp", "was", "typed", "line", "asks"),
        [
            ("guest-napkins", "in_reed: 21", "in_reed: 121", 8, "the 121 in the reed: is there a digit too many"),
            ("tideline-towels", "washed: 17 7/8", "washed: 7 7/8", 7, "Is a digit missing, and is it 17 7/8?"),
            ("tideline-towels", "on_loom: 19 3/8", "on_loom: 14.9", 7, "were two digits changed over, and is it 19.4?"),
            ("oystercatcher-towels", "x 31 1/2", "x 13 1/2", 8, "Were two digits changed over, and is it 31 1/2?"),
            ("oystercatcher-towels", "17 1/2 x 31 1/2", "31 1/2 x 17 1/2", 8, "Were width and length changed over?"),
            ("guest-napkins", "washed: 18 5/8", "washed: 47.5", 10, "Is it in centimetres?"),
        ],
    )  # fmt: skip
    def test_named(self, tmp_path: Path, warp: str, was: str, typed: str, line: int, asks: str) -> None:
        """Digits changed over, one too many, one missing, width for length, centimetres for inches: each by name."""
        found = [problem for problem in asked(tmp_path, warp, was, typed) if asks in problem.told]

        assert [line] == [problem.line for problem in found[:1]]

    def test_none_that_fits(self, tmp_path: Path) -> None:
        """Where no slip would mend it, what happened is asked."""
        [problem] = problems_of(shelf(tmp_path, 10, WILD.replace("washed: 13", "washed: 14")))

        assert " Is a figure wrong, or what happened to it? " in problem.told


class TestTheDemonstration:
    def test_no_false_alarm(self) -> None:
        """Nothing in the demonstration is incredible but what the ledger asks about, and that needs no slip."""
        found = problems_of(read_journal(PROJECT / "entries"))

        assert [("warps/school-scarf.md", "grew")] == [(problem.file, problem.slug) for problem in found]
        assert "Did it stretch, or was it read wrong? If it is so" in found[0].told

    def test_a_quarter_inch_is_no_question(self, tmp_path: Path) -> None:
        """A figure that is off by less than cloth wanders is not asked about."""
        assert [] == asked(tmp_path, "tideline-towels", "washed: 17 7/8", "washed: 17 3/8")
