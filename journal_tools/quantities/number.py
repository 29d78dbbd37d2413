"""A number as a weaver writes it: 18, 18 1/4, 18-1/4, 18¼, 18.25, 46,5."""

from __future__ import annotations

import re
from fractions import Fraction
from typing import NamedTuple

from journal_tools.quantities.units import Units
from journal_tools.quantities.unreadable import Ambiguous, Unreadable

ONE_CHARACTER = {
    "½": (1, 2), "⅓": (1, 3), "⅔": (2, 3), "¼": (1, 4), "¾": (3, 4), "⅕": (1, 5), "⅖": (2, 5),
    "⅗": (3, 5), "⅘": (4, 5), "⅙": (1, 6), "⅚": (5, 6), "⅛": (1, 8), "⅜": (3, 8), "⅝": (5, 8),
    "⅞": (7, 8),
}  # fmt: skip

# One character for one character, so that a column in the plain text is a column in the typed one.
_PLAIN = str.maketrans(
    {
        **dict.fromkeys("\t\n\r\u00a0\u2002\u2003\u2007\u2009\u200a\u202f", " "),
        **dict.fromkeys("\u2010\u2011\u2012\u2013\u2014\u2212", "-"),
        **dict.fromkeys("\u2018\u2019\u2032", "'"),
        **dict.fromkeys("\u201c\u201d\u2033", '"'),
        "\u2044": "/",
        "\u00d7": "x",
        "\u2248": "~",
    }
)

_DIGITS = re.compile(r"[0-9]+(?:[.,][0-9]+)*|[.,][0-9]+")
_FRACTION = re.compile(r"([0-9]+) ?/ ?([0-9]+)(?![0-9])")
_ABOUT = re.compile(r" *(?:~|(?:about|approximately|approx\.?|around|roughly|circa|ca\.?|c\.)(?![a-z])) *", re.I)
_LONGEST_TEXT = 200
_MOST_DIGITS = 9


class Number(NamedTuple):
    """A number, and how finely it was written.

    step: the smallest difference that the writing shows: 1/8 for "17 7/8", 1/10 for "46.5", 1 for
    "20". decimal: whether it was written with a decimal mark. end: index of the character after it.
    """

    value: Fraction
    step: Fraction
    decimal: bool
    end: int


def plain(text: str) -> str:
    """The text with one kind of blank, dash and quote, every character still in its column."""
    if len(text) > _LONGEST_TEXT:
        raise Unreadable(text[:_LONGEST_TEXT] + "…", "This is far too long for one figure.")
    return text.translate(_PLAIN)


def strip_about(text: str, start: int = 0) -> tuple[bool, int]:
    """Whether "~", "about" or "ca" stands at `start` of a plain text, and where the rest begins."""
    found = _ABOUT.match(text, start)
    if found:
        return True, found.end()
    while start < len(text) and text[start] == " ":
        start += 1
    return False, start


def read_number(text: str, start: int, units: Units, example: str) -> Number:
    """The number that stands at `start` of a plain text; what follows it is not looked at.

    Raises Unreadable where there is none, where it is below zero, where its fraction is none, and
    where its comma could mean two things. `example` is what a right text would look like.
    """
    if text.startswith("-", start):
        raise Unreadable(text, f"It cannot be less than nothing. Write it like {example}.", start)
    alone = _read_fraction(text, start, None)
    if alone:
        return alone
    found = _DIGITS.match(text, start)
    if not found:
        said = "A number is missing here" if start < len(text) else "Nothing is written here"
        raise Unreadable(text, f"{said}. Write it like {example}.", start)
    typed = found.group()
    if sum(c.isdigit() for c in typed) > _MOST_DIGITS:
        raise Unreadable(text, f"This number has too many digits. Write it like {example}.", start)
    value, step = _value_of(text, typed, start, units)
    if not typed.isdigit():
        return Number(value, step, "." in typed or step < 1, found.end())
    after = found.end()
    if text.startswith((" ", "-"), after):
        after += 1
    while text.startswith(" ", after) and text[after - 1] == " ":
        after += 1
    return _read_fraction(text, after, value) or Number(value, step, False, found.end())


def _read_fraction(text: str, start: int, whole: Fraction | None) -> Number | None:
    """The fraction at `start`, added to the whole number before it, or None where there is none."""
    if text[start : start + 1] in ONE_CHARACTER:
        over, under = ONE_CHARACTER[text[start]]
        end = start + 1
    else:
        found = _FRACTION.match(text, start)
        if not found:
            return None
        if len(found.group(1)) > 3 or len(found.group(2)) > 3:
            raise Unreadable(text, "No tape is divided so finely. Write it like 18 1/4.", start)
        over, under = int(found.group(1)), int(found.group(2))
        end = found.end()
    if under == 0:
        raise Unreadable(text, "Nothing can be divided by 0. Write a fraction like 1/4.", start)
    if over >= under:
        raise _too_large(text, start, end, over, under, whole)
    value = (whole or Fraction(0)) + Fraction(over, under)
    return Number(value, Fraction(1, under), False, end)


def _too_large(text: str, start: int, end: int, over: int, under: int, whole: Fraction | None) -> Unreadable:
    """17/8 is 2 1/8 to a computer, but was probably 1 7/8 with its blank lost."""
    if whole is not None:
        return Unreadable(text, f"The fraction {over}/{under} is not less than one. Write it like 18 1/4.", start)
    digits = str(over)
    lost = ""
    if len(digits) > 1 and 0 < int(digits[1:]) < under:
        lost = f", or {digits[0]} {digits[1:]}/{under} if a blank was lost"
    ones, rest = divmod(over, under)
    sum_of = f"{ones} {rest}/{under}" if rest else str(ones)
    mended = "" if lost else text[:start] + sum_of + text[end:]
    return Unreadable(text, f"The fraction {over}/{under} is not less than one. Write {sum_of}{lost}.", start, mended)


def _value_of(text: str, typed: str, start: int, units: Units) -> tuple[Fraction, Fraction]:
    """Value and step of digits with points and commas in them."""
    marks = [c for c in typed if c in ".,"]
    if not marks:
        return Fraction(int(typed)), Fraction(1)
    pieces = re.split("[.,]", typed)
    grouped = 1 <= len(pieces[0]) <= 3 and not pieces[0].startswith("0")
    first_mark, last_mark = marks[0], marks[-1]
    if len(marks) == 1:
        thousands = first_mark == "," and grouped and len(pieces[1]) == 3
        if first_mark == ",":
            return _one_comma(text, typed, pieces, thousands, start, units)
        if units.comma == "decimal" and grouped and len(pieces[1]) == 3:
            # Where the comma is decimal the point may stand between thousands.
            raise _two_readings(text, typed, "point", start)
        return _decimal(pieces[0], pieces[1])
    groups = pieces[1:-1] if last_mark != first_mark else pieces[1:]
    regular = grouped and all(len(g) == 3 for g in groups)
    same_before = all(m == first_mark for m in (marks[:-1] if last_mark != first_mark else marks))
    against = {"decimal": ",", "thousands": "."}.get(units.comma or "")
    if not regular or not same_before or first_mark == against:
        raise Unreadable(text, f"The points and commas of {typed} do not fit. Write it like 1200 or 46.5.", start)
    if last_mark == first_mark:
        return Fraction(int("".join(pieces))), Fraction(1)
    return _decimal("".join(pieces[:-1]), pieces[-1])


def _one_comma(
    text: str, typed: str, pieces: list[str], thousands: bool, start: int, units: Units
) -> tuple[Fraction, Fraction]:
    if thousands and units.comma is None:
        raise _two_readings(text, typed, "comma", start)
    if units.comma != "thousands":
        return _decimal(pieces[0], pieces[1])
    if thousands:
        return Fraction(int("".join(pieces))), Fraction(1)
    point = typed.replace(",", ".")
    raise Unreadable(
        text,
        f"The comma stands between thousands in this journal, and {typed} does not fit that. Write {point}.",
        start,
        text[:start] + point + text[start + len(typed) :],
    )


def _decimal(whole: str, part: str) -> tuple[Fraction, Fraction]:
    step = Fraction(1, 10 ** len(part))
    return int(whole or "0") + int(part) * step, step


def _two_readings(text: str, typed: str, mark: str, start: int) -> Ambiguous:
    joined = typed.replace(",", "").replace(".", "")
    decimal = typed.replace(",", ".").rstrip("0").rstrip(".")
    write = f"Write {joined} or {decimal}, or say what a comma means in journal.md (comma: thousands)."
    if mark == "point":
        decimal = decimal.replace(".", ",")
        write = f"Write {joined} or {decimal}."
    return Ambiguous(text, f"{typed} is {joined} to one weaver and {decimal} to another. {write}", start)
