"""What an interchange file says of its ends, or of its picks: number, colours, room and thickness."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import TypeVar

from journal_tools.drafts.draft import MOST_TIMES
from journal_tools.drafts.repeat import period
from journal_tools.interchange.colours import Colours
from journal_tools.interchange.lines import Section
from journal_tools.interchange.values import Values
from journal_tools.notation.sequence import MOST_THREADS

UNITS = {"decipoints": 25.4 / 720, "inches": 25.4, "centimeters": 10.0, "centimetres": 10.0}
"""mm to one of each (a decipoint is a 720th of an inch: from memory)."""

T = TypeVar("T")


@dataclass(frozen=True)
class Threads:
    """One system. name: WARP or WEFT. number: as said. per_m: threads to the metre by the usual spacing."""

    name: str
    line: int
    number: int | None
    per_m: float | None
    usual_colour: str
    own_colours: Mapping[int, str]
    own_spacing: Mapping[int, float]
    own_thickness: Mapping[int, float]

    def colours(self, number: int) -> tuple[str, ...]:
        """The colour of each thread, as short as the order repeats; () where none is said."""
        if not self.usual_colour and not self.own_colours:
            return ()
        return repeated([self.own_colours.get(place, self.usual_colour or "white") for place in range(1, number + 1)])

    def spacing(self, number: int) -> tuple[float, ...]:
        """The room of each thread beside the usual."""
        return _beside(self.own_spacing, number)

    def thickness(self, number: int) -> tuple[float, ...]:
        """The thickness of each thread beside the usual."""
        return _beside(self.own_thickness, number)


def _beside(own: Mapping[int, float], number: int) -> tuple[float, ...]:
    if all(figure == 1 for place, figure in own.items() if place <= number):
        return ()
    return repeated([own.get(place, 1.0) for place in range(1, number + 1)])


def repeated(order: Sequence[T]) -> tuple[T, ...]:
    """An order cut to its repeat; a draft begins it again."""
    return tuple(order[: 1 if len(set(order)) == 1 else period(order)])


def threads_of(values: Values, sections: Mapping[str, Section], name: str, colours: Colours) -> Threads:
    """Read one system."""
    section = sections.get(name)
    if section is None:
        section = Section(name, name, 0)
        values.tell(0, name, "", "this section is missing; its threads were counted", f"no {name}")
    unit = _unit(values, section)
    spacing, usual_spacing = _figures(values, sections, section, "Spacing")
    thickness, _ = _figures(values, sections, section, "Thickness")
    usual = section.last("Color")
    own = sections.get(f"{name} COLORS")
    named: dict[int, str] = {}
    for place, entry in (values.numbered(own, MOST_THREADS) if own else {}).items():
        if (colour := colours.of(values, own.written if own else "", entry)) is not None:
            named[place] = colour
    return Threads(
        name,
        section.line,
        values.whole(section, "Threads"),
        1000 / (usual_spacing * unit) if usual_spacing and unit else None,
        (colours.of(values, section.written, usual) or "") if usual is not None else "",
        named,
        spacing,
        thickness,
    )


def _unit(values: Values, section: Section) -> float | None:
    entry = section.last("Units")
    if entry is None or not entry.value:
        return None
    unit = UNITS.get(entry.value.lower())
    if unit is None:
        where = f"{section.written}: {entry.key}"
        values.tell(entry.line, where, entry.value, "Inches, Centimeters or Decipoints is wanted", "units")
    return unit


def _figures(
    values: Values, sections: Mapping[str, Section], section: Section, what: str
) -> tuple[dict[int, float], float | None]:
    """Each thread's figure beside the usual one, and the usual one."""
    entry = section.last(what)
    usual = values.real(section, entry) if entry is not None and entry.value else None
    own = sections.get(f"{section.name} {what.upper()}")
    if own is None:
        return {}, usual
    found = {place: values.real(own, one) for place, one in values.numbered(own, MOST_THREADS).items()}
    known = {place: figure for place, figure in found.items() if figure is not None}
    if known and usual is None:
        usual = sorted(known.values())[len(known) // 2]
        right = f"the usual {what.lower()} is missing; the middle one of the threads', {usual:g}, was taken for it"
        values.tell(own.line, own.written, "", right, f"usual {what}")
    beside = {place: round(figure / (usual or 1), 6) for place, figure in known.items()}
    for place, figure in list(beside.items()):
        if not 0 < figure <= MOST_TIMES:
            values.tell(own.line, own.written, f"{figure:g} times the usual", "it is left out", f"far {what}")
            del beside[place]
    return beside, usual
