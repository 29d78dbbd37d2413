"""Journals sent out and taken in again."""

from __future__ import annotations

import json
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from journal_tools.editing.splice import splice_file
from journal_tools.editing.starting import begin
from journal_tools.exchange.downloads import downloads
from journal_tools.exchange.new_record import write_new
from journal_tools.exchange.taking import Taken
from journal_tools.exchange.whole_taking import take_whole
from journal_tools.ledger import Ledger, ledger_of
from journal_tools.records import Journal, read_journal


def take_in(data: bytes, entries: Path, *, keep_unread: bool = False) -> Taken:
    """A journal as JSON taken into the journal in a folder, and written."""
    taken = take_whole(data, "journal.json", read_journal(entries), keep_unread=keep_unread)
    if taken.settings:
        splice_file(entries / "journal.md", taken.settings, "journal.md")
    assert [] == [problem for record in taken.records if (problem := write_new(entries, record)) is not None]
    return taken


def out_and_in(journal: Journal, folder: Path, *, keep_unread: bool = False) -> Journal:
    """A journal exported, and imported into one that has just been begun."""
    begin(folder, "A new book")
    taken = take_in(downloads(journal)["journal.json"], folder / "entries", keep_unread=keep_unread)
    assert () == taken.problems
    assert taken.sound
    return read_journal(folder / "entries")


def ledgers(journal: Journal) -> dict[str, Ledger]:
    """The ledger of every warp."""
    return {name: ledger_of(journal, warp) for name, warp in journal.warps.items()}


def tables(journal: Journal) -> Mapping[str, Any]:
    """The tables of a journal, read."""
    read: Mapping[str, Any] = json.loads(downloads(journal)["tables.json"])
    return read
