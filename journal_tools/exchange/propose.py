"""How a sheet would be taken, proposed from its headings, its units and what stands in its cells."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from statistics import median

from journal_tools.exchange.cell import nothing_said
from journal_tools.exchange.columns import ColumnAs, Columns, Comma, Dates, Each, headings_of
from journal_tools.exchange.headings import heading_meaning
from journal_tools.exchange.meaning import LEAVE_OUT, MEANINGS, NOTES, Meaning
from journal_tools.exchange.sheet import Sheet
from journal_tools.quantities import Units

MOST_ABOVE = 20
"""Rows in which the headings are looked for: titles and blank rows stand above them."""

OTHER_FIGURES = ("size", "count", "money")
"""Kinds of columns that hold figures, besides those with a unit."""

LONGEST_FEW = 25
"""A bare length of warp below this is in yards or metres, and not in inches or centimetres."""

_TWO_NUMBERS = re.compile(r"\s*(\d{1,2})\s*[-/.]\s*(\d{1,2})\s*[-/.]\s*(?:\d{2}|\d{4})(?:\s.*)?")
_DECIMAL_COMMA = re.compile(r"(?<![\d.,])(?:\d+,(?:\d{1,2}|\d{4,})|0,\d+|\d{1,3}(?:\.\d{3})+,\d+)(?![\d.,])")
_THOUSANDS = re.compile(r"(?<![\d.,])\d{1,3}(?:,\d{3})+(?:\.\d+)?(?![\d.,])")
_DECIMAL_POINT = re.compile(r"(?<![\d.,])\d+\.(?:\d{1,2}|\d{4,})(?![\d.,])")


def propose(sheet: Sheet, units: Units) -> Columns:
    """The columns as their headings tell them. units: the journal's, for figures whose column states none.

    A heading that tells nothing becomes a note, so that nothing is lost; losses are left out, since
    they are reckoned anew; an empty column is left out.
    """
    header = _header(sheet)
    headings = headings_of(sheet, header)
    rows = sheet.rows[header[1] :]
    columns = tuple(_columns(headings, rows, units))
    figures = [column.place for column in columns if column.meaning.units or column.meaning.kind in OTHER_FIGURES]
    cells = [row[place] for row in rows for place in figures]
    return Columns(header, _each(columns, rows), columns, _dates(columns, rows), _comma(cells, sheet.separator))


def _header(sheet: Sheet) -> tuple[int, int]:
    """The row of headings, or the two: where most cells tell what they are."""
    best, most = (1, 1), 0
    for row in range(1, min(MOST_ABOVE, len(sheet.rows)) + 1):
        for first in (row, row - 1):
            if first < 1 or (first < row and not any(sheet.rows[first - 1])):
                continue
            told = {found[0].name for each in headings_of(sheet, (first, row)) if (found := heading_meaning(each))}
            number = len(told - {LEAVE_OUT.name})
            if number > most:
                best, most = (first, row), number
    if not most:
        fullest = max(range(min(MOST_ABOVE, len(sheet.rows))), key=lambda each: sum(map(bool, sheet.rows[each])))
        return fullest + 1, fullest + 1
    return best


def _columns(headings: Sequence[str], rows: Sequence[Sequence[str]], units: Units) -> Iterator[ColumnAs]:
    taken: set[str] = set()
    for place, heading in enumerate(headings):
        cells = [row[place] for row in rows if row[place]]
        found = heading_meaning(heading)
        meaning, unit = found if found is not None else (NOTES, "")
        if not cells:
            meaning, unit = LEAVE_OUT, ""
        elif meaning.name == "date finished" and not any(re.search(r"\d{4}|\d/\d", cell) for cell in cells):
            meaning = MEANINGS["finish"]  # "finished: hot wash" tells how, not when
        elif meaning.name == "reed" and "reed" not in taken and not unit and _looks_like_widths(cells):
            meaning = MEANINGS["width in the reed"]
        elif meaning.name in ("loom", "finish") and all(re.fullmatch(r"[\d\s.,/]+", cell) for cell in cells):
            meaning = NOTES  # figures are no name of a loom; which size they are, the heading does not tell
        if meaning.once and meaning.name in taken:
            meaning, unit = NOTES, ""
        taken.add(meaning.name)
        yield ColumnAs(place, heading, meaning, unit or _usual_unit(meaning, cells, units))


def _looks_like_widths(cells: Sequence[str]) -> bool:
    """Whether the figures under "reed" are widths: reeds are few and whole, widths have fractions."""
    return sum(bool(re.search(r"\d/\d|[½¼¾⅛⅜⅝⅞]|[.,]\d*[1-9]", cell)) for cell in cells) > len(cells) / 3


def _usual_unit(meaning: Meaning, cells: Sequence[str], units: Units) -> str:
    if meaning.name == "warp wound":
        figures = [float(found[0]) for cell in cells if (found := re.match(r"\d+(?:\.\d+)?", cell))]
        few = not figures or median(figures) < LONGEST_FEW
        return {True: {"in": "yd"}.get(units.length, "m"), False: units.length}[few]
    kinds = {"length": units.length, "size": units.length, "weight": units.weight, "density": f"/{units.density}"}
    return {**kinds, "yield": "yd/lb" if units.length == "in" else "m/kg"}.get(meaning.kind, "")


def _each(columns: Sequence[ColumnAs], rows: Sequence[Sequence[str]]) -> Each:
    """What one row is: a piece where pieces have names, or where a warp comes twice."""
    if any(column.meaning.name == "piece" for column in columns):
        return "a piece"
    warp = next((column.place for column in columns if column.meaning.name == "warp"), None)
    if warp is None:
        return "a warp"
    named = [" ".join(row[warp].lower().split()) for row in rows if not nothing_said(row[warp])]
    return "a piece" if len(set(named)) < len(named) else "a warp"


def _dates(columns: Sequence[ColumnAs], rows: Sequence[Sequence[str]]) -> Dates | None:
    """Which of two numbers is the day, where a day above 12 tells; None where none does, or both do."""
    places = [column.place for column in columns if column.meaning.kind == "date"]
    told: set[Dates] = set()
    for cell in (row[place] for row in rows for place in places):
        if found := _TWO_NUMBERS.fullmatch(cell):
            first, second = int(found[1]), int(found[2])
            told |= {"day first"} if first > 12 >= second else {"month first"} if second > 12 >= first else set()
    return told.pop() if len(told) == 1 else None


def _comma(cells: Sequence[str], separator: str) -> Comma | None:
    """What a comma in a figure is, where the figures tell; None where they do not, or tell both."""
    decimal = any(_DECIMAL_COMMA.search(cell) for cell in cells)
    thousands = any(_THOUSANDS.search(cell) for cell in cells)
    points = any(_DECIMAL_POINT.search(cell) for cell in cells)
    if decimal and not points:
        return "decimal"
    if points and not decimal and thousands:
        return "thousands"
    if thousands and not decimal and not points and separator == "semicolon":
        return "decimal"  # semicolons stand between cells where commas stand in figures
    return None
