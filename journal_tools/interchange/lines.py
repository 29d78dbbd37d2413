"""An interchange file as sections with their entries, every one with its line.

The file is in the form of an INI file, but Python's reader of those stops at a doubled key or section,
takes a colon for a separator, and knows no lines, all of which are wanted here.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field

LARGEST = 16 * 1024 * 1024
"""Bytes that are read."""

_HEAD = re.compile(r"\[\s*(.*?)\s*\]\s*$")
_UNSEEN = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f\ufeff]")


@dataclass(frozen=True)
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
    raw: list[str] = field(default_factory=list)

    def last(self, key: str) -> Entry | None:
        """The last entry of a key, capitals or not: of doubled ones the last counts."""
        return next((each for each in reversed(self.entries) if each.key.lower() == key.lower()), None)


@dataclass
class Lines:
    """A whole file. stray: lines in no section, or without an equals sign. encoding: how the bytes were read."""

    sections: list[Section] = field(default_factory=list)
    stray: list[Entry] = field(default_factory=list)
    encoding: str = "UTF-8"
    unseen: int = 0


def lines_of(data: bytes) -> Lines:
    """Take a file apart. Never raises."""
    text, encoding = _decoded(data)
    clean, unseen = _UNSEEN.subn("", text)
    found = Lines(encoding=encoding, unseen=unseen)
    section: Section | None = None
    for number, line in enumerate(re.split("\r\n|\r|\n", clean), 1):
        bare = line.strip()
        if not bare or bare.startswith(";"):
            if section is not None and bare:
                section.raw.append(bare)
            continue
        if head := _HEAD.match(bare):
            section = Section(" ".join(head.group(1).upper().split()), head.group(1), number)
            found.sections.append(section)
            continue
        key, equals, value = bare.partition("=")
        entry = Entry(key.strip(), value.strip(), number)
        if section is None:
            found.stray.append(Entry("", bare, number))
            continue
        section.raw.append(bare)
        if equals and entry.key:
            section.entries.append(entry)
        else:
            found.stray.append(Entry(section.written, bare, number))
    return found


def _decoded(data: bytes) -> tuple[str, str]:
    for mark, name in ((b"\xef\xbb\xbf", "utf-8-sig"), (b"\xff\xfe", "utf-16"), (b"\xfe\xff", "utf-16")):
        if data.startswith(mark):
            return data.decode(name, errors="replace"), name.upper().removesuffix("-SIG")
    try:
        return data.decode("utf-8"), "UTF-8"
    except UnicodeDecodeError:
        return data.decode("cp1252", errors="replace"), "Windows-1252"
