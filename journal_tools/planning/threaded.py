"""How a stretch is threaded, and what that takes of a loom."""

from __future__ import annotations

import dataclasses
from collections.abc import Mapping
from dataclasses import dataclass

from journal_tools.drafts import Draft, named_weave
from journal_tools.forecast.cloth_kind import draft_of, weave_of
from journal_tools.ledger.laid import Laid
from journal_tools.notation import Sets
from journal_tools.records import Journal
from journal_tools.records.loom import Loom


@dataclass(frozen=True)
class Threaded:
    """A threading that is repeated, and what it takes of a loom. name: of the draft or weave.

    spread: the threading that heddles are counted by: where two shafts would do and no draft was
    written, straight over all the loom has, so that no shaft is crowded.
    """

    threading: Sets
    shafts: int
    treadles: int
    name: str
    spread: Sets = ()


def threaded_by(journal: Journal, laid: Laid, loom: Loom | None) -> Threaded | None:
    """How a plan is threaded: by its draft, else by the weave's name; None where neither is known."""
    draft = draft_of(journal, laid)
    said = laid.stretch.draft or laid.warp.draft
    if draft is not None:
        return _of_draft(draft, said if isinstance(said, str) else "its own draft")
    named = named_weave(weave_of(journal, laid) or "")
    if named is None:
        return None
    found = _of_draft(named.draft, named.name)
    shafts = loom.shafts.number if loom is not None and loom.shafts is not None else 0
    if found.threading == _straight(2) and shafts > 2:
        return dataclasses.replace(found, spread=_straight(shafts - shafts % 2))  # an odd shaft is left empty
    return found


def _of_draft(draft: Draft, name: str) -> Threaded:
    return Threaded(draft.threading, draft.shafts, draft.treadles, name, draft.threading)


def _straight(shafts: int) -> Sets:
    return tuple(frozenset({shaft}) for shaft in range(1, shafts + 1))


def loom_heddles(loom: Loom, shaft: int) -> int | None:
    """Heddles on a shaft as the loom's record has them; None where it does not say."""
    known: Mapping[int, int] = loom.heddles or {}
    return known.get(shaft, known.get(0))
