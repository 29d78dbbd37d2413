"""The journal as files to take away: tables, one file of everything, and what they mean.

All of it is told from the journal that is given. From a shared one nothing can leak, since nothing
private is in it.
"""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence

from journal_tools.editing.change import Value
from journal_tools.exchange.cloth_tables import PIECES, SIZES, STEPS
from journal_tools.exchange.csv_cells import Cell, csv_bytes
from journal_tools.exchange.described import page_of_columns, schema_of_tables, schema_of_whole
from journal_tools.exchange.record_tables import DRAFTS, FINISHES, LOOMS, WARPS, WENT, YARNS
from journal_tools.exchange.table import Table, Told
from journal_tools.exchange.whole import whole_json
from journal_tools.ledger import Ledger
from journal_tools.records import Journal

TABLES: tuple[Table, ...] = (STEPS, SIZES, PIECES, WARPS, WENT, YARNS, DRAFTS, LOOMS, FINISHES)

Rows = Sequence[tuple[Cell, ...]]


def downloads(
    journal: Journal,
    ledgers: Mapping[str, Ledger] | None = None,
    typed: Mapping[str, Value] | None = None,
    *,
    twice: bool = True,
) -> dict[str, bytes]:
    """Every file by its name; the same bytes for the same journal. Tables without a row are left out.

    ledgers: of warps, by name, where they are at hand. typed: see `whole_json`. twice: whether the
    tables are told as JSON as well, which of a thousand warps is 15 MB.
    """
    told = Told.of(journal, ledgers)
    rows: list[tuple[Table, Rows]] = [(table, list(table.rows(told))) for table in TABLES]
    rows = [(table, each) for table, each in rows if each]
    files = {f"{table.name}.csv": csv_bytes(table.headings, each) for table, each in rows}
    if twice:
        files |= {"tables.json": _tables_json(rows), "tables.schema.json": schema_of_tables(TABLES)}
    return files | {
        "journal.json": whole_json(journal, typed),
        "journal.schema.json": schema_of_whole(),
        "README.txt": page_of_columns(TABLES).encode("utf-8"),
    }


def _tables_json(rows: Sequence[tuple[Table, Rows]]) -> bytes:
    """Every table, each on a line of its own."""
    tables = []
    for table, each in rows:
        headings = table.headings
        objects = json.dumps([dict(zip(headings, row, strict=True)) for row in each], ensure_ascii=False)
        tables.append(f'"{table.name}": {objects}')
    return ("{" + ",\n".join(tables) + "}\n").encode("utf-8", "replace")
