"""Figures of three by five pixels, for drawings whose cells are hardly larger."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

WIDE, HIGH = 3, 5

_ROWS = {
    "0": "### #.# #.# #.# ###",
    "1": ".#. ##. .#. .#. ###",
    "2": "### ..# ### #.. ###",
    "3": "### ..# .## ..# ###",
    "4": "#.# #.# ### ..# ..#",
    "5": "### #.. ### ..# ###",
    "6": "### #.. ### #.# ###",
    "7": "### ..# ..# .#. .#.",
    "8": "### #.# ### #.# ###",
    "9": "### #.# ### ..# ###",
}


def number_mask(number: int, scale: int = 1) -> NDArray[np.bool_]:
    """A number, True where it is inked: shape (5 × scale, 4 × scale for each figure, less one)."""
    figures = [
        np.array([[dot == "#" for dot in row] for row in _ROWS[figure].split()], dtype=bool) for figure in str(number)
    ]
    gap = np.zeros((HIGH, 1), dtype=bool)
    parts = [part for figure in figures for part in (figure, gap)][:-1]
    return np.concatenate(parts, axis=1).repeat(scale, axis=0).repeat(scale, axis=1)
