"""A record that does not exist yet: written as text, read again by the journal's own reader, then put on disk.

Nothing that stands in the journal is ever written over.
"""

from __future__ import annotations

import contextlib
import dataclasses
import re
import tempfile
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from journal_tools.editing.block_form import Habit, field_lines
from journal_tools.editing.change import Value, squeezed, tree_of
from journal_tools.problems import Problem
from journal_tools.records import KINDS, Journal, read_journal
from journal_tools.records.front_matter import read_front_matter

_PLAIN_LINES = re.compile(r"[^\s#\x00-\x1f\x7f-\x9f][^\x00-\x09\x0b-\x1f\x7f-\x9f\u2028\u2029\ufeff]*[^\s\x00-\x1f]")
"""A text of several lines that can stand below `|-` as it is."""


@dataclass(frozen=True)
class NewRecord:
    """One record to be written. kind: its folder, "" for journal.md. notes: all below the second `---`, as it is.

    source: the rows of the sheet that it is made of, in order; none where it is no sheet's.
    """

    kind: str
    name: str
    fields: Mapping[str, Value]
    notes: str = ""
    source: tuple[int, ...] = ()

    @property
    def file(self) -> str:
        """Its path inside the journal."""
        return f"{self.kind}/{self.name}.md" if self.kind else f"{self.name}.md"

    def text(self) -> str:
        """The record as it will stand in its file: one value a line, quoted where it must be."""
        lines = [line for key, value in self.fields.items() for line in _field(key, value)]
        return "---\n" + "".join(f"{line}\n" for line in lines) + "---\n" + self.notes

    def with_notes(self, words: Iterable[str]) -> NewRecord:
        """The same with paragraphs more in its notes."""
        said = [self.notes.strip("\n"), *words]
        return dataclasses.replace(self, notes=as_notes("\n\n".join(part for part in said if part)))


def as_notes(words: str) -> str:
    """Words as they stand below a record's fields."""
    return f"\n{words}\n" if words else ""


def _field(key: str, value: Value) -> list[str]:
    if isinstance(value, str) and "\n" in value and _PLAIN_LINES.fullmatch(value):
        lines = value.split("\n")
        if not any(line != line.rstrip() for line in lines):
            return [f"{field_lines(key, 'x', 0, Habit())[0][:-1]}|-", *(f"  {line}" if line else "" for line in lines)]
    return field_lines(key, value, 0, Habit())


def squeezed_tree(value: Value) -> Value:
    """A value as it is read back: blanks in keys count once."""
    if isinstance(value, str):
        return value
    if isinstance(value, Mapping):
        return {squeezed(key): squeezed_tree(below) for key, below in value.items()}
    return [squeezed_tree(item) for item in value]


def faults_of(record: NewRecord) -> list[Problem]:
    """What is wrong with the record's text, before any of its values is read; nothing, when it reads back the same."""
    try:
        text = record.text()
        text.encode("utf-8")
    except UnicodeEncodeError:
        right = "A letter in it is only half there, so the record cannot be written."
        return [Problem(record.file, 0, "", record.name, right, slug="characters")]
    read = read_front_matter(text, record.file)
    faults = [problem for problem in read.problems if problem.is_fault]
    if not faults and (tree_of(read.node) != squeezed_tree(record.fields) or read.notes != record.notes):
        right = "This cannot be written so that it reads back as it is. Write the record by hand."
        faults = [Problem(record.file, 0, "", record.name, right, slug="not-written")]
    return faults


def staged(journal: Journal, records: Sequence[NewRecord], settings_text: str | None = None) -> Journal:
    """The new records as the journal reads them, with the problems of their reading, and nothing else.

    They are read from a folder of their own under the journal's settings, so what is told of them
    here is what would be told of them there. settings_text: of journal.md, where that will change.
    """
    with tempfile.TemporaryDirectory(prefix="tenterhook-") as place:
        folder = Path(place)
        settings = journal.folder / "journal.md"
        if settings_text is not None:
            (folder / "journal.md").write_bytes(settings_text.encode("utf-8"))
        elif settings.is_file() and all(record.kind for record in records):
            (folder / "journal.md").write_bytes(settings.read_bytes())
        for record in records:
            path = folder / record.file
            path.parent.mkdir(exist_ok=True)
            path.write_bytes(record.text().encode("utf-8"))
        read = read_journal(folder)
    own = {record.file for record in records}
    return dataclasses.replace(read, problems=tuple(problem for problem in read.problems if problem.file in own))


def with_records(journal: Journal, new: Journal) -> Journal:
    """The journal as it would be with the new records in it."""
    both: dict[str, Any] = {kind: {**journal.kind(kind), **new.kind(kind)} for kind in KINDS}
    return dataclasses.replace(journal, **both)


def standing(journal: Journal, record: NewRecord) -> Problem | None:
    """The problem that a record of this name stands in the journal already; None when there is none."""
    path = journal.folder / record.file
    if record.kind and path.parent.is_symlink():
        right = f"The folder {record.kind} is a link, and nothing is written through it."
        return Problem(record.file, 0, "", record.name, right, slug="link")
    if path.exists() or path.is_symlink():
        right = "There is a record of that name already, and it is left as it is."
        return Problem(record.file, 0, "", record.name, right, slug="is-there")
    owner = next((each for each in journal.kind(record.kind).values() if record.name in each.was), None)
    if record.kind and owner is not None:
        right = f"{owner.name} had this name before, so its old address would lead to another record."
        return Problem(record.file, 0, "", record.name, right, slug="is-there")
    return None


def is_the_same(journal: Journal, record: NewRecord) -> bool:
    """Whether the journal has this very record already: the same values, the same notes."""
    try:
        text = (journal.folder / record.file).read_bytes().decode("utf-8")
    except (OSError, UnicodeDecodeError):
        return False
    read = read_front_matter(text, record.file)
    return tree_of(read.node) == squeezed_tree(record.fields) and read.notes == record.notes


def write_new(folder: Path, record: NewRecord) -> Problem | None:
    """Put one record into the journal's folder. The problem, when it cannot be written; the disk is then as it was."""
    path = folder / record.file
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        with path.open("xb") as file:
            try:
                file.write(record.text().encode("utf-8"))
            except BaseException:
                with contextlib.suppress(OSError):
                    path.unlink()
                raise
    except OSError as error:
        reason = "it is there already" if isinstance(error, FileExistsError) else error.strerror or str(error)
        return Problem(record.file, 0, "", record.name, f"The record cannot be written: {reason}.", slug="not-written")
    return None
