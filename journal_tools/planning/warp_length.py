"""Where each inch of a warp is to go, line by line, and how long it is to be wound."""

from __future__ import annotations

import re
import statistics
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from journal_tools.planning import arithmetic as sums
from journal_tools.planning.allowances import HEADER, PAST_PACE, RETIE, WASTE
from journal_tools.records import Journal
from journal_tools.records.loom import Loom
from journal_tools.records.warp import Warp

WASTE_LINES = re.compile(r"\b(tie-on|tied on|thrums|loom waste|waste)\b", re.IGNORECASE)
BEHIND = re.compile(r"\bthrums\b", re.IGNORECASE)


@dataclass(frozen=True)
class Line:
    """One line of the reckoning. count: how many of `each_mm`. how: a few words, "" for none.

    woven: whether it is cloth, at its length on the loom, so that take-up is on top of it.
    hems_mm: how much of each goes into hems.
    """

    name: str
    each_mm: float
    count: int = 1
    how: str = ""
    woven: bool = False
    hems_mm: float = 0.0

    @property
    def mm(self) -> float:
        """All of them together."""
        return self.each_mm * self.count


@dataclass(frozen=True)
class WarpLength:
    """A warp's length. lines: what it is made of, take-up last. mm: their sum. wind_mm: rounded upward."""

    lines: tuple[Line, ...]
    mm: float
    wind_mm: float


def warp_length(lines: Sequence[Line], take_up: float, step: float) -> WarpLength:
    """The sum of the lines with what weaving takes up of the cloth among them, rounded up to a step.

    take_up: 1 - length on the loom / warp that wove it, so cloth c takes c / (1 - take_up) of warp.
    """
    cloth = sum(line.mm for line in lines if line.woven)
    every = (*lines, Line("take-up", sums.warp_for(cloth, take_up) - cloth))
    total = sum(line.mm for line in every)
    return WarpLength(every, total, sums.upward(total, step))


def loom_waste(journal: Journal, warp: Warp, loom: Loom | None) -> Line:
    """Front tie-on and thrums: the middle of past warps on this loom, else what its record says."""
    name = "loom waste"
    if loom is not None:
        past = _past_waste(journal.warps.values(), loom, warp)
        if len(past) >= PAST_PACE:
            how = f"tie-on and thrums, the middle of {len(past)} warps on {loom.heading}"
            return Line(name, statistics.median(past), how=how)
        if loom.waste is not None:
            return Line(name, float(loom.waste.mm), how=f"as {loom.heading} takes")
    return Line(name, WASTE, how="tie-on and thrums, a usual allowance")


def _past_waste(warps: Iterable[Warp], loom: Loom, but: Warp) -> list[float]:
    found = []
    for warp in warps:
        went = warp.where_it_went or {}
        if warp.loom not in (loom.name, *loom.was) or warp.name == but.name:
            continue
        waste = [float(each.mm) for line, each in went.items() if WASTE_LINES.search(line)]
        if any(BEHIND.search(line) for line in went) and len(waste) > 1:
            found.append(sum(waste))
    return found


def retie_mm(loom: Loom | None) -> float:
    """What a cut-off and a new knot cost, as the loom's record says."""
    return float(loom.retie.mm) if loom is not None and loom.retie is not None else RETIE


def header() -> Line:
    """What is woven before the first piece."""
    return Line("header", HEADER, how="waste yarn, until the warp is spread")
