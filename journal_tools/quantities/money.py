"""A sum of money: 12.50 EUR, € 12,50."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

from journal_tools.quantities.number import plain, read_number
from journal_tools.quantities.units import USUAL, Units
from journal_tools.quantities.unreadable import Unreadable

_EXAMPLE = "12.50 EUR"
_CURRENCY = re.compile(r" *([A-Za-z]{1,4}\$?\.?|[$€£¥₹₩₪₺₴₽¢])? *")


@dataclass(frozen=True)
class Money:
    """A sum. currency: as typed, or None where the journal's is meant. text: as typed."""

    amount: Fraction
    currency: str | None
    text: str


def parse_money(text: str, units: Units = USUAL) -> Money:
    """Read a sum with its currency before or after it, or without one. Raises Unreadable."""
    flat = plain(text)
    before = _CURRENCY.match(flat)
    start = before.end() if before else 0
    try:
        number = read_number(flat, start, units, _EXAMPLE)
    except Unreadable as problem:
        raise problem.told_of(text) from None
    after = _CURRENCY.fullmatch(flat, number.end)
    names = [m.group(1) for m in (before, after) if m and m.group(1)]
    if not after or len(names) > 1:
        raise Unreadable(text, f"One sum with one currency is wanted, such as {_EXAMPLE}.", number.end)
    return Money(number.value, names[0] if names else None, text)
