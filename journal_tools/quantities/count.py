"""A count of things: 378 picks, ~18 ends."""

from __future__ import annotations

import re
from dataclasses import dataclass

from journal_tools.quantities.number import plain, read_number, strip_about
from journal_tools.quantities.units import USUAL, Units
from journal_tools.quantities.unreadable import Unreadable

_EXAMPLE = "378, or ~378 for about so many"
_NOUN = re.compile(r" *(?:ends?|picks?|threads?|dents?|pieces?|shafts?|treadles?|heddles?|layers?|times)?", re.I)


@dataclass(frozen=True)
class CountOf:
    """How many. about: it was called a rough figure. text: as typed."""

    number: int
    about: bool
    text: str


def parse_count(text: str, units: Units = USUAL) -> CountOf:
    """Read a whole number; "378 picks" is 378. Raises Unreadable."""
    flat = plain(text).rstrip()
    about, start = strip_about(flat)
    try:
        number = read_number(flat, start, units, _EXAMPLE)
    except Unreadable as problem:
        raise problem.told_of(text) from None
    if number.value.denominator != 1:
        raise Unreadable(text, f"A count is a whole number, such as {_EXAMPLE}.", start)
    if not _NOUN.fullmatch(flat, number.end):
        raise Unreadable(text, f"A count is one whole number, such as {_EXAMPLE}.", number.end)
    return CountOf(int(number.value), about, text)
