"""The winding part of a dressing sheet."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import groupby
from math import ceil

from journal_tools.dressing import Bout, Dressing, Spools, Strand, Winding
from journal_tools.dressing.colour_words import colour_words
from journal_tools.pages.archive import Archive
from journal_tools.pages.dressing_view import Group, Line, Ticks, WindingPart
from journal_tools.pages.views import Cell, Column, Table
from journal_tools.quantities import show_length
from journal_tools.quantities.length import LENGTHS
from journal_tools.records.yarns_used import YarnInUse

IN_A_ROW = 10
SPOOLS = "Spools of each colour to have ready, when 2 or 4 ends, or all of a bout or section, are wound at once."
HANDFUL = {"in": "2 in", "cm": "5 cm"}
"""The width that a bout is to have, in round words."""


def winding_parts(archive: Archive, made: Dressing, unit: str) -> Iterator[WindingPart]:
    """Each warp as it is wound; with several, each goes on a beam of its own."""
    several = len(made.windings) > 1
    for number, winding in enumerate(made.windings, 1):
        title = "Winding" if not several else f"Winding warp {number}" + (f", {winding.role}" if winding.role else "")
        named = {strand.name: _name(strand.yarn) for strand in winding.strands}
        yield WindingPart(
            title,
            tuple(_said(made, winding, named, unit, several)),
            tuple(_bouts(winding, named)),
            _strands(archive, winding, named, SPOOLS if number == 1 else ""),
        )


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
        where = "between repeats of the colours where that can be"
        yield f"The bouts are of about {winding.aimed} ends{wide}, cut {where}."


def _strands(archive: Archive, winding: Winding, named: Mapping[str, str], note: str) -> Table:
    """Ends and yarn of each colour, and the spools of it that are wanted when several ends are wound at once."""
    long = (Column("to wind", number=True),) if winding.wound is not None else ()
    spools = tuple(Column(_spool_head(each), number=True) for each in winding.spools)
    columns = (Column("colour"), Column("yarn"), Column("ends", number=True), *long, *spools)
    rows = [tuple(_strand(archive, winding, strand, named)) for strand in winding.strands]
    if len(rows) > 1:
        ends = sum(strand.ends for strand in winding.strands)
        numbers = [str(ends), *([""] if long else []), *(str(each.number) for each in winding.spools)]
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


def _spool_head(spools: Spools) -> str:
    return f"spools, {spools.together} at once" if spools.together else "spools, a bout at once"


def _bouts(winding: Winding, named: Mapping[str, str]) -> Iterator[Line]:
    """Bouts that are wound alike, one after the other, on one line with a box for each."""
    number = 0
    for order, same in groupby(winding.bouts, key=lambda bout: bout.order):
        bouts = list(same)
        first, last = number + 1, number + len(bouts)
        called = f"Bout {first}" if first == last else f"Bouts {first} to {last}"
        words = colour_words([named[colour] for colour in order])
        each = f"{len(order)} ends each" if len(bouts) > 1 else f"{len(order)} ends"
        if len(bouts) == 1:
            yield Line(called, (), (), each, (Group(first, words, bouts[0].last),))
        else:
            yield Line(called, (words,), tuple(_rows(bouts, number)), each)
        number = last


def _rows(bouts: Sequence[Bout], number: int) -> Iterator[Ticks]:
    for start in range(0, len(bouts), IN_A_ROW):
        row = bouts[start : start + IN_A_ROW]
        yield Ticks(tuple(range(number + start + 1, number + start + len(row) + 1)), row[-1].last)
