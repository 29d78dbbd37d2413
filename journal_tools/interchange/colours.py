"""The colours of an interchange file: numbers in its own range become hex, and each gets a plain name."""

from __future__ import annotations

import colorsys
from collections.abc import Mapping
from dataclasses import dataclass, field

from journal_tools.interchange.lines import Entry, Section
from journal_tools.interchange.values import Values

RANGES = (255, 999, 65_535)
"""The ends of ranges that are met with; which one is meant where the file does not say is told by its figures."""

MOST = 4_096
"""Colours that are read."""

HUES = ((15, "red"), (45, "orange"), (70, "yellow"), (165, "green"), (200, "teal"), (255, "blue"), (290, "violet"),
        (345, "rose"), (361, "red"))  # fmt: skip
"""Where each hue ends, in degrees."""


@dataclass
class Colours:
    """names: of each number of the table. hexes: by name, those that threads have asked for."""

    names: Mapping[int, str]
    by_name: Mapping[str, str]
    highest: int
    hexes: dict[str, str] = field(default_factory=dict)

    def of(self, values: Values, section: str, entry: Entry) -> str | None:
        """The name of a thread's colour, by its number, or by number and red, green, blue."""
        parts = entry.value.split(",")
        number = values.number_in(parts[0])
        name = self.names.get(number) if number is not None else None
        if name is None and len(parts) == 4 and (hex_ := hex_of(parts[1:], self.highest)) is not None:
            name = f"colour-{number}" if number is not None else plain_name(hex_)
            self.hexes[name] = hex_
            return name
        if name is None:
            where = f"{section}: {entry.key}"
            values.tell(entry.line, where, entry.value, "no colour of that number is in the table", "no-colour")
            return None if number is None else f"colour-{number}"
        self.hexes[name] = self.by_name[name]
        return name


def colours_of(values: Values, sections: Mapping[str, Section], names: Mapping[str, str]) -> Colours:
    """The table of a file. names: of hexes, as the draft had them when it was written here."""
    table, palette = sections.get("COLOR TABLE"), sections.get("COLOR PALETTE")
    entries = values.numbered(table, MOST) if table else {}
    highest = _highest(values, palette, table, entries)
    found: dict[int, str] = {}
    by_name: dict[str, str] = {}
    for number, entry in entries.items():
        hex_ = hex_of(entry.value.split(","), highest)
        if hex_ is None:
            where = f"{table.written if table else ''}: {entry.key}"
            values.tell(entry.line, where, entry.value, f"red, green, blue from 0 to {highest} are wanted", "colour")
            continue
        name = names.get(str(number)) or plain_name(hex_)
        if name in by_name:
            name = f"{name}-{number}"
        found[number], by_name[name] = name, hex_
    return Colours(found, by_name, highest)


def _highest(values: Values, palette: Section | None, table: Section | None, entries: Mapping[int, Entry]) -> int:
    said = palette.last("Range") if palette else None
    if said is not None:
        ends = [values.number_in(part) for part in said.value.split(",")]
        if len(ends) == 2 and ends[1] is not None and 1 <= ends[1] <= 10**6:
            return ends[1]
        where = f"{palette.written if palette else ''}: Range"
        values.tell(said.line, where, said.value, "two numbers are wanted", "range")
    parts = (part for entry in entries.values() for part in entry.value.split(","))
    figures = [figure for part in parts if (figure := values.number_in(part))]
    highest = next((end for end in RANGES if max(figures, default=0) <= end), max(figures, default=255))
    if entries:
        line = table.line if table else 0
        right = f"it is missing; 0 to {highest} was taken by the figures"
        values.tell(line, "COLOR PALETTE: Range", "", right, "range")
    return highest


def hex_of(parts: list[str], highest: int) -> str | None:
    """Red, green, blue in a range as six digits; None for anything else."""
    figures = [Values.number_in(part) for part in parts]
    if len(figures) != 3 or any(figure is None or not 0 <= figure <= highest for figure in figures):
        return None
    return "".join(f"{round((figure or 0) * 255 / highest):02x}" for figure in figures)


def plain_name(hex_: str) -> str:
    """A plain word for a colour: `dark-blue`."""
    red, green, blue = (int(hex_[n : n + 2], 16) / 255 for n in (0, 2, 4))
    hue, light, strong = colorsys.rgb_to_hls(red, green, blue)
    if strong < 0.12 or light < 0.06 or light > 0.96:
        return "black" if light < 0.12 else "white" if light > 0.92 else "grey" if light > 0.3 else "dark-grey"
    word = next(name for end, name in HUES if hue * 360 < end)
    if word in ("orange", "yellow") and light < 0.4:
        word = "brown"
    return f"dark-{word}" if light < 0.3 else f"light-{word}" if light > 0.75 else word
