"""A memory whose answers are known: normal beliefs with a loss for each span, for plans worked by hand."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, field

from journal_tools.forecast.chain import position
from journal_tools.forecast.kind import ClothKind
from journal_tools.forecast.observed import Observed
from journal_tools.planning.knowing import Normal

LOSSES = {
    "width": {"draw-in": 0.04, "relaxation": 0.01, "wash": 0.06, "settling": 0.01},
    "length": {"take-up": 0.06, "pick": 0.0, "relaxation": 0.02, "wash": 0.06, "settling": 0.01},
}
"""What every step takes."""


@dataclass(frozen=True)
class Rests:
    """What it claims to rest on."""

    basis: str = "yarn and weave"
    yarn_warps: Sequence[str] = ("one", "two")
    weave_warps: Sequence[str] = ("one", "two", "three")
    both: Sequence[str] = ("one",)
    heaviest: str = "one"


@dataclass
class Knows:
    """Sure of each loss but for `shared` and `own`, and of half of that once it has seen a piece."""

    shared: float = 0.02
    own: float = 0.005
    rests: Rests = field(default_factory=Rests)

    def belief(
        self, direction: str, kind: ClothKind, first: str, last: str, *, seen: Sequence[Observed] = ()
    ) -> Normal:
        """The sum of the steps."""
        steps = list(LOSSES[direction].values())
        way = [b - a for a, b in zip(position(direction, first), position(direction, last), strict=True)]
        mean = sum(part * math.log(1 - loss) for part, loss in zip(way, steps, strict=True))
        return Normal(mean, self.shared / (2 if seen else 1), self.own)

    def rests_on(self, direction: str, kind: ClothKind, first: str, last: str) -> Rests:
        """Always the same."""
        return self.rests
