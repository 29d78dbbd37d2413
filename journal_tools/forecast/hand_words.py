"""Small words that every answer of the forecast is made of: titles, per cent, what hands can measure."""

from __future__ import annotations

import math

from journal_tools.quantities import INCH
from journal_tools.records import Journal

ROUND = {"in": (float(INCH), 18 * float(INCH), 30 * float(INCH)), "cm": (50.0, 450.0, 750.0)}
"""By unit, in mm: what a size to plan by is rounded to, and a width and a length where the past has none."""

HANDS = {"in": float(INCH) / 4, "cm": 5.0}
"""What is sleyed and woven to, in mm."""


def title_words(journal: Journal, warp: str) -> str:
    """A warp by its title, in quotation marks where that holds a comma."""
    record = journal.warps.get(warp)
    heading = record.heading if record else warp
    return f'"{heading}"' if "," in heading else heading


def per_cent(fraction: float) -> str:
    """`11 %`, `−1 %` for growth: whole per cent, as much as cloth bears."""
    return f"{signed(round(fraction * 100))} %"


def signed(value: int) -> str:
    """A whole number with a true minus."""
    return f"−{-value}" if value < 0 else str(value)


def rounded_up(mm: float, step: float) -> float:
    """What hands can do: never less than is wanted."""
    return math.ceil(mm / step - 1e-6) * step
