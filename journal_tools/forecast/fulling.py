"""Cloth that is fulled to size: how many minutes it takes, and what becomes of its length meanwhile.

The loss of fulled cloth is the weaver's decision, so that it is no habit of the yarn; the time is. What a
cloth has lost after t minutes, counted from when it was only scoured, is taken as

    ln(ln(scoured / now)) = a + b ln(t / 8) + u + e

u: one tub differs from another in water, soap and treading. e: the tape, and a piece that is not square.
b is above 1 where felt comes slowly and then quickly. Length against width is the ratio of their logs:
r + v + f, with v and f the same two. a, b and r are normal; the sd of u or v is averaged over a
small grid. All the figures below are judgement, and the first few cloths overrule them. Nothing is
promised beyond the longest time that was ever tried: what comes back says so.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

from journal_tools.forecast.cloth_kind import fibre_of, most_threads
from journal_tools.ledger.chain import chain_of
from journal_tools.ledger.laid import Laid
from journal_tools.ledger.ledger import Ledger, ledger_of
from journal_tools.ledger.ledger import learned as may_learn
from journal_tools.ledger.state import SCOURED
from journal_tools.records import Journal
from journal_tools.records.yarns_used import find_yarn, warp_threads

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

USUAL_MINUTES = 8.0
"""The time about which the line is laid: most cloth has begun to felt by then."""

LOST_BY_THEN = (math.log(0.10), 0.8)
"""ln of what is lost in 8 minutes, and its sd: a tenth, and from half to twice that is common."""

STEEPNESS = (1.2, 0.3)
"""b: a little faster as it goes on."""

LENGTH_TO_WIDTH = (1.0, 0.3)
"""r: wool fulls about as much one way as the other."""

TUBS = (0.15, 0.25, 0.4, 0.65)
"""Sds of u that are averaged over: tubs alike to a seventh, or as different as two to one."""

SHAPES = (0.06, 0.1, 0.17, 0.3)
"""Sds of v that are averaged over."""

CHECK, SHAPE_CHECK = 0.08, 0.05
"""Sds of e and f beside the tape's."""

OTHER_YARN = 2.0
"""How much wider the sd between tubs is taken where only other yarns were fulled."""


@dataclass(frozen=True)
class Check:
    """One look into the tub. lost: ln(scoured / now), above 0, by direction. sd: its tape, k = 1."""

    minutes: float
    lost: Mapping[str, float]
    sd: Mapping[str, float]


@dataclass(frozen=True)
class FulledCloth:
    """One cloth that was fulled with a watch: its warp, yarn and fibre, and its checks in order."""

    warp: str
    piece: str
    yarn: str
    fibre: str
    checks: tuple[Check, ...]


@dataclass(frozen=True)
class Range:
    """What is likely, with the two ends that hold nine times in ten."""

    likely: float
    least: float
    most: float


def fulled_cloths(journal: Journal, ledgers: Mapping[str, Ledger] | None = None) -> tuple[FulledCloth, ...]:
    """Every cloth of the journal that has checks of its fulling and its size when only scoured."""
    known = ledgers if ledgers is not None else {}
    found = []
    for name, warp in sorted(journal.warps.items()):
        if not any(level.fulling for stretch in warp.woven() for level in (warp, stretch, *stretch.pieces)):
            continue
        ledger = known.get(name) or ledger_of(journal, warp)
        wound = most_threads(warp_threads(journal, warp))
        for piece in ledger.pieces:
            checks = tuple(_checks(piece.laid, ledger))
            if checks and wound is not None:
                found.append(FulledCloth(name, piece.name, wound.name, fibre_of(wound.record), checks))
    return tuple(found)


def _checks(laid: Laid, ledger: Ledger) -> Iterable[Check]:
    lost: dict[float, dict[str, float]] = {}
    sds: dict[float, dict[str, float]] = {}
    for direction in ("width", "length"):
        sizes = {each.state: each for each in chain_of(laid, direction, ledger.tape) if each.yardstick == "cloth"}
        start = sizes.get(SCOURED)
        if start is None or not may_learn(laid, direction, SCOURED, SCOURED)[0]:
            continue
        for state, size in sizes.items():
            if state.key.startswith("fulled") and size.mm < start.mm:
                minutes = float(state.key.split()[1])
                lost.setdefault(minutes, {})[direction] = math.log(start.mm / size.mm)
                sds.setdefault(minutes, {})[direction] = math.hypot(start.relative, size.relative) / 2
    return (Check(minutes, lost[minutes], sds[minutes]) for minutes in sorted(lost))


@dataclass(frozen=True)
class Fulling:
    """What the fulled cloths of a journal say of the next one in a yarn.

    cloths: those that the answer rests on, of the yarn itself, else of its fibre, else all of them.
    basis: "yarn", "fibre", "other" or "" where no cloth was fulled with a watch.
    """

    cloths: tuple[FulledCloth, ...]
    basis: str

    @classmethod
    def of(cls, journal: Journal, yarn: str, cloths: Sequence[FulledCloth]) -> Fulling:
        """The cloths that tell of a yarn, by any of its names."""
        name, _, record = find_yarn(journal, yarn)
        fibre = fibre_of(record)
        for basis, own in (
            ("yarn", [each for each in cloths if each.yarn == name]),
            ("fibre", [each for each in cloths if fibre and each.fibre == fibre]),
            ("other", list(cloths)),
        ):
            if own:
                return cls(tuple(own), basis)
        return cls((), "")

    @property
    def longest(self) -> float:
        """The longest time that any of them was fulled, in minutes; 0 for none."""
        return max((check.minutes for cloth in self.cloths for check in cloth.checks), default=0.0)

    def lost(self, direction: str, minutes: float, p: float) -> float:
        """ln(scoured / now) after so many minutes, at quantile p."""
        return math.exp(self._times(direction).quantile(math.log(minutes / USUAL_MINUTES), p))

    def minutes(self, direction: str, lost: float) -> Range:
        """Minutes until a cloth has lost so much, ln(scoured / wanted) > 0; `least` is when to look first."""

        def until(p: float) -> float:
            return _bisect(lambda log: self._times(direction).chance_above(log, math.log(lost)) - p, -6.0, 6.0)

        return Range(*(USUAL_MINUTES * math.exp(until(p)) for p in (0.5, 0.05, 0.95)))

    def length_for(self, width_lost: float) -> Range:
        """ln(scoured / now) of the length when the width has lost so much."""
        return Range(*(width_lost * self._shape.quantile(0.0, p) for p in (0.5, 0.05, 0.95)))

    @cached_property
    def _by_direction(self) -> dict[str, _Lines]:
        return {direction: self._fit(direction) for direction in ("width", "length")}

    def _times(self, direction: str) -> _Lines:
        return self._by_direction[direction]

    def _fit(self, direction: str) -> _Lines:
        rows = [
            (cloth.warp, math.log(check.minutes / USUAL_MINUTES), math.log(lost), check.sd[direction] / lost)
            for cloth in self.cloths
            for check in cloth.checks
            if (lost := check.lost.get(direction, 0.0)) > 0
        ]
        return _Lines.fit(rows, (LOST_BY_THEN, STEEPNESS), self._wide(TUBS), CHECK)

    @cached_property
    def _shape(self) -> _Lines:
        rows = [
            (cloth.warp, 0.0, check.lost["length"] / check.lost["width"], _ratio_sd(check))
            for cloth in self.cloths
            for check in cloth.checks
            if check.lost.get("width", 0.0) > 0 and "length" in check.lost
        ]
        return _Lines.fit(rows, (LENGTH_TO_WIDTH, (0.0, 1e-6)), self._wide(SHAPES), SHAPE_CHECK)

    def _wide(self, sds: Sequence[float]) -> tuple[float, ...]:
        return tuple(sd * (1.0 if self.basis == "yarn" else OTHER_YARN) for sd in sds)


def _ratio_sd(check: Check) -> float:
    ratio = check.lost["length"] / check.lost["width"]
    return math.hypot(check.sd["length"], ratio * check.sd["width"]) / check.lost["width"]


@dataclass(frozen=True)
class _Lines:
    """Straight lines with a level of its own for each tub: a small mixture of normals over the tubs' sd.

    parts: weight, mean (2) and covariance (2 x 2) of level and slope, variance of a new tub and check.
    """

    parts: tuple[tuple[float, Floats, Floats, float], ...]

    @classmethod
    def fit(
        cls,
        rows: Sequence[tuple[str, float, float, float]],
        prior: tuple[tuple[float, float], tuple[float, float]],
        tubs: Sequence[float],
        check: float,
    ) -> _Lines:
        """rows: tub, x, y, sd of y. prior: mean and sd of level and slope. tubs: sds, alike likely before."""
        import numpy as np

        mean, root = (np.array(each) for each in zip(*prior, strict=True))
        x = np.array([[1.0, row[1]] for row in rows]).reshape(-1, 2)
        y = np.array([row[2] for row in rows])
        same = np.array([[a[0] == b[0] for b in rows] for a in rows], dtype=float).reshape(len(rows), len(rows))
        noise = np.array([row[3] ** 2 + check**2 for row in rows])
        found, logs = [], []
        for sd in tubs:
            spread = x @ np.diag(root**2) @ x.T + sd**2 * same + np.diag(noise)
            gain = np.diag(root**2) @ x.T @ np.linalg.inv(spread)
            off = y - x @ mean
            logs.append(-0.5 * (off @ np.linalg.solve(spread, off) + np.linalg.slogdet(spread)[1]))
            left = np.diag(root**2) - gain @ x @ np.diag(root**2)
            found.append((mean + gain @ off, left, sd**2 + check**2))
        weights = np.exp(np.array(logs) - max(logs))
        weights /= weights.sum()
        return cls(tuple((float(w), *part) for w, part in zip(weights, found, strict=True)))

    def chance_above(self, x: float, y: float) -> float:
        """How likely the next tub is above y at x."""
        return sum(weight * _tail((y - mean) / sd) for weight, mean, sd in self._at(x))

    def quantile(self, x: float, p: float) -> float:
        """The y that the next tub stays under with chance p."""
        return _bisect(lambda y: 1 - self.chance_above(x, y) - p, -20.0, 20.0)

    def _at(self, x: float) -> Iterable[tuple[float, float, float]]:
        for weight, mean, covariance, own in self.parts:
            variance = covariance[0, 0] + 2 * x * covariance[0, 1] + x * x * covariance[1, 1] + own
            yield weight, float(mean[0] + x * mean[1]), math.sqrt(variance)


def _tail(z: float) -> float:
    return 0.5 * math.erfc(z / math.sqrt(2))


def _bisect(rises: Callable[[float], float], low: float, high: float) -> float:
    """Where a rising function passes 0, within the ends."""
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (middle, high) if rises(middle) < 0 else (low, middle)
    return (low + high) / 2
