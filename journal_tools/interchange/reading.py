"""Reading an interchange file: what it says becomes a draft, and all that is odd is told.

The rules are the standard's as the trade remembers them (from memory, but for the head of the standard,
which was read); docs/interchange.md has them.
"""

from __future__ import annotations

from collections.abc import Mapping

from journal_tools.drafts import Draft
from journal_tools.interchange.lines import LARGEST, Lines, Section, lines_of
from journal_tools.interchange.threads import Threads, threads_of
from journal_tools.interchange.values import Values
from journal_tools.interchange.what_was_read import Kept, ReadDraft
from journal_tools.interchange.words import OURS, Words, words_of
from journal_tools.notation.lists import HIGHEST
from journal_tools.notation.sequence import MOST_THREADS
from journal_tools.problems import Severity
from journal_tools.quantities import Unreadable

READ = {
    *("WIF", "CONTENTS", "TEXT", "NOTES", "WEAVING", "COLOR PALETTE", "COLOR TABLE", "WARP", "WEFT", "THREADING"),
    *("TIEUP", "TREADLING", "LIFTPLAN", "WARP COLORS", "WEFT COLORS", "WARP SPACING", "WEFT SPACING"),
    *("WARP THICKNESS", "WEFT THICKNESS", OURS),
}
"""Sections that mean something here; all others are kept word for word."""


def read_wif(data: bytes, file: str) -> ReadDraft:
    """What a file says. file: its name, for messages. Never raises, whatever the bytes."""
    values = Values(file)
    if len(data) > LARGEST:
        return _refused(values, f"The file has {len(data):,} bytes; {LARGEST:,} are read at most.")
    lines = lines_of(data)
    _tell_of_lines(values, lines)
    sections = _joined(values, lines)
    if "WIF" not in sections and "WEAVING" not in sections:
        return _refused(values, "This is no interchange file: it has neither a [WIF] nor a [WEAVING] section.")
    _tell_of_head(values, sections, lines)
    kept = tuple(Kept(each.written, tuple(each.raw)) for each in lines.sections if each.name not in READ)
    for section in lines.sections:
        if section.name not in READ and not section.name.startswith("PRIVATE"):
            right = "this section means nothing here; it is kept word for word and written again"
            values.tell(section.line, section.written, "", right, f"kept {section.name}")
    words = words_of(values, sections)
    warp, weft = (threads_of(values, sections, system, words.colours) for system in ("WARP", "WEFT"))
    draft = _draft(values, sections, words, warp, weft)
    return ReadDraft(
        draft, words.text, words.notes, words.colours.hexes, warp.per_m, weft.per_m,
        values.truth(sections["WEAVING"], "Profile") is True if "WEAVING" in sections else False,
        words.developers, kept, tuple(values.counted()),
    )  # fmt: skip


def _refused(values: Values, why: str) -> ReadDraft:
    values.tell(0, "", "", why, "refused", Severity.FAULT)
    return ReadDraft(None, told=tuple(values.counted()))


def _tell_of_lines(values: Values, lines: Lines) -> None:
    if lines.encoding not in ("UTF-8",):
        values.tell(0, "", lines.encoding, f"the file was read as {lines.encoding}", "encoding")
    if lines.unseen:
        values.tell(0, "", "", f"{lines.unseen} characters that cannot be seen were left out", "unseen")
    for entry in lines.stray:
        right = "a line `key=value` in a section is wanted; this one is left out"
        values.tell(entry.line, entry.key, entry.value, right, "stray")


def _joined(values: Values, lines: Lines) -> dict[str, Section]:
    """The sections that mean something, by name; one that stands twice is read as one."""
    found: dict[str, Section] = {}
    for section in lines.sections:
        if section.name not in READ:
            continue
        if section.name in found:
            values.tell(section.line, section.written, "", "this section stands twice; both are read as one", "twice")
            first = found[section.name]
            found[section.name] = Section(
                first.name, first.written, first.line, [*first.entries, *section.entries], [*first.raw, *section.raw]
            )
        else:
            found[section.name] = section
    return found


def _tell_of_head(values: Values, sections: Mapping[str, Section], lines: Lines) -> None:
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
    listed = {
        " ".join(entry.key.upper().split())
        for entry in contents.entries
        if entry.value.lower() in ("true", "on", "yes", "1")
    }
    for name in sorted(listed - there):
        values.tell(contents.line, "CONTENTS", name, "it is listed and is not there", f"listed {name}")
    for name in sorted(there - listed):
        right = "it is there and not listed; it was read all the same"
        values.tell(contents.line, "CONTENTS", name, right, f"there {name}")


def _draft(values: Values, sections: Mapping[str, Section], words: Words, warp: Threads, weft: Threads) -> Draft | None:
    weaving = sections.get("WEAVING")
    rising = values.truth(weaving, "Rising Shed") if weaving else None
    if rising is None:
        line = weaving.line if weaving else 0
        values.tell(line, "WEAVING: Rising Shed", "", "it is missing; a rising shed was taken", "shed")
        rising = True
    empty = Section("", "", 0)
    threading = values.sets(sections.get("THREADING", empty), MOST_THREADS, HIGHEST)
    tie_up = values.sets(sections.get("TIEUP", empty), HIGHEST, HIGHEST)
    treadling = values.sets(sections.get("TREADLING", empty), MOST_THREADS, HIGHEST)
    lifts = values.sets(sections.get("LIFTPLAN", empty), MOST_THREADS, HIGHEST)
    ends = _number(values, warp, threading, "THREADING", sections)
    by_treadles = bool(treadling) and bool(tie_up)
    shed = (treadling, "TREADLING") if by_treadles else (lifts, "LIFTPLAN")
    picks = _number(values, weft, *shed, sections)
    if not ends or not picks:
        missing = "a threading" if not ends else "a treadling with its tie-up, or a lift plan"
        values.tell(0, "", "", f"There is no draft in it: {missing} is wanted.", "no-draft", Severity.FAULT)
        return None
    if by_treadles and lifts:
        _tell_of_both(values, sections["LIFTPLAN"], tie_up, treadling, lifts, picks)
    if not rising and not by_treadles:
        right = "the shed sinks, so the lift plan was read as shafts that go down; look whether the cloth is as meant"
        values.tell(sections["LIFTPLAN"].line, "LIFTPLAN", "", right, "sinking-lifts")
    treadles = max([*tie_up, *(max(each, default=0) for each in treadling.values())], default=0)
    try:
        draft = Draft(
            _listed(threading, ends),
            _listed(tie_up, treadles) if by_treadles else None,
            _listed(treadling, picks) if by_treadles else None,
            None if by_treadles else _listed(lifts, picks),
            rising,
            warp.colours(ends), weft.colours(picks),
            words.warp_order, words.weft_order,
            warp.thickness(ends), weft.thickness(picks),
            warp.spacing(ends), weft.spacing(picks),
            words.floating,
        )  # fmt: skip
    except Unreadable as unreadable:
        values.tell(0, "", unreadable.read, unreadable.right, "no-draft", Severity.FAULT)
        return None
    _tell_of_sizes(values, weaving, draft)
    return draft


def _number(
    values: Values, threads: Threads, found: Mapping[int, frozenset[int]], name: str, sections: Mapping[str, Section]
) -> int:
    """How many ends or picks there are: as said, or as many as are listed where that is more."""
    listed, said = max(found, default=0), threads.number
    if not listed:
        return 0
    field, read = f"{threads.name}: Threads", str(said or "")
    if said is None or said > MOST_THREADS:
        right = f"{listed:,} are listed under {name}; so many were taken"
        values.tell(threads.line, field, read, right, "threads")
        return listed
    if said < listed:
        values.tell(threads.line, field, read, f"{listed:,} are listed under {name}; all of them were taken", "threads")
    elif said > listed:
        right = f"{field} says {said:,}; the last {said - listed:,} were taken as empty"
        values.tell(sections[name].line, name, str(listed), right, "threads")
    return max(said, listed)


def _listed(found: Mapping[int, frozenset[int]], number: int) -> tuple[frozenset[int], ...]:
    nothing = frozenset[int]()
    return tuple(found.get(place, nothing) for place in range(1, number + 1))


def _tell_of_both(
    values: Values,
    section: Section,
    tie_up: Mapping[int, frozenset[int]],
    treadling: Mapping[int, frozenset[int]],
    lifts: Mapping[int, frozenset[int]],
    picks: int,
) -> None:
    nothing = frozenset[int]()
    for pick in range(1, max(picks, *lifts) + 1):
        pressed = (tie_up.get(treadle, nothing) for treadle in treadling.get(pick, nothing))
        if nothing.union(*pressed) != lifts.get(pick, nothing):
            right = f"tie-up and treadling are there too, and differ from the lift plan at pick {pick}; they were taken"
            values.tell(section.line, section.written, "", right, "both")
            return
    values.tell(section.line, section.written, "", "it says the same as tie-up and treadling, which were taken", "both")


def _tell_of_sizes(values: Values, weaving: Section | None, draft: Draft) -> None:
    for key, number in (("Shafts", draft.shafts), ("Treadles", draft.treadles)):
        said = values.whole(weaving, key) if weaving else None
        if said is not None and said < number and weaving is not None:
            values.tell(weaving.line, f"WEAVING: {key}", str(said), f"{number} are used; so many were taken", "sizes")
