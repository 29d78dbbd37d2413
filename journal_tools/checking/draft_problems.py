"""What is wrong with drafts, and what is asked about them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from journal_tools.checking.idle_parts import idle_parts
from journal_tools.checking.orders import odd_orders
from journal_tools.checking.woven import NO_ORDER, comes_out_even, unfitting, without_order, woven_draft
from journal_tools.drafts import Draft as Woven
from journal_tools.drafts.unfitting import Unfitting
from journal_tools.problems import Problem, Severity
from journal_tools.quantities import Unreadable
from journal_tools.records import Draft, Journal

KEYS = {
    "threading": ("threading", "profile", "shafts"),
    "tie_up": ("tie_up", "treadles"),
    "treadling": ("treadling", "profile_treadling"),
    "lift_plan": ("lift_plan", "shafts"),
    "warp_spacing": ("ends_in_dents",),
}
"""The keys that may stand for a part of a draft, where it is not its own; the first that the record has is meant."""


def draft_problems(journal: Journal) -> Iterator[Problem]:
    """Every fault and question of every draft, by itself or inside a warp."""
    broken = {problem.file for problem in journal.problems if problem.is_fault}
    own = [
        (warp.file, stretch.line("draft"), "draft", stretch.draft)
        for warp in journal.warps.values()
        for stretch in {id(each): each for each in (warp, *warp.stretches)}.values()
        if isinstance(stretch.draft, Draft)
    ]
    records = [(draft.file, 0, "", draft) for draft in journal.drafts.values()]
    for file, line, field, draft in [*records, *own]:
        # In a broken file a part that could not be read is missing, and has been told of already.
        for wrong in unfitting(draft) if file not in broken else ():
            keys, at = _place(draft, wrong)
            path = ": ".join(each for each in (field, *keys) if each) or "draft"
            yield Problem(file, at or line, path, wrong.read, wrong.right, slug="draft")
        try:
            made = woven_draft(draft)
        except Unreadable:
            continue
        yield from _dents(draft, made, file, field)
        yield from _blocks(draft, draft.accepted, file, field)
        if not field:
            yield from _slips(draft, made, draft.accepted, file)
            yield from _woven_otherwise(draft, made)
        if file not in broken:
            yield from idle_parts(draft, made, file, field)
            yield from odd_orders(draft, made, draft.accepted, file, field)


def _place(draft: Draft, wrong: Unreadable) -> tuple[tuple[str, ...], int]:
    """The keys that lead to the part that does not fit, and the line of the last that the record has."""
    part = wrong.part if isinstance(wrong, Unfitting) else ()
    line, at = 0, draft
    for depth, name in enumerate(part):
        key = next((key for key in KEYS.get(name, (name,)) if at.line(key)), "")
        if not key:
            return part[:depth], line
        line = at.line(key)
        below = getattr(at, key)
        if not isinstance(below, Draft):
            return (*part[:depth], key), line
        at = below
    return part, line


def _dents(draft: Draft, made: Woven, file: str, field: str) -> Iterator[Problem]:
    """Dents that hold another number of ends than there are to sley."""
    if draft.ends_in_dents is None or "uneven-dents" in draft.accepted:
        return
    held = sum(min(dent, default=0) for dent in draft.ends_in_dents.items)
    ends = len(made.threading)
    added = sum(accent.way == "added" for accent in draft.accents)
    if any(comes_out_even(held, number) for number in (ends, ends - added)):
        return
    right = (
        f"the dents hold {held} ends and the threading has {ends}, floating selvedges not counted: neither goes into"
        " the other a whole number of times. If it is so, write `accepted: uneven dents`."
    )
    path = ": ".join(each for each in (field, "ends_in_dents") if each)
    line = draft.line("ends_in_dents")
    yield Problem(file, line, path, draft.ends_in_dents.text, right, Severity.QUESTION, "uneven-dents")


def _blocks(draft: Draft, accepted: Sequence[str], file: str, field: str) -> Iterator[Problem]:
    """Blocks that nothing puts in order, beside a threading that is written out; in layers too."""
    if without_order(draft) and "unused-blocks" not in accepted:
        path = ": ".join(each for each in (field, "blocks") if each)
        question = f"{NO_ORDER} If they are kept as notes, write `accepted: unused blocks`."
        yield Problem(file, draft.line("blocks"), path, "", question, Severity.QUESTION, "unused-blocks")
    for name, layer in (("upper", draft.upper), ("lower", draft.lower)):
        if layer is not None:
            yield from _blocks(layer, accepted, file, ": ".join(each for each in (field, name) if each))


def _slips(draft: Draft, made: Woven, accepted: Sequence[str], file: str, layer: str = "") -> Iterator[Problem]:
    """A slip in a threading that repeats; of a double cloth in each layer by itself."""
    from journal_tools.drafts.slip_words import slip_words
    from journal_tools.drafts.slips import slips_in

    if draft.upper is not None and draft.lower is not None:
        for name, part in (("upper", draft.upper), ("lower", draft.lower)):
            path = ": ".join(each for each in (layer, name) if each)
            yield from _slips(part, woven_draft(part), accepted, file, path)
        return
    slips = () if "accent" in made.warp_order else slips_in(made.threading)
    if slips and "threading-slip" not in (*accepted, *draft.accepted):
        key = "threading" if draft.line("threading") else "profile"
        path = ": ".join(each for each in (layer, key) if each)
        question = f"{slip_words(*slips)} If it is so, write `accepted: threading slip`."
        yield Problem(file, draft.line(key), path, "", question, Severity.QUESTION, "threading-slip")


def _woven_otherwise(draft: Draft, made: Woven) -> Iterator[Problem]:
    """A draft that does not weave what it is said to."""
    from journal_tools.drafts.analysis import agreement

    if draft.weave and "woven-otherwise" not in draft.accepted and (name := agreement(made, draft.weave)):
        question = f"what it weaves is {name}. If it is so, write `accepted: woven otherwise`."
        yield Problem(
            draft.file, draft.line("weave"), "weave", draft.weave, question, Severity.QUESTION, "woven-otherwise"
        )
