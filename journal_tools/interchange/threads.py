"""What an interchange file says of its ends, or of its picks: number, colours, room and thickness."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import TypeVar

from journal_tools.drafts.draft import MOST_TIMES
from journal_tools.drafts.repeat import period
from journal_tools.interchange.colours import OURS, Colours
from journal_tools.interchange.lines import Section
from journal_tools.interchange.values import Values
from journal_tools.notation.sequence import MOST_THREADS

UNITS = {"decipoints": 25.4 / 720, "inches": 25.4, "centimeters": 10.0, "centimetres": 10.0}
"""mm to one of each (a decipoint is a 720th of an inch: from memory)."""

NO_COLOUR = "no-colour"
"""What a thread is called that has no colour in a file where others have one."""

T = TypeVar("T")


@dataclass(frozen=True)
class Threads:
    """One system, WARP or WEFT. number: as said. per_m: threads to the metre by the usual spacing.

    mm: the usual thickness. own_…: of threads that the file lists; spacing and thickness beside the usual 1.
    private_…: for all threads, from the section of our own, where the file says nothing else.
    """

    name: str
    line: int
    number: int | None
    per_m: float | None
    mm: float | None
    usual_colour: str
    own_colours: Mapping[int, str]
    own_spacing: Mapping[int, float]
    own_thickness: Mapping[int, float]
    private_spacing: tuple[float, ...]
    private_thickness: tuple[float, ...]

    def colours(self, number: int) -> tuple[str, ...]:
        """The colour of each thread, as short as the order repeats; () where none is said."""
        if not self.usual_colour and not self._coloured(number):
            return ()
        usual = self.usual_colour or NO_COLOUR
        return repeated([self.own_colours.get(place, usual) for place in range(1, number + 1)])

    def spacing(self, number: int) -> tuple[float, ...]:
        """The room of each thread beside the usual."""
        return _beside(self.own_spacing, self.private_spacing, number)

    def thickness(self, number: int) -> tuple[float, ...]:
        """The thickness of each thread beside the usual."""
        return _beside(self.own_thickness, self.private_thickness, number)

    def _coloured(self, number: int) -> int:
        """How many of so many threads have a colour of their own."""
        return sum(place <= number for place in self.own_colours)

    def tell_of(self, values: Values, number: int) -> None:
        """What is odd when so many threads are woven."""
        for what, own in (
            ("COLORS", self.own_colours),
            ("SPACING", self.own_spacing),
            ("THICKNESS", self.own_thickness),
        ):
            beyond = [place for place in own if place > number]
            if beyond:
                right = f"there are {number:,} threads, and this has some beyond; those are left out"
                values.tell(self.line, f"{self.name} {what}", f"{max(beyond):,}", right, "beyond")
        coloured = self._coloured(number)
        without = number - coloured
        if coloured and without and not self.usual_colour:
            right = f"no usual colour is given, and {without:,} threads have none of their own: called {NO_COLOUR} here"
            values.tell(self.line, f"{self.name}: Color", "", right, "no-usual-colour")


def _beside(own: Mapping[int, float], private: Sequence[float], number: int) -> tuple[float, ...]:
    if not own and private:
        whole = [private[place % len(private)] for place in range(number)]
    else:
        whole = [own.get(place, 1.0) for place in range(1, number + 1)]
    return repeated(whole) if any(figure != 1 for figure in whole) else ()


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
    thickness, usual_thickness = _figures(values, sections, section, "Thickness")
    if unit is None:
        _tell_of_no_unit(values, section)
    usual, own = section.last("Color"), sections.get(f"{name} COLORS")
    named: dict[int, str] = {}
    for place, entry in (values.numbered(own, MOST_THREADS, "threads") if own else {}).items():
        if (colour := colours.of(values, own.written if own else "", entry)) is not None:
            named[place] = colour
    ours, system = sections.get(OURS, Section(OURS, OURS, 0)), name.lower()
    return Threads(
        name,
        section.line,
        values.whole(section, "Threads"),
        1000 / (usual_spacing * unit) if usual_spacing and unit else None,
        usual_thickness * unit if usual_thickness and unit else None,
        (colours.of(values, section.written, usual) or "") if usual is not None and usual.value else "",
        named,
        spacing,
        thickness,
        values.figures(ours, f"{system} spacing", MOST_THREADS, MOST_TIMES),
        values.figures(ours, f"{system} thickness", MOST_THREADS, MOST_TIMES),
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


def _tell_of_no_unit(values: Values, section: Section) -> None:
    """Spacing and thickness without a unit say nothing but how threads stand beside one another."""
    if (units := section.last("Units")) is not None and units.value:
        return  # it could not be read, and that is told
    given = [entry for key in ("Spacing", "Thickness") if (entry := section.last(key)) is not None and entry.value]
    if given:
        read = ", ".join(f"{entry.key}={entry.value}" for entry in given)
        right = "no Units are given; how threads stand beside one another was read, and the figure itself is left out"
        values.tell(given[0].line, f"{section.written}: Units", read, right, "no-units")


def _figures(
    values: Values, sections: Mapping[str, Section], section: Section, what: str
) -> tuple[dict[int, float], float | None]:
    """Each thread's figure beside the usual one, and the usual one."""
    entry = section.last(what)
    usual = values.real(section, entry) if entry is not None and entry.value else None
    own = sections.get(f"{section.name} {what.upper()}")
    if own is None:
        return {}, usual
    found = {place: values.real(own, one) for place, one in values.numbered(own, MOST_THREADS, "threads").items()}
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
