"""Slips in a threading, in a weaver's words."""

from __future__ import annotations

from journal_tools.drafts.slips import Slip
from journal_tools.notation import print_sets

TIMES = {1: "once", 2: "twice"}

Ends = frozenset[int]


def slip_words(*slips: Slip[Ends]) -> str:
    """The question about the slips in a threading, of which there is at least one."""
    times = TIMES.get(len(slips), f"{len(slips)} times")
    said = "; ".join(map(_said, slips))
    asked = "A slip?" if len(slips) == 1 else "Slips?"
    return f"The threading repeats after {slips[0].repeat} ends but {times}: {said}. {asked}"


def _said(slip: Slip[Ends]) -> str:
    end, last = slip.place + 1, slip.place + slip.threads
    read, right = (_shafts(thread) for thread in (slip.read, slip.right))
    if slip.kind == "crossed":
        return f"ends {end} and {last} are crossed: {read}, {right} where the others have {right}, {read}"
    if slip.kind == "differ":
        return f"ends {end} {'and' if slip.threads == 2 else 'to'} {last} differ from the other repeats"
    if slip.kind == "missing":
        return f"an end {_on(slip.right)} is missing before end {end}"
    if slip.kind == "extra":
        return f"end {end}, {_on(slip.read)}, is one too many"
    if not slip.read:
        return f"end {end} has no heddle"
    return f"end {end} is on {read} where the others have {right if slip.right else 'no heddle'}"


def _on(thread: Ends | None) -> str:
    return f"on {_shafts(thread)}" if thread else "without a heddle"


def _shafts(thread: Ends | None) -> str:
    return "" if thread is None else print_sets([thread])
