"""Ends in each space of a raddle, so that the warp is spread on the beam as it will stand in the reed."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import pairwise
from math import floor

from journal_tools.dressing.sleyed import Sleyed

SPACES = {"in": Fraction(127, 10), "cm": Fraction(10)}
"""Millimetres of a raddle's space: 1/2 in or 1 cm (common practice, no source)."""


def raddle_of(sleyed: Sleyed, unit: str) -> tuple[int, ...]:
    """Ends in each space from the first end on; together they are all of them. unit: "in" or "cm".

    A dent that lies over the edge of a space gives to each its share. Floating selvedges are not
    counted: they are not beamed with the rest.
    """
    space = SPACES[unit]
    told = [0, *map(_half_up, _before_each_edge(sleyed, space))]
    return tuple(after - before for before, after in pairwise(told))


def _before_each_edge(sleyed: Sleyed, space: Fraction) -> Iterator[Fraction]:
    """Ends, and parts of ends, that lie before the edge of each space."""
    at = ends = Fraction(0)
    edge = space
    for band in sleyed.bands:
        wide = 1000 / band.reed
        for held in band.held:
            until = at + wide
            while edge <= until:
                yield ends + held * (edge - at) / wide
                edge += space
            at, ends = until, ends + held
    if edge - space < at:
        yield ends


def _half_up(number: Fraction) -> int:
    return floor(number + Fraction(1, 2))
