"""Fulling in a weaver's words: cloth that is stopped at its size, by the minutes it took before."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from typing import TYPE_CHECKING

from journal_tools.forecast.expected import Expected, usual_size_mm
from journal_tools.forecast.fulling import Fulling
from journal_tools.forecast.hand_words import HANDS, ROUND, per_cent, rounded_up, title_words
from journal_tools.quantities import show_length
from journal_tools.records import Journal

if TYPE_CHECKING:
    from journal_tools.forecast.memory import Memory

NARROWER = (0.05, 0.10, 0.15, 0.20, 0.25)
"""Losses of width by fulling that the minutes are told for."""


def fulling_words(journal: Journal, memory: Memory, expected: Expected) -> Iterator[str]:
    """How long fulling takes, and what it rests on; honest where a blanket or two are all there is.

    Each line begins with what to sley for the width that is wanted once fulled, where that is known.
    """
    fulling = expected.fulling
    if fulling is None:
        return
    unit = "in" if journal.settings.length == "in" else "cm"
    step, wide, _ = ROUND[unit]
    size = usual_size_mm(memory.observed["width"], expected.kind, step, wide)
    width = expected.figure("width", "in_reed", "washed 1")
    warps = list(dict.fromkeys(cloth.warp for cloth in fulling.cloths))
    if not warps:
        yield "Fulled cloth is stopped at its size. None of yours was fulled with a watch, so the minutes are a guess."
    else:
        few = " and ".join(title_words(journal, warp) for warp in warps[:2])
        named = few if len(warps) < 3 else f"{len(warps)} of your warps"
        whose = {"yarn": "", "fibre": ", in another yarn of the same fibre", "other": ", in another yarn"}[
            fulling.basis
        ]
        only = ", which is all there is" if len(warps) == 1 else ""
        yield f"Fulled cloth is stopped at its size, so look at the minutes: they rest on {named}{whose}{only}."
    for narrower in NARROWER:
        minutes = fulling.minutes("width", -math.log(1 - narrower))
        long = fulling.length_for(-math.log(1 - narrower))
        shorter = [round((1 - math.exp(-each)) * 100) for each in (long.likely, long.least, long.most)]
        beyond = " (longer than you ever fulled)" if fulling.longest and minutes.likely > fulling.longest else ""
        time = f"about {minutes.likely:.0f} minutes, {minutes.least:.0f} to {minutes.most:.0f}"
        long_words = f"shorter by about {shorter[0]} %, {shorter[1]} to {shorter[2]}"
        sley = ""
        if not width.useless and width.label.endswith("scoured"):
            reed = rounded_up(size / (1 - narrower) * math.exp(-width.belief.quantile(0.5)), HANDS[unit])
            sley = f"; for {show_length(size, unit)} fulled, sley {show_length(reed, unit)}"
        yield f"{per_cent(narrower)} narrower than scoured: {time}; {long_words}{beyond}{sley}"


def fulling_json(fulling: Fulling) -> Mapping[str, object]:
    """The same for programs."""
    found = []
    for narrower in NARROWER:
        minutes, long = fulling.minutes("width", -math.log(1 - narrower)), fulling.length_for(-math.log(1 - narrower))
        found.append(
            {
                "width_loss": narrower,
                "minutes": round(minutes.likely, 1),
                "least": round(minutes.least, 1),
                "most": round(minutes.most, 1),
                "length_loss": round(1 - math.exp(-long.likely), 4),
                "length_least": round(1 - math.exp(-long.least), 4),
                "length_most": round(1 - math.exp(-long.most), 4),
            }
        )
    warps = list(dict.fromkeys(cloth.warp for cloth in fulling.cloths))
    return {"basis": fulling.basis, "warps": warps, "longest": fulling.longest, "from_scoured": found}
