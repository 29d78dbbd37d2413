"""A sheet taken into a journal: every row accounted for, nothing written yet."""

from __future__ import annotations

import dataclasses
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from journal_tools.editing.change import Change
from journal_tools.exchange.columns import Columns
from journal_tools.exchange.gathered import gather, warp_record
from journal_tools.exchange.new_record import NewRecord, faults_of, is_the_same, staged, standing, with_records
from journal_tools.exchange.sheet import Sheet
from journal_tools.exchange.sheet_rows import SheetRow, sheet_rows
from journal_tools.exchange.shelf import Shelf
from journal_tools.ledger import ledger_of, questions
from journal_tools.problems import Problem, Severity
from journal_tools.records import Journal
from journal_tools.records.yarns_used import all_yarns

Done = Literal["new", "there", "skipped"]


@dataclass(frozen=True)
class Outcome:
    """What became of one row, or of one record where there are no rows (row 0).

    done: "new" is or will be written to `file`, "there" stands in the journal already and is the
    same, "skipped" is not taken, and `why` or its problems say why. problems: faults and questions.
    """

    row: int
    done: Done
    file: str = ""
    why: str = ""
    problems: tuple[Problem, ...] = ()

    @property
    def is_fault(self) -> bool:
        """Whether something must be mended before it can be taken."""
        return any(problem.is_fault for problem in self.problems)


@dataclass(frozen=True)
class Taken:
    """What a file comes to. records: to be written. outcomes: in the order of the file. problems: of the file.

    settings: what is to be added to the journal.md of a journal that has no record yet.
    """

    records: tuple[NewRecord, ...] = ()
    outcomes: tuple[Outcome, ...] = ()
    problems: tuple[Problem, ...] = ()
    settings: tuple[Change, ...] = ()

    @property
    def sound(self) -> bool:
        """Whether nothing must be mended."""
        faults = [problem for problem in self.problems if problem.is_fault]
        return not faults and not any(outcome.is_fault for outcome in self.outcomes)


def take_sheet(sheet: Sheet, columns: Columns, journal: Journal, *, keep_unread: bool = False) -> Taken:
    """What a sheet comes to in this journal. Reads the disk, and writes nothing to the journal.

    A warp is taken whole or not at all: a fault in one of its rows keeps all of them out, because a
    record that is there is never written over later. keep_unread: see `sheet_rows`; what was kept so
    in an earlier run stays taken.
    """
    if any(problem.is_fault for problem in columns.problems):
        return Taken(problems=columns.problems)
    units = journal.settings.units
    rows = list(sheet_rows(sheet, columns, units, keep_unread=keep_unread))
    if not keep_unread and any(row.faulty for row in rows):
        kept = take_sheet(sheet, columns, journal, keep_unread=True)
        there_already = {outcome.row for outcome in kept.outcomes if outcome.done == "there"}
        again = {row.number: row for row in sheet_rows(sheet, columns, units, keep_unread=True)}
        rows = [again[row.number] if row.number in there_already else row for row in rows]
    warps = gather(rows, columns, sheet.file)
    by_number = {row.number: row for row in rows}
    homes: dict[int, NewRecord] = {}
    wanted: list[NewRecord] = []
    there: set[str] = set()
    shelf = Shelf(journal, units, sheet.file)
    for warp in warps:
        if any(row.faulty for row in warp.rows):
            _keep_out(warp.rows, sheet)
            continue
        record = warp_record(warp, shelf, columns)
        homes |= dict.fromkeys(record.source, record)
        first = by_number[record.source[0]]
        stands = standing(journal, record)
        if stands is not None and is_the_same(journal, record):
            there.add(record.name)
        elif stands is not None:
            right = f"{stands.right} ({record.file})"
            first.problems.append(sheet.problem(first.number, "warp", warp.title, right, stands.slug))
            _keep_out(warp.rows, sheet)
        else:
            wanted.append(record)
    records = _sound(wanted, list(shelf.records()), journal, by_number, sheet)
    files = {record.file for record in records}
    outcomes = tuple(_outcome(row, homes.get(row.number), files, there) for row in rows)
    return Taken(records, outcomes, _about(columns, sheet))


def _about(columns: Columns, sheet: Sheet) -> tuple[Problem, ...]:
    if columns.of("warp"):
        return columns.problems
    right = "No column names the warp, so warps are called after what else there is. Which column is it?"
    return (*columns.problems, Problem(sheet.file, 0, "warp", "", right, Severity.QUESTION, "no-name"))


def _outcome(row: SheetRow, record: NewRecord | None, files: set[str], there: set[str]) -> Outcome:
    problems = tuple(row.problems)
    if record is not None and record.file in files and not row.faulty:
        return Outcome(row.number, "new", record.file, problems=problems)
    if record is not None and record.name in there:
        return Outcome(row.number, "there", record.file)
    return Outcome(row.number, "skipped", why=row.skipped, problems=problems)


def _keep_out(rows: Sequence[SheetRow], sheet: Sheet) -> None:
    """All rows of a warp are out when one is; the others say which."""
    faulty = [row for row in rows if row.faulty]
    for row in rows:
        if not row.faulty:
            right = f"Row {faulty[0].number} of the same warp must be mended first."
            row.problems.append(sheet.problem(row.number, "", "", right, "with-another"))


def _sound(
    warps: list[NewRecord], shelf: list[NewRecord], journal: Journal, rows: Mapping[int, SheetRow], sheet: Sheet
) -> tuple[NewRecord, ...]:
    """The records that the journal's reader finds nothing wrong with, and what they need of the shelf."""
    checked = [record for record in [*shelf, *warps] if not _tell(faults_of(record), record, rows, sheet)]
    read = staged(journal, checked)
    faults: dict[str, list[Problem]] = {}
    for problem in read.problems:
        faults.setdefault(problem.file, []).append(problem)
    kept = [record for record in checked if not _tell(faults.get(record.file, []), record, rows, sheet)]
    whole = with_records(journal, read)
    for record in (record for record in kept if record.kind == "warps"):
        _ask(record, whole, rows, sheet)
    needed = _needed([record for record in kept if record.kind == "warps"], whole)
    return tuple(record for record in kept if record.kind == "warps" or (record.kind, record.name) in needed)


def _tell(faults: Sequence[Problem], record: NewRecord, rows: Mapping[int, SheetRow], sheet: Sheet) -> bool:
    """Note what is wrong with a record at its rows; whether anything that must be mended is."""
    wrong = [problem for problem in faults if problem.is_fault]
    for problem in wrong:
        row = rows[_row_of(problem, record)]
        row.problems.append(dataclasses.replace(problem, file=sheet.file, line=row.number, mended=""))
    if wrong:
        _keep_out([rows[number] for number in record.source], sheet)
    return bool(wrong)


def _row_of(problem: Problem, record: NewRecord) -> int:
    """The row that a problem of a record came from: that of its piece, where it names one."""
    found = re.match(r"pieces: (\d+)", problem.field)
    number = int(found[1]) if found else 1
    return record.source[number - 1] if number <= len(record.source) else record.source[0]


def _ask(record: NewRecord, whole: Journal, rows: Mapping[int, SheetRow], sheet: Sheet) -> None:
    """What the journal asks about a warp's figures, at the rows of the sheet."""
    for problem in questions(whole, ledger_of(whole, whole.warps[record.name])):
        row = rows[_row_of(problem, record)]
        row.problems.append(dataclasses.replace(problem, file=sheet.file, line=row.number, mended=""))


def _needed(warps: Sequence[NewRecord], whole: Journal) -> set[tuple[str, str]]:
    """The yarns, finishes and looms that the warps name."""
    needed: set[tuple[str, str]] = set()
    for record in warps:
        warp = whole.warps[record.name]
        needed |= {("yarns", yarn.name) for yarn in all_yarns(whole, warp)}
        needed |= {("looms", warp.loom or "")}
        needed |= {("finishes", name) for cloth in (warp, *warp.pieces) for name in cloth.finish}
    return needed
