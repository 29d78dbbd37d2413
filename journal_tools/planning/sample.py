"""A sample: what it costs in warp, and how much doubt its wash would take away, before it is woven.

A belief's spread hardly depends on what is read, so a sample is taken to read what is expected, and
the belief that has seen it says how much doubt is left.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from journal_tools.forecast.kind import ClothKind
from journal_tools.forecast.observed import Observed, Reading
from journal_tools.planning import arithmetic as sums
from journal_tools.planning.allowances import SAMPLE, SAMPLE_FOR_LENGTH, WORTH_A_SAMPLE
from journal_tools.planning.along import HIGH, LOW, Expected
from journal_tools.planning.knowing import Belief, Knows

CLOTH_SD = 25.4 / 16
"""Standard uncertainty of a width of cloth in mm: cloth wanders 1/8 in (k = 2) however it is read."""


LENGTH_SHARE = (1 / 4) / 30 / 2
"""Standard uncertainty of a length of cloth, as a share: 1/4 in in 30 in (k = 2)."""


@dataclass(frozen=True)
class Doubt:
    """Half a nine-in-ten range in mm, without a sample and with one."""

    now: float
    then: float


@dataclass(frozen=True)
class Sample:
    """One washed sample. All in mm. warp: what it costs; now, then: the doubt of the width without it and with it.

    worth: whether it takes enough of the doubt to be spoken of. length: the doubt of the length, None
    for a sample that is too short to tell it.
    """

    woven: float
    warp: float
    now: float
    then: float
    worth: bool
    length: Doubt | None = None


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
    woven: float = SAMPLE,
) -> Sample:
    """What a sample would do for the width at a moment.

    now: the belief without it, and expect the size it gives from reed_mm, the opened width in the reed.
    woven: the sample's length on the loom in mm. tape: the mark it is read to.
    """
    readings = (
        Reading("in_reed", 0.0, 0.0),
        Reading(moment, now.mean, max(tape / 12**0.5, CLOTH_SD) / reed_mm),
    )
    seen = [Observed(".sample", "sample", kind, readings)]
    after = memory.belief("width", kind, "in_reed", moment, seen=seen)
    half = (expect.high - expect.low) / 2
    share = _share(after, now)
    return Sample(woven, sums.warp_for(woven, take_up) + retie, half, half * share, share < WORTH_A_SAMPLE)


def length_doubt(
    memory: Knows, kind: ClothKind, moment: str, now: Belief, expect: Expected, tape: float, woven: float
) -> Doubt | None:
    """What a sample would do for the length of the pieces; None where it is too short to say.

    now: the belief of washed / loom without it, and expect the length that it gives.
    """
    if woven < SAMPLE_FOR_LENGTH:
        return None
    read = math.hypot(tape / 12**0.5 / woven, LENGTH_SHARE)
    readings = (Reading("on_loom", 0.0, read), Reading(moment, now.mean, read))
    seen = [Observed(".sample", "sample", kind, readings)]
    after = memory.belief("length", kind, "on_loom", moment, seen=seen)
    half = (expect.high - expect.low) / 2
    return Doubt(half, half * _share(after, now))


def _share(after: Belief, now: Belief) -> float:
    """The range that is left, as a share; all of it where there was none."""
    before = _range(now)
    return _range(after) / before if before else 1.0


def _range(belief: Belief) -> float:
    return belief.quantile(HIGH, of="batch") - belief.quantile(LOW, of="batch")
