"""An interchange file as sections with their entries, every one with its line.

The file is in the form of an INI file, but Python's reader of those stops at a doubled key or section,
takes a colon for a separator, and knows no lines, all of which are wanted here.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property

LARGEST = 8 * 1024 * 1024
"""Bytes that are read."""

MOST_LINES = 320_000
"""Lines that are read: 20,000 ends and as many picks want seven each at most, and colours and notes a few more."""

MOST_SECTIONS = 1_000

_UNSEEN = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u2028\u2029\ud800-\udfff\ufeff\ufffe\uffff]")
_UNDEFINED = bytes.maketrans(b"\x81\x8d\x8f\x90\x9d", b"\x1a" * 5)
"""Bytes that Windows-1252 has no letter for become one that cannot be seen: so they are counted and told."""


@dataclass(frozen=True, slots=True)
class Entry:
    """One line, `key = value`, blanks around both gone. line: counted from 1."""

    key: str
    value: str
    line: int


@dataclass
class Section:
    """name: in capitals, blanks drawn together. written: as it stood. raw: its lines as they stood, but its head."""

    name: str
    written: str
    line: int
    entries: list[Entry] = field(default_factory=list)
    stray: list[Entry] = field(default_factory=list)
    raw: list[str] = field(default_factory=list)

    def last(self, key: str) -> Entry | None:
        """The last entry of a key, capitals or not: of doubled ones the last counts."""
        return self.by_key.get(key.lower())

    @cached_property
    def by_key(self) -> Mapping[str, Entry]:
        """The last entry of each key, without capitals. Asked for when all entries are there."""
        return {entry.key.lower(): entry for entry in self.entries}


@dataclass
class Lines:
    """A whole file. stray: lines before the first section. encoding: how the bytes were read.

    refused: why it is not read at all, else "".
    """

    sections: list[Section] = field(default_factory=list)
    stray: list[Entry] = field(default_factory=list)
    encoding: str = "UTF-8"
    unseen: int = 0
    refused: str = ""


def lines_of(data: bytes) -> Lines:
    """Take a file apart. Never raises."""
    if len(data) > LARGEST:
        return Lines(refused=f"The file has {len(data):,} bytes; {LARGEST:,} are read at most.")
    text, encoding = _decoded(data)
    clean, unseen = without_unseen(text)
    clean = clean.replace("\r\n", "\n").replace("\r", "\n")
    if (number := clean.count("\n")) > MOST_LINES:
        return Lines(refused=f"The file has {number:,} lines; {MOST_LINES:,} are read at most.")
    found = Lines(encoding=encoding, unseen=unseen)
    section: Section | None = None
    for number, line in enumerate(clean.split("\n"), 1):
        bare = line.strip()
        if bare.startswith("[") and bare.endswith("]"):
            name = bare[1:-1].strip()
            section = Section(" ".join(name.upper().split()), name, number)
            found.sections.append(section)
        elif section is not None:
            section.raw.append(line)
            _read_line(section, bare, number)
        elif bare and not bare.startswith(";"):
            found.stray.append(Entry("", bare, number))
    if len(found.sections) > MOST_SECTIONS:
        return Lines(refused=f"The file has {len(found.sections):,} sections; {MOST_SECTIONS:,} are read at most.")
    for section in found.sections:
        if section.raw and not section.raw[-1]:
            section.raw.pop()  # it parts the section from the next one, or ends the file
    return found


def without_unseen(text: str) -> tuple[str, int]:
    """The text without characters that no line of text can hold, and how many there were."""
    return _UNSEEN.subn("", text)


def _read_line(section: Section, bare: str, number: int) -> None:
    if not bare or bare.startswith(";"):
        return
    key, equals, value = bare.partition("=")
    entry = Entry(key.strip(), value.strip(), number)
    if equals and entry.key:
        section.entries.append(entry)
    else:
        section.stray.append(Entry("", bare, number))


def _decoded(data: bytes) -> tuple[str, str]:
    for mark, name in ((b"\xef\xbb\xbf", "utf-8-sig"), (b"\xff\xfe", "utf-16"), (b"\xfe\xff", "utf-16")):
        if data.startswith(mark):
            return data.decode(name, errors="replace"), name.upper().removesuffix("-SIG")
    try:
        return data.decode("utf-8"), "UTF-8"
    except UnicodeDecodeError:
        return data.translate(_UNDEFINED).decode("cp1252"), "Windows-1252"
