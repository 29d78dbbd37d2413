"""A sample: what it costs in warp, and how much doubt its wash would take away, before it is woven."""

from __future__ import annotations

from dataclasses import dataclass

from journal_tools.forecast.kind import ClothKind
from journal_tools.forecast.observed import Observed, Reading
from journal_tools.planning import arithmetic as sums
from journal_tools.planning.allowances import SAMPLE, WORTH_A_SAMPLE
from journal_tools.planning.along import HIGH, LOW, Expected
from journal_tools.planning.knowing import Belief, Knows

CLOTH_SD = 25.4 / 16
"""Standard uncertainty of a width of cloth in mm: cloth wanders 1/8 in (k = 2) however it is read."""


@dataclass(frozen=True)
class Sample:
    """One washed sample. All in mm. warp: what it costs; now, then: half the nine-in-ten range of the
    width without it and with it. worth: whether it takes enough of the doubt to be spoken of."""

    woven: float
    warp: float
    now: float
    then: float
    worth: bool


def sample_of(
    memory: Knows,
    kind: ClothKind,
    moment: str,
    now: Belief,
    expect: Expected,
    reed_mm: float,
    take_up: float,
    retie: float,
    tape: float,
) -> Sample:
    """What a sample of the usual length would do for the width at a moment.

    A belief's spread hardly depends on what is read, so the sample is taken to read what is expected.
    now: the belief without it, and expect the size it gives from reed_mm, the opened width in the reed.
    """
    readings = (
        Reading("in_reed", 0.0, 0.0),
        Reading(moment, now.mean, max(tape / 12**0.5, CLOTH_SD) / reed_mm),
    )
    seen = [Observed(".sample", "sample", kind, readings)]
    after = memory.belief("width", kind, "in_reed", moment, seen=seen)
    half = (expect.high - expect.low) / 2
    share = _range(after) / _range(now)
    return Sample(SAMPLE, sums.warp_for(SAMPLE, take_up) + retie, half, half * share, share < WORTH_A_SAMPLE)


def _range(belief: Belief) -> float:
    return belief.quantile(HIGH, of="batch") - belief.quantile(LOW, of="batch")
