"""The figures behind a piece's readings, and the slip that would bring them best together again."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from journal_tools.forecast.chain import position
from journal_tools.forecast.kind import ClothKind
from journal_tools.forecast.observed import Reading
from journal_tools.forecast.slips import LIKELY, PER_UNIT, TURNED, Slip, slips_of
from journal_tools.ledger.chain import Measure
from journal_tools.ledger.laid import Laid
from journal_tools.ledger.state import IN_REED, SCOURED
from journal_tools.quantities import Length
from journal_tools.records.warp import Warp

if TYPE_CHECKING:
    from journal_tools.forecast.forecast import Forecast

EXPLAINED = 4.0
"""Squared distance, for each loss of a piece, below which its sizes belong together (judgement)."""

A_LIKELIER_SLIP = 0.5
"""How much more of that distance a likelier kind of slip may leave than the next (judgement)."""

A_SIZE_LIKE = (0.6, 1.1)
"""How one size of a piece may stand to another of the same direction, about (judgement)."""


@dataclass(frozen=True)
class Suspect:
    """One typed figure behind a reading.

    key: of the record. number: the figure in units of its first number, 18.25 for "18 1/4 in". unit: None for
    a count. of: how many figures the reading is the mean of. turned: the size in the other direction over
    this one, where both were measured.
    """

    reading: Reading
    key: str
    laid: Laid
    text: str
    number: float
    unit: str | None
    of: int = 1
    turned: float | None = None

    def place(self, warp: Warp) -> tuple[int, str]:
        """The line that it stands on, and the field."""
        for level in (self.laid.sizes, *self.laid.levels, warp):
            if line := level.line(self.key, self.key.split(" ")[0]):
                return line, f"{self.laid.name}: {self.key}" if self.laid.name else self.key
        return 0, self.key

    def slips(self) -> Iterator[Slip]:
        """What might have been meant, as a share of the reading."""
        if self.turned is not None:
            yield Slip(TURNED, self.turned, "Were width and length changed over?")
        for slip in slips_of(self.text, self.number, self.unit):
            yield Slip(slip.kind, 1 + (slip.share - 1) / self.of, slip.asks)


def suspects_of(laid: Laid, direction: str, behind: Mapping[Reading, Measure | None]) -> Iterator[Suspect]:
    """Every figure behind some readings of a piece. behind: None for warp measured and picks counted."""
    sizes = dict(laid.measured())
    for reading, measure in behind.items():
        if measure is None:
            used: Length | None = laid.levels[0].warp_used
            if reading.moment == "picks" and laid.picks is not None:
                yield Suspect(reading, "picks", laid, laid.picks.text, laid.picks.number, None)
            elif reading.moment == "warp" and used is not None:
                yield _length(reading, "warp_used", laid, used)
        elif measure.state == IN_REED:
            yield from _reed(reading, laid)
        elif (at := sizes.get(measure.state)) is not None and at.size is not None:
            typed = at.size.widths if direction == "width" else (at.size.length,)
            turned = _turned(measure, laid, direction)
            key = "fulling" if measure.state == SCOURED else measure.state.key
            for one in typed:
                if one is not None:
                    yield _length(reading, key, laid, one, len(typed), turned)


def _length(
    reading: Reading, key: str, laid: Laid, length: Length, of: int = 1, turned: float | None = None
) -> Suspect:
    number = float(length.mm) / PER_UNIT[length.unit]
    return Suspect(reading, key, laid, length.text, number, length.unit, of, turned)


def _reed(reading: Reading, laid: Laid) -> Iterator[Suspect]:
    width = laid.reed_width
    if width is not None and width.length is not None:
        yield _length(reading, "in_reed", laid, width.length)
    elif width is not None and width.dents is not None:
        yield Suspect(reading, "in_reed", laid, width.dents.text, width.dents.number, None)


def _turned(measure: Measure, laid: Laid, direction: str) -> float | None:
    """The size in the other direction over this one; None where it could hardly be this one's place.

    It could where this one would be about as long there as the other sizes are. Of cloth that opens, one
    of the two may lie folded: they were hardly changed over.
    """
    others = {
        state: at.size.length_mm if direction == "width" else at.size.width_mm
        for state, at in laid.measured()
        if at.size is not None
    }
    own = others.pop(measure.state, None)
    if own is None or laid.opens_by != 1:
        return None
    fits = all(A_SIZE_LIKE[0] < measure.mm / float(other) < A_SIZE_LIKE[1] for other in others.values() if other)
    return float(own) / measure.mm if fits else None


def likeliest(
    suspects: Sequence[Suspect], readings: Sequence[Reading], kind: ClothKind, forecast: Forecast
) -> tuple[Suspect, Slip] | None:
    """The slip that explains the readings of a piece on one yardstick; None where none does, or none is needed.

    A likelier kind of slip is believed before one that comes a little nearer.
    """
    distance = distance_of(kind, forecast)
    if distance(readings) < EXPLAINED:
        return None
    best: tuple[float, Suspect, Slip] | None = None
    for suspect in suspects:
        for slip in suspect.slips():
            meant = replace(suspect.reading, log=suspect.reading.log + math.log(slip.share))
            left = distance([meant if each is suspect.reading else each for each in readings])
            cost = left + A_LIKELIER_SLIP * LIKELY.index(slip.kind)
            if left < EXPLAINED and (best is None or cost < best[0]):
                best = cost, suspect, slip
    return None if best is None else best[1:]


def odd_one(readings: Sequence[Reading], kind: ClothKind, forecast: Forecast) -> Reading:
    """The reading without which the others fit best; the last where there are no three."""
    if len(readings) < 3:
        return readings[-1]
    distance = distance_of(kind, forecast)
    return min(readings, key=lambda out: distance([each for each in readings if each is not out]))


def distance_of(kind: ClothKind, forecast: Forecast) -> Callable[[Sequence[Reading]], float]:
    """A function of readings on one yardstick: their squared distance from what is expected, for each loss."""
    import numpy as np

    steps = forecast.steps(kind)
    mean = steps.weights @ steps.means
    off = steps.means - mean
    around = np.einsum("p,pkl->kl", steps.weights, steps.shared + steps.apart + off[:, :, None] * off[:, None, :])

    def distance(readings: Sequence[Reading]) -> float:
        at = np.array([position(forecast.direction, each.moment) for each in readings])
        tape = np.array([each.sd**2 for each in readings])
        logs = np.array([each.log for each in readings])
        ways = at[1:] - at[0]
        spread = ways @ around @ ways.T + np.diag(tape[1:]) + tape[0]
        strained = logs[1:] - logs[0] - ways @ mean
        return float(strained @ np.linalg.solve(spread, strained)) / len(strained)

    return distance
