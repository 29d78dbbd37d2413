"""The scale of a tape: torn where nothing happens, so that an eighth of an inch can be seen.

A tape from nought would draw a towel's states as five bars of the same length. So the scale
begins a little before the smallest size, and is torn again between sizes that lie far apart.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise
from math import ceil, floor

WHOLE_SPAN = {"in": 8, "cm": 16}
"""Up to this many units from smallest to largest, the tape is never torn in the middle."""
WORTH_TEARING = 0.3
"""A gap that is more than this part of the whole span is torn out: nothing happens there."""
TEAR = 30
"""How wide a tear is, in thousandths of the tape."""
ALL = 1000
"""Positions are given in thousandths of the tape's drawn width."""


@dataclass(frozen=True)
class Tick:
    """A tick of the tape: where it stands, in units and in thousandths, and its level.

    level 0 is a whole inch or centimetre; 1, 2 and 3 are halves, quarters and eighths of an
    inch, or half centimetres (1) and millimetres (2).
    """

    value: Fraction
    at: float
    level: int


@dataclass(frozen=True)
class TapeScale:
    """Runs of whole units that are drawn, with tears between them; unit "in" or "cm"."""

    unit: str
    runs: tuple[tuple[int, int], ...]

    @property
    def units(self) -> int:
        """How many whole units are drawn."""
        return sum(high - low for low, high in self.runs)

    @property
    def per_unit(self) -> float:
        """Thousandths of the tape for one unit."""
        return (ALL - TEAR * (len(self.runs) - 1)) / self.units

    def at(self, value: float | Fraction) -> float:
        """Where a size in units stands, in thousandths. Sizes outside are put at the ends."""
        start = 0.0
        for low, high in self.runs:
            if value <= high:
                return start + max(0.0, float(value - low)) * self.per_unit
            start += (high - low) * self.per_unit + TEAR
        return float(ALL)

    def tears(self) -> tuple[tuple[float, float], ...]:
        """Where the tears begin and end, in thousandths."""
        ends = [self.at(high) for _, high in self.runs[:-1]]
        return tuple((end, end + TEAR) for end in ends)

    def ticks(self, finest: int) -> tuple[Tick, ...]:
        """Every tick down to a level, both ends of each run included."""
        parts = levels(self.unit)[finest]
        # One unit's worth of fractions and levels: the ticks of every unit are alike.
        fractions = [Fraction(step, parts) for step in range(parts)]
        alike = [(each, float(each) * self.per_unit, level_of(each, self.unit)) for each in fractions]
        ticks = []
        start = 0.0
        for low, high in self.runs:
            for unit in range(low, high):
                before = start + (unit - low) * self.per_unit
                ticks += [Tick(unit + part, before + beyond, level) for part, beyond, level in alike]
            start += (high - low) * self.per_unit
            ticks.append(Tick(Fraction(high), start, 0))
            start += TEAR
        return tuple(ticks)

    def finest_within(self, most: int) -> int:
        """The finest level of ticks that gives no more than so many ticks."""
        fitting = [n for n, parts in enumerate(levels(self.unit)) if self.units * parts <= most]
        return max(fitting, default=0)

    def numbered(self, most: int, room: float) -> set[Fraction]:
        """The whole units that get a number: round ones, no more than so many, and one in every run.

        room: thousandths that a number needs to its right before the tape ends.
        """
        every = next(step for step in (1, 2, 5, 10, 20, 50, 100, 1000) if self.units <= step * most)
        chosen: set[Fraction] = set()
        for low, high in self.runs:
            round_ones = {Fraction(n) for n in range(low, high) if n % every == 0}
            chosen |= round_ones or {Fraction(low)}
        return {value for value in chosen if ALL - self.at(value) >= room}


def levels(unit: str) -> tuple[int, ...]:
    """Ticks to a unit at each level: halves, quarters, eighths; or half centimetres, millimetres."""
    return (1, 2, 10) if unit == "cm" else (1, 2, 4, 8)


def level_of(value: Fraction, unit: str) -> int:
    """The coarsest level on which a value has a tick."""
    return next(
        (n for n, parts in enumerate(levels(unit)) if (value * parts).denominator == 1),
        len(levels(unit)) - 1,
    )


def scale_for(values: Sequence[float], unit: str) -> TapeScale:
    """The scale that shows these sizes (in units, at least one of them)."""
    ordered = sorted(values)
    span = ordered[-1] - ordered[0]
    low, high = floor(ordered[0] - max(0.5, span / 16)), ceil(ordered[-1] + 0.1)
    low = max(low, 0)
    if high - low <= WHOLE_SPAN[unit]:
        return TapeScale(unit, ((low, high),))
    runs = []
    for smaller, larger in pairwise(ordered):
        end, begin = ceil(smaller + 0.4), floor(larger - 0.9)
        if larger - smaller > span * WORTH_TEARING and begin - end > 1:
            runs.append((low, end))
            low = begin
    return TapeScale(unit, (*runs, (low, high)))
