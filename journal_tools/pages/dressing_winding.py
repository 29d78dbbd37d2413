"""The winding part of a dressing sheet."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from math import ceil

from journal_tools.dressing import Bout, Dressing, Spools, Strand, Winding
from journal_tools.dressing.bouts import COLOURS, INSIDE, REPEAT, UNIT, WITHIN
from journal_tools.dressing.colour_words import colour_words
from journal_tools.dressing.runs import runs_of
from journal_tools.pages.archive import Archive
from journal_tools.pages.dressing_view import Group, Line, Part, Shown, Ticks
from journal_tools.pages.view_parts import Cell, Column, Table
from journal_tools.quantities import show_length
from journal_tools.quantities.length import LENGTHS
from journal_tools.records.yarns_used import YarnInUse

IN_A_ROW = 10
SPOOLS = "Spools of each colour to have ready, when 2 or 4 ends, or all of a bout or section, are wound at once."
WHERE = {
    REPEAT: "after whole repeats of the colours",
    COLOURS: "between two colours",
    UNIT: "after whole repeats of the threading",
    INSIDE: "inside a stripe",
    WITHIN: "between two colours within a repeat",
}
"""Where bouts are cut, the best place first."""
HANDFUL = {"in": "2 in", "cm": "5 cm"}
"""The width that a bout is to have, in round words."""


def winding_parts(archive: Archive, made: Dressing, unit: str) -> Iterator[Part]:
    """Each warp as it is wound; with several, each goes on a beam of its own."""
    several = len(made.windings) > 1
    for number, winding in enumerate(made.windings, 1):
        title = "Winding" if not several else f"Winding warp {number}" + (f", {winding.role}" if winding.role else "")
        named = names_of(winding)
        yield Part(
            f"winding-{number}",
            title,
            said=tuple(_said(made, winding, named, unit, several)),
            lines=tuple(_bouts(winding, named)),
            table=_strands(archive, winding, named, SPOOLS if number == 1 else ""),
        )


def names_of(winding: Winding) -> dict[str, str]:
    """What each colour of a warp is called on the sheet."""
    return {strand.name: _name(strand.yarn) for strand in winding.strands}


def _name(yarn: YarnInUse) -> str:
    """What a colour is called on the sheet: its name in this warp, as short as the weaver has it."""
    return yarn.colour or yarn.plain_heading


def _said(
    made: Dressing, winding: Winding, named: Mapping[str, str], unit: str, several: bool
) -> Iterator[str]:
    floating = sum(strand.ends for strand in winding.strands) - winding.ends
    long = f", {show_length(winding.wound.mm, winding.wound.unit, winding.wound.mark)} long" if winding.wound else ""
    bouts = f"{len(winding.bouts)} bouts" if len(winding.bouts) > 1 else "one bout"
    yield f"{winding.ends} ends in {bouts} (or sections){long}."
    if made.reckoned and not several:
        yield "Nobody wrote the ends down: they are reckoned from the sett and the width in the reed."
    if winding.by_draft:
        yield "The colours are the draft's, since the warp has no order of its own."
    if floating:
        yield f"And {floating} of {named[winding.floating]} for the floating selvedges, wound by themselves."
    if several:
        yield "It goes on a beam of its own."
    if len(winding.bouts) > 1:
        wide = f", {HANDFUL[unit]} in the reed" if made.sleyed is not None else ""
        yield f"The bouts are of about {winding.aimed} ends{wide}, cut {_cuts(winding)}."


def _cuts(winding: Winding) -> str:
    """Where the bouts are truly cut, as often as each: `9 times after whole repeats of the colours`."""
    counted = Counter(bout.cut for bout in winding.bouts if bout.cut)
    if len(counted) == 1:
        return WHERE[next(iter(counted))]
    often = {1: "once"}
    return ", ".join(
        f"{often.get(counted[cut], f'{counted[cut]} times')} {words}" for cut, words in WHERE.items() if counted[cut]
    )


def _strands(archive: Archive, winding: Winding, named: Mapping[str, str], note: str) -> Table:
    """Ends and yarn of each colour, and the spools of it that are wanted when several ends are wound at once."""
    long = (Column("to wind", number=True),) if winding.wound is not None else ()
    spools = tuple(Column(_spool_head(each), number=True) for each in winding.spools)
    columns = (Column("colour"), Column("yarn"), Column("ends", number=True), *long, *spools)
    rows = [tuple(_strand(archive, winding, strand, named)) for strand in winding.strands]
    if len(rows) > 1:
        ends = sum(strand.ends for strand in winding.strands)
        numbers = [str(ends), *([""] if long else []), *(_in_all(winding, each) for each in winding.spools)]
        rows.append((Cell("in all"), Cell(""), *map(Cell, numbers)))
    return Table("Colours and spools", columns, tuple(rows), stacked=True, note=note)


def _strand(archive: Archive, winding: Winding, strand: Strand, named: Mapping[str, str]) -> Iterator[Cell]:
    link = archive.link("yarns", strand.yarn.name, strand.yarn.plain_heading)
    yield from (Cell(named[strand.name]), Cell(link.text, link.href), Cell(str(strand.ends)))
    if winding.wound is not None and strand.length_mm is not None:
        unit = "yd" if winding.wound.unit in ("yd", "ft", "in") else "m"
        yield Cell(f"{ceil(strand.length_mm / LENGTHS.sizes[unit]):,} {unit}")
    for spools in winding.spools:
        yield Cell(str(spools.of.get(strand.name, "")))


def _in_all(winding: Winding, spools: Spools) -> str:
    """The spools to have; of a whole bout, which has not all colours at their most, those that are in use at once."""
    return str(spools.number) if spools.together else f"{max(bout.ends for bout in winding.bouts)} at most"


def _spool_head(spools: Spools) -> str:
    return f"spools, {spools.together} at once" if spools.together else "spools, a whole bout"


def _bouts(winding: Winding, named: Mapping[str, str]) -> Iterator[Line]:
    """Bouts that are wound alike, or that come by turns, on one line with a box for each."""
    number = 0
    for run in runs_of([bout.order for bout in winding.bouts]):
        bouts = winding.bouts[number : number + run.length]
        shown = tuple(Shown(colour_words([named[colour] for colour in order])) for order in run.block)
        if run.times == 1:
            for at, (bout, words) in enumerate(zip(bouts, shown, strict=True), number + 1):
                yield Line(f"Bout {at}", (), (), f"{bout.ends} ends", (Group(at, words, bout.last),))
        else:
            turns = " by turns" if len(run.block) > 1 else ""
            each = " and ".join(str(len(order)) for order in run.block) + f" ends{'' if turns else ' each'}"
            in_a_row = IN_A_ROW // len(run.block) * len(run.block) or len(run.block)
            rows = tuple(_rows(bouts, number, in_a_row))
            yield Line(f"Bouts {number + 1} to {number + len(bouts)}{turns}", shown, rows, each)
        number += run.length


def _rows(bouts: Sequence[Bout], number: int, in_a_row: int) -> Iterator[Ticks]:
    for start in range(0, len(bouts), in_a_row):
        row = bouts[start : start + in_a_row]
        yield Ticks(tuple(range(number + start + 1, number + start + len(row) + 1)), row[-1].last)
