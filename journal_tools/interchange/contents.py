"""The sections of an interchange file: those that mean something here, those that are kept, and what is odd in them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from journal_tools.interchange.colours import OURS
from journal_tools.interchange.lines import Entry, Lines, Section
from journal_tools.interchange.values import FALSE, TRUE, Values
from journal_tools.interchange.what_was_read import Kept

_SYSTEM = {"threads", "color", "units", "spacing", "thickness"}

READ: Mapping[str, set[str] | None] = {
    "WIF": {"version", "date", "developers", "source program", "source version"},
    "WEAVING": {"shafts", "treadles", "rising shed", "profile"},
    "COLOR PALETTE": {"entries", "form", "range"},
    "WARP": _SYSTEM,
    "WEFT": _SYSTEM,
    **dict.fromkeys(("CONTENTS", "TEXT", OURS)),
    **dict.fromkeys(("NOTES", "COLOR TABLE", "THREADING", "TIEUP", "TREADLING", "LIFTPLAN", "WARP COLORS")),
    **dict.fromkeys(("WEFT COLORS", "WARP SPACING", "WEFT SPACING", "WARP THICKNESS", "WEFT THICKNESS")),
}
"""Sections that mean something here, with their keys where these are words; all others are kept word for word."""

MOST_NAMED = 100
"""Sections that are listed and missing, of which each is told by itself."""


def kept_of(values: Values, lines: Lines) -> Iterator[Kept]:
    """The sections that mean nothing here. Private ones are meant so; of others it is told."""
    for section in lines.sections:
        if section.name in READ:
            continue
        yield Kept(section.written, tuple(section.raw))
        if not section.name.startswith("PRIVATE"):
            right = "this section means nothing here; it is kept word for word and written again"
            values.tell(section.line, section.written, "", right, f"kept {section.name}")


def joined(values: Values, lines: Lines) -> dict[str, Section]:
    """The sections that mean something, by name; one that stands twice is read as one."""
    found: dict[str, Section] = {}
    for section in lines.sections:
        if section.name not in READ:
            continue
        _tell_of_strays(values, section.written, section.stray)
        if section.name not in found:
            found[section.name] = Section(section.name, section.written, section.line)
        else:
            values.tell(section.line, section.written, "", "this section stands twice; both are read as one", "twice")
        found[section.name].entries.extend(section.entries)
    for section in found.values():
        _tell_of_keys(values, section)
    return found


def tell_of_lines(values: Values, lines: Lines) -> None:
    """What is odd in the file as a text."""
    if lines.encoding not in ("UTF-8",):
        values.tell(0, "", "", f"the file was read as {lines.encoding}", "encoding")
    if lines.unseen:
        values.tell(0, "", "", f"{lines.unseen:,} characters that cannot be seen were left out", "unseen")
    _tell_of_strays(values, "", lines.stray)


def tell_of_head(values: Values, sections: Mapping[str, Section], lines: Lines) -> None:
    """What is odd in the version and the list of contents."""
    head = sections.get("WIF")
    version = head.last("Version") if head else None
    if version is None or version.value.replace(",", ".") != "1.1":
        line = version.line if version else head.line if head else 0
        read = version.value if version else ""
        values.tell(line, "WIF: Version", read, "version 1.1 is read here; it was read as that", "version")
    contents = sections.get("CONTENTS")
    there = {section.name for section in lines.sections} - {"WIF", "CONTENTS"}
    if contents is None:
        right = "the list of contents is missing; the sections that stand there were read"
        values.tell(0, "CONTENTS", "", right, "contents")
        return
    listed = {" ".join(entry.key.upper().split()) for entry in contents.entries if entry.value.lower() in TRUE}
    for place, name in enumerate(sorted(listed - there)):
        slug = f"listed {name}" if place < MOST_NAMED else "listed others"
        values.tell(contents.line, "CONTENTS", name, "it is listed and is not there", slug)
    for name in sorted(there - listed):
        right = "it is there and not listed; it was read all the same"
        values.tell(contents.line, "CONTENTS", name, right, f"there {name}")
    for entry in contents.entries:
        if entry.value.lower() not in TRUE | FALSE:
            right = "true or false is wanted; it was taken as not listed"
            values.tell(entry.line, f"CONTENTS: {entry.key}", entry.value, right, "truth")


def _tell_of_strays(values: Values, section: str, stray: list[Entry]) -> None:
    for entry in stray:
        right = "a line `key=value` in a section is wanted; this one is left out"
        values.tell(entry.line, section, entry.value, right, "stray")


def _tell_of_keys(values: Values, section: Section) -> None:
    """Keys that mean nothing here, and keys that are words and stand twice."""
    known = READ[section.name]
    unknown = [entry for entry in section.entries if known is not None and entry.key.lower() not in known]
    if unknown:
        read = ", ".join(f"{entry.key}={entry.value}" for entry in unknown[:20])
        right = f"{'these keys mean' if len(unknown) > 1 else 'this key means'} nothing here; left out"
        values.tell(unknown[0].line, section.written, read, right, "no-key")
    if known is None and section.name not in ("TEXT", "CONTENTS", OURS):
        return  # numbered: doubled ones are told where the numbers are read
    for entry in section.entries:
        if section.by_key[entry.key.lower()] is not entry:
            where = f"{section.written}: {entry.key}"
            values.tell(entry.line, where, entry.value, "it stands here twice; the last one counts", "doubled")
