"""What is tied to the treadles, or the lift plan where there are none, with the draft that it comes from."""

from __future__ import annotations

import dataclasses
from dataclasses import dataclass, field

from journal_tools.checking import woven_draft
from journal_tools.drafts import Draft as Woven
from journal_tools.drafts import named_weave
from journal_tools.notation import Sets, print_sets
from journal_tools.quantities import Unreadable
from journal_tools.records import Journal, Stretch, Warp
from journal_tools.records.loom import Loom


@dataclass(frozen=True)
class Tied:
    """A draft as it is dressed.

    draft: the name of its record, "" for one in the warp's own record or for a weave's.
    weave: the weave by whose name it is known, "" where there is a draft.
    threading: of one repeat. treadles: the shafts of each treadle, none with a lift plan.
    picks: the treadles of each pick, or its shafts where there is a lift plan. written: the same in
    notation, as the weaver typed it where there is a draft.
    rising: whether the shafts named go up. spread: whether two shafts were drawn out over more, so
    that no shaft is crowded. colours: the draft's own order of the warp.
    dents: the ends in each dent that the draft says, where it crams and spaces. woven: the draft itself.
    """

    draft: str
    weave: str
    threading: Sets
    treadles: Sets
    picks: Sets
    rising: bool
    shafts: int
    written: str
    spread: bool = False
    colours: tuple[str, ...] = ()
    dents: tuple[int, ...] = ()
    woven: Woven | None = field(default=None, compare=False, repr=False)

    @property
    def hitch(self) -> tuple[Sets, bool]:
        """What is tied or pegged at the loom: the shafts of each treadle, else of each pick, and whether they rise."""
        return self.treadles or self.picks, self.rising


def tied_of(journal: Journal, warp: Warp, stretch: Stretch, loom: Loom | None) -> Tied | None:
    """How a stretch is tied: by its draft, else by the weave's name; None where neither can be drawn.

    A weave's name tells the threading of one layer, so that cloth of several wants a draft.
    """
    said = stretch.draft or warp.draft
    record = journal.drafts.get(said) if isinstance(said, str) else said
    if record is not None:
        try:
            typed = record.treadling or record.lift_plan
            name = said if isinstance(said, str) else ""
            tied = _of(woven_draft(record), name, "", typed.text if typed is not None else "")
            dents = record.ends_in_dents.items if record.ends_in_dents is not None else ()
            return dataclasses.replace(tied, dents=tuple(min(dent, default=0) for dent in dents))
        except Unreadable:
            return None  # what is wrong with it is asked where drafts are checked
    named = named_weave(stretch.weave or warp.weave or "")
    if named is None or (warp.layers is not None and warp.layers.number > 1):  # a name draws one layer of them
        return None
    found = _of(named.draft, "", named.name, "")
    shafts = loom.shafts.number if loom is not None and loom.shafts is not None else 0
    return _spread(found, shafts - shafts % 2) if found.threading == _straight(2) and shafts > 3 else found


def _of(draft: Woven, name: str, weave: str, written: str) -> Tied:
    picks = (draft.treadling if draft.lift_plan is None else draft.lift_plan) or ()
    return Tied(
        name,
        weave,
        draft.threading,
        draft.tie_up or (),
        picks,
        draft.rising,
        draft.shafts,
        written or print_sets(picks),
        colours=draft.warp_colours,
        woven=draft,
    )


def tied_on(other: Tied, weave: str) -> Tied | None:
    """How a weave is tied on the threading of another; None where both are not straight draws that fit."""
    named = named_weave(weave)
    if named is None or other.threading != _straight(other.shafts):
        return None
    found = _of(named.draft, "", named.name, "")
    if found.threading != _straight(found.shafts) or other.shafts % found.shafts or not found.treadles:
        return None
    return _spread(found, other.shafts)


def _spread(found: Tied, shafts: int) -> Tied:
    """A straight draw over more shafts: every so many of them do the work of the first, of the second and so on."""
    few = found.shafts
    alike = {shaft: frozenset(range(shaft, shafts + 1, few)) for shaft in range(1, few + 1)}
    treadles = tuple(frozenset().union(*(alike[shaft] for shaft in tied)) for tied in found.treadles)
    return dataclasses.replace(
        found, threading=_straight(shafts), treadles=treadles, shafts=shafts, spread=shafts > few
    )


def _straight(shafts: int) -> Sets:
    return tuple(frozenset({shaft}) for shaft in range(1, shafts + 1))
