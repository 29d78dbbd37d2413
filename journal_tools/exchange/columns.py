"""How the columns of a sheet are taken: a small file of plain text that the weaver can correct and keep.

    header: row 2
    one row is: a piece
    dates: day first
    comma: decimal

    Warp name -> warp
    Width on loom (in) -> width on the loom, in
    Buyer -> leave out

Left of the arrow stands a heading of the sheet, right of it what the column is, with the unit of its
bare figures. A line that begins with # is a remark.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Literal, cast

from journal_tools.exchange.meaning import LEAVE_OUT, LISTED, MEANINGS, Meaning
from journal_tools.exchange.sheet import Sheet
from journal_tools.problems import Problem, Severity, nearest

ARROW = "->"

Comma = Literal["decimal", "thousands"]
Dates = Literal["day first", "month first"]
Each = Literal["a piece", "a warp"]

_SETTINGS = {
    "header": r"rows? (\d{1,6})(?:\s*-\s*(\d{1,6}))?",
    "one row is": "a piece|a warp",
    "dates": "day first|month first",
    "comma": "decimal|thousands",
}
_EXAMPLES = {
    "header": "row 1, or rows 1-2 for two rows of headings",
    "one row is": "a piece, or a warp",
    "dates": "day first, or month first",
    "comma": "decimal, or thousands",
}


@dataclass(frozen=True)
class ColumnAs:
    """One column of the sheet. place: from 0. heading: as it is told. unit: of bare figures, "" for none."""

    place: int
    heading: str
    meaning: Meaning
    unit: str = ""

    @property
    def words(self) -> str:
        """What stands right of the arrow."""
        return f"{self.meaning.name}, {self.unit}" if self.unit else self.meaning.name


@dataclass(frozen=True)
class Columns:
    """How a sheet is taken. header: its rows of headings, from 1, first and last.

    each: what one row is. dates: which of 4/5/2016 is the day, None where the sheet does not tell.
    comma: what a comma in a figure is, None where none comes or nobody knows.
    """

    header: tuple[int, int]
    each: Each
    columns: tuple[ColumnAs, ...]
    dates: Dates | None = None
    comma: Comma | None = None
    problems: tuple[Problem, ...] = field(default=(), compare=False)

    def of(self, name: str) -> tuple[ColumnAs, ...]:
        """The columns of one meaning."""
        return tuple(column for column in self.columns if column.meaning.name == name)


def headings_of(sheet: Sheet, header: tuple[int, int]) -> tuple[str, ...]:
    """The heading of every column, each once: two rows are read as one, the upper over all cells to its right.

    A column without a heading is called by its number; the second of a name has its number behind it.
    """
    first, last = header
    lower = sheet.rows[last - 1]
    found = [" ".join(cell.split()) for cell in lower]
    if first < last:
        above = ""
        for place, cell in enumerate(sheet.rows[first - 1]):
            above = cell or above
            found[place] = " ".join(f"{above} {found[place]}".split()) if found[place] else " ".join(cell.split())
    seen: Counter[str] = Counter()
    told = []
    for place, heading in enumerate(found, start=1):
        name = heading or f"column {place}"
        seen[name] += 1
        told.append(f"{name} ({seen[name]})" if seen[name] > 1 else name)
    return tuple(told)


def printed(columns: Columns, sheet: str) -> str:
    """The file of columns as text."""
    first, last = columns.header
    lines = [
        f"# How the columns of {sheet} are taken. Put right what is wrong, and import again.",
        "# Left of the arrow: a heading. Right: what it is, and the unit of figures that have none.",
        "",
        f"header: row {last}" if first == last else f"header: rows {first}-{last}",
        f"one row is: {columns.each}",
        f"dates: {columns.dates}" if columns.dates else "# dates: day first, or month first",
        f"comma: {columns.comma}" if columns.comma else "# comma: decimal, or thousands",
        "",
        *(f"{column.heading} {ARROW} {column.words}" for column in columns.columns),
        "",
        f"# What can stand on the right: {LISTED}.",
        "# A wash can have a number: width washed 2. Units: in, cm, mm, yd, m; g, oz; /in, /cm; yd/lb, m/kg.",
    ]
    return "\n".join(lines) + "\n"


def parsed(text: str, file: str, sheet: Sheet, proposed: Columns) -> Columns:
    """The file of columns read. What it does not say is as proposed, but for columns: those are left out.

    problems: what cannot be read in it, and columns of the sheet that it does not name.
    """
    lines = [line.strip() for line in text.splitlines()]
    problems: list[Problem] = []
    said = dict(_settings(lines, file, problems))
    header = _header(said, sheet, file, problems) or proposed.header
    headings = headings_of(sheet, header)
    columns = tuple(_columns(lines, file, headings, problems))
    missing = [heading for place, heading in enumerate(headings) if place not in {each.place for each in columns}]
    for heading in missing:
        if any(row[headings.index(heading)] for row in sheet.rows[header[1] :]):
            right = f"This column is not named here, so it is left out. To take it, add: {heading} {ARROW} notes"
            problems.append(Problem(file, 0, heading, "", right, Severity.QUESTION, "column"))
    return Columns(
        header,
        cast(Each, said.get("one row is", proposed.each)),
        tuple(sorted(columns, key=lambda column: column.place)),
        cast("Dates | None", said.get("dates", proposed.dates)),
        cast("Comma | None", said.get("comma", proposed.comma)),
        tuple(problems),
    )


def _settings(lines: Sequence[str], file: str, problems: list[Problem]) -> Iterator[tuple[str, str]]:
    for number, line in enumerate(lines, start=1):
        if not line or ARROW in line or line.startswith("#"):
            continue
        key, colon, value = line.partition(":")
        key, value = " ".join(key.lower().split()), " ".join(value.lower().split())
        if not colon or key not in _SETTINGS:
            near = nearest(key, _SETTINGS)
            right = f"A heading, {ARROW} and what it is are wanted, or one of: {', '.join(_SETTINGS)}."
            right += f" Did you mean {near}?" if near else ""
            problems.append(Problem(file, number, "", line, right, slug="column"))
        elif not re.fullmatch(_SETTINGS[key], value):
            problems.append(Problem(file, number, key, value, f"It is {_EXAMPLES[key]}.", slug="column"))
        else:
            yield key, value


def _header(said: Mapping[str, str], sheet: Sheet, file: str, problems: list[Problem]) -> tuple[int, int] | None:
    if "header" not in said:
        return None
    rows = [int(row) for row in re.findall(r"\d+", said["header"])]
    first, last = rows[0], rows[-1]
    if not 1 <= first <= last <= min(first + 1, len(sheet.rows)):
        right = f"The sheet has {len(sheet.rows)} rows, and its headings stand in one of them or in two."
        problems.append(Problem(file, 0, "header", said["header"], right, slug="column"))
        return None
    return first, last


def _columns(lines: Sequence[str], file: str, headings: tuple[str, ...], problems: list[Problem]) -> Iterator[ColumnAs]:
    taken: dict[str, str] = {}
    seen: set[str] = set()
    for number, line in enumerate(lines, start=1):
        left, arrow, right = line.rpartition(ARROW)
        heading = " ".join(left.split())
        if not arrow or (heading.startswith("#") and heading not in headings):
            continue
        if heading not in headings or heading in seen:
            near = nearest(heading, headings)
            words = "This heading stands here twice." if heading in seen else "The sheet has no column of this heading."
            words += f" Did you mean {near}?" if near and heading not in seen else ""
            severity = Severity.FAULT if heading in seen else Severity.QUESTION
            problems.append(Problem(file, number, "", heading, words, severity, "column"))
            continue
        seen.add(heading)
        meaning, unit, wrong = _right_side(right)
        if wrong:
            problems.append(Problem(file, number, heading, right.strip(), wrong, slug="column"))
            continue
        if meaning.once and meaning.name in taken:
            words = f"{taken[meaning.name]} is that already; one of the two is something else, notes or leave out."
            problems.append(Problem(file, number, heading, right.strip(), words, slug="column"))
            continue
        taken[meaning.name] = heading
        yield ColumnAs(headings.index(heading), heading, meaning, unit)


def _right_side(typed: str) -> tuple[Meaning, str, str]:
    """Meaning and unit, and what is wrong with them or ""."""
    name, _, unit = (" ".join(part.lower().split()) for part in typed.partition(","))
    meaning = MEANINGS.get(name)
    if meaning is None:
        near = nearest(name, MEANINGS)
        hint = f" Did you mean {near}?" if near else ""
        return LEAVE_OUT, "", f"A column is one of: {LISTED}.{hint}"
    units = MEANINGS["width washed"].units if meaning.kind == "size" else meaning.units
    if unit and unit not in units:
        wanted = f"Its unit is one of {', '.join(units)}." if units else "It has no unit."
        return meaning, "", wanted
    return meaning, unit, ""
