"""The whole journal as one JSON file: every record's fields as typed, and its notes. Going in again it is the same."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from typing import Any

from journal_tools.editing.change import Value
from journal_tools.editing.starting import NO_RECORD
from journal_tools.exchange.new_record import NewRecord
from journal_tools.exchange.typed import fields_of
from journal_tools.problems import Problem, Severity, nearest
from journal_tools.records import KINDS, Journal, Record, Settings
from journal_tools.records.model import words_of
from journal_tools.records.readers import NAME

FORMAT = "tenterhook journal 1"
"""Says what the file is, and in which form."""

LARGEST = 64 * 1024 * 1024
"""Bytes of a file that are taken in."""

DEEPEST = 20
"""How deep fields may stand in one another."""

MEANS = ("length", "weight", "density", "comma", "tape")
"""Settings that a figure's meaning hangs on, or how well it is known."""


def whole_json(journal: Journal, typed: Mapping[str, Value] | None = None) -> bytes:
    """The journal as JSON, one record a line, always the same bytes for the same journal.

    typed: fields by file, for records that could not all be read; they stand for what was read.
    """
    typed = typed or {}

    def record(of: Record | Settings) -> str:
        return _one_line({"fields": typed.get(of.file) or fields_of(of), "notes": of.notes})

    parts = [f'"format": {_one_line(FORMAT)}', f'"journal": {record(journal.settings)}']
    for kind in KINDS:
        records = (f"\n{_one_line(name)}: {record(each)}" for name, each in sorted(journal.kind(kind).items()))
        parts.append(f'"{kind}": {{' + ",".join(records) + "}")
    return ("{" + ",\n".join(parts) + "}\n").encode("utf-8", "replace")


def _one_line(value: object) -> str:
    return json.dumps(value, ensure_ascii=False)


class NotWhole(Exception):
    """A file that is no journal as JSON; problem says why."""

    def __init__(self, problem: Problem) -> None:
        super().__init__(problem.sentence())
        self.problem = problem


def records_in(data: bytes, file: str) -> tuple[tuple[NewRecord, ...], tuple[Problem, ...]]:
    """The records of a journal as JSON, its settings first, and the problems of those that are none.

    Raises NotWhole for a file that is no such journal at all.
    """
    if len(data) > LARGEST:
        raise NotWhole(_problem(file, "", "", f"The file is larger than {LARGEST // 1024**2} MB."))
    try:
        text = data.decode("utf-8-sig")
        read = json.loads(text, parse_constant=str, parse_float=str, parse_int=str, object_pairs_hook=_each_once)
    except UnicodeDecodeError:
        raise NotWhole(_problem(file, "", "", "The file is not UTF-8, which JSON always is.")) from None
    except _Twice as twice:
        right = "This key stands twice in one place, and only one of the two can be meant."
        raise NotWhole(_problem(file, "", twice.key, right)) from None
    except (ValueError, RecursionError) as error:
        line = getattr(error, "lineno", 0)
        where = f" It stops making sense on line {line}." if line else ""
        raise NotWhole(_problem(file, "", "", f"The file is no JSON.{where}", line=line)) from None
    said = read.get("format") if isinstance(read, dict) else None
    if said != FORMAT:
        right = f'A journal as JSON begins with "format": "{FORMAT}", as `tenterhook export` writes it.'
        raise NotWhole(_problem(file, "format", str(said or "")[:80], right))
    problems: list[Problem] = []
    records = tuple(_records(read, file, problems))
    return records, tuple(problems)


class _Twice(Exception):
    def __init__(self, key: str) -> None:
        super().__init__(key)
        self.key = key


def _each_once(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    """The keys and values of one object; a key that comes twice would lose what stood under the first."""
    found = dict(pairs)
    if len(found) < len(pairs):
        keys = [key for key, _ in pairs]
        raise _Twice(next(key for key in keys if keys.count(key) > 1))
    return found


def _records(read: Mapping[str, Any], file: str, problems: list[Problem]) -> Iterator[NewRecord]:
    for kind in read:
        if kind not in ("format", "journal", *KINDS):
            near = nearest(kind, KINDS)
            problems.append(_problem(file, kind, kind, "No kind of record has this name." + _meant(near)))
    if (settings := _record("", "journal", read.get("journal", {}), file, problems)) is not None:
        yield settings
    for kind in ("yarns", *(kind for kind in KINDS if kind != "yarns")):
        below = read.get(kind, {})
        if not isinstance(below, dict):
            problems.append(_problem(file, kind, str(below)[:80], "Here stand records by their names."))
            continue
        for name, record in below.items():
            if not NAME.fullmatch(name) or name in NO_RECORD:
                right = "The name of a record is small letters, digits and hyphens, and not index or readme."
                problems.append(_problem(file, kind, name, right))
            elif (made := _record(kind, name, record, file, problems)) is not None:
                yield made


def _record(kind: str, name: str, record: Any, file: str, problems: list[Problem]) -> NewRecord | None:
    where = f"{kind}: {name}" if kind else name
    fields = record.get("fields", {}) if isinstance(record, dict) else None
    notes = record.get("notes", "") if isinstance(record, dict) else None
    if not isinstance(fields, dict) or not isinstance(notes, str):
        right = 'A record has "fields", keys with values, and "notes", a text.'
        problems.append(_problem(file, where, str(record)[:80], right))
        return None
    odd = _odd(fields)
    if odd:
        problems.append(_problem(file, where, odd, "A value is a text, a list of values, or keys with values."))
        return None
    return NewRecord(kind, name, fields, notes)


def _odd(value: Any, deep: int = 0) -> str:
    """What in a value cannot stand in a record, "" when all can. Numbers have become texts by now."""
    if isinstance(value, str):
        return ""
    if deep > DEEPEST:
        return "fields that stand in one another without end"
    if isinstance(value, dict):
        return next((odd for below in value.values() if (odd := _odd(below, deep + 1))), "")
    if isinstance(value, list):
        return next((odd for below in value if (odd := _odd(below, deep + 1))), "")
    return str(value)


def _meant(near: str | None) -> str:
    return f" Did you mean {near}?" if near else ""


def _problem(file: str, field: str, read: str, right: str, line: int = 0) -> Problem:
    return Problem(file, line, field, read, right, Severity.FAULT, "not-whole")


def settings_differ(ours: Settings, theirs: Mapping[str, Value]) -> list[tuple[str, str, str]]:
    """The settings by which the same figures would mean something else here: key, here, there."""
    known = words_of(Settings)
    usual = {"density": "in" if theirs.get("length", "in") == "in" else "cm", "length": "in", "weight": "g"}
    found = []
    for key in MEANS:
        value = getattr(ours, known[key][0])
        here = ours.units.density if key == "density" else "" if value is None else getattr(value, "text", value)
        there = str(theirs.get(key, usual.get(key, "")))
        if here != there:
            found.append((key, str(here), there))
    return found
