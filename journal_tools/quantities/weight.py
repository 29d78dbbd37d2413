"""A weight, exact in grams: 152 g, 5.4 oz, 1 lb 4 oz."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from math import floor

from journal_tools.quantities.amount import Scale, read_amount
from journal_tools.quantities.units import USUAL, Units

POUND = Fraction(45359237, 100000)  # g, exact since 1959
OUNCE = POUND / 16

WEIGHTS = Scale(
    noun="a weight",
    example="152 g or 5 1/2 oz",
    compound="1 lb 4 oz",
    sizes={"g": Fraction(1), "kg": Fraction(1000), "oz": OUNCE, "lb": POUND},
    words={
        **dict.fromkeys(("g", "gm", "gms", "gr", "gram", "grams", "gramme", "grammes"), "g"),
        **dict.fromkeys(("kg", "kgs", "kilo", "kilos", "kilogram", "kilograms"), "kg"),
        **dict.fromkeys(("oz", "ozs", "ounce", "ounces"), "oz"),
        **dict.fromkeys(("lb", "lbs", "pound", "pounds"), "lb"),
    },
)


@dataclass(frozen=True)
class Weight:
    """A weight as it was written. grams: exact. unit: the finest typed, or the journal's."""

    grams: Fraction
    unit: str
    text: str
    about: bool


def parse_weight(text: str, units: Units = USUAL) -> Weight:
    """Read a weight; a bare number takes the unit of the journal. Raises Unreadable."""
    amount = read_amount(text, WEIGHTS, units.weight, units)
    return Weight(amount.value, amount.unit, text, amount.about)


def show_weight(grams: Fraction | float, unit: str = "g") -> str:
    """A weight in words: whole grams (tenths under 20 g), hundredths of a kg or lb, tenths of an oz."""
    value = Fraction(grams) / WEIGHTS.sizes[unit]
    parts = {"g": 1 if value >= 20 else 10, "kg": 100, "oz": 10, "lb": 100}[unit]
    tidy = Fraction(floor(value * parts + Fraction(1, 2)), parts)
    return f"{float(tidy):.2f}".rstrip("0").rstrip(".") + f" {unit}"
