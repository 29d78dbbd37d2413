"""What a cloth did, for its page: two tapes, and the losses step by step."""

from __future__ import annotations

import dataclasses
import math
from collections.abc import Iterator, Mapping, Sequence

from journal_tools.ledger import Ledger, PieceLedger, Row, SizeLine
from journal_tools.ledger.state import STANDARD, State, wash_number, washed
from journal_tools.ledger.words import COMPARED, off_plan, per_cent, points, row_notes
from journal_tools.pages import views
from journal_tools.pages.kinds import alike, called, number_of
from journal_tools.pictures.tape import TapeBar
from journal_tools.quantities import show_length

FULLED = "After fulling, a loss is a decision and not a habit of the yarn: the cloth was stopped at its size."
"""Said once below losses, some of which are said to be fulled."""


def size_text(mm: float, line: SizeLine) -> str:
    """A size to the tape's mark: `17 7/8 in`."""
    return show_length(mm, line.unit, line.mark_mm)


def drawn_unit(unit: str) -> str:
    """The unit that a tape is drawn in: millimetres are the small ticks of centimetres."""
    return "in" if unit == "in" else "cm"


def measured(ledger: Ledger, stretch: str) -> views.Measured | None:
    """The tapes and losses of one stretch; of several pieces, their means. None when nothing is known.

    The tapes are of the kind with most pieces, since a mean of a sample and four towels is no size;
    the losses are of all pieces, since a loss is a part of each piece's own size.
    """
    pieces = [piece for piece in ledger.pieces if piece.stretch == stretch]
    numbered = washed_again(pieces)
    rows = [_named(row, numbered) for row in ledger.stretch_rows if row.stretch == stretch]
    bands = any(piece.laid.band is not None for piece in pieces)
    drawn = alike(pieces)
    lines = {
        direction: [
            dataclasses.replace(line, state=wash_name(line.state, numbered)) for line in mean_lines(drawn, direction)
        ]
        for direction in COMPARED
    }
    tapes = {} if bands else {direction: _tape(drawn, lines[direction], direction) for direction in COMPARED}
    if len(drawn) < len(pieces):  # the losses are of all pieces, and no one plan is theirs
        lines = {direction: [] for direction in COMPARED}
    losses = tuple(_loss(row, lines[row.direction]) for row in in_order(rows))
    if not losses and not any(tapes.values()):
        return None
    return views.Measured(
        tapes.get("width"),
        tapes.get("length"),
        losses,
        tuple(_said(rows, lines)),
        _shown(pieces, drawn) if any(tapes.values()) else "",
        FULLED if any(row.steered for row in rows) else "",
    )


def washed_again(pieces: Sequence[PieceLedger]) -> bool:
    """Whether a piece has a second wash, so that the first is called `washed 1` in all of them."""
    return any((wash_number(line.state) or 0) > 1 for piece in pieces for line in piece.sizes)


def wash_name(state: State, numbered: bool) -> State:
    """The state under the one name that it has beside others: the only wash is wash 1 where others have more."""
    return washed(1) if numbered and wash_number(state) == 1 else state


def _named(row: Row, numbered: bool) -> Row:
    first, last = wash_name(row.first, numbered), wash_name(row.last, numbered)
    return row if (first, last) == (row.first, row.last) else dataclasses.replace(row, first=first, last=last)


def _shown(pieces: Sequence[PieceLedger], drawn: Sequence[PieceLedger]) -> str:
    """Whose sizes the tapes show, "" where there is only one piece."""
    mean = f"the mean of {number_of(drawn)} pieces" if number_of(drawn) > 1 else ""
    others = [piece for piece in pieces if all(piece is not each for each in drawn)]
    if not others:
        return f"The tapes show {mean}." if mean else ""
    named = called(drawn)
    whose = f"{named}, {mean}" if mean and not named.endswith("pieces") else mean or named
    apart = called(others)
    are = "is" if number_of(others) == 1 else "are"
    return f"The tapes show {whose}; {apart} {are} of another plan or size, and {are} among the pieces below."


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
    of_all = {_key(line): _beside(pieces, line, number) for line in lines}
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


def _key(line: SizeLine) -> tuple[float, str]:
    """What sizes must share to be the same: the state, and the yardstick they were taken with."""
    return line.state.rank, line.yardstick


def _beside(pieces: Sequence[PieceLedger], mean: SizeLine, number: int) -> str:
    """What is said beside a state: that it is hemmed, and how many pieces were measured unless all or none."""
    counted = sum(
        piece.number
        for piece in pieces
        for line in piece.sizes
        if line.direction == mean.direction and _key(line) == _key(mean) and line.measured_mm is not None
    )
    words = ["hemmed"] if mean.yardstick == "hemmed" and mean.state.key != "hemmed" else []
    words += [f"{counted} of {number}"] if 0 < counted < number else []
    return f" ({', '.join(words)})" if words else ""


def mean_lines(pieces: Sequence[PieceLedger], direction: str) -> list[SizeLine]:
    """The mean size at each state over several pieces, each counted as often as it stands for pieces.

    Sizes on different yardsticks at one state (hemmed and not) are not mixed: each has a line of its
    own, but for a plan on a yardstick with which nobody measured where another was used.
    Only the plans of pieces that were measured stand beside their mean. The only wash is wash 1.
    """
    found: dict[tuple[float, str], list[tuple[SizeLine, int]]] = {}
    for piece in pieces:
        for line in piece.sizes:
            if line.direction == direction:
                found.setdefault(_key(line), []).append((line, piece.number))
    means = [_mean(lines) for _, lines in sorted(found.items(), key=lambda item: item[0])]
    measured_at = {line.state.rank for line in means if line.measured_mm is not None}
    return [line for line in means if line.measured_mm is not None or line.state.rank not in measured_at]


def _mean(lines: Sequence[tuple[SizeLine, int]]) -> SizeLine:
    """The mean of some sizes at one state on one yardstick."""
    first = lines[0][0]
    sizes = [(line, number) for line, number in lines if line.measured_mm is not None]
    plans = [(line.planned_mm, number) for line, number in sizes or lines if line.planned_mm is not None]
    number = sum(each for _, each in sizes)
    return SizeLine(
        first.direction,
        max((line.state for line, _ in lines), key=lambda state: state.key),
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


def _bar(line: SizeLine | State, of_all: Mapping[tuple[float, str], str]) -> TapeBar:
    if isinstance(line, State):
        return TapeBar(line.name, None)
    return TapeBar(
        line.state.name + of_all.get(_key(line), ""),
        line.to_the_mark(line.measured_mm) if line.measured_mm is not None else None,
        line.to_the_mark(line.planned_mm) if line.planned_mm is not None else None,
        line.u_mm,
        size_text(line.measured_mm, line) if line.measured_mm is not None else "",
        size_text(line.planned_mm, line) if line.planned_mm is not None else "",
    )


def _state_row(line: SizeLine | State, of_all: Mapping[tuple[float, str], str]) -> views.StateRow:
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
    """The size that a loss ends at, rather one that had a plan."""
    found = [line for line in lines if line.state.rank == row.last.rank]
    return max(found, key=lambda line: line.off_mm is not None, default=None)


def _said(rows: Sequence[Row], lines: Mapping[str, Sequence[SizeLine]]) -> Iterator[str]:
    """What it lost and how it stands to the plan: two comparisons, in two sentences."""
    for direction in COMPARED:
        wholes = [row for row in rows if row.direction == direction and row.whole]
        if not wholes:
            continue
        row = max(wholes, key=lambda each: each.last)
        did = f"lost {per_cent(row.loss)} of" if row.loss >= 0 else f"gained {per_cent(-row.loss)} in"
        said = f"From {row.first.short} to {row.last.short} it {did} its {direction}."
        line = _line_at(row, lines[direction])
        off = off_words(line) if line is not None else ""
        within = line is not None and not line.beyond and off != "as planned"
        told = ", which is within what a tape can tell" if within else ""
        yield f"{said} It came out {off}{told}." if off else said
