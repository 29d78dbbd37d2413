"""The drafts of the demonstration, each as its record writes it against as it is printed."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from journal_tools.notation import print_colours, print_lift_plan, print_profile, print_sets, print_tie_up
from journal_tools.records import read_journal
from journal_tools.records.draft import Draft

ENTRIES = Path(__file__).parents[2] / "entries"

PRINTED: dict[str, Callable[..., str]] = {
    "threading": print_sets,
    "tie_up": print_tie_up,
    "treadling": print_sets,
    "lift_plan": print_lift_plan,
    "tabby_between": print_sets,
    "profile": print_profile,
    "profile_treadling": print_profile,
    "warp_colours": print_colours,
    "weft_colours": print_colours,
    "warp_order": print_colours,
    "weft_order": print_colours,
}

OTHERWISE = {
    "satin-five treadling": "1-5",
}
"""What is printed otherwise than it is written: as a threading the same order is written as a run."""


def in_order(text: str) -> str:
    """The text with every set upwards, for 4+1 and 1+4 are one treadle."""
    return ", ".join("+".join(sorted(each.split("+"), key=int)) if "+" in each else each for each in text.split(", "))


def lines(name: str, draft: Draft) -> dict[str, tuple[str, str]]:
    """Each line of a draft and of its layers and blocks: as written, and as printed."""
    found = {
        f"{name} {key}": (line.text, printed(line.items))
        for key, printed in PRINTED.items()
        if (line := getattr(draft, key)) is not None
    }
    for letter, block in (draft.blocks or {}).items():
        for key in ("threading", "treadling"):
            if (line := getattr(block, key)) is not None:
                found[f"{name} {letter} {key}"] = (line.text, print_sets(line.items))
    for layer in ("upper", "lower"):
        if (part := getattr(draft, layer)) is not None:
            found |= lines(f"{name} {layer}", part)
    return found


def test_as_they_are_written() -> None:
    """What the demonstration's drafts say in a natural way is printed in the same words."""
    written: dict[str, str] = {}
    printed: dict[str, str] = {}
    for name, draft in read_journal(ENTRIES).drafts.items():
        for line, (typed, said) in lines(name, draft).items():
            written[line], printed[line] = in_order(typed), said

    assert len(written) > 40
    assert written | OTHERWISE == printed
