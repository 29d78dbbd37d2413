"""The pieces of a stretch: what each is, how it stands to its plan, what it lost, its sizes."""

from __future__ import annotations

import dataclasses
import re
from collections.abc import Iterator

from journal_tools.ledger import Ledger, PieceLedger
from journal_tools.ledger.state import State, wash_number
from journal_tools.ledger.words import per_cent, points
from journal_tools.pages.archive import Archive
from journal_tools.pages.measured import off_words, size_text, wash_name, washed_again
from journal_tools.pages.view_parts import Cell, Column, Table
from journal_tools.records import Piece
from journal_tools.records.yarns_used import yarn_in_use


def pieces_table(archive: Archive, ledger: Ledger, stretch: str) -> Table | None:
    """One row a piece, the verdict before the sizes; None for a single plain piece."""
    pieces = [piece for piece in ledger.pieces if piece.stretch == stretch]
    if len(pieces) < 2 and not any(piece.number > 1 for piece in pieces):
        return None
    numbered = washed_again(pieces)
    measured = [line for piece in pieces for line in piece.sizes if line.measured_mm is not None]
    units = {wash_name(line.state, numbered): line.unit for line in measured if line.state.rank > 0}
    states = sorted(units)
    columns = (
        Column("piece"),
        Column("woven"),
        Column("off plan"),
        Column("width lost", number=True),
        Column("length lost", number=True),
        *(Column(f"{state.name}, {units[state]}", number=True) for state in states),
    )
    rows = [
        (
            Cell(piece_name(piece), strong=True, small=_remark(piece)),
            Cell("; ".join(_woven(archive, ledger, piece))),
            _off_plan_cell(piece),
            _whole_cell(piece, "width", numbered),
            _whole_cell(piece, "length", numbered),
            *(_size_cell(piece, state) for state in states),
        )
        for piece in pieces
    ]
    return without_empty(Table("Pieces", columns, tuple(rows), stacked=True))


def without_empty(table: Table) -> Table:
    """The table without the columns in which no row says anything; the first stays."""
    told = [0, *(n for n in range(1, len(table.columns)) if any(row[n].text.strip("–") for row in table.rows))]
    if len(told) == len(table.columns):
        return table
    columns = tuple(table.columns[n] for n in told)
    return dataclasses.replace(table, columns=columns, rows=tuple(tuple(row[n] for n in told) for row in table.rows))


def piece_name(piece: PieceLedger) -> str:
    """The one name of a piece on its page: its own, else its stretch's; with a count that the name does not tell."""
    name = piece.name or piece.stretch or "cloth"
    if piece.number == 1 or re.search(r"\d\s*[-–]\s*\d+$", name):
        return name
    return f"{name} (each of {piece.number})"


def _woven(archive: Archive, ledger: Ledger, piece: PieceLedger) -> Iterator[str]:
    """How this piece or band was woven, as far as it says so itself."""
    own, band = piece.laid.levels[0], piece.laid.band
    for thing in (band, own) if isinstance(own, Piece) else (band,):
        if thing is None:
            continue
        if thing.sett is not None:
            yield f"sett {thing.sett.text}"
        if thing.ends is not None:
            yield f"{thing.ends.number} ends"
    if not isinstance(own, Piece):
        return
    if own.weave:
        yield own.weave
    for weft in own.weft:
        typed = [weft.yarn] if weft.yarn else list(weft.order.counts if weft.order else ())
        yarns = [yarn_in_use(archive.journal, ledger.warp, each, weft.colour) for each in typed]
        yield f"weft {' and '.join(yarn.heading for yarn in yarns)}"
    if own.beat is not None:
        yield f"beat {own.beat.text}"
    if own.picks is not None:
        yield f"{own.picks.text} picks"


def _remark(piece: PieceLedger) -> str:
    """What the weaver says of the piece itself, where it is now among it."""
    own = piece.laid.levels[0]
    words = []
    if isinstance(own, Piece):
        words += [own.note or "", f"half kept: {own.half_kept}" if own.half_kept else ""]
        words += [own.now or "", f"with {own.buyer}" if own.buyer else "", own.price.text if own.price else ""]
        words += [{True: "liked", False: "not liked", None: ""}[own.liked]]
        words += [f"not learned from: {rule.reason}" for rule in own.learn if not rule.yes and rule.reason]
    return "; ".join(word for word in words if word)


def _size_cell(piece: PieceLedger, state: State) -> Cell:
    lines = [line for line in piece.sizes if line.state.rank == state.rank and line.measured_mm is not None]
    sizes = [size_text(line.measured_mm or 0, line).rsplit(" ", 1)[0].replace(" ", "\u00a0") for line in lines]
    return Cell(" × ".join(sizes))


def _off_plan_cell(piece: PieceLedger) -> Cell:
    """How far off plan the last planned size was, in words."""
    lines = [line for line in piece.sizes if line.off_mm is not None and line.state.rank > 1]
    last = max((line.state for line in lines), default=None)
    words = [off_words(line) for line in lines if line.state == last]
    if words and all(word == "as planned" for word in words):
        return Cell("as planned")
    said = ", ".join(word.removesuffix(" than planned") for word in words if word != "as planned")
    return Cell(said, beyond=any(line.beyond for line in lines if line.state == last))


def _whole_cell(piece: PieceLedger, direction: str, numbered: bool) -> Cell:
    rows = [row for row in piece.rows if row.direction == direction and wash_number(row.last) is not None]
    whole = [row for row in rows if row.whole] or rows
    if not whole:
        return Cell("")
    row = max(whole, key=lambda each: (each.last, -each.first.rank))
    first, last = wash_name(row.first, numbered), wash_name(row.last, numbered)
    return Cell(per_cent(row.loss), small=f"± {points(row.uncertainty)}, {first.short} to {last.short}")
