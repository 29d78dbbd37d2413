"""What the forecast looks at in a cloth: yarns, weave, finish, closeness and year."""

from __future__ import annotations

import math
from dataclasses import dataclass

CENTRE = 0.75  # a working sett is about three quarters of the greatest one (Ashenhurst's practice)
PER_UNIT = 0.1  # one unit of the covariate is 10 % closer
CLIP = 4.0  # beyond half or one and a half times the centre a straight line says nothing


@dataclass(frozen=True)
class ClothKind:
    """One kind of cloth. "" and None say that nobody knows.

    Names are those of the records, or whatever stands for them: they are compared and nothing more.
    finish: the recipe of the wash. closeness: ends per length in the reed over the greatest sett
    that the yarn can have in that weave. year: in which it is, or was, woven.
    """

    weave: str = ""
    warp_yarn: str = ""
    weft_yarn: str = ""
    warp_fibre: str = ""
    weft_fibre: str = ""
    finish: str = ""
    closeness: float | None = None
    year: int | None = None


def covariate(closeness: float | None) -> float:
    """Closeness as the forecast uses it: 0 at the centre and where unknown, +1 for each 10 % closer."""
    if closeness is None or not closeness > 0:
        return 0.0
    return min(CLIP, max(-CLIP, math.log(closeness / CENTRE) / PER_UNIT))
