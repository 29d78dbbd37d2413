"""A time that something took: 8 min, 1 h 10 min, 12 1/2 hours."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

from journal_tools.quantities.amount import Scale, read_amount
from journal_tools.quantities.number import plain
from journal_tools.quantities.units import USUAL, Units
from journal_tools.quantities.unreadable import Unreadable

DURATIONS = Scale(
    noun="a time",
    example="8 min or 1 h 10 min",
    compound="1 h 10 min",
    sizes={"s": Fraction(1, 60), "min": Fraction(1), "h": Fraction(60)},
    words={
        **dict.fromkeys(("s", "sec", "secs", "second", "seconds"), "s"),
        **dict.fromkeys(("min", "mins", "minute", "minutes"), "min"),
        **dict.fromkeys(("h", "hr", "hrs", "hour", "hours"), "h"),
    },
)
_NUMBER = r"[-+]?[0-9½¼¾.,][-0-9½¼¾.,/ ]*"
_UNIT = r"(?:s|secs?|seconds?|mins?|minutes?|h|hrs?|hours?)(?![a-z])\.? *"
_FIGURE = re.compile(rf" *(?:~|about |ca\.? )? *(?:(?:{_NUMBER}{_UNIT})+|{_NUMBER})", re.I)


@dataclass(frozen=True)
class Duration:
    """A time. minutes: exact. words: what stood after the figure. text: as typed."""

    minutes: Fraction
    about: bool
    words: str
    text: str

    @property
    def hours(self) -> Fraction:
        """The time in hours."""
        return self.minutes / 60


def parse_minutes(text: str, units: Units = USUAL) -> Duration:
    """Read "8 min", and "8 min, hot" with its words; a bare number is minutes. Raises Unreadable."""
    found = _FIGURE.match(plain(text))
    end = found.end() if found else 0
    figure = text[:end].rstrip(" ,.-")
    try:
        amount = read_amount(figure, DURATIONS, "min", units)
    except Unreadable as problem:
        raise problem.told_of(text) from None
    return Duration(amount.value, amount.about, text[end:].strip(" ,.:;-"), text)


def parse_hours(text: str, units: Units = USUAL) -> Duration:
    """Read "12 1/2 h" or "12 h 30 min"; a bare number is hours. Raises Unreadable."""
    amount = read_amount(text, DURATIONS, "h", units)
    return Duration(amount.value, amount.about, "", text)


def show_minutes(minutes: Fraction) -> str:
    """A time in words, to the nearest half minute: "8 min", "2.5 min"."""
    halves = round(minutes * 2)
    return f"{halves / 2:g} min"
