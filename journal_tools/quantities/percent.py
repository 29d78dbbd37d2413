"""A part of a hundred: 8.5 %."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

from journal_tools.quantities.number import plain, read_number, strip_about
from journal_tools.quantities.units import USUAL, Units
from journal_tools.quantities.unreadable import Unreadable

_EXAMPLE = "8.5 %"
_SIGN = re.compile(r" *(?:%|percent|per cent)? *", re.I)


@dataclass(frozen=True)
class Percent:
    """So many of a hundred: 8.5 for "8.5 %". about: it was called a rough figure."""

    percent: Fraction
    about: bool
    text: str

    @property
    def share(self) -> Fraction:
        """The same as a part of one: 0.085."""
        return self.percent / 100


def parse_percent(text: str, units: Units = USUAL) -> Percent:
    """Read a percentage from 0 to 100, with or without its sign. Raises Unreadable."""
    flat = plain(text)
    about, start = strip_about(flat)
    try:
        number = read_number(flat, start, units, _EXAMPLE)
    except Unreadable as problem:
        raise problem.told_of(text) from None
    if not _SIGN.fullmatch(flat, number.end):
        raise Unreadable(text, f"A part of a hundred looks like {_EXAMPLE}.", number.end)
    if number.value > 100:
        raise Unreadable(text, f"It cannot be more than 100 %. Write it like {_EXAMPLE}.", start)
    return Percent(number.value, about, text)
