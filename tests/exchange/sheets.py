"""Sheets of past warps taken into a journal for a test."""

from __future__ import annotations

from collections.abc import Iterator

from journal_tools.exchange.columns import parsed
from journal_tools.exchange.new_record import write_new
from journal_tools.exchange.propose import propose
from journal_tools.exchange.sheet import read_sheet
from journal_tools.exchange.taking import Outcome, Taken, take_sheet
from journal_tools.records import Journal, read_journal


def take(text: str, journal: Journal, *, said: str = "", keep_unread: bool = False) -> Taken:
    """What a sheet comes to. said: lines of the file of columns, in the place of what is proposed."""
    sheet = read_sheet(text.encode(), "past.csv")
    columns = propose(sheet, journal.settings.units)
    if said:
        columns = parsed(said, "past.columns.txt", sheet, columns)
    return take_sheet(sheet, columns, journal, keep_unread=keep_unread)


def written(taken: Taken, journal: Journal) -> Journal:
    """The journal once all is written, in which nothing is to mend."""
    assert [] == [problem for record in taken.records if (problem := write_new(journal.folder, record)) is not None]
    read = read_journal(journal.folder)
    assert () == read.problems
    return read


def texts(taken: Taken) -> dict[str, str]:
    """The text of every record, by its file."""
    return {record.file: record.text() for record in taken.records}


def told(outcomes: tuple[Outcome, ...]) -> Iterator[tuple[int, str, list[str]]]:
    """Row, what became of it, and the slugs of what is said of it."""
    for outcome in outcomes:
        yield outcome.row, outcome.done, [problem.slug for problem in outcome.problems]
