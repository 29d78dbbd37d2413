"""Every problem of a journal in one list: of reading, of drafts, and what the ledgers ask."""

from __future__ import annotations

import difflib
from collections.abc import Iterator, Mapping

from journal_tools.drafts import Draft as Woven
from journal_tools.drafts import named_weave, weave_names
from journal_tools.ledger import Ledger, ledger_of, questions
from journal_tools.problems import Problem, Severity
from journal_tools.quantities import Unreadable
from journal_tools.records import Draft, Journal

PARTS = {"threading": "threading", "tie-up": "tie_up", "treadle": "treadling", "lift plan": "lift_plan"}
"""The words for the parts of a draft, and the keys that they stand under."""


def woven_draft(draft: Draft) -> Woven:
    """The draft that a record's text describes. Raises Unreadable when its parts do not fit together."""
    made = Woven(
        draft.threading.items if draft.threading else (),
        draft.tie_up.items if draft.tie_up else None,
        draft.treadling.items if draft.treadling else None,
        draft.lift_plan.items if draft.lift_plan else None,
        draft.shed == "rising",
        draft.warp_colours.items if draft.warp_colours else (),
        draft.weft_colours.items if draft.weft_colours else (),
    )
    made.refuse_beyond(draft.shafts.number if draft.shafts else None, draft.treadles.number if draft.treadles else None)
    return made


def check(journal: Journal, ledgers: Mapping[str, Ledger] | None = None) -> tuple[Problem, ...]:
    """Every problem of every file, in the order of files and lines.

    ledgers: of warps, by name, where they are at hand; else they are reckoned here.
    """
    known = ledgers if ledgers is not None else {}
    found = [*journal.problems, *_drafts(journal), *_weaves(journal)]
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


def _part(draft: Draft, said: str) -> str:
    """The key of the part that a sentence about a whole draft names first, "" when the record has none of them."""
    named = [(said.find(words), key) for words, key in PARTS.items() if words in said and draft.line(key)]
    return min(named)[1] if named else ""
