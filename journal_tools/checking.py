"""Every problem of a journal in one list: of reading, of drafts, and what the ledgers ask."""

from __future__ import annotations

import dataclasses
import difflib
from collections.abc import Iterator, Mapping

from journal_tools.drafts import Draft as Woven
from journal_tools.drafts import named_weave, weave_names
from journal_tools.drafts.making import (
    Accent,
    double_cloth,
    from_blocks,
    refuse_what_is_not_held,
    spacing_in_dents,
    with_accents,
    with_tabby,
)
from journal_tools.ledger import Ledger, ledger_of, questions
from journal_tools.notation import print_sets
from journal_tools.problems import Problem, Severity
from journal_tools.quantities import Unreadable
from journal_tools.records import Draft, Journal
from journal_tools.records.draft_parts import AccentEnd
from journal_tools.records.notated import ColourOrder

PARTS = {
    "threading": "threading", "tie-up": "tie_up", "treadle": "treadling", "lift plan": "lift_plan",
    "accent": "accents", "Block ": "profile", "in a dent": "ends_in_dents", "dent has": "ends_in_dents",
    "layers": "upper", "cannot hold": "weave",
}
"""The words for the parts of a draft, and the keys that they stand under."""


def woven_draft(draft: Draft) -> Woven:
    """The draft that a record's text describes. Raises Unreadable when its parts do not fit together."""
    refuse_what_is_not_held((draft.weave or "", *(draft.warp_order.items if draft.warp_order else ())))
    made = _layered(draft) if draft.upper is not None or draft.lower is not None else _single(draft)
    if draft.accents:
        made = with_accents(made, (_accent(each) for each in draft.accents))
    made.refuse_beyond(draft.shafts.number if draft.shafts else None, draft.treadles.number if draft.treadles else None)
    return made


def _layered(draft: Draft) -> Woven:
    if draft.upper is None or draft.lower is None:
        raise Unreadable("", "A double cloth wants both its layers, upper and lower.")
    if draft.threading is not None or draft.profile is not None:
        raise Unreadable("", "Write either the threading of the whole, or upper and lower, and not both.")
    made = double_cloth(woven_draft(draft.upper), woven_draft(draft.lower))
    return dataclasses.replace(made, floating_selvedges=_floating(draft))


def _single(draft: Draft) -> Woven:
    units = draft.blocks or {}
    if (draft.threading is not None and draft.profile is not None) or (
        draft.treadling is not None and draft.profile_treadling is not None
    ):
        raise Unreadable("", "Write either a threading and treadling thread by thread, or their profile, and not both.")
    threading = draft.threading.items if draft.threading else ()
    if draft.profile is not None:
        ends = {letter: block.threading.items if block.threading else None for letter, block in units.items()}
        threading = from_blocks(ends, draft.profile.items, "threading")
    treadling = draft.treadling.items if draft.treadling else None
    if draft.profile_treadling is not None:
        picks = {letter: block.treadling.items if block.treadling else None for letter, block in units.items()}
        treadling = from_blocks(picks, draft.profile_treadling.items, "treadling")
    lifts, order = draft.lift_plan.items if draft.lift_plan else None, _items(draft.weft_order)
    if draft.tabby_between is not None:
        treadling = None if treadling is None else with_tabby(treadling, draft.tabby_between.items)
        lifts = None if lifts is None else with_tabby(lifts, draft.tabby_between.items)
        order = order or ("pattern", "tabby")
    return Woven(
        threading,
        draft.tie_up.items if draft.tie_up else None,
        treadling,
        lifts,
        draft.shed == "rising",
        _items(draft.warp_colours),
        _items(draft.weft_colours),
        _items(draft.warp_order),
        order,
        warp_spacing=spacing_in_dents(draft.ends_in_dents.items) if draft.ends_in_dents else (),
        floating_selvedges=_floating(draft),
    )


def _items(order: ColourOrder | None) -> tuple[str, ...]:
    return order.items if order else ()


def _floating(draft: Draft) -> int:
    return draft.floating_selvedges.number if draft.floating_selvedges else 0


def _accent(end: AccentEnd) -> Accent:
    shafts = end.shaft.items[0] if end.shaft else frozenset[int]()
    return Accent(end.end.number if end.end else 0, shafts, end.colour or "", end.way == "added")


def check(journal: Journal, ledgers: Mapping[str, Ledger] | None = None) -> tuple[Problem, ...]:
    """Every problem of every file, in the order of files and lines.

    ledgers: of warps, by name, where they are at hand; else they are reckoned here.
    """
    known = ledgers if ledgers is not None else {}
    found = [*journal.problems, *_drafts(journal), *_weaves(journal), *_woven_otherwise(journal)]
    for name, warp in journal.warps.items():
        found += questions(journal, known.get(name) or ledger_of(journal, warp))
    return tuple(sorted(dict.fromkeys(found)))


def _weaves(journal: Journal) -> Iterator[Problem]:
    """A weave that is nearly, but not quite, one that can be drawn from its name."""
    for warp in journal.warps.values():
        for level in {id(each): each for each in (warp, *warp.stretches)}.values():
            name = level.weave or ""
            near = difflib.get_close_matches(name.lower(), weave_names(), n=1, cutoff=0.86)
            if not near or named_weave(name) is not None or "no-such-weave" in (*warp.accepted, *level.accepted):
                continue
            right = (
                f"is it {near[0]}? Any name will do, but this one cannot be drawn."
                " If it is so, write `accepted: no such weave`."
            )
            yield Problem(warp.file, level.line("weave"), "weave", name, right, Severity.QUESTION, "no-such-weave")


def _drafts(journal: Journal) -> Iterator[Problem]:
    broken = {problem.file for problem in journal.problems if problem.is_fault}
    own = [
        (warp.file, stretch.line("draft"), "draft", stretch.draft)
        for warp in journal.warps.values()
        for stretch in {id(each): each for each in (warp, *warp.stretches)}.values()
        if isinstance(stretch.draft, Draft)
    ]
    records = [(draft.file, 0, "", draft) for draft in journal.drafts.values()]
    for file, line, field, draft in [*records, *own]:
        if file in broken:
            continue  # a part that could not be read is missing here, and has been told of already
        try:
            woven_draft(draft)
        except Unreadable as unreadable:
            part = _part(draft, unreadable.right)
            path = ": ".join(each for each in (field, part) if each) or "draft"
            yield Problem(file, draft.line(part) or line, path, unreadable.read, unreadable.right, slug="draft")


def _woven_otherwise(journal: Journal) -> Iterator[Problem]:
    """Drafts with a slip in a threading that repeats, and drafts that do not weave what they are said to."""
    if not journal.drafts:
        return
    from journal_tools.drafts.analysis import agreement
    from journal_tools.drafts.slips import slip_in

    for draft in journal.drafts.values():
        try:
            made = woven_draft(draft)
        except Unreadable:
            continue  # told of already
        slip = None if "accent" in made.warp_order else slip_in(made.threading)
        if slip is not None and "threading-slip" not in draft.accepted:
            read, right = (None if end is None else print_sets([end]) for end in (slip.read, slip.right))
            end, repeat = f"end {slip.place + 1}", f"{slip.repeat} ends"
            said = {
                "wrong": f"{end} is on {read} where the other repeats of {repeat} have {right}",
                "missing": f"an end on {right} is missing before {end} in a repeat of {repeat}",
                "extra": f"{end}, on {read}, is one too many in a repeat of {repeat}",
            }[slip.kind]
            line = draft.line("threading", "profile")
            question = f"{said}. A slip? If it is so, write `accepted: threading slip`."
            yield Problem(draft.file, line, "threading", "", question, Severity.QUESTION, "threading-slip")
        if draft.weave and "woven-otherwise" not in draft.accepted and (name := agreement(made, draft.weave)):
            question = f"what it weaves is {name}. If it is so, write `accepted: woven otherwise`."
            yield Problem(
                draft.file, draft.line("weave"), "weave", draft.weave, question, Severity.QUESTION, "woven-otherwise"
            )


def _part(draft: Draft, said: str) -> str:
    """The key of the part that a sentence about a whole draft names first, "" when the record has none of them."""
    named = [(said.find(words), key) for words, key in PARTS.items() if words in said and draft.line(key)]
    return min(named)[1] if named else ""
