"""Rows of a sheet gathered into warps, and the record of each."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from journal_tools.editing.change import Value
from journal_tools.exchange.cell import is_bare
from journal_tools.exchange.columns import Columns
from journal_tools.exchange.meaning import MEANINGS, STATES
from journal_tools.exchange.new_record import NewRecord, as_notes
from journal_tools.exchange.sheet_rows import SheetRow, answers
from journal_tools.exchange.shelf import Shelf, record_name
from journal_tools.problems import Problem

ABOVE = ("date", "date finished", "loom", "yarn", "warp wound", "hours", "cost")
"""What only a warp can say."""

SHARED = ("weft yarn", "weave", "sett", "reed", "sley", "ends", "width in the reed", "finish")
"""What a warp says for all its pieces, and a piece where it differs."""

OWN = ("beat", "picks", "weight")
"""What is of a piece alone, besides its number and its sizes."""


@dataclass
class Gathered:
    """The rows of one warp. title: as the sheet has it. name: of its record."""

    title: str
    name: str
    rows: list[SheetRow] = field(default_factory=list)


def gather(rows: Sequence[SheetRow], columns: Columns, file: str) -> list[Gathered]:
    """The warps, in the order in which they first come. Rows that belong to none say why."""
    found: dict[str, Gathered] = {}
    taken: set[str] = set()
    last: Gathered | None = None
    for row in (row for row in rows if not row.skipped):
        title = row.cells.get("warp", "")
        if not title and columns.of("warp") and columns.each == "a piece" and last is not None:
            right = f"The row names no warp, so it is taken for a piece of {last.title}, the warp above it."
            row.ask(file, "warp", right, "no-name")
            last.rows.append(row)
            continue
        title = title or _title_of(row)
        key = record_name(title) or title.lower()
        if columns.each == "a warp" and key in found:
            right = (
                f"Row {found[key].rows[0].number} has this name already. Give each warp a name of its own, or say"
                " `one row is: a piece`."
            )
            heading = row.headings.get("warp", "warp")
            row.problems.append(Problem(file, row.number, heading, title, right, slug="doubled"))
            continue
        if key not in found:
            found[key] = Gathered(title, _free(record_name(title, f"warp-row-{row.number}"), taken))
        last = found[key]
        last.rows.append(row)
    return list(found.values())


def _title_of(row: SheetRow) -> str:
    """What a warp without a name is called."""
    said = [row.cells[name] for name in ("piece", "yarn", "date") if name in row.cells]
    return ", ".join(said) or f"Row {row.number}"


def _free(name: str, taken: set[str]) -> str:
    number, free = 1, name
    while free in taken:
        number += 1
        free = f"{name}-{number}"
    taken.add(free)
    return free


def warp_record(warp: Gathered, shelf: Shelf, columns: Columns) -> NewRecord:
    """The record of one warp. What its rows say differently is asked, and kept."""
    rows = warp.rows
    for row in rows:
        _name_things(row, shelf)
    notes: list[str] = []
    above = _above(rows, shelf.file, notes)
    alone = len(rows) == 1 and (columns.each == "a warp" or "piece" not in rows[0].cells)
    shared, unit = _shared(rows, shelf.file), shelf.units.length
    fields: dict[str, Value] = {"title": warp.title}
    fields |= _dated(above)
    fields |= _yarns(above.get("yarn", ""), shared.get("weft yarn", ""), above.get("warp wound", ""), rows)
    fields |= {MEANINGS[name].key: text for name, text in shared.items() if name != "weft yarn"}
    said_by_all = len(rows) > 1 and len({tuple(row.notes) for row in rows}) == 1
    if alone:
        fields |= dict(_piece_fields(rows[0], shared, unit))
    else:
        names = list(_piece_names(rows, shelf.file))
        fields["pieces"] = [
            {"name": name, **dict(_piece_fields(row, shared, unit)), **_note([] if said_by_all else row.notes)}
            for name, row in zip(names, rows, strict=True)
        ]
    notes = [*(rows[0].notes if alone or said_by_all else []), *notes]
    for key in ("hours", "cost"):
        if key in above:
            fields[key] = above[key]
    source = tuple(row.number for row in rows)
    return NewRecord("warps", warp.name, fields, as_notes("\n\n".join(notes)), source)


def _name_things(row: SheetRow, shelf: Shelf) -> None:
    """The names of records in the place of what the row calls them."""
    for name in ("yarn", "weft yarn"):
        said = shelf.yarn(row, name)
        if said:
            row.cells[name] = said
    for kind, name in (("finishes", "finish"), ("looms", "loom")):
        said = shelf.named(kind, row, name)
        if said:
            row.cells[name] = said


def _above(rows: list[SheetRow], file: str, notes: list[str]) -> dict[str, str]:
    """What the rows say of the warp; where they differ the first counts, and the others go into its notes."""
    found = {}
    for name in ABOVE:
        said = answers(rows, name)
        if not said:
            continue
        (first, having), *others = said.items()
        found[name] = first
        for other, differing in others:
            right = (
                f'Row {having[0].number} says "{first}" of the same warp, and that is written; this is kept in its'
                " notes. If they are two warps, give them two names."
            )
            differing[0].ask(file, name, right, "said-differently")
            notes.append(f"{differing[0].headings.get(name, name)}, in row {differing[0].number}: {other}")
    return found


def _shared(rows: list[SheetRow], file: str) -> dict[str, str]:
    """What all the rows that say it say alike; where they differ, it is asked, and stays with each piece."""
    found = {}
    for name in SHARED:
        said = answers(rows, name)
        if len(said) == 1:
            found[name] = next(iter(said))
        elif said:
            (first, having), *others = said.items()
            for _, differing in others:
                right = f'Row {having[0].number} says "{first}" of the same warp. Each piece is written with its own.'
                differing[0].ask(file, name, right, "said-differently")
    return found


def _dated(above: dict[str, str]) -> dict[str, Value]:
    return {MEANINGS[name].key: above[name] for name in ("date", "date finished", "loom") if name in above}


def _yarns(yarn: str, weft: str, wound: str, rows: list[SheetRow]) -> dict[str, Value]:
    """One yarn stands alone; warp and weft stand apart where a weft is told."""
    fields: dict[str, Value] = {}
    apart = bool(weft and weft != yarn) or any("weft yarn" in row.cells and not weft for row in rows)
    told: dict[str, Value] = {"yarn": yarn} if yarn and apart else {}
    told |= {"wound": wound} if wound else {}
    if yarn and not apart:
        fields["yarn"] = yarn
    if told:
        fields["warp"] = told
    if weft and apart:
        fields["weft"] = weft
    return fields


def _piece_fields(row: SheetRow, shared: dict[str, str], unit: str) -> Iterator[tuple[str, Value]]:
    """What a row says of its piece alone, in the order of the cloth."""
    count = row.cells.get("how many", "1")
    if count != "1":
        yield "count", count
    for name in (*SHARED, *OWN):
        if name in row.cells and name not in shared:
            yield MEANINGS[name].key, row.cells[name]
    for key, words in STATES.items():
        size = _size(row, words, unit)
        if size:
            yield key, size


def _size(row: SheetRow, words: str, unit: str) -> str:
    """The size at one state: as one cell has it, or width x length of two."""
    whole = row.cells.get(f"size {words}", "")
    width, length = (row.cells.get(f"{side} {words}", "") for side in ("width", "length"))
    if not width and not length:
        return whole
    if width and length and is_bare(width) is not is_bare(length):
        width, length = (f"{side} {unit}" if is_bare(side) else side for side in (width, length))
    return f"{width or '?'} x {length or '?'}"


def _piece_names(rows: list[SheetRow], file: str) -> Iterator[str]:
    """A name for every piece; pieces that share one are numbered."""
    said = [row.cells.get("piece", "") for row in rows]
    seen: dict[str, int] = {}
    for number, (name, row) in enumerate(zip(said, rows, strict=True), start=1):
        if not name:
            yield f"piece {number}"
            continue
        seen[name] = seen.get(name, 0) + 1
        if said.count(name) == 1:
            yield name
            continue
        if seen[name] == 2:
            right = f'More than one row of this warp is called "{name}"; they are numbered.'
            row.ask(file, "piece", right, "doubled")
        yield f"{name} {seen[name]}" if not name[-1].isdigit() else f"{name}, {seen[name]}"


def _note(notes: list[str]) -> dict[str, Value]:
    return {"note": "\n\n".join(notes)} if notes else {}
