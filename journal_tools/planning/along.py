"""The length of a plan: what each piece is woven to, what comes of it, and the risk of coming up short."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

from journal_tools.planning import arithmetic as sums
from journal_tools.planning.allowances import RISK, RISK_LEAST, RISK_MENDED
from journal_tools.planning.knowing import Belief
from journal_tools.planning.wants import WantedPiece

LOW, HIGH = 0.05, 0.95
"""Between these quantiles lie nine in ten."""
MOST_STEPS = 400


@dataclass(frozen=True)
class Expected:
    """A size in mm with the range that nine in ten batches lie in, and its worst piece's.

    worst: the size that the smallest piece of the batch is under only once in twenty.
    """

    mm: float
    low: float
    high: float
    worst: float

    @property
    def doubt(self) -> float:
        """Half the range, over the size."""
        return (self.high - self.low) / 2 / self.mm


@dataclass(frozen=True)
class Risk:
    """How often the smallest of a batch comes up under a limit, and what a little more would do.

    more_mm: to add to each piece under tension; after: the chance then. Both None when no more is needed.
    stated: whether the limit is the weaver's own.
    """

    limit_mm: float
    chance: float
    more_mm: float | None
    after: float | None
    stated: bool


def expected(start_mm: float, belief: Belief, hems_mm: float, count: int) -> Expected:
    """What becomes of a size: start x e^belief - hems, in the middle, nine times in ten, and the worst of `count`."""

    def size(log_ratio: float) -> float:
        return start_mm * math.exp(log_ratio) - hems_mm

    of: Literal["piece", "batch"] = "batch" if count > 1 else "piece"  # the mean of one piece is the piece
    return Expected(
        size(belief.mean),
        size(belief.quantile(LOW, of=of)),
        size(belief.quantile(HIGH, of=of)),
        size(belief.worst(LOW, count)),
    )


def risk_of(
    start_mm: float, belief: Belief, hems_mm: float, count: int, step: float, least_mm: float | None
) -> Risk | None:
    """The risk that the smallest piece comes up short; None where it is under 1 in 20 already.

    start_mm: length on the loom. hems_mm: washed cloth that the hems take. step: what a ribbon is read
    to. least_mm: the shortest that will do; else the size, to the step, that 1 in 6 is under.
    """

    def chance(more: float, limit: float) -> float:
        return belief.chance_worst_below(math.log((limit + hems_mm) / (start_mm + more)), count)

    limit = least_mm
    if limit is None:
        limit = sums.downward(start_mm * math.exp(belief.worst(RISK, count)) - hems_mm, step)
        if limit <= 0:
            return None  # smaller than a ribbon shows, or nothing but hem
        while chance(0, limit) < RISK * RISK_LEAST:  # a coarse step can fall far below
            limit += step
    if limit + hems_mm <= 0:
        return None  # nothing is never too short
    now = chance(0, limit)
    if now <= RISK_MENDED:
        return None if least_mm is None else Risk(limit, now, None, None, True)
    steps = 1
    while chance(steps * step, limit) > RISK_MENDED and steps < MOST_STEPS:
        steps += 1
    after = chance(steps * step, limit)
    if after > RISK_MENDED:  # no such piece comes of this warp, however much is woven
        return Risk(limit, now, None, None, least_mm is not None)
    return Risk(limit, now, steps * step, after, least_mm is not None)


def woven_length(piece: WantedPiece, belief: Belief, hem_ratio: float) -> float | None:
    """Length on the loom, tension on, of one piece, before it is rounded; None where no length is wanted."""
    if piece.length_mm is None:
        return None
    return sums.weave_to(sums.cloth_for(piece.length_mm, piece.hems_mm[1], hem_ratio), math.exp(belief.mean))
