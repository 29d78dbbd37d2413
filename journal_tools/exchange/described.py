"""What an export holds, said for programs (JSON Schema, draft 2020-12) and for people (a page of columns)."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from textwrap import wrap
from typing import Any

from journal_tools.editing.change import Value, tree_of
from journal_tools.exchange.table import KINDS as COLUMN_KINDS
from journal_tools.exchange.table import Column, Table
from journal_tools.exchange.whole import FORMAT
from journal_tools.records import KINDS, Settings
from journal_tools.records.front_matter import read_front_matter
from journal_tools.records.model import Model, words_of

DIALECT = "https://json-schema.org/draft/2020-12/schema"

ABOUT = """\
A journal of handweaving, as tables and as one file

What is here
  *.csv               one table each, described below: UTF-8 with its mark, commas, CRLF line ends (RFC 4180)
  tables.json         the same tables as JSON: for each, its rows, every row keys with values; not on a site
  tables.schema.json  what stands in tables.json, as JSON Schema
  journal.json        every record's fields as they were typed, and its notes; `tenterhook import journal.json`
                      takes them into a journal again
  journal.schema.json what stands in journal.json, as JSON Schema
  README.txt          this page

How to read it
  Units stand in the names of the columns: _mm, _g, _per_cm, _fraction (0.1 is ten per cent). What nobody measured
  or wrote is empty in CSV; in JSON, null for a figure and an empty text for words. Nothing is filled in.
  Every uncertainty is k = 2. A loss is 1 - later/earlier. The tables go together by their column `warp`, and by
  `stretch` and `piece` within it.
  yes and no stand in columns of yes or no.
  A cell of words that would be a formula to a spreadsheet (it begins with = + - @ or a tab) has an apostrophe before
  it, and so has one that begins with an apostrophe: take the first apostrophe away to have the words as they were.
  Figures are bare. JSON holds all words as they are.
  Photographs are not here: they lie in the journal's own folders, beside its records.
"""


def page_of_columns(tables: Iterable[Table]) -> str:
    """The page for people: what is in the files, and every column of every table."""
    parts = [ABOUT]
    for table in tables:
        parts.append(f"{table.name}.csv: a row is {table.one}\n" + "".join(_line(column) for column in table.columns))
    return "\n".join(parts)


def _line(column: Column) -> str:
    first, *rest = wrap(f"{column.kind}. {column.meaning}", 86) or [""]
    return f"  {column.name:<24}{first}\n" + "".join(f"{'':<26}{line}\n" for line in rest)


def schema_of_tables(tables: Iterable[Table]) -> bytes:
    """The schema of tables.json."""
    return _json(
        {
            "$schema": DIALECT,
            "title": "A journal's tables",
            "type": "object",
            "additionalProperties": False,
            "properties": {table.name: _rows(table) for table in tables},
        }
    )


def _rows(table: Table) -> Mapping[str, Any]:
    row = {
        "type": "object",
        "additionalProperties": False,
        "required": list(table.headings),
        "properties": {
            column.name: {**COLUMN_KINDS[column.kind], "description": column.meaning} for column in table.columns
        },
    }
    return {"type": "array", "description": f"A row is {table.one}.", "items": row}


def schema_of_whole() -> bytes:
    """The schema of journal.json: every field of every kind, as text, a list or keys with values."""
    value = {"$ref": "#/$defs/value"}
    return _json(
        {
            "$schema": DIALECT,
            "title": "A whole journal",
            "type": "object",
            "required": ["format", "journal", *KINDS],
            "additionalProperties": False,
            "properties": {
                "format": {"enum": [FORMAT]},
                "journal": _record(Settings),
                **{
                    kind: {
                        "type": "object",
                        "propertyNames": {"pattern": "^[a-z0-9]+(-[a-z0-9]+)*$"},
                        "additionalProperties": _record(model),
                    }
                    for kind, model in KINDS.items()
                },
            },
            "$defs": {
                "value": {
                    "description": "A value as typed, such as 17 7/8 x 30 1/8, or a list or keys with values below.",
                    "anyOf": [
                        {"type": "string"},
                        {"type": "array", "items": value},
                        {"type": "object", "additionalProperties": value},
                    ],
                }
            },
        }
    )


def _record(model: type[Model]) -> Mapping[str, Any]:
    fields: dict[str, Any] = {}
    numbered: dict[str, Any] = {}
    for key, (_, words) in words_of(model).items():
        said: dict[str, Any] = {"description": words.meaning, "$ref": "#/$defs/value"}
        if words.example:
            said["examples"] = [example_of(key, words.example)]
        fields[key] = said
        if words.numbered:
            numbered[f"^{key} [0-9]{{1,2}}$"] = said
    described: dict[str, Any] = {"type": "object", "additionalProperties": False, "properties": fields}
    if numbered:
        described["patternProperties"] = numbered
    return {
        "type": "object",
        "required": ["fields", "notes"],
        "additionalProperties": False,
        "properties": {
            "fields": described,
            "notes": {"type": "string", "description": "All that stands below the record's fields, Markdown."},
        },
    }


def _json(value: object) -> bytes:
    return (json.dumps(value, indent=1, ensure_ascii=False) + "\n").encode("utf-8")


def example_of(key: str, example: str) -> Value:
    """An example as a value: keys or a list where it stands below its key."""
    if not example.startswith("\n"):
        return example
    read = tree_of(read_front_matter(f"---\n{key}:{example}\n---\n", "example").node)
    assert isinstance(read, Mapping)
    return read[key]
