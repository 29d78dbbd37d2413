"""What an interchange file says in words, and what this program put into it for itself."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass

from journal_tools.interchange.colours import Colours, colours_of
from journal_tools.interchange.lines import Section
from journal_tools.interchange.values import Values

OURS = "PRIVATE TENTERHOOK DRAFT"
"""The private section that holds what the standard has no place for."""

TEXT = ("Title", "Author", "Address", "EMail", "Telephone", "FAX")
"""The keys of [TEXT] (from memory)."""

MOST_ORDER = 20_000
MOST_FLOATING = 20
_NAME = re.compile(r"[^\W_][\w-]*$")


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
    text = {}
    for entry in sections.get("TEXT", empty).entries:
        key = next((known for known in TEXT if known.lower() == entry.key.lower()), entry.key)
        if entry.value:
            text[key] = entry.value
    notes = values.numbered(sections["NOTES"], MOST_ORDER) if "NOTES" in sections else {}
    ours = sections.get(OURS, empty)
    names = {
        entry.key[7:]: entry.value
        for entry in ours.entries
        if entry.key.lower().startswith("colour ") and _NAME.match(entry.value)
    }
    floating = ours.last("floating selvedges")
    developers = sections["WIF"].last("Developers") if "WIF" in sections else None
    return Words(
        text,
        "\n".join(notes[place].value if place in notes else "" for place in range(1, max(notes, default=0) + 1)),
        colours_of(values, sections, names),
        developers.value if developers else "",
        _order(ours, "warp order"),
        _order(ours, "weft order"),
        min(MOST_FLOATING, values.number_in(floating.value) or 0) if floating else 0,
    )


def _order(ours: Section, key: str) -> tuple[str, ...]:
    entry = ours.last(key)
    words = [word.strip() for word in entry.value.split(",")] if entry else []
    return tuple(words[:MOST_ORDER]) if words and all(words) else ()
