"""Distances off plan and losses in words that a weaver would use."""

from __future__ import annotations

import math
from collections.abc import Iterator
from fractions import Fraction

from journal_tools.ledger.row import Row
from journal_tools.quantities import show_length

COMPARED = {"width": ("narrower", "wider"), "length": ("shorter", "longer")}


def off_plan(off_mm: float, direction: str, unit: str, mark_mm: Fraction) -> str:
    """`1/4 in narrower than planned`; `as planned` within half a mark of the tape.

    off_mm: measured less planned. unit: "in", "cm" or "mm". mark_mm: the tape's mark.
    """
    marks = math.ceil(round(abs(off_mm) / float(mark_mm) - 0.5, 6))
    if marks == 0:
        return "as planned"
    less, more = COMPARED[direction]
    return f"{show_length(marks * mark_mm, unit, mark_mm)} {less if off_mm < 0 else more} than planned"


def per_cent(fraction: float, decimals: int = 1) -> str:
    """`11.7 %`, a true minus for a gain, never a minus before a nought."""
    value = round(fraction * 100, decimals)
    if value == 0:
        value = 0.0
    sign = "−" if value < 0 else ""
    return f"{sign}{abs(value):.{decimals}f} %"


def points(fraction: float) -> str:
    """The ± of a loss, in points of per cent: `0.7`."""
    return f"{fraction * 100:.1f}"


def row_notes(row: Row) -> Iterator[str]:
    """What must be said beside a loss: a gap it spans, how many pieces, what it goes over."""
    if row.between:
        named = " and ".join(state.name for state in row.between)
        yield f"not measured {named}"
    if row.joined:
        yield "reckoned in two parts, before and after the hem or the marks, so that these count for nothing"
    if row.steered:
        yield "fulled to size"
    if row.number > 1:
        spread = f", spread {points(row.spread)} points" if row.spread is not None else ""
        yield f"mean of {row.number} pieces{spread}"
    if not row.learn:
        yield "not learned from" + (f": {row.reason}" if row.reason else "")
