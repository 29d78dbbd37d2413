"""One forecast tried on one made world: its errors beside those who know more and less, and where the truth fell."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np

from journal_tools.forecast.forecast import Forecast
from journal_tools.forecast.kind import ClothKind
from tests.worlds.known import drawn_law, hyper_of
from tests.worlds.law import Law, Vector, fixed_law
from tests.worlds.rivals import RIVALS, Rivals
from tests.worlds.world import SPANS, World, made_world, span

PRIOR = "prior"
"""The world that is drawn from what the forecast believes before any cloth."""
LAST_YEAR, YEAR_AFTER, EVERY = slice(0, None, 2), slice(1, None, 2), slice(None)
"""Of the unseen warps: those woven in the last year of the journal, those of the year after, all."""


@dataclass(frozen=True)
class Tried:
    """What came of one span of one world."""

    rmse: dict[str, float]
    """By who said it, in ln: forecast, oracle, floor, and the rivals for the whole."""
    places: dict[str, Vector]
    """(unseen,) the chance given to what lies below the truth, by forecast, oracle, and the forecast asked as of the
    last year even for the year after: standing still."""


@dataclass(frozen=True)
class Trial:
    """One world, tried."""

    name: str
    direction: str
    warps: int
    seed: int
    spans: dict[str, Tried]
    nodes: float
    """How many nodes the fit's weights amount to."""


def law_of(name: str, direction: str, seed: int) -> Law:
    """The law of a world by name: fixed, or drawn from the prior by its seed."""
    return drawn_law(direction, np.random.default_rng((seed, 7))) if name == PRIOR else fixed_law(name, direction)


def try_world(name: str, direction: str, warps: int, seed: int, unseen: int = 20) -> Trial:
    """Draw the world, fit it, and ask about the unseen warps."""
    law = law_of(name, direction, seed)
    world = made_world(law, warps, seed, unseen)
    fitted = Forecast.fit(world.observed, direction)
    oracle = Forecast.fixed(world.observed, direction, hyper_of(law), nu=law.nu)
    spans = {label: _tried(world, label, {"forecast": fitted, "oracle": oracle}) for label in SPANS[direction]}
    return Trial(name, direction, warps, seed, spans, fitted.effective_nodes)


def _tried(world: World, label: str, forecasts: Mapping[str, Forecast]) -> Tried:
    direction = world.law.direction
    first, last = SPANS[direction][label]
    way = span(direction, first, last)
    truths = np.array([woven.steps @ way for woven in world.unseen])
    said: dict[str, list[float]] = {"floor": [float(woven.expected @ way) for woven in world.unseen]}
    places = {}
    asked = [(who, forecast, woven_kinds(world)) for who, forecast in forecasts.items()]
    if world.law.sds["year"].any() and label == "wash":
        last_year = world.unseen[0].kind.year
        still = [replace(kind, year=last_year) for kind in woven_kinds(world)]
        asked.append(("standing still", forecasts["forecast"], still))
    for who, forecast, kinds in asked:
        beliefs = [forecast.belief(kind, first, last) for kind in kinds]
        said[who] = [belief.mean for belief in beliefs]
        places[who] = np.array(
            [belief.chance_below(truth) for belief, truth in zip(beliefs, truths.tolist(), strict=True)]
        )
    if label == "whole":
        rivals = Rivals(world.observed, direction, first, last)
        said |= {who: _all(world, lambda kind, say=say: say(rivals, kind)) for who, say in RIVALS.items()}
    rmse = {who: float(np.sqrt(np.mean((truths - np.array(means)) ** 2))) for who, means in said.items()}
    return Tried(rmse, places)


def woven_kinds(world: World) -> list[ClothKind]:
    """What the unseen warps are."""
    return [woven.kind for woven in world.unseen]


def _all(world: World, say: Callable[[ClothKind], float]) -> list[float]:
    return [say(woven.kind) for woven in world.unseen]


def inside(
    trials: Sequence[Trial], label: str, share: float, who: str = "forecast", when: slice = EVERY
) -> tuple[float, float]:
    """Share of truths inside the central range that promises `share`, and its standard error by world."""
    by_world = [float(np.mean(np.abs(trial.spans[label].places[who][when] - 0.5) < share / 2)) for trial in trials]
    return float(np.mean(by_world)), _error(by_world)


def against(trials: Sequence[Trial], label: str, who: str, beside: str = "oracle") -> tuple[float, float]:
    """Geometric mean over worlds of one's rmse over another's, and its standard error."""
    logs = [float(np.log(t.spans[label].rmse[who] / t.spans[label].rmse[beside])) for t in trials]
    middle = float(np.exp(np.mean(logs)))
    return middle, middle * _error(logs)


def _error(values: Sequence[float]) -> float:
    return float(np.std(values, ddof=1) / np.sqrt(len(values))) if len(values) > 1 else float("nan")
