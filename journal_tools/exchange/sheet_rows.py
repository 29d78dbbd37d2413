"""The rows of a sheet below its headings, each cell as a record would have it, or told of where it cannot be read."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from journal_tools.exchange.cell import says, typed
from journal_tools.exchange.columns import ColumnAs, Columns, headings_of
from journal_tools.exchange.headings import heading_meaning
from journal_tools.exchange.meaning import LEAVE_OUT, NOTES
from journal_tools.exchange.sheet import Sheet
from journal_tools.problems import Problem, Severity
from journal_tools.quantities import Ambiguous, Units, Unreadable

_SUMS = re.compile(
    r"(?:grand |sub)?-?totals?|sums?|averages?|means?|mean of all"
    r"|summe|gesamt|mittel(?:wert)?|somme|totaal|totalt?e?|suma",
    re.I,
)

_NO_FIGURE = ("words", "notes", "date")


@dataclass
class SheetRow:
    """One row. number: from 1, as a spreadsheet counts.

    cells: what it says, by meaning. headings: the heading of each. notes: what goes into notes, in order.
    skipped: why it is no row of a warp, "" for one that is. problems: what could not be read, and questions.
    """

    number: int
    cells: dict[str, str] = field(default_factory=dict)
    headings: dict[str, str] = field(default_factory=dict)
    notes: list[str] = field(default_factory=list)
    skipped: str = ""
    problems: list[Problem] = field(default_factory=list)

    @property
    def faulty(self) -> bool:
        """Whether something in it must be mended first."""
        return any(problem.is_fault for problem in self.problems)

    def ask(self, file: str, meaning: str, right: str, slug: str) -> None:
        """A question about one of its cells."""
        read = self.cells.get(meaning, "")
        heading = self.headings.get(meaning, meaning)
        self.problems.append(Problem(file, self.number, heading, read, right, Severity.QUESTION, slug))


def sheet_rows(sheet: Sheet, columns: Columns, units: Units, *, keep_unread: bool = False) -> Iterator[SheetRow]:
    """Every row below the headings that is not blank.

    keep_unread: a cell that cannot be read becomes a note and a question, and not a fault.
    """
    headings = headings_of(sheet, columns.header)
    taken = [column for column in columns.columns if column.meaning != LEAVE_OUT]
    for number, cells in enumerate(sheet.rows[columns.header[1] :], start=columns.header[1] + 1):
        if not any(cells):
            continue
        row = SheetRow(number)
        said = [column for column in taken if says(cells[column.place], column)]
        first = next((" ".join(cell.split()) for cell in cells if cell), "")
        if all(cell in ("", heading) for cell, heading in zip(cells, headings, strict=True)):
            row.skipped = "it holds the headings once more."
        elif _SUMS.fullmatch(first.strip(" :")):
            row.skipped = f'it begins with "{first}", and a sum is no warp.'
        elif not said:
            row.skipped = "it says nothing in the columns that are taken."
        elif len(said) == 1 and len(taken) > 2 and sum(map(bool, cells)) == 1 and said[0].meaning.kind in _NO_FIGURE:
            row.skipped = "only one of its cells is filled, so it is taken for a title."
        else:
            _read_cells(row, cells, said, sheet.file, columns, units, keep_unread)
        yield row


def _read_cells(
    row: SheetRow,
    cells: tuple[str, ...],
    said: list[ColumnAs],
    file: str,
    columns: Columns,
    units: Units,
    keep_unread: bool,
) -> None:
    notes = columns.of(NOTES.name)
    own = next((each for each in notes if (found := heading_meaning(each.heading)) and found[0] == NOTES), None)
    for column in said:
        cell = cells[column.place]
        if column.meaning == NOTES:
            row.notes.append(cell if column is own else f"{column.heading}: {cell}")
            continue
        name = column.meaning.name
        row.headings[name] = column.heading
        try:
            text = typed(cell, column, columns, units)
        except Unreadable as unreadable:
            problem = Problem(file, row.number, column.heading, cell, _told(unreadable, column), slug="unreadable")
            if keep_unread:
                row.notes.append(f"{column.heading}: {cell}")
                right = f"{problem.right} As it stands, it is kept in the notes."
                problem = Problem(file, row.number, column.heading, cell, right, Severity.QUESTION, "unreadable")
            row.problems.append(problem)
            continue
        if text:
            row.cells[name] = text


def _told(unreadable: Unreadable, column: ColumnAs) -> str:
    """What would be right; where the file of columns can settle it for all rows, that too."""
    if unreadable.read[:1] in ("=", "+", "@"):
        return "This is a formula and not its value. Save the sheet as CSV again, with values."
    if isinstance(unreadable, Ambiguous) and column.meaning.kind == "date":
        return f"{unreadable.right} For the whole sheet, say `dates: day first` or `dates: month first`."
    if isinstance(unreadable, Ambiguous) and "," in unreadable.read:
        return f"{unreadable.right} For the whole sheet, say `comma: decimal` or `comma: thousands`."
    return unreadable.right


def answers(rows: list[SheetRow], meaning: str) -> Mapping[str, list[SheetRow]]:
    """What the rows say of one thing: each answer, in order, with the rows that give it."""
    found: dict[str, list[SheetRow]] = {}
    for row in rows:
        if meaning in row.cells:
            found.setdefault(row.cells[meaning], []).append(row)
    return found
