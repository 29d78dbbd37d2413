"""Crimp and take-up of a strip: yarn unpicked from cloth at rest.

Another quantity than take-up on the loom, and 2 to 4 points larger than it: under tension the crimp
is pulled out (common practice, no source).

ASTM D3883: F is the yarn's length in the cloth, D its length straightened. Crimp = (D - F) / F, take-up
= (D - F) / D. ISO 7211-3 has crimp on the same base F.
"""

from __future__ import annotations


def crimp(in_cloth: float, straightened: float) -> float:
    """(D - F) / F, a fraction. Both lengths in one unit."""
    return (straightened - in_cloth) / in_cloth


def take_up(in_cloth: float, straightened: float) -> float:
    """(D - F) / D, a fraction. Both lengths in one unit."""
    return (straightened - in_cloth) / straightened


def crimp_from_take_up(taken: float) -> float:
    """The crimp c of a take-up t, fractions: c = t / (1 - t)."""
    return taken / (1 - taken)


def take_up_from_crimp(crimped: float) -> float:
    """The take-up t of a crimp c, fractions: t = c / (1 + c)."""
    return crimped / (1 + crimped)


def yarn_for(cloth: float, crimped: float) -> float:
    """The yarn that so much cloth holds, in the unit of the cloth: F (1 + c)."""
    return cloth * (1 + crimped)


def cloth_from(yarn: float, crimped: float) -> float:
    """The cloth that so much yarn weaves, in the unit of the yarn: D / (1 + c)."""
    return yarn / (1 + crimped)
