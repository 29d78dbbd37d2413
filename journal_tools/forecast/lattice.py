"""Points spread evenly in many dimensions, the same every time."""

from __future__ import annotations

import itertools

import numpy as np

from journal_tools.forecast.normal import quantile
from journal_tools.forecast.small import Floats

SKIPPED = 100  # the first points of a lattice lie on a line: in 36 dimensions one of them outweighs all others


def normal_points(pairs: int, dimensions: int) -> Floats:
    """Points with the first three moments of N(0, I), each followed by its negative (2 pairs × dimensions).

    The additive lattice of the roots of the primes (Richtmyer 1951) through the normal quantile, each
    point brought to the length √dimensions, near which nearly all of N(0, I) lies: so they count alike.
    """
    places = np.outer(np.arange(SKIPPED, SKIPPED + pairs), np.sqrt(_primes(dimensions))) % 1
    points = np.array([[quantile(place) for place in row] for row in places.tolist()])
    points *= np.sqrt(dimensions / np.sum(points**2, axis=1, keepdims=True))
    return np.stack([points, -points], axis=1).reshape(-1, dimensions)


def _primes(many: int) -> list[int]:
    found: list[int] = []
    for number in itertools.count(2):
        if len(found) == many:
            break
        if all(number % prime for prime in found):
            found.append(number)
    return found
