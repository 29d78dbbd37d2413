"""Every problem of a journal in one list."""

from __future__ import annotations

import difflib
from collections.abc import Iterator, Mapping

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
            name = level.weave or ""
            near = difflib.get_close_matches(name.lower(), weave_names(), n=1, cutoff=0.86)
            if not near or named_weave(name) is not None or "no-such-weave" in (*warp.accepted, *level.accepted):
                continue
            right = (
                f"is it {near[0]}? Any name will do, but this one cannot be drawn."
                " If it is so, write `accepted: no such weave`."
            )
            yield Problem(warp.file, level.line("weave"), "weave", name, right, Severity.QUESTION, "no-such-weave")
