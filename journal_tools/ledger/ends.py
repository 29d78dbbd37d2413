"""The ends of a warp: those with heddles, floating selvedges, the dents they take, and whether two counts agree."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from journal_tools.records.journal import Journal
from journal_tools.records.warp import Stretch, Warp


def floating_ends(journal: Journal, warp: Warp, stretch: Stretch) -> int:
    """Ends without heddles, of both edges together.

    One at each edge for every warp that names their yarn; where none does, as many as the draft says.
    """
    if named := sum(1 for wound in warp.warp if wound.floating_selvedges):
        return 2 * named
    said = stretch.draft or warp.draft
    draft = journal.drafts.get(said) if isinstance(said, str) else said
    return 2 * draft.floating_selvedges.number if draft is not None and draft.floating_selvedges is not None else 0


def heddled_ends(warp: Warp, stretch: Stretch, floating: int) -> int | None:
    """Ends with heddles: as the stretch says, else as counted in the warp, or in bands; None where nobody says.

    `ends` counts floating selvedges with the others, unless it is the ends in the middle of a warp.
    """
    said = stretch.ends or warp.ends
    if said is not None:
        return (said.number if said.from_the_middle else max(0, said.number - floating)) or None
    counted = [wound.end_count - (2 if wound.floating_selvedges else 0) for wound in warp.warp if wound.end_count]
    if counted and len(counted) == len(warp.warp):
        return sum(counted) or None
    return sum(band.ends.number for band in (stretch.across or warp.across or {}).values() if band.ends) or None


def dents_for(ends: int, sley: Sequence[int]) -> int:
    """Dents that so many ends take; the last one may not be full. sley: ends in each dent, in order."""
    rounds, left = divmod(ends, sum(sley))
    dents = rounds * len(sley)
    for held in sley:
        if left <= 0:
            break
        dents, left = dents + 1, left - held
    return dents


@dataclass(frozen=True)
class Miscounted:
    """Ends that are written down twice and are not as many.

    counted: what counts them end by end, or warp by warp: "order" or "warp". ends: so many, with
    floating selvedges. floating: how many of them are those. said: what the record says. line, key: where.
    """

    counted: str
    ends: int
    floating: int
    said: int
    line: int
    key: str

    @property
    def words(self) -> str:
        """`the order has 100 ends`, with its floating selvedges where it has some."""
        edges = f" with {self.floating} floating selvedges" if self.floating else ""
        return f"the {self.counted} has {self.ends} ends{edges}"


def miscounted(warp: Warp, floating: int) -> Iterator[Miscounted]:
    """Each order that has not as many ends as are written beside it, and a warp that has not as many as the record.

    floating: ends without heddles. A stretch may be woven on a part of the warp; only where there is
    but one is its number held against the warp's.
    """
    for wound in warp.warp:
        if wound.order is not None and wound.ends is not None and len(wound.order.items) != wound.ends.number:
            line = wound.line("ends")
            yield Miscounted("order", len(wound.order.items), 0, wound.ends.number, line, "warp: ends")
    only = warp.stretches if len(warp.stretches) == 1 else ()
    level = next((each for each in (*only, warp) if each.ends is not None), None)
    if level is None or level.ends is None or level.ends.from_the_middle:
        return
    counted = [wound.end_count - (2 if wound.floating_selvedges else 0) for wound in warp.warp if wound.end_count]
    whole = sum(counted) + floating
    if counted and len(counted) == len(warp.warp) and whole != level.ends.number:
        by = "order" if all(wound.order for wound in warp.warp) else "warp"
        yield Miscounted(by, whole, floating, level.ends.number, level.line("ends"), "ends")
