"""Small sayings of a plan: repeats, quarter yards, weights that a kitchen scale shows."""

from __future__ import annotations

from collections.abc import Sequence

from journal_tools.planning import arithmetic as sums
from journal_tools.planning.allowances import SPARE_YARN, YARD
from journal_tools.quantities import show_weight

RAREST = 100
"""The longest odds that are told as a figure."""


def to_wind(mm: float, unit: str) -> str:
    """A warp in quarter yards, or in metres: `5 1/4 yd`, `5.25 m`."""
    if unit != "in":
        return f"{mm / 1000:g} m"
    whole, part = divmod(round(mm / YARD * 4), 4)
    shown = " ".join(each for each in (str(whole) if whole else "", ("", "1/4", "1/2", "3/4")[part]) if each)
    return f"{shown or '0'} yd"


def odds_of(chance: float, one_in: str = "1 in") -> str:
    """`1 in 6`; rarer than once in a hundred nobody can tell, and it is said so."""
    if chance < 1 / RAREST:
        return f"{'L' if one_in != '1 in' else 'l'}ess than {one_in} {RAREST}"
    if chance > 1 / 2:
        return "More often than not" if one_in != "1 in" else "more than 1 in 2"
    return f"{one_in} {sums.one_in(chance)}"


def spare() -> str:
    """What the yarn's weights hold beyond the reckoning."""
    return f"Weights hold {SPARE_YARN * 100:.0f} % to spare."


def repeats_of(ends: int, threading: Sequence[object], name: str) -> str:
    """`38 whole repeats of huck-squares`, with the ends that balance them or that are over."""
    repeats, over = divmod(ends, len(threading))
    said = f"{repeats} whole repeat{'s' if repeats != 1 else ''} of {name}"
    many = "end" if over == 1 else f"{over} ends"
    if over and over == sums.balance(threading):
        return f"{said} and the {many} that balance{'s' if over == 1 else ''} them"
    return f"{said} and {'one end' if over == 1 else many} over" if over else said


def on_the_scale(grams: float, unit: str) -> str:
    """A weight rounded up to what a kitchen scale shows: 5 g, or a quarter ounce."""
    step = 5.0 if unit == "g" else 28.349523125 / 4
    return show_weight(sums.upward(grams, step), unit)
