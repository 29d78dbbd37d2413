"""What is asked about a draft: a slip in its threading, a weave that it is not."""

from __future__ import annotations

from pathlib import Path

import pytest

from journal_tools.checking import check
from tests.ledger.desk import write

DRAFT = "threading: {threading}\ntie_up: 1+2, 2+3, 3+4, 4+1\ntreadling: 1-4\nweave: {weave}{more}"
SLIPPED = "6 times (1-4), 1, 3, 3, 4, 4 times (1-4)"


def asked(folder: Path, threading: str = "1-4", weave: str = "2/2 twill", more: str = "") -> list[str]:
    """The questions about one draft, as they are told."""
    made = write(folder, drafts__one=DRAFT.format(threading=threading, weave=weave, more=more))
    return [problem.sentence() for problem in check(made) if not problem.is_fault]


def test_a_slip_in_the_threading(tmp_path: Path) -> None:
    """One end that breaks a repeat is asked about, with its place and what the others have, and asked once."""
    [question] = asked(tmp_path / "asked", SLIPPED)

    assert "drafts/one.md:" in question
    assert "End 26 is on 3 where the other repeats of 4 ends have 2. A slip?" in question
    assert [] == asked(tmp_path / "answered", SLIPPED, more="\naccepted: threading slip")


def test_another_weave_than_it_says(tmp_path: Path) -> None:
    """A draft that is called plain weave and weaves a twill is asked about, and asked once."""
    [question] = asked(tmp_path / "asked", weave="plain weave")

    assert 'weave: read "plain weave". What it weaves is 2/2 twill.' in question
    assert [] == asked(tmp_path / "answered", weave="plain weave", more="\naccepted: woven otherwise")


@pytest.mark.parametrize(
    ("more", "field", "right"),
    [
        ("\naccents:\n  - end: 400", "accents", "An accent is one of the ends 1 to 5."),
        ("\nends_in_dents: 1+2", "ends_in_dents", "Ends in a dent are one number"),
        ("\nlower:\n  threading: 1, 2\n  lift_plan: 1, 2", "draft", "A double cloth wants both its layers"),
    ],
)
def test_parts_that_do_not_fit(tmp_path: Path, more: str, field: str, right: str) -> None:
    """A part that cannot be is told with its key, its line and what would be right."""
    made = write(tmp_path, drafts__one=DRAFT.format(threading="1-4", weave="a name", more=more))
    [fault] = [problem for problem in check(made) if problem.is_fault]

    assert (field, field != "draft") == (fault.field, fault.line > 0)
    assert right in fault.right


@pytest.mark.parametrize("weave", ["2/2 twill", "twill", "a name of my own", "straight twill, fine"])
def test_what_is_not_asked(tmp_path: Path, weave: str) -> None:
    """A draft that is what it says, or has a name that nobody can draw, is not asked about."""
    assert [] == asked(tmp_path, weave=weave)
