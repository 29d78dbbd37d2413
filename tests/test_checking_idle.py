"""What is asked about a draft besides: parts to no purpose, names nearly known, orders that do not come out."""

from __future__ import annotations

from pathlib import Path

import pytest

from journal_tools.checking import check
from journal_tools.records import read_journal
from tests.house import PROJECT
from tests.ledger.desk import write
from tests.test_checking_drafts import asked

DASHES = "threading: 1-4\ntie_up: 1-2, 2-3, 3-4, 1-4\ntreadling: 1-4{more}"


def test_a_dash_for_a_plus(tmp_path: Path) -> None:
    """Ends that nothing binds, shafts that never move and treadles never pressed are one question, with its cause."""
    [question] = check(write(tmp_path / "asked", drafts__one=DASHES.format(more="")))

    assert ("tie_up", 3, "idle-parts", False) == (question.field, question.line, question.slug, question.is_fault)
    assert "Nothing binds end 4; shaft 4 is threaded and never moved; treadles 5, 6, 7, 8, 9 and 10 are tied and" in (
        question.right
    )
    assert "`1-2` is two treadles, `1+2` one treadle on two shafts." in question.right
    accepted = "\naccepted: idle parts"
    assert () == check(write(tmp_path / "answered", drafts__one=DASHES.format(more=accepted)))


@pytest.mark.parametrize(
    ("text", "slugs"),
    [
        ("threading: 1, 2, 3\nlift_plan: 1, 2", ["idle-parts"]),
        ("threading: 1, 2, 3\nlift_plan: 1, 2\naccepted: idle parts", []),
        ("threading: 1, 2, 1, 2\ntie_up: 1, 2, 1+2, 1, 1, 1\ntreadling: 1, 2", ["idle-parts"]),
        ("threading: 1, 2, 1, 2\ntie_up: 1, 2, 1+2, 1\ntreadling: 1, 2", []),
        ("threading: 1, 2, 1, 2\ntreadles: 6\ntie_up: 1, 2, 1+2, 1, 1, 1\ntreadling: 1, 2", []),
    ],
)
def test_to_no_purpose(tmp_path: Path, text: str, slugs: list[str]) -> None:
    """Treadles never pressed are asked about beyond two more than shafts, and beyond those that the record says."""
    assert slugs == [problem.slug for problem in check(write(tmp_path, drafts__one=text))]


@pytest.mark.parametrize("weave", ["2/2 twil", "2/2 twil, double width", "plain weeve"])
def test_a_weave_that_is_nearly_known(tmp_path: Path, weave: str) -> None:
    """A draft's weave that is a slip away from one that is known here is asked about, and asked once."""
    [question] = asked(tmp_path / "asked", weave=weave)

    assert f'weave: read "{weave}". Is it ' in question
    assert [] == asked(tmp_path / "answered", weave=weave, more="\naccepted: no such weave")


@pytest.mark.parametrize(
    ("order", "is_asked"),
    [
        ("3 ground, supplementery", True),
        ("3 ground, suplementary", True),
        ("3 ground, supplementary", False),
        ("3 ground, pattern-2", False),
        ("3 linen, silk", False),
        ("3 ground, supplementery\naccepted: no such role", False),
    ],
)
def test_a_role_that_is_nearly_known(tmp_path: Path, order: str, is_asked: bool) -> None:
    """A role that is a slip away from one with a meaning is asked about; words of one's own are not."""
    told = asked(tmp_path, weave="a name", more=f"\nwarp_order: {order}")

    assert is_asked == any("Is it supplementary?" in each for each in told)
    assert is_asked == bool(told)


@pytest.mark.parametrize(
    ("threading", "order", "is_asked"),
    [
        ("8 times (1-4)", "warp_colours: 31 red", True),
        ("8 times (1-4)", "warp_colours: 31 red\naccepted: uneven order", False),
        ("8 times (1-4)", "warp_colours: 32 red", False),
        ("8 times (1-4)", "warp_colours: 20 red", False),
        ("1-4", "warp_colours: 6 red, 4 blue", False),
        ("1-4", "warp_order: ground, pattern, tabby", True),
        ("1-4", "warp_order: ground, pattern", False),
        ("1-4", "weft_order: ground, pattern, tabby", True),
        ("1-4", "warp_order: 4 ground, pattern\naccents:\n  - end: 2", False),
    ],
)
def test_an_order_that_does_not_come_out(tmp_path: Path, threading: str, order: str, is_asked: bool) -> None:
    """An order of roles goes into the threads, and a long one of colours is not a thread or two beside them."""
    told = asked(tmp_path, threading, "a name", f"\n{order}")

    assert is_asked == any("neither goes into the other a whole number of times" in each for each in told)


def test_beside_a_part_that_cannot_be_read(tmp_path: Path) -> None:
    """Where a part could not be read, nothing is asked that would follow from its being away."""
    [fault] = check(write(tmp_path, drafts__one="threading: 1-4\ntie_up: one\nlift_plan: 1, 2\nwarp_order: a, b, c"))

    assert ("tie_up", True) == (fault.field, fault.is_fault)


def test_inside_a_warp_and_a_layer(tmp_path: Path) -> None:
    """A draft written in a warp is asked about there, and the orders of a double cloth in their layer."""
    layer = "\n  threading: 1, 2\n  lift_plan: 1, 2\n  weft_order: a, b, c"
    layers = f"upper:{layer}\nlower:\n  threading: 1, 2\n  lift_plan: 1, 2"
    in_a_warp = "draft:\n  threading: 1, 2, 3\n  lift_plan: 1, 2"
    made = write(tmp_path, drafts__two=layers, warps__one=in_a_warp)
    told = [(problem.file, problem.line, problem.field, problem.slug) for problem in check(made)]

    assert ("drafts/two.md", 5, "upper: weft_order", "uneven-order") in told
    assert ("warps/one.md", 4, "draft: lift_plan", "idle-parts") in told


def test_the_demonstration_asks_nothing_of_its_drafts() -> None:
    """No draft of the demonstration journal is asked about."""
    found = read_journal(PROJECT / "entries")

    assert [] == [problem for problem in check(found) if problem.file.startswith("drafts/")]
