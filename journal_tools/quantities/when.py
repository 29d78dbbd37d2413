"""A date as exact as it is known: 2024-04-20, April 2024, spring 2016, ~2016."""

from __future__ import annotations

import re
from dataclasses import dataclass

from journal_tools.quantities.number import plain, strip_about
from journal_tools.quantities.unreadable import Ambiguous, Unreadable

MONTHS = (
    "January", "February", "March", "April", "May", "June",
    "July", "August", "September", "October", "November", "December",
)  # fmt: skip
# Where a season sorts among the months, as north of the equator.
SEASONS = {"spring": 3, "summer": 6, "autumn": 9, "winter": 12}

_EXAMPLE = "2024-04-20, April 2024, spring 2024 or ~2024"
_FIRST_YEAR, _LAST_YEAR = 1700, 2199
_ISO = re.compile(r"([0-9]{4})(?:([-/.])([0-9]{1,2})(?:\2([0-9]{1,2}))?)?")
_WORDS = re.compile(r"(?:([0-9]{1,2})(?:st|nd|rd|th)?\.? +)?([a-z]+)\.?,? +([0-9]{4})", re.I)
_MONTH_FIRST = re.compile(r"([a-z]+)\.? +([0-9]{1,2})(?:st|nd|rd|th)?,? +([0-9]{4})", re.I)
_TWO_NUMBERS = re.compile(r"([0-9]{1,2}) ?[-/.] ?([0-9]{1,2}) ?[-/.] ?([0-9]{4})")


@dataclass(frozen=True)
class When:
    """A date as it was written; what is not known is None. text: as typed."""

    year: int
    month: int | None
    day: int | None
    season: str | None
    about: bool
    text: str

    @property
    def key(self) -> tuple[int, int, int]:
        """What to sort by: a year alone comes before its months, a month before its days."""
        month = self.month or (SEASONS[self.season] if self.season else 0)
        return (self.year, month, self.day or 0)

    @property
    def first_day(self) -> tuple[int, int, int]:
        """The earliest day it can mean. A season may be north or south of the equator."""
        year = self.year - 1 if self.about else self.year
        return (year, self.month or 1, self.day or 1)

    @property
    def last_day(self) -> tuple[int, int, int]:
        """The latest day it can mean. A winter may run into the next year."""
        year = self.year + 1 if self.about else self.year
        if self.season == "winter":
            return (year + 1, 3, 31)
        month = self.month or 12
        return (year, month, self.day or days_in(year, month))

    def surely_after(self, other: When) -> bool:
        """Whether it is later, however loosely the two are known."""
        return self.first_day > other.last_day

    def show(self) -> str:
        """In words: "20 April 2024", "March 2025", "spring 2016", "about 2016"."""
        parts = [str(self.day)] if self.day else []
        if self.season:
            parts.append(self.season)
        if self.month:
            parts.append(MONTHS[self.month - 1])
        return " ".join([*(["about"] if self.about else []), *parts, str(self.year)])


def parse_when(text: str) -> When:
    """Read a date, a month, a season or a year. Raises Unreadable.

    04/05/2024 is refused with both of its readings; 20/04/2024 has only one and is read.
    """
    flat = plain(text).rstrip()
    about, start = strip_about(flat)
    rest = flat[start:]
    if iso := _ISO.fullmatch(rest):
        year, _, month, day = iso.groups()
        return _when(text, about, int(year), _number(month), _number(day))
    if words := _WORDS.fullmatch(rest):
        day, word, year = words.groups()
        return _in_words(text, about, int(year), word, _number(day))
    if words := _MONTH_FIRST.fullmatch(rest):
        word, day, year = words.groups()
        return _in_words(text, about, int(year), word, _number(day))
    if numbers := _TWO_NUMBERS.fullmatch(rest):
        return _of_two_numbers(text, about, *(int(n) for n in numbers.groups()))
    raise Unreadable(text, f"A date looks like {_EXAMPLE}.", start)


def days_in(year: int, month: int) -> int:
    """The days of a month."""
    if month == 2:
        return 29 if year % 4 == 0 and (year % 100 != 0 or year % 400 == 0) else 28
    return 30 if month in (4, 6, 9, 11) else 31


def _number(text: str | None) -> int | None:
    return int(text) if text else None


def _in_words(text: str, about: bool, year: int, word: str, day: int | None) -> When:
    name = word.lower()
    season = "autumn" if name == "fall" else name
    if season in SEASONS and day is None:
        _check(text, year, None, None)
        return When(year, None, None, season, about, text)
    for month, full in enumerate(MONTHS, 1):
        if len(name) >= 3 and (full.lower().startswith(name) or name == "sept" == full.lower()[:4]):
            return _when(text, about, year, month, day)
    raise Unreadable(text, f'"{word}" is no month or season. A date looks like {_EXAMPLE}.')


def _of_two_numbers(text: str, about: bool, first: int, second: int, year: int) -> When:
    """The day first or the month first: refused where both are possible."""
    if first <= 12 and second <= 12 and first != second and min(first, second) > 0:
        one, two = f"{year}-{second:02}-{first:02}", f"{year}-{first:02}-{second:02}"
        raise Ambiguous(
            text,
            f"This is {first} {MONTHS[second - 1]} to one weaver and {second} {MONTHS[first - 1]} "
            f"to another. Write {one} or {two}.",
        )
    day, month = (first, second) if second <= 12 else (second, first)
    return _when(text, about, year, month, day)


def _when(text: str, about: bool, year: int, month: int | None, day: int | None) -> When:
    _check(text, year, month, day)
    return When(year, month, day, None, about, text)


def _check(text: str, year: int, month: int | None, day: int | None) -> None:
    if not _FIRST_YEAR <= year <= _LAST_YEAR:
        raise Unreadable(text, f"The year {year} cannot be meant. A date looks like {_EXAMPLE}.")
    if month is None:
        return
    if not 1 <= month <= 12:
        raise Unreadable(text, f"There is no month {month}. A date looks like {_EXAMPLE}.")
    days = days_in(year, month)
    if day is not None and not 1 <= day <= days:
        raise Unreadable(text, f"{MONTHS[month - 1]} {year} has {days} days. A date looks like {_EXAMPLE}.")
