"""The sizes of one piece in one direction, in order, and the losses between them.

Like is compared with like. A hem takes cloth away, so sizes before and after it lie on two
yardsticks; so do sizes from edge to edge and sizes between sewn marks. A loss is reckoned between
sizes on one yardstick; a whole loss goes on over the change of yardstick, as a product, only where
both sides were measured at the same state of the cloth.
"""

from __future__ import annotations

import dataclasses
import itertools
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from journal_tools.ledger.laid import Laid
from journal_tools.ledger.state import (
    IN_REED,
    MADE_UP,
    OFF_LOOM,
    State,
    hemmed,
    wash_number,
    washes_before_hem,
)
from journal_tools.ledger.uncertainty import (
    cloth_uncertainty_mm,
    in_inches,
    mark_of,
    ratio_uncertainty,
    reading_uncertainty_mm,
    tape_mark_mm,
    tape_unit,
)
from journal_tools.quantities import Length
from journal_tools.records.cloth import ReedWidth, SizeAt

DIRECTIONS = ("width", "length")


@dataclass(frozen=True)
class Tape:
    """The marks of the tapes a record was measured with, in mm: for inches and for metric."""

    inches_mm: Fraction
    metric_mm: Fraction

    def mark_mm(self, reading: Length) -> Fraction:
        """The mark that this reading was taken to."""
        return mark_of(reading, self.inches_mm if in_inches(reading) else self.metric_mm)


def tape_of(pieces: Sequence[Laid], stated: Length | None) -> Tape:
    """The tape stated for the record or the journal, else the finest marks seen in the record.

    A tape has inches or centimetres: figures in the other system were read off another tape.
    """
    readings = [reading for piece in pieces for reading in piece.readings()]
    seen = Tape(tape_mark_mm(readings, True), tape_mark_mm(readings, False))
    if stated is None:
        return seen
    return dataclasses.replace(seen, **{"inches_mm" if in_inches(stated) else "metric_mm": stated.mm})


@dataclass(frozen=True)
class Measure:
    """One size in one direction.

    mm: the size, opened for a double-width cloth. u_mm: its U (k = 2), 0 for dents that were counted.
    yardstick: "cloth", "hemmed" or "marks"; only sizes on the same one compare.
    unit: of the tape. about: whether the weaver said "about".
    """

    state: State
    mm: float
    u_mm: float
    yardstick: str
    unit: str
    mark_mm: Fraction
    about: bool = False

    @property
    def relative(self) -> float:
        """Its U as a share of itself."""
        return self.u_mm / self.mm


@dataclass(frozen=True)
class Loss:
    """One loss: 1 - later/earlier, with its U (k = 2).

    joined: whether it goes over a hem or from edges to marks, as a product.
    through: the states between its ends that were measured.
    """

    first: Measure
    last: Measure
    loss: float
    uncertainty: float
    joined: bool
    through: tuple[State, ...]


def chain_of(laid: Laid, direction: str, tape: Tape) -> tuple[Measure, ...]:
    """The sizes of a piece in one direction, in order."""
    measures = list(_measures(laid, direction, tape))
    return tuple(sorted(measures, key=lambda each: (each.state, _YARDSTICKS.index(each.yardstick))))


_YARDSTICKS = ("cloth", "hemmed", "marks")


def _measures(laid: Laid, direction: str, tape: Tape) -> Iterator[Measure]:
    reed = laid.reed_width
    if direction == "width" and reed is not None and (measure := _in_reed(laid, reed, tape)) is not None:
        yield measure
    touched = laid.hem is not None and laid.hem.touches(direction)
    hem_state = hemmed(laid.hemmed_after) if touched and laid.hemmed_after is not None else None
    marks = laid.said("marks") if not laid.planned else None
    if marks is not None:
        origin = [each for each in (marks.widths if direction == "width" else (marks.length,)) if each]
        if origin:
            mark = tape.mark_mm(origin[0])
            yield Measure(
                OFF_LOOM, float(origin[0].mm), reading_uncertainty_mm(mark), "marks", tape_unit(origin[0].unit), mark
            )
    for state, at in laid.measured():
        between_marks = marks is not None and wash_number(state) is not None
        yardstick = "marks" if between_marks else "hemmed" if hem_state and state >= hem_state else "cloth"
        if (measure := _measure(laid, state, at, direction, tape, yardstick)) is not None:
            yield measure


def _in_reed(laid: Laid, reed: ReedWidth, tape: Tape) -> Measure | None:
    mm = laid.reed_mm
    if mm is None:
        return None
    mm *= laid.opens_by
    if reed.length is not None:
        mark = tape.mark_mm(reed.length)
        u = reading_uncertainty_mm(mark) * (1 if reed.fold == "opened" else laid.opens_by)
        return Measure(IN_REED, mm, u, "cloth", tape_unit(reed.length.unit), mark, reed.length.about)
    unit = laid.reed.unit if laid.reed is not None else "in"
    return Measure(IN_REED, mm, 0.0, "cloth", unit, tape.inches_mm if unit == "in" else tape.metric_mm)


def _measure(laid: Laid, state: State, at: SizeAt, direction: str, tape: Tape, yardstick: str) -> Measure | None:
    if at.size is None:
        return None
    readings: tuple[Length, ...] = at.size.widths
    opened = 1
    if direction == "length":
        readings = (at.size.length,) if at.size.length is not None else ()
    elif at.size.fold == "folded" or (at.size.fold is None and state < OFF_LOOM):
        opened = laid.opens_by
    if not readings:
        return None
    mark = tape.mark_mm(readings[0])
    mean = sum(float(reading.mm) for reading in readings) / len(readings)
    u = reading_uncertainty_mm(mark) if yardstick == "marks" else cloth_uncertainty_mm(readings, direction, mark)
    about = any(reading.about for reading in readings)
    return Measure(state, mean * opened, u * opened, yardstick, tape_unit(readings[0].unit), mark, about)


def made_up_of(laid: Laid, direction: str, tape: Tape) -> Measure | None:
    """What the owner measures: a yardstick of its own, since hems and fringes may be in it."""
    return _measure(laid, MADE_UP, laid.made_up, direction, tape, "made up") if laid.made_up else None


def losses(chain: Sequence[Measure]) -> tuple[Loss, ...]:
    """Every step, in order, then the losses from the first size to each size after a wash, and to the last.

    A size taken again once hemmed, in a direction that the hem leaves alone, is no step of its own
    when the cloth was measured just before. A size that only begins another yardstick ends no loss.
    """
    steps = _without_repeats(chain)
    while len(steps) > 1 and steps[-2].yardstick != steps[-1].yardstick:
        steps.pop()
    found = [
        loss
        for first, last in itertools.pairwise(steps)
        if first.yardstick == last.yardstick and (loss := loss_over((first, last))) is not None
    ]
    wholes = [
        place
        for place in range(2, len(steps))
        if steps[place - 1].yardstick == steps[place].yardstick
        and (wash_number(steps[place].state) is not None or place == len(steps) - 1)
    ]
    found += [loss for place in wholes if (loss := loss_over(steps[: place + 1])) is not None]
    return tuple(found)


def _without_repeats(chain: Sequence[Measure]) -> list[Measure]:
    kept: list[Measure] = []
    for measure in chain:
        again = measure.state.key == "hemmed" and measure.yardstick == "cloth"
        if again and kept and _same_moment(kept[-1], measure):
            continue
        kept.append(measure)
    return kept


def loss_over(part: Sequence[Measure]) -> Loss | None:
    """The loss from the first of some sizes to the last; None when a change of yardstick cannot be bridged."""
    last = part[-1]
    ratio, relative, start, joined = 1.0, [], part[0], False
    for before, after in itertools.pairwise(part):
        if before.yardstick == after.yardstick:
            continue
        if not _same_moment(before, after):
            return None
        ratio *= before.mm / start.mm
        relative += [before.relative, start.relative] if before is not start else []
        start, joined = after, True
    ratio *= last.mm / start.mm
    relative += [last.relative, start.relative] if last is not start else []
    through = tuple(each.state for each in part[1:-1])
    return Loss(part[0], last, 1 - ratio, ratio_uncertainty(ratio, relative), joined, through)


def _same_moment(before: Measure, after: Measure) -> bool:
    """Whether two sizes on two yardsticks are of the cloth in one state."""
    if after.yardstick == "marks":
        return before.state == after.state
    if after.state.key != "hemmed":
        return False
    washes = washes_before_hem(after.state)
    if washes is None:
        return wash_number(before.state) is not None
    return before.state == OFF_LOOM if washes == 0 else wash_number(before.state) == washes
