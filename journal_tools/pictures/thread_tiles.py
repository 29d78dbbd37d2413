"""How a thread looks at one crossing: lit across its roundness, dark where it dives.

A crossing looks alike wherever the thread on top lies the same way and its four neighbours are
alike, so there are only 32 kinds of it. Each is shaded once; a picture is put together from them.
"""

from __future__ import annotations

from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

OVER, ABOVE, BELOW, LEFT, RIGHT = 1, 2, 4, 8, 16
"""Bits of a crossing's kind: warp is on top here, and at the crossing above it, below it, …"""
KINDS = 32

LIGHT = (-0.36, -0.50, 0.79)
"""Where the light comes from, (right, down, towards the eye): from the upper left, as in drawings."""

_AMBIENT, _DIRECT = 0.53, 0.60  # so that thread lying flat on top has its yarn's own colour
_ROUND = 0.80  # how far a thread turns away from the eye at its edges
_SEAM = 0.24  # how much darker it is where it touches its neighbour
_DIVE = 0.55  # how far before the end of a float it begins to dip, in crossings
_STEEP = 0.60  # how far it turns away from the eye there
_UNDER = 0.30  # how much darker it is where it goes under


@lru_cache(maxsize=64)
def shaded_crossings(
    width: int, height: int, reach: int, light: tuple[float, float, float] = LIGHT
) -> NDArray[np.float64]:
    """Brightness of every kind of crossing, 1 for the yarn's own colour in full light.

    width, height: pixels an end and a pick take. reach: pixels that a warp thread on top spreads
    into a crossing beside it where weft is on top (warp-faced cloth), 0 to half the width.
    Shape (KINDS, height, reach + width + reach): the outer columns are what warp on top spreads
    into its neighbours; where weft is on top they mean nothing.
    """
    x = (np.arange(-reach, width + reach) + 0.5) / width
    y = (np.arange(height) + 0.5) / height
    spread = reach / width
    kinds = np.empty((KINDS, height, width + 2 * reach))
    for kind in range(KINDS):
        left, right = bool(kind & LEFT), bool(kind & RIGHT)
        above, below = bool(kind & ABOVE), bool(kind & BELOW)
        if kind & OVER:
            half = np.where(x < 0.5, 0.5 + spread * (not left), 0.5 + spread * (not right))
            across = np.clip((x - 0.5) / half, -1, 1)
            brightness = _thread(across, y, not above, not below, light)
        else:
            # The weft is seen from where the warp beside it stops spreading.
            start, end = spread * left, 1 - spread * right
            light_along = (light[1], light[0], light[2])
            along = (x - start) / max(end - start, 1 / width)
            brightness = _thread(2 * y - 1, along, left, right, light_along).T
        kinds[kind] = brightness
    kinds.flags.writeable = False  # it is kept, and given to everybody who asks
    return kinds


def _thread(
    across: NDArray[np.float64],
    along: NDArray[np.float64],
    rises: bool,
    dives: bool,
    light: tuple[float, float, float],
) -> NDArray[np.float64]:
    """Brightness of a thread on top, shape (along, across).

    across: -1 to 1 from edge to edge. along: 0 to 1 in the crossing. rises, dives: whether it
    comes up at the beginning of the crossing and goes under at its end. light: its direction
    (across, along, towards the eye).
    """
    dip_in = np.clip(1 - along / _DIVE, 0, 1) * rises
    dip_out = np.clip(1 - (1 - along) / _DIVE, 0, 1) * dives
    turn_across = _ROUND * across[None, :]
    turn_along = _STEEP * (dip_out - dip_in)[:, None]
    towards = np.sqrt(np.clip(1 - turn_across**2, 0.05, 1))
    length = np.sqrt(turn_across**2 + turn_along**2 + towards**2)
    facing = (turn_across * light[0] + turn_along * light[1] + towards * light[2]) / length
    lit = _AMBIENT + _DIRECT * np.clip(facing, 0, 1)
    shadow = (1 - _UNDER * dip_in**2)[:, None] * (1 - _UNDER * dip_out**2)[:, None]
    seam = 1 - _SEAM * np.abs(across[None, :]) ** 5
    result: NDArray[np.float64] = lit * shadow * seam
    return result
