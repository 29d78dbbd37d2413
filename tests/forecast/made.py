"""Small journals for the tests of the forecast: pieces from losses in points, and random ones."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence

import numpy as np

from journal_tools.forecast.chain import MOMENTS, STEPS, position
from journal_tools.forecast.kind import ClothKind
from journal_tools.forecast.observed import Observed, Reading

PLAIN = ClothKind("plain weave", "cotton 8/2", "cotton 8/2", "cotton", "cotton", "machine 40", 0.75, 2020)
FINE = 1e-4


def piece(
    warp: str, losses: Mapping[str, float], kind: ClothKind = PLAIN, sd: float = 0.002, name: str = "1", to: float = 500
) -> Observed:
    """A piece with so many points of change between neighbouring moments, the first of them `to` mm.

    losses: what ln(this / the moment before it in the mapping) is, in points; the first is 0.
    """
    log, readings = math.log(to), []
    for moment, points in losses.items():
        log += points / 100
        readings.append(Reading(moment, log, sd))
    return Observed(warp, name, kind, tuple(readings))


def random_journal(
    direction: str, warps: int, seed: int, two_kinds: float = 0.2, undated: float = 0.2
) -> list[Observed]:
    """Pieces with gaps, marks, undated warps, and warps of two kinds of cloth, four years in turn, made up."""
    rng = np.random.default_rng(seed)
    steps = len(STEPS[direction])
    found = []
    for warp in range(warps):
        kinds = [_kind(rng, undated, 2015 + warp % 4)]
        if rng.random() < two_kinds:
            kinds.append(_kind(rng, undated, 2015 + warp % 4))
        for number in range(2):
            change = -0.04 + 0.02 * rng.standard_normal(steps)
            moments = [moment for moment in MOMENTS[direction] if rng.random() < 0.6]
            readings = _read(direction, moments, change, rng, "cloth")
            if rng.random() < 0.2:
                readings += _read(direction, ["off_loom", "washed 1"], change, rng, "marks")
            found.append(Observed(f"warp {warp}", f"{number}", kinds[number % len(kinds)], tuple(readings)))
    return found


def _read(
    direction: str, moments: Sequence[str], change: np.ndarray, rng: np.random.Generator, yardstick: str
) -> list[Reading]:
    sds = (0.002, 0.004, 0.001)
    return [
        Reading(moment, 6 + float(np.dot(position(direction, moment), change)), float(rng.choice(sds)), yardstick)
        for moment in moments
    ]


def _kind(rng: np.random.Generator, undated: float, year: int) -> ClothKind:
    warp, weft = (f"yarn {rng.integers(4)}" for _ in range(2))
    close = None if rng.random() < 0.2 else float(0.75 * math.exp(0.15 * rng.standard_normal()))
    dated = None if rng.random() < undated else year
    return ClothKind(
        f"weave {rng.integers(2)}", warp, weft, f"fibre {warp[-1]}", f"fibre {weft[-1]}", f"wash {rng.integers(2)}",
        close, dated,
    )  # fmt: skip
