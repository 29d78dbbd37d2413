"""How far off the forecast was: each past warp forecast from those before it, beside three simple rules.

The model is fitted anew whenever the journal has grown by a tenth, and in between takes each new warp
into its effects. One figure a kind of cloth in a warp: the mean of its pieces' whole loss to the first wash.
"""

from __future__ import annotations

import hashlib
import math
import statistics
from collections.abc import Iterable, Iterator, Mapping, MutableMapping, Sequence
from dataclasses import dataclass, replace

from journal_tools.forecast.belief import Belief
from journal_tools.forecast.forecast import Forecast
from journal_tools.forecast.kind import ClothKind
from journal_tools.forecast.observed import Observed, Reading

WHOLE = {"width": ("in_reed", "washed 1"), "length": ("on_loom", "washed 1")}
MOST = 240
"""Warps that are scored at most, the newest: older ones say little of what the journal knows now."""
GROWTH = 1.1
PROMISED = (0.5, 0.8, 0.95)
TEN_PER_CENT = math.log(0.9)
RIVALS = ("ten per cent", "the yarn's own mean", "the last warp in the same yarn and weave")


@dataclass(frozen=True)
class Scored:
    """One kind of cloth in one past warp. All but place are ln(last / first).

    came: what it did. expected: what the warps before it led one to expect. place: the forecast's chance
    of less than that, 0.5 when it came as expected. rivals: what the simple rules said, in the order of
    RIVALS; where a rule has nothing to go by, the one before it stands in.
    """

    warp: str
    kind: ClothKind
    came: float
    expected: float
    place: float
    rivals: tuple[float, ...]

    def inside(self, promised: float) -> bool:
        """Whether it lay in the range that holds with this chance."""
        return abs(self.place - 0.5) <= promised / 2

    @property
    def off(self) -> float:
        """How far off the expected ratio was, as a fraction of the first size: 0.01 is a point."""
        return math.exp(self.came) - math.exp(self.expected)


@dataclass(frozen=True)
class Score:
    """The forecast's record in one direction, oldest warp first."""

    direction: str
    scored: tuple[Scored, ...]

    @property
    def offs(self) -> list[float]:
        """How far off each was, as a fraction of the first size."""
        return [each.off for each in self.scored]

    def offs_of(self, rival: int) -> list[float]:
        """The same of one of RIVALS."""
        return [math.exp(each.came) - math.exp(each.rivals[rival]) for each in self.scored]

    def held(self, promised: float) -> int:
        """How many came inside the range that holds with this chance."""
        return sum(each.inside(promised) for each in self.scored)


def usual(offs: Sequence[float]) -> float:
    """How far off it is in half of the cases: the median. Raises StatisticsError for none."""
    return statistics.median(abs(off) for off in offs)


def root_mean_square(offs: Sequence[float]) -> float:
    """The root of the mean square, in which one wild warp weighs more than ten tame ones."""
    return math.sqrt(math.fsum(off * off for off in offs) / len(offs))


def score_of(
    observed: Iterable[Observed],
    order: Sequence[str],
    direction: str,
    kept: MutableMapping[str, list[float]] | None = None,
    most: int = MOST,
) -> Score:
    """Forecast past warps one by one.

    order: names of the dated warps, oldest first; others are not scored. kept: what was found before,
    which is used and added to: a new warp at the end costs one fit and not thirty.
    """
    by_warp: dict[str, list[Observed]] = {}
    for piece in observed:
        by_warp.setdefault(piece.warp, []).append(piece)
    warps = [by_warp[name] for name in order if name in by_warp]
    rules, told = _Rules(direction), {} if kept is None else kept
    before = _Before(direction, warps)
    scored: list[Scored] = []
    for number, pieces in enumerate(warps):
        for part, (kind, came, count, noise) in enumerate(came_out(pieces, direction)):
            if number < max(1, len(warps) - most):
                break
            key = f"{direction} {before.digest(number)} {part}"
            if key not in told:
                belief = _of_mean(before.model(number).belief(kind, *WHOLE[direction]), count, noise)
                told[key] = [belief.quantile(0.5), belief.chance_below(came)]
            expected, place = told[key]
            scored.append(Scored(pieces[0].warp, kind, came, expected, place, rules.said(kind)))
        rules.learn(pieces)
    return Score(direction, tuple(scored))


class _Before:
    """The forecast as it stood before each warp, made when it is first asked for."""

    def __init__(self, direction: str, warps: Sequence[Sequence[Observed]]) -> None:
        self.direction, self.warps = direction, warps
        self._fitted, self._taken = -1, -1
        self._model: Forecast | None = None
        self._digests = [hashlib.sha256()]
        for pieces in warps:
            so_far = self._digests[-1].copy()
            so_far.update(repr(pieces).encode())
            self._digests.append(so_far)

    def digest(self, number: int) -> str:
        """What decides the score of a warp: itself and all before it."""
        return self._digests[number + 1].hexdigest()[:24]

    def model(self, number: int) -> Forecast:
        """The forecast before the warp of this number, asked for in rising order."""
        fitted = _last_fit(number)
        if self._model is None or fitted != self._fitted:
            self._model = Forecast.fit([piece for pieces in self.warps[:fitted] for piece in pieces], self.direction)
            self._fitted = self._taken = fitted
        for pieces in self.warps[self._taken : number]:
            self._model = self._model.with_more(pieces)
        self._taken = number
        return self._model


def _last_fit(number: int) -> int:
    """How many warps the last fit had before the warp of this number."""
    fitted = 0
    while (later := max(fitted + 1, math.ceil(fitted * GROWTH))) <= number:
        fitted = later
    return fitted


def came_out(pieces: Iterable[Observed], direction: str) -> Iterator[tuple[ClothKind, float, int, float]]:
    """What each kind of cloth of a warp did: kind, mean ln ratio of the whole, pieces, variance of its readings."""
    found: dict[ClothKind, list[tuple[float, float]]] = {}
    first, last = WHOLE[direction]
    for piece in pieces:
        for yardstick in dict.fromkeys(reading.yardstick for reading in piece.readings):
            at = {reading.moment: reading for reading in piece.readings if reading.yardstick == yardstick}
            if first in at and last in at:
                both = (at[last].log - at[first].log, at[last].sd ** 2 + at[first].sd ** 2)
                found.setdefault(piece.kind, []).append(both)
                break
    for kind, figures in found.items():
        mean = math.fsum(ratio for ratio, _ in figures) / len(figures)
        yield kind, mean, len(figures), math.fsum(noise for _, noise in figures) / len(figures) ** 2


def _of_mean(belief: Belief, count: int, noise: float) -> Belief:
    """The belief about the mean of so many pieces as a tape would read it."""
    return replace(belief, shared=belief.shared + noise, apart=belief.apart / count)


class _Rules:
    """The three simple rules, as they stood before a warp."""

    def __init__(self, direction: str) -> None:
        self.direction = direction
        self._of_yarn: dict[tuple[str, str], list[float]] = {}
        self._last: dict[tuple[str, str, str], float] = {}

    def learn(self, pieces: Iterable[Observed]) -> None:
        """Take in a warp."""
        for kind, came, _, _ in came_out(pieces, self.direction):
            self._of_yarn.setdefault(_yarns(kind), []).append(came)
            self._last[*_yarns(kind), kind.weave] = came

    def said(self, kind: ClothKind) -> tuple[float, float, float]:
        """What each of RIVALS says."""
        before = self._of_yarn.get(_yarns(kind))
        mean = math.fsum(before) / len(before) if before else TEN_PER_CENT
        return TEN_PER_CENT, mean, self._last.get((*_yarns(kind), kind.weave), mean)


def _yarns(kind: ClothKind) -> tuple[str, str]:
    return kind.warp_yarn, kind.weft_yarn


@dataclass(frozen=True)
class Guess:
    """How well one kind of cloth is known now. All are standard deviations of a piece's ln ratio, the whole.

    sampled: what is left once a sample from the warp has been washed. warps: how many it rests on.
    """

    kind: ClothKind
    now: float
    sampled: float
    warps: int

    @property
    def gain(self) -> float:
        """What a washed sample would take off the doubt."""
        return self.now - self.sampled


SAMPLE_SD = 0.004
"""Of ln of a sample's width: a sixteenth of an inch in 16 (judgement)."""


def guesses(model: Forecast, kinds: Iterable[ClothKind], latest: int | None) -> tuple[Guess, ...]:
    """The least known kinds first. latest: the year that they would be woven in."""
    first, last = WHOLE[model.direction]
    found = []
    for kind in dict.fromkeys(replace(kind, year=latest) for kind in kinds):
        belief = model.belief(kind, first, last)
        readings = (Reading(first, 0.0, 0.0), Reading(last, belief.mean, SAMPLE_SD))
        after = model.belief(kind, first, last, seen=[Observed(".sample", "sample", kind, readings)])
        found.append(Guess(kind, belief.sd, after.sd, len(model.rests_on(kind, first, last).yarn_warps)))
    return tuple(sorted(found, key=lambda guess: -guess.now))


def kinds_of(observed: Mapping[str, Sequence[Observed]] | Sequence[Observed]) -> tuple[ClothKind, ...]:
    """Every kind of cloth that was woven, once for each pair of yarns and weave, as it was woven last."""
    pieces = observed if not isinstance(observed, Mapping) else [each for one in observed.values() for each in one]
    newest = sorted(pieces, key=lambda piece: piece.kind.year or 0)
    return tuple({(*_yarns(piece.kind), piece.kind.weave): piece.kind for piece in newest}.values())
