"""The normal, Student and gamma laws that the forecast needs, without the half second of a large package."""

from __future__ import annotations

import math
from functools import cache
from statistics import NormalDist

import numpy as np

from journal_tools.forecast.small import Floats

_REACH = 9.0  # Φ(−9) is 1e-19
_CELLS = 4096
_STEP = 2 * _REACH / _CELLS
_AT = np.linspace(-_REACH, _REACH, _CELLS + 1)
_CDF = np.array([math.erfc(-x / math.sqrt(2)) / 2 for x in _AT.tolist()])
_SLOPE = np.exp(-(_AT**2) / 2) / math.sqrt(2 * math.pi) * _STEP


def below(z: Floats) -> Floats:
    """Φ(z), by cubics between 4,097 values of erfc that meet its slopes: right to 1e-12."""
    place = (np.clip(z, -_REACH, _REACH) + _REACH) / _STEP
    cell = np.minimum(place.astype(np.intp), _CELLS - 1)
    t = place - cell
    low, high, rise, fall = _CDF[cell], _CDF[cell + 1], _SLOPE[cell], _SLOPE[cell + 1]
    found: Floats = low + t * (rise + t * (3 * (high - low) - 2 * rise - fall + t * (2 * (low - high) + rise + fall)))
    return found


def density(z: Floats) -> Floats:
    """The standard normal density."""
    found: Floats = np.exp(-(z**2) / 2) / math.sqrt(2 * math.pi)
    return found


def quantile(p: float) -> float:
    """z with Φ(z) = p."""
    return NormalDist().inv_cdf(p)


def t7_beyond(t: float) -> float:
    """Chance that Student's t with 7 degrees of freedom is further from 0 than t, either way.

    The closed form for odd degrees of freedom (Abramowitz and Stegun 26.7.3).
    """
    angle = math.atan(abs(t) / math.sqrt(7))
    cos = math.cos(angle)
    inside = angle + math.sin(angle) * (cos + 2 / 3 * cos**3 + 8 / 15 * cos**5)
    return max(0.0, 1 - 2 / math.pi * inside)


def gamma_below(x: float, shape: float) -> float:
    """Chance that a gamma variable of a shape and scale 1 is below x: the series (A. and S. 6.5.29)."""
    if x <= 0:
        return 0.0
    term = total = 1.0 / shape
    n = 0
    while term > total * 1e-15:
        n += 1
        term *= x / (shape + n)
        total += term
    return total * math.exp(shape * math.log(x) - x - math.lgamma(shape))


@cache
def t_weights_of(nu: float, many: int) -> tuple[float, ...]:
    """Equally likely weights λ ~ χ² / ν of Student's t, the middle one of each of `many` parts.

    With ν infinite, the normal law: λ = 1 and nothing else.
    """
    if math.isinf(nu):
        return (1.0,)
    found = []
    for part in range(many):
        low, high = 0.0, nu / 2 + 20 * math.sqrt(nu) + 20
        for _ in range(100):
            middle = (low + high) / 2
            low, high = (middle, high) if gamma_below(middle, nu / 2) < (part + 0.5) / many else (low, middle)
        found.append(low * 2 / nu)
    return tuple(found)
