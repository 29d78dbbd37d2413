"""What a plan holds: of each stretch, and of the warp as a whole."""

from __future__ import annotations

from dataclasses import dataclass

from journal_tools.planning.across import Across
from journal_tools.planning.knowing import RestsOn
from journal_tools.planning.limits import Limit
from journal_tools.planning.pace import Hours
from journal_tools.planning.planned_piece import PlannedPiece as PlannedPiece
from journal_tools.planning.sample import Sample
from journal_tools.planning.wants import WantedStretch, Wants
from journal_tools.planning.warp_length import WarpLength
from journal_tools.planning.yarn_needs import YarnNeed


@dataclass(frozen=True)
class PlannedStretch:
    """What shares a threading. rests_on: of the width; fulled: of how many fulled warps the end sizes are, or None."""

    wanted: WantedStretch
    across: Across
    pieces: tuple[PlannedPiece, ...]
    rests_on: RestsOn
    limits: tuple[Limit, ...]
    take_up: float
    take_up_high: float
    fulled: int | None
    sample: Sample | None


@dataclass(frozen=True)
class Plan:
    """One warp planned. length: line by line; long_mm: what to wind should it take up as much as it may.

    seen: how many pieces of the very warp were measured already, and counted. washed: whether one of
    them was washed. left_out: stretches of the record for which nothing is planned.
    """

    wants: Wants
    stretches: tuple[PlannedStretch, ...]
    length: WarpLength
    long_mm: float
    yarns: tuple[YarnNeed, ...]
    hours: Hours | None
    seen: int
    washed: bool = False
    left_out: tuple[str, ...] = ()

    @property
    def ends(self) -> int:
        """Ends of the widest stretch."""
        return max(each.across.ends for each in self.stretches)

    @property
    def costs(self) -> dict[str, float]:
        """Cost of the yarn used, by currency; "" where none is named."""
        found: dict[str, float] = {}
        for yarn in self.yarns:
            if yarn.cost is not None:
                found[yarn.currency] = found.get(yarn.currency, 0.0) + yarn.cost
        return found
