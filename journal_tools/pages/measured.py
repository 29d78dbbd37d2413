"""What a cloth did, for its page: two tapes, and the losses step by step."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence

from journal_tools.ledger import Ledger, PieceLedger, Row, SizeLine
from journal_tools.ledger.state import STANDARD, State
from journal_tools.ledger.words import COMPARED, off_plan, per_cent, points, row_notes
from journal_tools.pages import views
from journal_tools.pictures.tape import TapeBar
from journal_tools.quantities import show_length


def size_text(mm: float, line: SizeLine) -> str:
    """A size to the tape's mark: `17 7/8 in`."""
    return show_length(mm, line.unit, line.mark_mm)


def drawn_unit(unit: str) -> str:
    """The unit that a tape is drawn in: millimetres are the small ticks of centimetres."""
    return "in" if unit == "in" else "cm"


def measured(ledger: Ledger, stretch: str) -> views.Measured | None:
    """The tapes and losses of one stretch; of several pieces, their means. None when nothing is known."""
    pieces = [piece for piece in ledger.pieces if piece.stretch == stretch]
    rows = [row for row in ledger.stretch_rows if row.stretch == stretch]
    bands = any(piece.laid.band is not None for piece in pieces)
    drawn = alike(pieces)
    lines = {direction: mean_lines(drawn, direction) for direction in COMPARED}
    tapes = {} if bands else {direction: _tape(drawn, lines[direction], direction) for direction in COMPARED}
    if len(drawn) < len(pieces):  # the losses are of all pieces, and no one plan is theirs
        lines = {direction: [] for direction in COMPARED}
    losses = tuple(_loss(row, lines[row.direction]) for row in in_order(rows))
    if not losses and not any(tapes.values()):
        return None
    said = tuple(_said(rows, lines))
    return views.Measured(tapes.get("width"), tapes.get("length"), losses, said)


def alike(pieces: Sequence[PieceLedger]) -> list[PieceLedger]:
    """The pieces that were woven to the same plan as the first: a mean of napkins and a runner is no size."""
    return [piece for piece in pieces if piece.plan == pieces[0].plan]


def in_order(rows: Sequence[Row]) -> list[Row]:
    """Width before length, each with its steps first and its whole losses last."""
    return sorted(rows, key=lambda row: (list(COMPARED).index(row.direction), row.whole, row.first, row.last))


def _tape(pieces: Sequence[PieceLedger], lines: Sequence[SizeLine], direction: str) -> views.Tape | None:
    known = [line for line in lines if line.measured_mm is not None]
    if not known:
        return None
    unit = drawn_unit(known[0].unit)
    number = sum(piece.number for piece in pieces)
    title = f"{direction}, mean of {number} pieces" if number > 1 else direction
    of_all = {line.state: _share(pieces, line, number) for line in lines}
    with_gaps: list[SizeLine | State] = [*lines, *_not_measured([line.state for line in lines], direction)]
    ordered: list[SizeLine | State] = sorted(
        with_gaps, key=lambda each: each.state if isinstance(each, SizeLine) else each
    )
    return views.Tape(
        direction,
        unit,
        title,
        tuple(_bar(each, of_all) for each in ordered),
        tuple(_state_row(each, of_all) for each in ordered),
    )


def _share(pieces: Sequence[PieceLedger], mean: SizeLine, number: int) -> str:
    """How many of the pieces were measured at this state, "" when all were or none was."""
    counted = sum(
        piece.number
        for piece in pieces
        for line in piece.sizes
        if (line.direction, line.state.rank) == (mean.direction, mean.state.rank)
        and line.yardstick == mean.yardstick
        and line.measured_mm is not None
    )
    return f" ({counted} of {number})" if 0 < counted < number else ""


def mean_lines(pieces: Sequence[PieceLedger], direction: str) -> list[SizeLine]:
    """The mean size at each state over several pieces, each counted as often as it stands for pieces.

    Sizes on different yardsticks at one state (hemmed and not) are not mixed: the first one's holds.
    Only the plans of pieces that were measured stand beside their mean. The only wash is wash 1.
    """
    by_state: dict[float, list[tuple[SizeLine, int]]] = {}
    for piece in pieces:
        for line in piece.sizes:
            if line.direction == direction:
                by_state.setdefault(line.state.rank, []).append((line, piece.number))
    return [_mean(lines) for _, lines in sorted(by_state.items())]


def _mean(lines: Sequence[tuple[SizeLine, int]]) -> SizeLine:
    first = lines[0][0]
    alike = [(line, number) for line, number in lines if line.yardstick == first.yardstick]
    sizes = [(line, number) for line, number in alike if line.measured_mm is not None]
    plans = [(line.planned_mm, number) for line, number in sizes or alike if line.planned_mm is not None]
    number = sum(each for _, each in sizes)
    return SizeLine(
        first.direction,
        max((line.state for line, _ in alike), key=lambda state: state.key),
        sum((line.measured_mm or 0) * each for line, each in sizes) / number if number else None,
        sum(mm * each for mm, each in plans) / sum(each for _, each in plans) if plans else None,
        math.sqrt(sum(line.u_mm**2 * each for line, each in sizes) / number) if number else 0.0,
        first.unit,
        first.mark_mm,
        first.yardstick,
    )


def _not_measured(states: Sequence[State], direction: str) -> Iterator[State]:
    wanted = STANDARD if direction == "width" else STANDARD[1:]
    yield from (state for state in wanted if state not in states and states and state < max(states))


def _bar(line: SizeLine | State, of_all: Mapping[State, str]) -> TapeBar:
    if isinstance(line, State):
        return TapeBar(line.name, None)
    name = line.state.name + (" (hemmed)" if line.yardstick == "hemmed" and line.state.key != "hemmed" else "")
    return TapeBar(
        name + of_all.get(line.state, ""),
        line.to_the_mark(line.measured_mm) if line.measured_mm is not None else None,
        line.to_the_mark(line.planned_mm) if line.planned_mm is not None else None,
        line.u_mm,
        size_text(line.measured_mm, line) if line.measured_mm is not None else "",
        size_text(line.planned_mm, line) if line.planned_mm is not None else "",
    )


def _state_row(line: SizeLine | State, of_all: Mapping[State, str]) -> views.StateRow:
    if isinstance(line, State):
        return views.StateRow(line.name)
    bar = _bar(line, of_all)
    return views.StateRow(
        bar.label,
        bar.planned_text,
        bar.text,
        f"± {uncertainty_text(line)}" if line.measured_mm is not None and line.u_mm else "",
        off_words(line),
        line.beyond,
    )


def uncertainty_text(line: SizeLine) -> str:
    """U of a size, to the next half mark up, so that it is never called better than it is."""
    unit = line.unit
    mark = line.mark_mm / 2
    return show_length(math.ceil(round(line.u_mm / float(mark), 6)) * mark, unit, mark)


def off_words(line: SizeLine) -> str:
    """How far off plan, in words; nothing where there was no plan."""
    if line.off_mm is None:
        return ""
    return off_plan(line.off_mm, line.direction, line.unit, line.mark_mm)


def _loss(row: Row, lines: Sequence[SizeLine]) -> views.Loss:
    line = _line_at(row, lines) if row.whole else None
    name = f"{row.label} ({row.trade_name})" if row.trade_name else row.label
    return views.Loss(
        name,
        per_cent(row.planned) if row.planned is not None else "",
        per_cent(row.loss),
        points(row.uncertainty),
        off_words(line) if line is not None else "",
        row.whole,
        line.beyond if line is not None else False,
        "; ".join(row_notes(row)),
    )


def _line_at(row: Row, lines: Sequence[SizeLine]) -> SizeLine | None:
    return next((line for line in lines if line.state.rank == row.last.rank), None)


def _said(rows: Sequence[Row], lines: Mapping[str, Sequence[SizeLine]]) -> Iterator[str]:
    for direction, (less, more) in COMPARED.items():
        wholes = [row for row in rows if row.direction == direction and row.whole]
        if not wholes:
            continue
        row = max(wholes, key=lambda each: each.last)
        word = less if row.loss >= 0 else more
        said = f"From {row.first.short} to {row.last.short} it came out {per_cent(abs(row.loss))} {word}"
        line = _line_at(row, lines[direction])
        off = off_words(line) if line is not None else ""
        within = line is not None and not line.beyond and off != "as planned"
        said += f": {off}" + (", which is within what a tape can tell" if within else "") if off else ""
        yield said + "."
