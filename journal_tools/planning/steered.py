"""Cloth that is fulled to size: its last loss is a decision, so past decisions stand for a forecast."""

from __future__ import annotations

import math
import statistics
from collections.abc import Sequence

from journal_tools.forecast.fulling import Fulling, fulled_cloths
from journal_tools.ledger import Row, ledger_of
from journal_tools.planning.knowing import Normal
from journal_tools.records import Journal
from journal_tools.records.warp import Warp

GUESS = {"width": (math.log(1 - 0.25), 0.09), "length": (math.log(1 - 0.24), 0.09)}
"""Reed, or loom, to fulled, where no cloth was fulled yet: 18 to 32 % of width, 17 to 32 % of length (from memory)."""

LEAST_SD = 0.06
"""However alike past fullings were, the next is stopped by eye: points of ln, judgement."""


def fulls(journal: Journal, finish: Sequence[str]) -> bool:
    """Whether one of these recipes fulls the cloth."""
    return any((recipe := journal.finishes.get(name)) is not None and recipe.fulling for name in finish)


def fulled_belief(journal: Journal, warp: Warp, direction: str, yarn: str) -> tuple[Normal, int]:
    """What past fullings came to, from the reed or the loom, and how many warps that is.

    Warps in the same yarn where there are any, else all that were fulled.
    """
    from journal_tools.ledger.past import uses_of

    alike: dict[str, list[float]] = {}
    every: dict[str, list[float]] = {}
    for past in journal.warps.values():
        if past.name == warp.name:
            continue
        for row in ledger_of(journal, past).warp_rows:
            if row.direction == direction and row.steered and whole(row):
                every.setdefault(past.name, []).append(math.log(1 - row.loss))
                if yarn in uses_of(journal, past):
                    alike.setdefault(past.name, []).append(math.log(1 - row.loss))
    figures = [logs[-1] for logs in (alike or every).values()]
    return belief_from(direction, figures), len(figures)


def minutes_to(
    journal: Journal, warp: Warp, yarn: str, scoured_mm: float, wanted_mm: float
) -> tuple[float, float, float] | None:
    """Minutes of fulling from one width to another: likely, least and most; None where it is that narrow already."""
    if wanted_mm >= scoured_mm:
        return None
    cloths = [cloth for cloth in fulled_cloths(journal) if cloth.warp != warp.name]
    found = Fulling.of(journal, yarn, cloths).minutes("width", math.log(scoured_mm / wanted_mm))
    return found.likely, found.least, found.most


def belief_from(direction: str, figures: Sequence[float]) -> Normal:
    """What ln ratios of past fullings, one a warp, lead one to expect of the next."""
    mean, sd = GUESS[direction]
    if figures:
        mean = statistics.fmean(figures)
        sd = max(statistics.stdev(figures) if len(figures) > 1 else sd, LEAST_SD)
    return Normal(mean, sd, 0.01)


def whole(row: Row) -> bool:
    """Whether a row goes from the reed, or the loom, to cloth that was wet."""
    return row.first.key == ("in_reed" if row.direction == "width" else "on_loom") and row.last.rank > 10
