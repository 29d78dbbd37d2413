"""Yarns, finishes and looms that a sheet names: those the journal has, and records for those that it has not."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from journal_tools.editing.starting import NO_RECORD
from journal_tools.exchange.new_record import NewRecord, as_notes
from journal_tools.exchange.sheet_rows import SheetRow
from journal_tools.problems import Problem
from journal_tools.quantities import Units, Unreadable, parse_yarn_number
from journal_tools.records import KINDS, Journal
from journal_tools.records.front_matter import read_front_matter
from journal_tools.records.model import read_model
from journal_tools.records.readers import slug
from journal_tools.records.spot import Reading, Spot
from journal_tools.records.yarns_used import find_yarn

LONGEST_NAME = 60
_SPELLED = str.maketrans({"ß": "ss", "æ": "ae", "ø": "o", "œ": "oe", "ð": "d", "þ": "th", "ł": "l", "đ": "d"})
_FULLED = re.compile(r"\b(?:full(?:ed|ing)|felt(?:ed|ing)?|waulk(?:ed|ing))\b", re.I)
_FACTS = ("fibre", "number", "yield")
_FACT_WORDS = {"fibre": "fibre", "number": "yarn number", "yield": "yield"}


def record_name(words: str, otherwise: str = "") -> str:
    """Words as the name of a record: letters without their accents, small, hyphens between.

    otherwise: the name for words that have no letter of this alphabet.
    """
    plain = unicodedata.normalize("NFKD", words.lower().translate(_SPELLED))
    name = slug("".join(char for char in plain if not unicodedata.combining(char)))
    if len(name) > LONGEST_NAME:
        name = name[: LONGEST_NAME + 1].rpartition("-")[0] or name[:LONGEST_NAME]
    name = name or otherwise
    return f"{name}-1" if name in NO_RECORD else name


@dataclass
class _Thing:
    """A thing that the sheet names and the journal has no record of: its title, its rows, what they say of it."""

    title: str
    rows: list[SheetRow] = field(default_factory=list)
    facts: dict[str, dict[str, SheetRow]] = field(default_factory=dict)


@dataclass
class Shelf:
    """What the rows of a sheet name. file: the sheet's. new: by kind, things without a record, by name."""

    journal: Journal
    units: Units
    file: str
    new: dict[str, dict[str, _Thing]] = field(default_factory=lambda: {"yarns": {}, "finishes": {}, "looms": {}})

    def yarn(self, row: SheetRow, meaning: str = "yarn") -> str:
        """The yarn of a row as a warp says it: its name, with the row's colour; "" where the row has none."""
        said = row.cells.get(meaning, "")
        weft = "weft " if meaning == "weft yarn" else ""
        facts = {fact: row.cells.get(f"{weft}{_FACT_WORDS[fact]}", "") for fact in _FACTS}
        if not said:
            said = ", ".join(facts[fact] for fact in ("fibre", "number", "yield") if facts[fact])
            if not said:
                return ""
            right = f'The row names no yarn; it is called "{said}" after what it is.'
            row.ask(self.file, meaning, right, "no-name")
        name, colour = self._known_yarn(said)
        if not name:
            name = record_name(said, f"yarn-row-{row.number}")
            thing = self._new("yarns", name, said, row)
            for fact, text in facts.items():
                if text:
                    thing.facts.setdefault(fact, {}).setdefault(text, row)
        if not weft and (own := row.cells.get("colour")):
            colour = f"{colour} {own}".strip()
        return f"{name} {colour}".strip()

    def _known_yarn(self, said: str) -> tuple[str, str]:
        record = self.journal.yarns_by_any_name.get(record_name(said))
        if record is not None:
            return record.name, ""
        name, colour, record = find_yarn(self.journal, said)
        return (name, colour) if record is not None else ("", "")

    def named(self, kind: str, row: SheetRow, meaning: str) -> str:
        """The name of a finish or a loom of a row; "" where the row has none."""
        said = row.cells.get(meaning, "")
        if not said:
            return ""
        name = record_name(said, f"{meaning}-row-{row.number}")
        for record in self.journal.kind(kind).values():
            if name in (record.name, record_name(record.title or ""), *record.was):
                return record.name
        self._new(kind, name, said, row)
        return name

    def _new(self, kind: str, name: str, title: str, row: SheetRow) -> _Thing:
        thing = self.new[kind].setdefault(name, _Thing(title))
        thing.rows.append(row)
        return thing

    def records(self) -> Iterator[NewRecord]:
        """A record for everything that has none, with what the sheet knows of it."""
        for kind, things in self.new.items():
            for name, thing in things.items():
                rows = tuple(row.number for row in thing.rows)
                fields, notes = self._yarn_fields(thing) if kind == "yarns" else ({"title": thing.title}, [])
                if kind == "finishes" and _FULLED.search(thing.title):
                    fields["fulling"] = "yes"
                    right = "It is taken for fulled on purpose, so that its loss counts as the weaver's decision."
                    thing.rows[0].ask(self.file, "finish", right, "fulled")
                yield NewRecord(kind, name, fields, as_notes("\n\n".join(notes)), rows)

    def _yarn_fields(self, thing: _Thing) -> tuple[dict[str, str], list[str]]:
        fields, notes = {"title": thing.title}, []
        for fact, answers in thing.facts.items():
            (first, row), *others = answers.items()
            text = fibre_words(first) if fact == "fibre" else first
            trial = {**fields, fact: text}
            wrong = faults_in("yarns", trial, self.units) if fact == "fibre" else self._number_fault(fact, thing, trial)
            if wrong:
                right = f"{wrong} As it stands, it is kept in the notes of the yarn."
                row.ask(self.file, _FACT_WORDS[fact], right, "unreadable")
                notes.append(f"{_FACT_WORDS[fact]}: {first}")
            else:
                fields[fact] = text
            for other, differing in others:
                right = f'Row {row.number} says "{first}" of the same yarn, which is written; this goes into its notes.'
                differing.ask(self.file, _FACT_WORDS[fact], right, "said-differently")
                notes.append(f"{_FACT_WORDS[fact]}, in row {differing.number}: {other}")
        if "number" not in fields and re.search(r"\d", thing.title):
            fields |= self._number_in(thing.title, fields.get("fibre"))
        order = ("title", "fibre", "number", "yield")
        return {key: fields[key] for key in order if key in fields}, notes

    def _number_fault(self, fact: str, thing: _Thing, trial: Mapping[str, str]) -> str:
        if fact == "number" and "yield" in thing.facts:
            return ""  # its length to the weight says more than any label, and settles which one is meant
        return faults_in("yarns", trial, self.units, counted=True)

    def _number_in(self, title: str, fibre: str | None) -> dict[str, str]:
        """The yarn number that a yarn's own name is, such as 8/2 cotton; nothing where it could be several."""
        try:
            parse_yarn_number(title, _main_fibre(fibre), self.units)
        except Unreadable:
            return {}
        return {"number": title}


def _main_fibre(fibre: str | None) -> str | None:
    words = re.findall(r"[a-z]+", (fibre or "").lower())
    if {"cotton", "linen"} <= set(words):
        return "cottolin"
    return words[0] if words else None


def fibre_words(text: str) -> str:
    """Fibres as a record lists them: "50/50 cotton/linen" is 50 % cotton, 50 % linen."""
    tidy = re.sub(r"(\d)\s*%\s*", r"\1 % ", " ".join(text.split()))
    halves = re.fullmatch(r"(\d+)\s*/\s*(\d+)\s+([a-z ]+?)\s*(?:/|&|,| and )\s*([a-z ]+)", tidy, re.I)
    if halves:
        return f"{halves[1]} % {halves[3]}, {halves[2]} % {halves[4]}"
    tidy = re.sub(r"\s*[/;&+,]\s*(?!\d)|\s*[/;&+]\s*|\s*,\s*(?=\d+ %)", ", ", tidy)
    return re.sub(r"(?<=[a-z])\s+(?=\d+ % )", ", ", tidy, flags=re.I)


def faults_in(kind: str, fields: Mapping[str, str], units: Units, *, counted: bool = False) -> str:
    """What is wrong with a record of these fields, "" when nothing is. counted: whether its number counts too."""
    front = read_front_matter(NewRecord(kind, "trial", fields).text(), "trial.md")
    reading = Reading("trial.md", 1, units)
    problems: list[Problem] = [problem for problem in front.problems if problem.is_fault]
    if front.node is not None:
        read_model(Spot(front.node, reading), KINDS[kind])
        problems += reading.problems
    if not problems and counted and "number" in fields:
        try:
            parse_yarn_number(fields["number"], _main_fibre(fields.get("fibre")), units)
        except Unreadable as unreadable:
            return unreadable.right
    return problems[0].told if problems else ""
