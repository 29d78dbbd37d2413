"""The files of an export: what they hold, what they must not hold, and that they say what they are."""

from __future__ import annotations

import csv
import io
import json
import os
import re
import subprocess
import sys
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

import pytest

from journal_tools.exchange.downloads import TABLES, downloads
from journal_tools.records import KINDS, Warp, public, read_journal
from tests.exchange.trips import ledgers, tables
from tests.house import PROJECT
from tests.ledger.desk import JOURNAL
from tests.records.canaries import every_word, free, full_of_canaries, word
from tests.records.test_public import SHARED, UNUSED
from tests.site.canaries import plant

OPENED = word(Warp, "opens")
"""It may be shared that a cloth opens, and not in the weaver's words."""


def wrong(value: Any, schema: Mapping[str, Any], root: Mapping[str, Any], where: str = "") -> Iterator[str]:
    """Where a value is not as its schema says: the words of JSON Schema that the schemas here use, from memory."""
    if "$ref" in schema:
        yield from wrong(value, root["$defs"][schema["$ref"].rpartition("/")[2]], root, where)
    if "anyOf" in schema and all(list(wrong(value, each, root, where)) for each in schema["anyOf"]):
        yield f"{where} is none of those"
    if "enum" in schema and value not in schema["enum"]:
        yield f"{where} is {value}"
    types = {"object": dict, "array": list, "string": str, "boolean": bool, "null": type(None)}
    types |= {"integer": int, "number": (int, float)}  # type: ignore[dict-item]
    wanted = schema.get("type", [])
    names = [wanted] if isinstance(wanted, str) else wanted
    if names and not any(isinstance(value, types[name]) for name in names):
        yield f"{where} is no {names}"
    if isinstance(value, list):
        for number, item in enumerate(value):
            yield from wrong(item, schema.get("items", {}), root, f"{where}/{number}")
    if isinstance(value, dict):
        yield from (f"{where}/{key} is missing" for key in schema.get("required", ()) if key not in value)
        for key, below in value.items():
            named = schema.get("properties", {})
            patterns = [each for name, each in schema.get("patternProperties", {}).items() if re.search(name, key)]
            found = named.get(key) or next(iter(patterns), None) or schema.get("additionalProperties", {})
            if found is False:
                yield f"{where}/{key} is not known"
            else:
                yield from wrong(below, found, root, f"{where}/{key}")


@pytest.fixture(scope="module")
def demo() -> dict[str, bytes]:
    """The files of the demonstration journal."""
    return downloads(read_journal(PROJECT / "entries"))


def rows_of(files: Mapping[str, bytes], name: str) -> list[dict[str, str]]:
    """The rows of a CSV file."""
    return list(csv.DictReader(io.StringIO(files[name].decode("utf-8-sig"), newline="")))


class TestTheTables:
    def test_one_row_a_piece_and_step(self, demo: dict[str, bytes]) -> None:
        """steps.csv has a line for every loss of every piece in the ledgers, in their order."""
        journal = read_journal(PROJECT / "entries")
        told = [
            (row.warp, row.stretch, row.piece, row.direction, row.first.key, row.last.key)
            for _, ledger in sorted(ledgers(journal).items())
            for row in ledger.rows
        ]
        keys = ("warp", "stretch", "piece", "direction", "from", "to")

        assert told == [tuple(row[key] for key in keys) for row in rows_of(demo, "steps.csv")]

    def test_six_lines(self) -> None:
        """20 1/4 in in the reed and 17 7/8 in washed are 514.35 and 454.025 mm, a loss of 0.117284."""
        told = tables(read_journal(JOURNAL))
        (step,) = [
            row
            for row in told["steps"]
            if (row["warp"], row["direction"], row["from"], row["to"])
            == ("tideline-towels", "width", "in_reed", "washed")
        ]
        sizes = {
            row["state"]: row["measured_mm"]
            for row in told["sizes"]
            if (row["warp"], row["direction"]) == ("tideline-towels", "width")
        }

        assert round(1 - 17.875 / 20.25, 6) == step["loss_fraction"]
        assert ["off_loom"] == step["skipped"].split("; ")
        assert {"in_reed": 514.35, "on_loom": round(19.375 * 25.4, 4), "washed": 454.025} == sizes

    def test_csv_and_json_are_the_same(self, demo: dict[str, bytes]) -> None:
        """Every cell of the CSV files says what stands in JSON."""
        told = json.loads(demo["tables.json"])
        for name, objects in told.items():
            rows = rows_of(demo, f"{name}.csv")
            assert len(objects) == len(rows)
            for row, each in zip(rows, objects, strict=True):
                shown = {key: _as_cell(value) for key, value in each.items()}
                assert shown == {key: cell.removeprefix("'") for key, cell in row.items()}

    def test_tables_go_together(self, demo: dict[str, bytes]) -> None:
        """Every warp that a table names has its line in warps.csv."""
        known = {row["warp"] for row in rows_of(demo, "warps.csv")}
        named = {row["warp"] for name in demo if name.endswith(".csv") for row in rows_of(demo, name) if "warp" in row}

        assert known == named

    def test_units_stand_in_the_names(self) -> None:
        """Every column of figures has its unit in its name, but for counts of years, ends, picks and plain numbers."""
        units = re.compile(r"_(mm|g|per_cm|per_lb|per_kg|per_m2|fraction)$|^(tex|log_ratio)$")
        figures = [c.name for table in TABLES for c in table.columns if c.kind == "figure"]

        assert [] == [name for name in figures if not units.search(name)]

    def test_words_that_look_like_formulas(self, tmp_path: Path) -> None:
        """A title that a spreadsheet would run has an apostrophe before it in CSV, and none in JSON."""
        (tmp_path / "warps").mkdir()
        (tmp_path / "warps" / "cloth.md").write_text('---\ntitle: "=cmd()"\n---\n', encoding="utf-8")
        files = downloads(read_journal(tmp_path))

        assert "'=cmd()" == rows_of(files, "warps.csv")[0]["title"]
        assert "=cmd()" == json.loads(files["tables.json"])["warps"][0]["title"]


def _as_cell(value: Any) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    return "" if value is None else str(value)


class TestTheSchemas:
    @pytest.mark.parametrize("name", ["tables", "journal"])
    def test_the_file_is_as_its_schema_says(self, demo: dict[str, bytes], name: str) -> None:
        """Everything in the JSON files is of the kind that the schema beside them states, and nothing more."""
        schema = json.loads(demo[f"{name}.schema.json"])

        assert [] == list(wrong(json.loads(demo[f"{name}.json"]), schema, schema))[:5]

    def test_a_wrong_file_would_be_seen(self, demo: dict[str, bytes]) -> None:
        """A column too many, a figure that is a word and a record without notes are found."""
        told, schema = json.loads(demo["tables.json"]), json.loads(demo["tables.schema.json"])
        told["steps"][0] |= {"loss_fraction": "much", "more": 1}
        whole, schema_of_whole = json.loads(demo["journal.json"]), json.loads(demo["journal.schema.json"])
        del whole["warps"]["estuary-towels"]["notes"]
        whole["warps"]["tideline-towels"]["fields"]["colour"] = "blue"

        assert ["/steps/0/loss_fraction is no ['number', 'null']", "/steps/0/more is not known"] == list(
            wrong(told, schema, schema)
        )
        assert ["/warps/estuary-towels/notes is missing", "/warps/tideline-towels/fields/colour is not known"] == list(
            wrong(whole, schema_of_whole, schema_of_whole)
        )

    def test_every_column_is_explained(self, demo: dict[str, bytes]) -> None:
        """The page of columns names every table, every column and every other file."""
        page = demo["README.txt"].decode()

        for table in TABLES:
            assert f"\n{table.name}.csv: a row is {table.one}\n" in page
            assert [] == [each.name for each in table.columns if f"\n  {each.name} " not in page]
        assert [] == [name for name in demo if not name.endswith(".csv") and name not in page]


class TestForOthers:
    def test_no_private_word(self, tmp_path: Path) -> None:
        """Of a journal with a word of its own in every field, no file for others holds one that may not be shared."""
        files = downloads(public(full_of_canaries(tmp_path)))
        said = set(re.findall(r"canary-[a-z-]+[a-z]", b"\n".join(files.values()).decode()))
        private = {each for each, shared in every_word().items() if not shared} | {UNUSED, OPENED}
        private |= {free(what) for what in ("alias", "band", "line", "minutes", "photo", "caption")}

        assert len(private) > 40
        assert set() == said & private

    def test_no_private_figure(self, tmp_path: Path) -> None:
        """Of a journal with a figure of its own in every private field, and warps that are not shared, none leaves."""
        canaries = plant(tmp_path).canaries
        read = read_journal(tmp_path)
        whole, shared = (b"\n".join(downloads(each).values()).decode().lower() for each in (read, public(read)))
        private = [each.needle for each in canaries if not each.public]

        assert len(private) > 500
        assert [] == [needle for needle in private if needle in shared]
        assert len([needle for needle in private if needle in whole]) > 400

    def test_the_canaries_would_be_seen(self, tmp_path: Path) -> None:
        """The files for oneself hold every such word, so nothing is lost on the way out."""
        files = downloads(full_of_canaries(tmp_path))
        said = set(re.findall(r"canary-[a-z-]+[a-z]", b"\n".join(files.values()).decode()))

        assert set() == {each for each in every_word() if each not in said and "settings" not in each}

    def test_only_what_is_shared(self) -> None:
        """Of a journal for others every field that leaves is one of the allow-list, in the hand-written list of it."""
        shared = json.loads(downloads(public(read_journal(PROJECT / "entries")))["journal.json"])
        for kind, model in KINDS.items():
            allowed = set(SHARED[model].split()) | {"photos", "learn", "accepted"}
            keys = {re.sub(r" \d+$", "", key) for record in shared[kind].values() for key in record["fields"]}
            assert set() == keys - allowed
            assert {""} >= {record["notes"] for record in shared[kind].values()}


def test_the_same_bytes() -> None:
    """The same journal gives the same files, whatever order a computer keeps names in."""
    ask = (
        "import hashlib, pathlib; from journal_tools.records import read_journal;"
        "from journal_tools.exchange.downloads import downloads;"
        f"files = downloads(read_journal(pathlib.Path({str(JOURNAL)!r})));"
        "print({name: hashlib.sha256(data).hexdigest() for name, data in files.items()})"
    )
    said = {
        subprocess.run(
            [sys.executable, "-c", ask],
            cwd=PROJECT,
            env=os.environ | {"PYTHONHASHSEED": seed},
            capture_output=True,
            text=True,
            check=True,
        ).stdout
        for seed in ("1", "2")
    }

    assert 1 == len(said)
