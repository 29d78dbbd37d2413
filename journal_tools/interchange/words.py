"""What an interchange file says in words, and what this program put into it for itself."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from journal_tools.interchange.colours import OURS, Colours, colours_of
from journal_tools.interchange.lines import Section
from journal_tools.interchange.values import Values
from journal_tools.notation.sequence import MOST_THREADS

TEXT = ("Title", "Author", "Address", "EMail", "Telephone", "FAX")
"""The keys of [TEXT] (from memory)."""

OPEN = ("Title", "Author")
"""Those that a record takes over; all others may be a person's address, and stay in the file."""

MOST_NOTES = 20_000
"""Lines of notes."""

MOST_FLOATING = 20


@dataclass(frozen=True)
class Words:
    """text: [TEXT] by key. notes: the lines of [NOTES] in their order. colours: see `Colours`."""

    text: Mapping[str, str]
    notes: str
    colours: Colours
    developers: str
    warp_order: tuple[str, ...]
    weft_order: tuple[str, ...]
    floating: int


def words_of(values: Values, sections: Mapping[str, Section]) -> Words:
    """Read them."""
    empty = Section("", "", 0)
    text = dict(_text(values, sections.get("TEXT", empty)))
    notes = values.numbered(sections["NOTES"], MOST_NOTES, "lines of notes") if "NOTES" in sections else {}
    ours = sections.get(OURS, empty)
    names = {entry.key[7:]: entry for entry in ours.entries if entry.key.lower().startswith("colour ")}
    developers = sections["WIF"].last("Developers") if "WIF" in sections else None
    return Words(
        text,
        "\n".join(notes[place].value if place in notes else "" for place in range(1, max(notes, default=0) + 1)),
        colours_of(values, sections, names),
        developers.value if developers else "",
        _order(values, ours, "warp order"),
        _order(values, ours, "weft order"),
        _floating(values, ours),
    )


def _text(values: Values, section: Section) -> Iterator[tuple[str, str]]:
    closed: dict[str, int] = {}
    known = {key.lower(): key for key in TEXT}
    for entry in section.entries:
        key = known.get(entry.key.lower(), entry.key)
        if entry.value:
            yield key, entry.value
        if entry.value and key not in OPEN:
            closed.setdefault(key, entry.line)
    if closed:
        right = "these may be private: they stay in an interchange file, and are left out of a record"
        values.tell(min(closed.values()), section.written, ", ".join(closed), right, "private-text")


def _floating(values: Values, ours: Section) -> int:
    entry = ours.last("floating selvedges")
    number = values.number_in(entry.value) if entry is not None else 0
    if entry is None or (number is not None and 0 <= number <= MOST_FLOATING):
        return number or 0
    right = f"0 to {MOST_FLOATING} are read; none were taken"
    values.tell(entry.line, f"{ours.written}: {entry.key}", entry.value, right, "floating")
    return 0


def _order(values: Values, ours: Section, key: str) -> tuple[str, ...]:
    entry = ours.last(key)
    if entry is None or not entry.value:
        return ()
    words = tuple(word.strip() for word in entry.value.split(",")[: MOST_THREADS + 1])
    if all(words) and len(words) <= MOST_THREADS:
        return words
    right = f"names with commas between them are wanted, {MOST_THREADS:,} at most; the line is left out"
    values.tell(entry.line, f"{ours.written}: {entry.key}", entry.value, right, "order")
    return ()
