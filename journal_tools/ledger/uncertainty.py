"""How well a size is known, and so a loss. Every ± in the journal is k = 2.

JCGM 100:2008 F.2.2.1: a reading to the nearest mark d has the standard uncertainty d/√12. Cloth
wanders more than a tape, so a size of cloth is never called better than a floor: 1/8 in (3 mm) in
width, 1/4 in in 30 in (6 mm in 75 cm) in length. The floor is common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from fractions import Fraction

from journal_tools.quantities import Length

INCH_UNITS = ("in", "ft", "yd")
WIDTH_FLOOR_MM = {True: 25.4 / 8, False: 3.0}
LENGTH_FLOOR = {True: (1 / 4) / 30, False: 6 / 750}
LADDERS = {
    True: [Fraction(254, 10) / part for part in (1, 2, 4, 8, 16, 32, 64)],
    False: [Fraction(10), Fraction(1), Fraction(1, 2)],
}
"""Marks that tapes have, in mm, coarse to fine: for inches and for metric."""
USUAL_MARK_MM = {True: Fraction(254, 80), False: Fraction(1)}


def in_inches(length: Length) -> bool:
    """Whether it was measured with an inch tape."""
    return length.unit in INCH_UNITS


def tape_mark_mm(readings: Iterable[Length], inches: bool) -> Fraction:
    """The finest mark that these readings show, in mm: the coarsest on which all of them lie.

    A figure written to a finer mark of the tape, such as 46.0 cm, shows that mark too. "About"
    shows none. The usual mark, 1/8 in or 1 mm, where there is no reading in this system.
    """
    own = [reading for reading in readings if in_inches(reading) is inches and not reading.about]
    if not own:
        return USUAL_MARK_MM[inches]
    ladder = LADDERS[inches]
    lie_on = next((mark for mark in ladder if all((each.mm / mark).denominator == 1 for each in own)), ladder[-1])
    return min([lie_on, *(each.mark for each in own if each.mark in ladder)])


def mark_of(reading: Length, tape_mm: Fraction) -> Fraction:
    """The mark a reading was taken to: the tape's, or for "about 18" the finest that was typed."""
    return max(tape_mm, reading.mark) if reading.about else tape_mm


def tape_unit(unit: str) -> str:
    """The unit that a tape is marked in: a piece of 2 1/2 yd is 90 in on it."""
    if unit in INCH_UNITS:
        return "in"
    return unit if unit == "mm" else "cm"


def reading_uncertainty_mm(mark_mm: Fraction) -> float:
    """U (k = 2) of one reading to the nearest mark, in mm."""
    return 2 * float(mark_mm) / math.sqrt(12)


def cloth_uncertainty_mm(readings: Sequence[Length], direction: str, mark_mm: Fraction) -> float:
    """U (k = 2) of a size of cloth, in mm; readings are of the same size, one or more.

    Several widths of one piece count by their scatter: 2 s/√n, when that is the largest.
    """
    mean = sum(float(reading.mm) for reading in readings) / len(readings)
    inches = in_inches(readings[0])
    floor = WIDTH_FLOOR_MM[inches] if direction == "width" else LENGTH_FLOOR[inches] * mean
    scatter = 0.0
    if len(readings) > 1:
        squares = sum((float(reading.mm) - mean) ** 2 for reading in readings)
        scatter = 2 * math.sqrt(squares / (len(readings) - 1) / len(readings))
    return max(reading_uncertainty_mm(mark_mm), floor, scatter)


def ratio_uncertainty(ratio: float, relative: Iterable[float]) -> float:
    """U of a ratio made by multiplying and dividing sizes, from their relative U (JCGM 100 section 5.1.6)."""
    return ratio * math.sqrt(sum(each**2 for each in relative))
