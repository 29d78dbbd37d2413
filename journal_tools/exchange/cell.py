"""One cell of a sheet as it would be typed in a record: with its unit, its comma settled, its date in order."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from fractions import Fraction

from journal_tools.exchange.columns import ColumnAs, Columns
from journal_tools.exchange.meaning import PIECE, WARP
from journal_tools.quantities import (
    MONTHS,
    Units,
    parse_count,
    parse_density,
    parse_length,
    parse_money,
    parse_size,
    parse_weight,
    parse_when,
    parse_yarn_number,
)

NOTHING = {"", "-", "--", "–", "—", "?", "??", "n/a", "na", "n.a.", "none", "nil", "unknown", "not measured", "x", "…"}
"""What stands in a cell where nobody measured or wrote anything."""

_ABOUT = re.compile(r"\s*(?:~|≈|(?:about|approximately|approx\.?|around|roughly|circa|ca\.?|c\.)(?![a-z]))\s*", re.I)
_BARE = re.compile(r"[\d\s.,/½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞⁄-]+")
_FIGURE = re.compile(r"\d+(?:[.,]\d+)*")
_DATED = re.compile(r"(\d{1,2})\s*[-/. ]\s*(\d{1,2}|[a-z]{3,9})\.?\s*[-/. ,]\s*(\d{4}|\d{2})", re.I)
_MONTH_YEAR = re.compile(r"([a-z]{3,9})\.?\s*[-/. ']+\s*(\d{4}|\d{2})", re.I)
_NUMBER_YEAR = re.compile(r"(\d{1,2})\s*[-/.]\s*(\d{4})")
_TIME = re.compile(r"[T ]\d{1,2}:\d{2}(?::\d{2}(?:\.\d+)?)?(?:\s*[ap]m)?Z?$", re.I)
_MOST_DECIMALS = 4
_THIS_CENTURY = 50
"""A year of two digits below this is of the two thousands."""


def nothing_said(cell: str) -> bool:
    """Whether a cell says that there is nothing to say."""
    return " ".join(cell.lower().split()) in NOTHING


def says(cell: str, column: ColumnAs) -> bool:
    """Whether a cell says anything. A warp or a piece may well be called X, or None."""
    if column.meaning in (WARP, PIECE):
        return any(letter.isalnum() for letter in cell)
    return not nothing_said(cell)


def typed(cell: str, column: ColumnAs, columns: Columns, units: Units) -> str:
    """A cell that says something as a record would have it, "" for a figure of nothing. Raises Unreadable.

    units: of the record that it goes into; a unit is written where it is not the record's own.
    """
    return _KINDS[column.meaning.kind](cell, column, columns, units)


def _words(cell: str, column: ColumnAs, columns: Columns, units: Units) -> str:
    return " ".join(cell.split())


def _length(cell: str, column: ColumnAs, columns: Columns, units: Units) -> str:
    text = settled(cell, columns, units)
    if column.meaning.key == "in_reed" and re.search(r"\bdents?$|\b(?:folded|opened)$", text):
        parse_count(text, units) if text.endswith(("dent", "dents")) else parse_length(text.rsplit(None, 1)[0], units)
        return text
    text = with_unit(text, column.unit, units.length)
    if not parse_length(text, units).mm:
        return ""  # nothing cannot be measured: a sheet has 0 where it has no figure
    return text


def _size(cell: str, column: ColumnAs, columns: Columns, units: Units) -> str:
    text = settled(cell, columns, units)
    sides = re.split(r"\s*(?<!appro)[x×*]\s*|\s+by\s+", text, flags=re.I)
    if len(sides) == 2 and column.unit not in ("", units.length):
        text = " x ".join(side if side.strip() == "?" else with_unit(side, column.unit, units.length) for side in sides)
    parse_size(text, units)
    return text


def _density(cell: str, column: ColumnAs, columns: Columns, units: Units) -> str:
    text = settled(cell, columns, units)
    if not is_bare(text):
        parse_density(text, units)
        return text
    text = f"{text}{column.unit}" if column.unit in ("/in", "/cm") else f"{text} per 10 cm" if column.unit else text
    parse_density(text, units)
    return text


def _weight(cell: str, column: ColumnAs, columns: Columns, units: Units) -> str:
    text = with_unit(settled(cell, columns, units), column.unit, units.weight)
    return text if parse_weight(text, units).grams else ""


def _count(cell: str, column: ColumnAs, columns: Columns, units: Units) -> str:
    text = re.sub(r"[.,]0+$", "", settled(cell, columns, units))
    return text if parse_count(text, units).number else ""


def _yield(cell: str, column: ColumnAs, columns: Columns, units: Units) -> str:
    text = settled(cell, columns, units)
    if is_bare(text):
        text = f"{text} {column.unit or 'yd/lb'}"
    parse_yarn_number(text, None, units)
    return text


def _money(cell: str, column: ColumnAs, columns: Columns, units: Units) -> str:
    text = settled(cell, columns, units)
    parse_money(text, units)
    return text


def _date(cell: str, column: ColumnAs, columns: Columns, units: Units) -> str:
    text = in_order(" ".join(cell.split()), columns)
    parse_when(text)
    return text


def in_order(text: str, columns: Columns) -> str:
    """A date as a record writes it: 14.3.16 is 2016-03-14 in a sheet that has the day first."""
    text = re.sub(r"^(\d{4})[.,]0+$", r"\1", _TIME.sub("", text))
    if found := _DATED.fullmatch(text):
        first, second, year = found[1], found[2], _year(found[3])
        if not second.isdigit():
            return f"{first} {second} {year}"
        day, month = int(first), int(second)
        if day <= 12 and month <= 12 and columns.dates is None and day != month:
            return f"{first}/{second}/{year}"  # told with both of its readings
        if columns.dates == "month first" or (columns.dates is None and month > 12):
            day, month = month, day
        return f"{year}-{month:02}-{day:02}"
    if (found := _MONTH_YEAR.fullmatch(text)) and _is_month(found[1]):
        return f"{found[1]} {_year(found[2])}"
    if (found := _NUMBER_YEAR.fullmatch(text)) and int(found[1]) <= 12:
        return f"{found[2]}-{int(found[1]):02}"
    return text


def _is_month(word: str) -> bool:
    return any(month.lower().startswith(word.lower()) for month in MONTHS) or word.lower() == "sept"


def _year(digits: str) -> str:
    if len(digits) == 4:
        return digits
    return f"{20 if int(digits) < _THIS_CENTURY else 19}{digits}"


def is_bare(text: str) -> bool:
    """Whether a text is a figure without a unit, with or without "about" before it."""
    return bool(_BARE.fullmatch(_ABOUT.sub("", text, count=1)))


def with_unit(text: str, unit: str, own: str) -> str:
    """A bare figure with the unit of its column, unless that is the record's own."""
    return f"{text} {unit}" if unit and unit != own and is_bare(text) else text


def settled(cell: str, columns: Columns, units: Units) -> str:
    """The text with every figure as the journal reads it, whatever a comma is in the sheet."""
    text = " ".join(cell.split())
    return _FIGURE.sub(lambda found: _figure(found[0], columns, units), text)


def _figure(digits: str, columns: Columns, units: Units) -> str:
    if columns.comma is None and "," in digits:
        return digits  # told with both of its readings, where it has two
    mark, other = (",", ".") if columns.comma == "decimal" else (".", ",")
    plain = digits.replace(other, "") if digits.count(mark) <= 1 and _grouped(digits, mark, other) else digits
    whole, dot, rest = plain.partition(mark)
    if not dot or not rest.isdigit() or not whole.isdigit():
        return plain
    if len(rest) > _MOST_DECIMALS:  # what a formula left; no tape is read to it
        rounded = round(Fraction(f"{whole}.{rest}"), _MOST_DECIMALS)
        whole, _, rest = f"{float(rounded):.{_MOST_DECIMALS}f}".partition(".")
        rest = rest.rstrip("0")
    if not rest:
        return whole
    return f"{whole}{',' if units.comma == 'decimal' else '.'}{rest}"


def _grouped(digits: str, mark: str, other: str) -> bool:
    """Whether the marks that are not decimal stand between thousands."""
    whole = digits.split(mark)[0]
    groups = whole.split(other)
    return len(groups) == 1 or (1 <= len(groups[0]) <= 3 and all(len(group) == 3 for group in groups[1:]))


_KINDS: Mapping[str, Callable[[str, ColumnAs, Columns, Units], str]] = {
    "words": _words,
    "length": _length,
    "size": _size,
    "density": _density,
    "weight": _weight,
    "count": _count,
    "yield": _yield,
    "money": _money,
    "date": _date,
}
