"""How close the picks of a yarn and weave really came: picks to the length on the loom, beside its sett.

A weaver beats a weave to its look, so where ends and picks both show, picks go with the ends: picks to
ends is what is carried to another sett. Where warp or weft hides the other, the picks lie as close as
they ever did (judgement).
"""

from __future__ import annotations

import statistics
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import TypeAlias

from journal_tools.drafts import named_weave
from journal_tools.forecast.cloth_kind import kind_of, sett_of
from journal_tools.forecast.kind import ClothKind
from journal_tools.ledger.account import loom_length_mm
from journal_tools.ledger.laid import Laid, lay_out
from journal_tools.ledger.ledger import learned
from journal_tools.ledger.state import IN_REED, ON_LOOM
from journal_tools.records import Journal
from journal_tools.records.warp import Warp

Beaten: TypeAlias = list[tuple[float, float | None]]
"""Of each piece of a warp: picks to the metre, and picks to ends where both are known."""


@dataclass(frozen=True)
class PastBeat:
    """The beat of past warps, of one layer of cloth on the loom.

    per_m: picks to the metre, the middle of the warps. ratio: picks to ends in the reed, the middle of
    them; None where no warp tells its sett, or one of the two hides the other. warps: their names, newest first.
    """

    per_m: float
    ratio: float | None
    warps: tuple[str, ...]

    def at(self, sett_per_m: float | None) -> float:
        """Picks to the metre of one layer at a sett, in ends to the metre of one layer; None for nobody knows."""
        return self.per_m if self.ratio is None or not sett_per_m else self.ratio * sett_per_m


def past_beat(journal: Journal, kind: ClothKind, but: str = "") -> PastBeat | None:
    """The beat of every warp in these yarns and this weave; None without one. but: a warp to leave out."""
    if not kind.warp_yarn or not kind.weave:
        return None
    found = {
        warp.name: beaten
        for warp in journal.warps_newest_first()
        if warp.name != but and (beaten := _beaten(journal, warp, kind))
    }
    return _summed(found, kind.weave) if found else None


PastBeats: TypeAlias = Mapping[tuple[str, str, str], PastBeat]
"""Beats by warp yarn, weft yarn and weave."""


def past_beats(journal: Journal) -> PastBeats:
    """The same of every cloth there is, in one go, by warp yarn, weft yarn and weave."""
    found: dict[tuple[str, str, str], dict[str, Beaten]] = {}
    for warp in journal.warps_newest_first():
        for laid in lay_out(warp):
            its = kind_of(journal, laid)
            if its.warp_yarn and its.weave and (beaten := _of_piece(laid)):
                of_cloth = found.setdefault((its.warp_yarn, its.weft_yarn, its.weave), {})
                of_cloth.setdefault(warp.name, []).append(beaten)
    return {cloth: _summed(warps, cloth[2]) for cloth, warps in found.items()}


def _summed(found: Mapping[str, Beaten], weave: str) -> PastBeat:
    ratios = [_middle(known) for each in found.values() if (known := [ratio for _, ratio in each if ratio])]
    per_m = _middle([_middle([picks for picks, _ in each]) for each in found.values()])
    return PastBeat(per_m, _middle(ratios) if ratios and not _one_hides(weave) else None, tuple(found))


def _beaten(journal: Journal, warp: Warp, kind: ClothKind) -> Beaten:
    """Of each piece of a warp that is of the kind: picks to the metre, and picks to ends where both are known."""
    found = []
    for laid in lay_out(warp):
        its = kind_of(journal, laid)
        if (its.warp_yarn, its.weft_yarn, its.weave) != (kind.warp_yarn, kind.weft_yarn, kind.weave):
            continue
        if beaten := _of_piece(laid):
            found.append(beaten)
    return found


def _of_piece(laid: Laid) -> tuple[float, float | None] | None:
    if laid.stretch.plan and laid.picks is None and all(state == IN_REED for state, _ in laid.measured()):
        return None  # not woven yet: a beat that is only planned teaches nothing
    picks, sett = beat_of(laid), sett_of(laid)
    if not picks or not learned(laid, "length", ON_LOOM, ON_LOOM)[0]:
        return None
    return picks, picks / sett if sett else None


def beat_of(laid: Laid) -> float | None:
    """Picks to the metre on the loom of one layer: as counted over the length there, else as the record says."""
    layers = laid.warp.layers.number if laid.warp.layers else 1
    length = loom_length_mm(laid)
    if laid.picks is not None and laid.picks.number and length and laid.said("tabby") != "not counted":
        return laid.picks.number / length * 1000 / layers
    stated = laid.said("beat")
    return float(stated.per_m) / layers if stated is not None else None


def _one_hides(weave: str) -> bool:
    """Whether warp or weft hides the other in this weave."""
    named = named_weave(weave)
    return named is not None and named.ends_to_picks != 1


def _middle(figures: Sequence[float]) -> float:
    return statistics.median(figures)
