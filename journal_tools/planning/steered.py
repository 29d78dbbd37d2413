"""Cloth that is fulled to size: its last loss is a decision, so past decisions stand for a forecast."""

from __future__ import annotations

import math
import statistics
from collections.abc import Mapping, Sequence
from statistics import NormalDist

from journal_tools.forecast.fulling import Fulling, fulled_cloths
from journal_tools.ledger import Ledger, Row, ledger_of
from journal_tools.ledger.past import uses_of
from journal_tools.planning.knowing import Normal
from journal_tools.records import Journal
from journal_tools.records.warp import Warp

GUESS = {"width": (math.log(1 - 0.25), 0.09), "length": (math.log(1 - 0.24), 0.09)}
"""Reed, or loom, to fulled, where no cloth was fulled yet: 18 to 32 % of width, 17 to 32 % of length (from memory)."""

GUESS_COUNTS = 3
"""Degrees of freedom that the guess's sd stands for, beside the n - 1 of n past fullings (judgement)."""

LEAST_SD = 0.06
"""However alike past fullings were, the next is stopped by eye: points of ln, judgement."""

NINE_IN_TEN = NormalDist().inv_cdf(0.95)


def fulls(journal: Journal, finish: Sequence[str]) -> bool:
    """Whether one of these recipes fulls the cloth."""
    return any((recipe := journal.finishes.get(name)) is not None and recipe.fulling for name in finish)


def fulled_belief(
    journal: Journal, warp: Warp, direction: str, yarn: str, ledgers: Mapping[str, Ledger] | None = None
) -> tuple[Normal, int]:
    """What past fullings came to, from the reed or the loom, and how many warps that is.

    Warps in the same yarn where there are any, else all that were fulled. ledgers: of warps, by name, where
    they are at hand; else those of fulled warps are reckoned here.
    """
    alike: dict[str, list[float]] = {}
    every: dict[str, list[float]] = {}
    for past in journal.warps.values():
        if past.name == warp.name or not _was_fulled(journal, past):
            continue
        ledger = (ledgers or {}).get(past.name) or ledger_of(journal, past)
        for row in ledger.warp_rows:
            if row.direction == direction and row.steered and whole(row):
                every.setdefault(past.name, []).append(math.log(1 - row.loss))
                if yarn in uses_of(journal, past):
                    alike.setdefault(past.name, []).append(math.log(1 - row.loss))
    figures = [logs[-1] for logs in (alike or every).values()]
    return belief_from(direction, figures), len(figures)


def _was_fulled(journal: Journal, warp: Warp) -> bool:
    """Whether anything of a warp was fulled, so that its ledger is worth reckoning."""
    levels = [level for stretch in warp.woven() for level in (warp, stretch, *stretch.pieces)]
    return any(level.fulling or fulls(journal, level.finish or ()) for level in levels)


def minutes_to(
    journal: Journal,
    warp: Warp,
    yarn: str,
    scoured_mm: float,
    wanted_mm: float,
    ledgers: Mapping[str, Ledger] | None = None,
) -> tuple[float, float, float] | None:
    """Minutes of fulling from one width to another: likely, least and most; None where it is that narrow already."""
    if wanted_mm >= scoured_mm:
        return None
    cloths = [cloth for cloth in fulled_cloths(journal, ledgers) if cloth.warp != warp.name]
    found = Fulling.of(journal, yarn, cloths).minutes("width", math.log(scoured_mm / wanted_mm))
    return found.likely, found.least, found.most


def belief_from(direction: str, figures: Sequence[float]) -> Normal:
    """What ln ratios of past fullings, one a warp, lead one to expect of the next.

    The next of n is about their mean as Student's t with s sqrt(1 + 1/n), where s takes the guess's sd in
    for a few degrees of freedom: two cloths that happen to agree promise nothing. What comes back
    is the normal law with t's own range of nine in ten. Source: the definition of a prediction interval.
    """
    mean, sd = GUESS[direction]
    n = len(figures)
    if n:
        mean = statistics.fmean(figures)
        degrees = GUESS_COUNTS + n - 1
        squares = GUESS_COUNTS * sd**2 + sum((figure - mean) ** 2 for figure in figures)
        next_one = max(math.sqrt(squares / degrees), LEAST_SD) * math.sqrt(1 + 1 / n)
        sd = next_one * student(NINE_IN_TEN, degrees) / NINE_IN_TEN
    return Normal(mean, sd, 0.01)


def student(z: float, degrees: int) -> float:
    """The quantile of Student's t that is the normal's z: the series of Cornish and Fisher, to 1 in 1000 from 3 on.

    Source: Abramowitz and Stegun, Handbook of Mathematical Functions, 26.7.5 (from memory).
    """
    terms = (
        z,
        (z**3 + z) / 4,
        (5 * z**5 + 16 * z**3 + 3 * z) / 96,
        (3 * z**7 + 19 * z**5 + 17 * z**3 - 15 * z) / 384,
        (79 * z**9 + 776 * z**7 + 1482 * z**5 - 1920 * z**3 - 945 * z) / 92160,
    )
    return math.fsum(term / degrees**power for power, term in enumerate(terms))


def whole(row: Row) -> bool:
    """Whether a row goes from the reed, or the loom, to cloth that was wet."""
    return row.first.key == ("in_reed" if row.direction == "width" else "on_loom") and row.last.rank > 10
