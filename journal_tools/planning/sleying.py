"""Which reed, and how many ends in each dent: the sett that a reed can truly give."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass

from journal_tools.planning.arithmetic import sett_of

MOST_IN_A_DENT = 6
LONGER = {1: 0.0, 2: 0.01, 3: 0.02, 4: 0.035}
"""What a longer sley order weighs against a sett that is off by as much: it is slower and streaks more."""
CROWDED = 0.002
"""What each end in the fullest dent weighs, so that of two equal setts the finer reed is taken."""
STREAKS = 0.02
"""What each end beyond three in a dent weighs, and an empty dent: they show as reed marks."""


@dataclass(frozen=True)
class Sleying:
    """A reed with its sley order. dents_per_m: of the reed. order: ends in each dent.

    sett: ends to the metre that it truly gives. off: true / wanted - 1.
    """

    dents_per_m: float
    order: tuple[int, ...]
    sett: float
    off: float

    @property
    def written(self) -> str:
        """The order as a record has it: `2`, `1-2`."""
        return "-".join(map(str, self.order))


def orders() -> tuple[tuple[int, ...], ...]:
    """Sley orders that hands can keep: up to four dents, each with `few` ends or one more."""
    found: list[tuple[int, ...]] = [(few,) for few in range(1, MOST_IN_A_DENT + 1)]
    for few in range(MOST_IN_A_DENT):
        many = few + 1
        for dents in (2, 3, 4):
            for full in {1, dents - 1}:
                order = (few,) * (dents - full) + (many,) * full
                found.append(order if few else order[::-1])
    return tuple(sorted(found, key=lambda order: (len(order), order)))


_ORDERS = orders()


def sleyings(wanted_per_m: float, reeds: Iterable[float]) -> tuple[Sleying, ...]:
    """The best sley order in each reed, the best reed first.

    wanted_per_m: ends to the metre. reeds: dents to the metre. A sley order costs the amount by
    which its sett is off, and a little for being long, crowded or gappy (judgement).
    """
    best = []
    for dents in dict.fromkeys(reeds):
        order = min(_ORDERS, key=lambda order: _cost(wanted_per_m, dents, order))
        sett = sett_of(dents, order)
        best.append((_cost(wanted_per_m, dents, order), Sleying(dents, order, sett, sett / wanted_per_m - 1)))
    return tuple(sleying for _, sleying in sorted(best, key=lambda pair: (round(pair[0], 9), -pair[1].dents_per_m)))


def _cost(wanted: float, dents: float, order: tuple[int, ...]) -> float:
    fullest = max(order)
    fuss = LONGER[len(order)] + CROWDED * fullest + STREAKS * max(0, fullest - 3) + STREAKS * (0 in order)
    return abs(math.log(sett_of(dents, order) / wanted)) + fuss
