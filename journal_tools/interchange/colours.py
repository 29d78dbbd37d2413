"""The colours of an interchange file: numbers in its own range become hex, and each gets a plain name."""

from __future__ import annotations

import colorsys
from collections.abc import Collection, Mapping
from dataclasses import dataclass, field
from itertools import count

from journal_tools.interchange.lines import Entry, Section
from journal_tools.interchange.values import Values
from journal_tools.notation import is_colour

RANGES = (255, 999, 65_535)
"""The ends of ranges that are met with; which one is meant where the file does not say is told by its figures."""

MOST = 4_096
"""Colours that are read."""

OURS = "PRIVATE TENTERHOOK DRAFT"
"""The private section that holds what the standard has no place for."""

HUES = ((15, "red"), (45, "orange"), (70, "yellow"), (165, "green"), (200, "teal"), (255, "blue"), (290, "violet"),
        (345, "rose"), (361, "red"))  # fmt: skip
"""Where each hue ends, in degrees."""


@dataclass
class Colours:
    """The colours of a file, by names that can stand in this journal's notation.

    names: of each number of the table. hexes: by name, and those that threads brought beside the table.
    ends: the range of red, green and blue. taken: names that are in use.
    """

    names: Mapping[int, str]
    hexes: dict[str, str]
    ends: tuple[int, int]
    taken: set[str]
    _beside: dict[tuple[int | None, str], str] = field(default_factory=dict)

    def of(self, values: Values, section: str, entry: Entry) -> str | None:
        """The name of a thread's colour, by its number, or by number and red, green, blue."""
        where, parts = f"{section}: {entry.key}", entry.value.split(",")
        number = values.number_in(parts[0])
        name = self.names.get(number) if number is not None else None
        own = hex_of(parts[1:], self.ends)
        if name is not None:
            if len(parts) > 1 and own != self.hexes[name]:
                right = "it says another colour than the table has under that number; the table's was taken"
                values.tell(entry.line, where, entry.value, right, "other-colour")
            return name
        if own is not None:
            return self._named_beside(number, own)
        values.tell(entry.line, where, entry.value, "no colour of that number is in the table", "no-colour")
        return None if number is None else self._named_beside(number, "")

    def _named_beside(self, number: int | None, hex_: str) -> str:
        """The name of a colour that is not in the table; the same one for the same number, or the same hex."""
        key = (number, hex_)
        if key not in self._beside:
            name = f"colour-{number}" if number is not None else plain_name(hex_)
            self._beside[key] = name = unlike(name, len(self._beside) + 1, self.taken)
            self.taken.add(name)
            if hex_:
                self.hexes[name] = hex_
        return self._beside[key]


def colours_of(values: Values, sections: Mapping[str, Section], names: Mapping[str, Entry]) -> Colours:
    """The table of a file. names: what each number was called when the file was written here."""
    table, palette = sections.get("COLOR TABLE"), sections.get("COLOR PALETTE")
    entries = values.numbered(table, MOST, "colours") if table else {}
    ends = _range(values, palette, table, entries)
    found: dict[int, str] = {}
    hexes: dict[str, str] = {}
    for number, entry in entries.items():
        hex_ = hex_of(entry.value.split(","), ends)
        if hex_ is None:
            where = f"{table.written if table else ''}: {entry.key}"
            right = f"red, green, blue from {ends[0]} to {ends[1]} are wanted; it is left out"
            values.tell(entry.line, where, entry.value, right, "colour")
            continue
        name = _name(values, names.get(str(number)), hex_)
        found[number] = unlike(name, number, hexes)
        hexes[found[number]] = hex_
    if palette is not None:
        _tell_of_palette(values, palette, len(entries))
    return Colours(found, hexes, ends, set(hexes))


def _name(values: Values, called: Entry | None, hex_: str) -> str:
    """The name that the file has for a colour, or a plain word where it has none that could be written."""
    if called is None or is_colour(called.value):
        return called.value if called is not None else plain_name(hex_)
    right = f"that cannot be written in a colour order; the colour is called {plain_name(hex_)} here"
    values.tell(called.line, f"{OURS}: {called.key}", called.value, right, "colour-name")
    return plain_name(hex_)


def unlike(name: str, number: int, others: Collection[str]) -> str:
    """The name, with a number behind it where others have it already."""
    if name not in others:
        return name
    return next(each for n in count(number) if (each := f"{name}-{n}") not in others)


def _tell_of_palette(values: Values, palette: Section, listed: int) -> None:
    form, entries = palette.last("Form"), values.whole(palette, "Entries")
    if form is not None and form.value.upper() not in ("", "RGB"):
        right = "only RGB is read; the figures were taken for red, green and blue, and the colours may be others"
        values.tell(form.line, f"{palette.written}: {form.key}", form.value, right, "form")
    if entries is not None and entries != listed:
        right = f"{listed:,} colours are in the table; those were taken"
        values.tell(palette.line, f"{palette.written}: Entries", str(entries), right, "entries")


def _range(
    values: Values, palette: Section | None, table: Section | None, entries: Mapping[int, Entry]
) -> tuple[int, int]:
    said = palette.last("Range") if palette else None
    if said is not None:
        ends = [values.number_in(part) for part in said.value.split(",")]
        if len(ends) == 2 and ends[0] is not None and ends[1] is not None and 0 <= ends[0] < ends[1] <= 10**6:
            return ends[0], ends[1]
        where = f"{palette.written if palette else ''}: Range"
        values.tell(said.line, where, said.value, "two numbers are wanted, the lower one first", "range")
    parts = (part for entry in entries.values() for part in entry.value.split(","))
    most = max((figure for part in parts if (figure := values.number_in(part))), default=0)
    highest = next((end for end in RANGES if most <= end), most)
    if entries:
        line = table.line if table else 0
        right = f"it is missing; 0 to {highest} was taken by the figures"
        values.tell(line, "COLOR PALETTE: Range", "", right, "range")
    return 0, highest


def hex_of(parts: list[str], ends: tuple[int, int]) -> str | None:
    """Red, green, blue in a range as six digits; None for anything else."""
    if len(parts) != 3:
        return None
    lowest, highest = ends
    figures = [Values.number_in(part) for part in parts]
    if any(figure is None or not lowest <= figure <= highest for figure in figures):
        return None
    return "".join(f"{round(((figure or 0) - lowest) * 255 / (highest - lowest)):02x}" for figure in figures)


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
