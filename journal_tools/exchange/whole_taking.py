"""A whole journal taken into another: every record that is not there yet, as it was."""

from __future__ import annotations

from collections.abc import Container, Mapping, Sequence

from journal_tools.editing.change import Change, Value
from journal_tools.editing.splice import SpliceRefused, splice
from journal_tools.exchange.new_record import NewRecord, faults_of, is_the_same, staged, standing
from journal_tools.exchange.taking import Outcome, Taken
from journal_tools.exchange.whole import records_in, settings_differ
from journal_tools.problems import Problem, Severity
from journal_tools.records import KINDS, Journal
from journal_tools.records.front_matter import read_file


def take_whole(data: bytes, file: str, journal: Journal, *, keep_unread: bool = False) -> Taken:
    """What a journal as JSON comes to in this one. Raises NotWhole for a file that is none. Writes nothing.

    keep_unread: a field that cannot be read is put into the record's notes as it stands, and asked about.
    """
    records, problems = records_in(data, file)
    settings = [record for record in records if not record.kind]
    others = [record for record in records if record.kind]
    added = _added(settings, journal)
    told = _settings(settings, journal, {change.path[0] for change in added})
    if told:
        return Taken(problems=(*problems, *told))
    text = None
    if added:
        try:
            text = splice(read_file(journal.folder / "journal.md", "journal.md").text, added, "journal.md")
        except SpliceRefused as refused:
            return Taken(problems=(*problems, refused.problem))
    new_settings = [record for record in settings if not (journal.folder / record.file).exists()]
    kept: list[NewRecord] = []
    outcomes: dict[str, Outcome] = {}
    for record in [*new_settings, *others]:
        stands = standing(journal, record) if record.kind else None
        if stands is not None and is_the_same(journal, record):
            outcomes[record.file] = Outcome(0, "there", record.file)
        elif stands is not None:
            outcomes[record.file] = Outcome(0, "skipped", record.file, problems=(stands,))
        else:
            kept.append(record)
    asked: dict[str, list[Problem]] = {}
    wrong = _wrong(kept, journal, text)
    if keep_unread and wrong:
        kept = [_without(record, wrong[record.file], asked) if record.file in wrong else record for record in kept]
        wrong = _wrong(kept, journal, text)
    for record in kept:
        if record.file in wrong:
            outcomes[record.file] = Outcome(0, "skipped", record.file, problems=tuple(wrong[record.file]))
        else:
            outcomes[record.file] = Outcome(0, "new", record.file, problems=tuple(asked.get(record.file, ())))
    written = tuple(record for record in kept if record.file not in wrong)
    order = [record.file for record in [*new_settings, *others]]
    return Taken(written, tuple(outcomes[name] for name in order), problems, added)


def _is_new(journal: Journal) -> bool:
    """Whether the journal has no record of any kind, so that its settings matter to nothing yet."""
    return not any(journal.kind(kind) for kind in KINDS)


def _added(settings: Sequence[NewRecord], journal: Journal) -> tuple[Change, ...]:
    """What a new journal's own journal.md does not say, and the one that was exported does."""
    if not settings or not _is_new(journal) or not (journal.folder / "journal.md").exists():
        return ()
    fields = settings[0].fields
    return tuple(Change((key,), value) for key, value in fields.items() if key not in journal.settings.lines)


def _settings(settings: Sequence[NewRecord], journal: Journal, added: Container[object]) -> tuple[Problem, ...]:
    """A fault for every setting by which the figures would mean something else here, with the line to write."""
    fields: Mapping[str, Value] = settings[0].fields if settings else {}
    if not (journal.folder / "journal.md").exists() and _is_new(journal):
        return ()
    found = []
    for key, here, there in settings_differ(journal.settings, fields):
        if key in added:
            continue
        line = f"{key}: {there}" if there else ""
        what = f"Put `{line}` into journal.md" if line else f"Take `{key}:` out of journal.md"
        right = (
            f"These records were kept where it is {there or 'not said'}, and here it is {here or 'not said'}, so their"
            f" figures would mean something else. {what}, or take them into a new journal."
        )
        found.append(Problem("journal.md", 0, key, here, right, Severity.FAULT, "settings", line))
    return tuple(found)


def _wrong(records: Sequence[NewRecord], journal: Journal, text: str | None) -> dict[str, list[Problem]]:
    """What is wrong with each record, by its file; records without a fault are not among them."""
    found = {record.file: faults for record in records if (faults := faults_of(record))}
    for problem in staged(journal, [record for record in records if record.file not in found], text).problems:
        if problem.is_fault:
            found.setdefault(problem.file, []).append(problem)
    return found


def _without(record: NewRecord, faults: Sequence[Problem], asked: dict[str, list[Problem]]) -> NewRecord:
    """The record without the fields that cannot be read, which go into its notes."""
    keys = dict.fromkeys(problem.field.split(": ")[0] for problem in faults)
    keys = dict.fromkeys(key for key in keys if key in record.fields)
    if not keys:
        return record
    told = [Problem(record.file, 0, p.field, p.read, f"{p.told} It is kept in the notes.", Severity.QUESTION, p.slug)
            for p in faults]  # fmt: skip
    asked[record.file] = told
    words = [line.rstrip() for key in keys for line in _shown(key, record.fields[key])]
    fields = {key: value for key, value in record.fields.items() if key not in keys}
    return NewRecord(record.kind, record.name, fields, record.notes).with_notes(["\n".join(words)])


def _shown(key: str, value: Value) -> list[str]:
    """A field as it would be typed, set in so that notes show it as it stands."""
    text = NewRecord("", "", {key: value}).text()
    return [f"    {line}" for line in text.splitlines()[1:-1]]
