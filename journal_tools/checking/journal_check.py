"""Every problem of a journal in one list."""

from __future__ import annotations

import difflib
import re
from collections.abc import Iterator, Mapping, Sequence

from journal_tools.checking.draft_problems import draft_problems
from journal_tools.drafts import named_weave, weave_names
from journal_tools.ledger import Ledger, ledger_of, questions
from journal_tools.problems import Problem, Severity
from journal_tools.records import Journal


def check(journal: Journal, ledgers: Mapping[str, Ledger] | None = None) -> tuple[Problem, ...]:
    """Every problem of every file, in the order of files and lines.

    ledgers: of warps, by name, where they are at hand; else they are reckoned here.
    """
    known = ledgers if ledgers is not None else {}
    found = [*journal.problems, *draft_problems(journal), *_weaves(journal)]
    for name, warp in journal.warps.items():
        found += questions(journal, known.get(name) or ledger_of(journal, warp))
    return tuple(sorted(dict.fromkeys(found)))


def _weaves(journal: Journal) -> Iterator[Problem]:
    """A weave that is nearly, but not quite, one that can be drawn from its name."""
    for warp in journal.warps.values():
        for level in {id(each): each for each in (warp, *warp.stretches)}.values():
            accepted = (*warp.accepted, *level.accepted)
            yield from _nearly(warp.file, level.line("weave"), level.weave or "", accepted, "cannot be drawn")
    for draft in journal.drafts.values():
        does = "cannot be held against what it weaves"
        yield from _nearly(draft.file, draft.line("weave"), draft.weave or "", draft.accepted, does)


def _nearly(file: str, line: int, name: str, accepted: Sequence[str], does: str) -> Iterator[Problem]:
    """The question about one name. does: what becomes of a weave that has no name here."""
    # What stands behind a comma is the weaver's own: "2/2 twill, double width".
    said = re.split("[,;(]", name.lower())[0].strip()
    near = difflib.get_close_matches(said, weave_names(), n=1, cutoff=0.86)
    if not near or named_weave(name) is not None or "no-such-weave" in accepted:
        return
    right = f"is it {near[0]}? Any name will do, but this one {does}. If it is so, write `accepted: no such weave`."
    yield Problem(file, line, "weave", name, right, Severity.QUESTION, "no-such-weave")
