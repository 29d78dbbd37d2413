"""The figures to take away: the files of an export, beside the list of warps."""

from __future__ import annotations

from journal_tools.exchange.downloads import TABLES, downloads
from journal_tools.pages.archive import Archive
from journal_tools.pages.view_parts import Cell, Column, Table

FOLDER = "figures"
"""Where they are in the site."""

WHAT = {
    "journal.json": "every record as it was typed, in one file that a journal can take in again",
    "journal.schema.json": "what stands in it, as JSON Schema",
    "README.txt": "what every column means",
}


def figures_table(archive: Archive) -> Table:
    """A table that leads to every file; the files come into the site with it. Of a shared journal, what is shared."""
    what = {f"{table.name}.csv": f"a row is {table.one}" for table in TABLES} | WHAT
    files = downloads(archive.journal, archive.ledgers, twice=False)
    for name, content in files.items():
        archive.keep(f"{FOLDER}/{name}", content)
    rows = tuple((Cell(name, f"{FOLDER}/{name}"), Cell(what[name]), Cell(_size(len(files[name])))) for name in files)
    columns = (Column("take the figures with you"), Column("what is in it"), Column("size", True))
    return Table("Take the figures with you", columns, rows)


def _size(number: int) -> str:
    return f"{max(1, round(number / 1000)):,} KB"
