"""Sizes that can hardly be so: wider than they stood in the reed, grown, or lost beyond belief.

Each is asked about, and until the weaver has accepted it no loss that begins or ends at it counts in
an average: one size typed in centimetres would spoil the mean of ten warps.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from journal_tools.ledger.chain import Measure, losses
from journal_tools.ledger.state import IN_REED, MADE_UP

WIDER = "washed-wider-than-reed"
GREW = "grew"
LOST = "lost-too-much"
SLUGS = (WIDER, GREW, LOST)

MOST_LOST = 0.40
"""A waffle loses 18 to 28 %, seldom a third (common practice, no source): more is a slip of the pen."""

MOST_FULLED = 0.60
"""Felted woollens lose up to 45 % (common practice, no source)."""


@dataclass(frozen=True)
class Doubt:
    """One size that can hardly be so, held against another.

    slug: what is asked. out: the sizes that count for nothing until it is accepted.
    """

    slug: str
    size: Measure
    against: Measure
    out: tuple[Measure, ...]


def doubts_of(chain: Sequence[Measure], direction: str, steered: bool) -> tuple[Doubt, ...]:
    """Every doubt about the sizes of one piece in one direction, "width" or "length".

    steered: whether it was fulled to size.
    """
    sizes = [each for each in chain if each.state != MADE_UP]
    wider = _wider(sizes) if direction == "width" else None
    found = [*([wider] if wider else []), *_grown(sizes)]
    return (*found, *(_lost(sizes, steered) if not found else ()))


def _wider(sizes: Sequence[Measure]) -> Doubt | None:
    reed = next((each for each in sizes if each.state == IN_REED), None)
    if reed is None:
        return None
    cloth = [each for each in sizes if each.yardstick == "cloth" and each is not reed]
    wider = [each for each in cloth if each.mm > reed.mm + each.u_mm]
    if not wider:
        return None
    return Doubt(WIDER, wider[-1], reed, (reed,) if len(wider) == len(cloth) else tuple(wider))


def _grown(sizes: Sequence[Measure]) -> Iterator[Doubt]:
    for before, after in itertools.pairwise(sizes):
        if before.yardstick != after.yardstick or before.state == IN_REED:
            continue
        if after.mm - before.mm > (before.u_mm**2 + after.u_mm**2) ** 0.5:
            yield Doubt(GREW, after, before, (after,))


def _lost(sizes: Sequence[Measure], steered: bool) -> Iterator[Doubt]:
    most = MOST_FULLED if steered else MOST_LOST
    for loss in losses(sizes):
        if loss.loss > most and not loss.joined:
            yield Doubt(LOST, loss.last, loss.first, (loss.last,))
            return
