"""What a weaver would say without any forecast, of the whole change from the records at hand."""

from __future__ import annotations

from collections.abc import Sequence
from statistics import fmean

import numpy as np

from journal_tools.forecast.kind import ClothKind
from journal_tools.forecast.observed import Observed

TEN_PER_CENT = float(np.log(0.9))


class Rivals:
    """The past changes between two moments, one a warp, as the tape had them."""

    def __init__(self, observed: Sequence[Observed], direction: str, first: str, last: str) -> None:
        self.width = direction == "width"
        ratios: dict[str, list[float]] = {}
        kinds: dict[str, ClothKind] = {}
        for piece in observed:
            logs = {reading.moment: reading.log for reading in piece.readings if reading.yardstick == "cloth"}
            if {first, last} <= logs.keys():
                ratios.setdefault(piece.warp, []).append(logs[last] - logs[first])
                kinds[piece.warp] = piece.kind
        self.past = [(kinds[warp], fmean(made)) for warp, made in ratios.items()]

    def ten_per_cent(self, kind: ClothKind) -> float:
        """The rule of thumb."""
        return TEN_PER_CENT

    def own_mean(self, kind: ClothKind) -> float:
        """What this yarn did on the mean of its warps; a new yarn: what all did; no warps: ten per cent."""
        own = [ratio for past, ratio in self.past if self._yarn(past) == self._yarn(kind)]
        return fmean(own or [ratio for _, ratio in self.past] or [TEN_PER_CENT])

    def last_alike(self, kind: ClothKind) -> float:
        """What the last warp in this yarn and weave did; where there is none, the yarn's own mean."""
        alike = [
            ratio for past, ratio in self.past if self._yarn(past) == self._yarn(kind) and past.weave == kind.weave
        ]
        return alike[-1] if alike else self.own_mean(kind)

    def _yarn(self, kind: ClothKind) -> str:
        """The yarn that runs the way that is measured."""
        return kind.weft_yarn if self.width else kind.warp_yarn


RIVALS = {"ten per cent": Rivals.ten_per_cent, "own mean": Rivals.own_mean, "last alike": Rivals.last_alike}
