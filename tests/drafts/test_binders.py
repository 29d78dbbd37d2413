"""A double weave with a mistake in it: what joins its layers."""

from __future__ import annotations

import pytest

from journal_tools.drafts import Draft, parse_lift_plan, parse_threading
from journal_tools.drafts.analysis import Analysis, analysed
from journal_tools.drafts.analysis_words import warnings

PLAIN = "1, 1+3+4, 3, 1+2+3"
MANY = f"10 times ({PLAIN})"


def look(threading: str, lifts: str, said: str = "double weave") -> Analysis:
    """A draft by its lifts."""
    return analysed(Draft(parse_threading(threading), lift_plan=parse_lift_plan(lifts)), said_weave=said)


@pytest.mark.parametrize("said", ["double weave", ""])
@pytest.mark.parametrize(
    ("threading", "lifts", "words"),
    [
        ("1-4", f"{MANY}, 1, 1+3+4, 3, 1+2, {MANY}", "pick 44, which binds"),
        ("10 times (1-4)", f"{MANY}, 1, 1+3+4, 3, 1+2, {MANY}", "pick 44, which binds"),
        ("10 times (1-4)", f"{MANY}, 1, 3+4, 3, 1+2, {MANY}", "picks 42 and 44, which bind"),
        ("10 times (1-4), 1, 2+3, 3, 4, 9 times (1-4)", f"{MANY}, 1, 1+3+4, 3, 1+2, {MANY}", "pick 44, which binds"),
        ("10 times (1-4), 1+2, 2, 3, 4, 9 times (1-4)", MANY, None),
    ],
)
def test_what_binds_them(threading: str, lifts: str, words: str | None, said: str) -> None:
    """Layers that only a few threads keep together are told, with the threads, whatever it is said to be."""
    told = [line for line in warnings(look(threading, lifts, said)) if "but for" in line]

    assert ([] if words is None else [f"Two layers but for {words} them."]) == told


def test_in_one_repeat() -> None:
    """In a draft of a few picks each is left out by itself, where it is said to be in layers."""
    lifts = "1, 1+3+4, 3, 1+2+3, 1, 1+3+4, 3, 1+2"

    assert (7,) == (found.picks if (found := look("1-4", lifts).binders) else ())
    assert look("1-4", lifts, "plain weave").binders is None


@pytest.mark.parametrize("threading", ["1-4", "10 times (1-4)", "10 times (1-4), 1, 3, 2, 4, 10 times (1-4)"])
def test_one_cloth(threading: str) -> None:
    """A twill, even with a slip, is no double cloth that something binds."""
    assert look(threading, "10 times (1+2, 2+3, 3+4, 1+4)").binders is None
