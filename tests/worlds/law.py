"""The law of a made world: how far cloth changes at each step, and how much its causes differ.

Figures are points of ln(later / earlier), about per cent, written down here and not taken from the
forecast's own priors, so that a fixed world stays as it is when the priors are tuned. They are judgement.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field, replace
from typing import Any

import numpy as np
from numpy.typing import NDArray

Vector = NDArray[np.float64]

STEPS = {
    "width": ("draw-in", "relaxation", "wash", "settling"),
    "length": ("take-up", "pick", "relaxation", "wash", "settling"),
}


@dataclass(frozen=True)
class Law:
    """What a world draws from, all in ln; vectors have one figure a step."""

    direction: str
    level: Vector
    """What cloth does on the whole."""
    level_sd: Vector
    """How far this weaver's whole lies from it."""
    slope: Vector
    """What a tenth closer sett does, on the mean of all weavers."""
    sds: dict[str, Vector]
    """By term: weave, fibre, yarn, finish, closeness, year (a year's step), and warp, piece."""
    correlation: Vector
    """(k, k) between the steps of one warp, and of one piece."""
    nu: float = np.inf
    """Degrees of freedom of a warp's departure; infinite: normal."""
    wild: float = 0.0
    """Share of warps whose departure is `WILD` times as large."""
    wild_step: str = ""
    """Only this step runs wild; nothing: all of them."""
    one_warp_a_yarn: bool = False
    felting: float = 0.0
    """What the most used yarn loses in the wash beyond all others, in ln."""
    trend: Vector = field(default_factory=lambda: np.zeros(0))
    """What each year adds, in ln, the same every year."""


WILD = 4.0

_WIDTH: dict[str, Any] = {
    "level": (-4.2, -1.5, -6.2, -1.2),
    "level_sd": (2.0, 1.0, 3.5, 0.6),
    "slope": (0.4, 0, 0.6, 0),
    "weave": (1.2, 0.8, 2.2, 0),
    "fibre": (1.0, 0.6, 2.4, 0.4),
    "yarn": (0.8, 0.5, 1.6, 0),
    "finish": (0, 0, 1.6, 0.3),
    "closeness": (0.5, 0.2, 0.7, 0),
    "year": (0.20, 0.125, 0.30, 0),
    "warp": (0.9, 0.6, 1.1, 0.4),
    "piece": (0.35, 0.30, 0.40, 0.25),
}
_LENGTH: dict[str, Any] = {
    "level": (-5.5, 0, -2.8, -6.0, -1.2),
    "level_sd": (2.0, 2.5, 1.2, 3.0, 0.6),
    "slope": (-0.4, 0, 0, 0.3, 0),
    "weave": (1.5, 1.0, 0.8, 1.8, 0),
    "fibre": (0.8, 0, 1.0, 2.2, 0.4),
    "yarn": (0.8, 0.8, 0.6, 1.4, 0),
    "finish": (0, 0, 0, 1.6, 0.3),
    "closeness": (0.5, 0, 0.2, 0.5, 0),
    "year": (0.2, 0, 0.15, 0.3, 0),
    "warp": (1.2, 2.0, 0.9, 1.4, 0.4),
    "piece": (0.5, 0.8, 0.5, 0.6, 0.25),
}


def plain(direction: str) -> Law:
    """The middling world: every spread as large as judgement has it, departures normal."""
    figures = {name: np.array(row, float) / 100 for name, row in (_WIDTH if direction == "width" else _LENGTH).items()}
    level, level_sd, slope = (figures.pop(name) for name in ("level", "level_sd", "slope"))
    return Law(direction, level, level_sd, slope, figures, _correlation(direction, -0.45, -0.2, -0.2))


def _correlation(direction: str, first: float, across: float, second: float) -> Vector:
    """Draw-in or take-up with relaxation, with the wash, and relaxation with the wash; the rest 0."""
    one, two, three = (0, 1, 2) if direction == "width" else (0, 2, 3)
    made = np.eye(len(STEPS[direction]))
    for a, b, value in ((one, two, first), (one, three, across), (two, three, second)):
        made[a, b] = made[b, a] = value
    return made


def _scaled(law: Law, **factors: float) -> Law:
    return replace(law, sds={name: sds * factors.get(name, factors.get("all", 1.0)) for name, sds in law.sds.items()})


def _felting(law: Law) -> Law:
    return replace(law, felting=-0.22)


def _trend(law: Law) -> Law:
    """Half a point a year more in the wash, a fifth in the steps before it, for as long as the journal runs."""
    wash = STEPS[law.direction].index("wash")
    trend = np.where(np.arange(len(law.level)) == wash, -0.005, np.where(law.sds["year"] > 0, -0.002, 0.0))
    return replace(_scaled(law, year=0.0), trend=trend)


FIXED: dict[str, Callable[[Law], Law]] = {
    "plain": lambda law: law,
    "quiet": lambda law: _scaled(law, all=0.4),
    "noisy": lambda law: _scaled(law, all=2.0),
    "one warp a yarn": lambda law: replace(law, one_warp_a_yarn=True),
    "felting yarn": _felting,
    "drift": lambda law: _scaled(law, year=3.0),
    "trend": _trend,
    "5 % wild": lambda law: replace(law, wild=0.05),
    "5 % wild in one step": lambda law: replace(law, wild=0.05, wild_step="wash"),
    "weaves differ": lambda law: _scaled(law, weave=2.5),
    "steps at -.6": lambda law: replace(law, correlation=_correlation(law.direction, -0.6, 0.36, -0.6)),
}
"""The fixed worlds by name: what each does to the plain one."""


def fixed_law(name: str, direction: str) -> Law:
    """The law of a fixed world."""
    return FIXED[name](plain(direction))
