"""A made world: cloth whose every true change is known, and what a weaver with a tape wrote down of it.

Nothing here knows how the forecast reckons: sizes are made step after step, as cloth is, and then read.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

import numpy as np

from journal_tools.forecast.kind import ClothKind
from journal_tools.forecast.observed import Observed, Reading
from tests.worlds.law import STEPS, WILD, Law, Vector
from tests.worlds.shelf import FIRST_YEAR, Shelf

MAIN_SHARE = 0.65
"""Of the weft yarn in width, of the warp yarn in length; the other yarn has the rest."""
MIDDLING = 0.75
"""Closeness from which all others count, by tenths of ln; one that nobody knows is this."""
SECOND_WASH = 0.7
"""Of the whole settling, what a second wash takes."""
TAPE = 0.9
"""mm (k = 1): a reading of a tape on cloth."""

SEEN = {
    "width": {"in_reed": 0.95, "on_loom": 0.6, "off_loom": 0.6, "washed 1": 0.9, "washed 2": 0.2, "settled": 0.15},
    "length": {
        "warp": 0.4,
        "picks": 0.3,
        "on_loom": 0.85,
        "off_loom": 0.55,
        "washed 1": 0.9,
        "washed 2": 0.2,
        "settled": 0.15,
    },
}
"""How often a warp's weaver measures each moment; a piece then misses one now and again."""


@dataclass(frozen=True)
class Woven:
    """One piece of cloth: its kind and its true change at every step, ln(later / earlier)."""

    kind: ClothKind
    steps: Vector
    """(k,)"""
    expected: Vector
    """(k,) what one who knew every cause but the warp's and the piece's own departure would say."""


@dataclass(frozen=True)
class World:
    """A journal of warps with known truth, and warps not yet woven to try a forecast on."""

    law: Law
    observed: tuple[Observed, ...]
    unseen: tuple[Woven, ...]
    true: dict[tuple[str, str], Vector]
    """The true steps of every piece of the journal, by warp and piece."""


class Nature:
    """What causes do in one world: each effect drawn once, when the first cloth asks for it."""

    def __init__(self, law: Law, rng: np.random.Generator, felting_yarn: str) -> None:
        self.law = law
        self.rng = rng
        self.felting_yarn = felting_yarn
        self.level = law.level + law.level_sd * rng.standard_normal(len(law.level))
        self.slope = law.slope + law.sds["closeness"] * rng.standard_normal(len(law.level))
        self.drawn: dict[tuple[str, str], Vector] = {}
        self.years = [np.zeros(len(law.level))]
        root = np.linalg.cholesky(law.correlation)
        self.warp_root = law.sds["warp"][:, None] * root
        self.piece_root = law.sds["piece"][:, None] * root

    def effect(self, term: str, name: str) -> Vector:
        """What a weave, fibre, yarn or finish does; a thing without a name is like no other."""
        key = (term, name or f"nameless {len(self.drawn)}")
        if key not in self.drawn:
            self.drawn[key] = self.law.sds[term] * self.rng.standard_normal(len(self.level))
            if key == ("yarn", self.felting_yarn):
                self.drawn[key][STEPS[self.law.direction].index("wash")] += self.law.felting
        return self.drawn[key]

    def year(self, year: int | None) -> Vector:
        """Where the walk over the years stands; the first year is nought."""
        since = max(0, (year or FIRST_YEAR) - FIRST_YEAR)
        while len(self.years) <= since:
            step = self.law.sds["year"] * self.rng.standard_normal(len(self.level))
            self.years.append(self.years[-1] + step + (self.law.trend if self.law.trend.size else 0.0))
        return self.years[since]

    def expected(self, kind: ClothKind) -> Vector:
        """All causes together."""
        close = 0.0 if kind.closeness is None else 10 * float(np.log(kind.closeness / MIDDLING))
        made = self.level + self.effect("weave", kind.weave) + self.effect("finish", kind.finish)
        for term, warp, weft in (
            ("fibre", kind.warp_fibre, kind.weft_fibre),
            ("yarn", kind.warp_yarn, kind.weft_yarn),
        ):
            main, other = (weft, warp) if self.law.direction == "width" else (warp, weft)
            made = made + MAIN_SHARE * self.effect(term, main) + (1 - MAIN_SHARE) * self.effect(term, other)
        return made + close * self.slope + self.year(kind.year)

    def departure(self) -> Vector:
        """What one warp does of itself, in all its steps together."""
        law, rng = self.law, self.rng
        own = self.warp_root @ rng.standard_normal(len(self.level))
        if np.isfinite(law.nu):
            own = own / np.sqrt(rng.gamma(law.nu / 2, 2 / law.nu))
        if rng.random() < law.wild:
            steps = STEPS[law.direction]
            own = own * np.array([WILD if law.wild_step in ("", step) else 1.0 for step in steps])
        return own

    def piece(self) -> Vector:
        """What one piece does beside its warp."""
        return self.piece_root @ self.rng.standard_normal(len(self.level))


def sizes(direction: str, on_loom: float, steps: Vector) -> dict[str, float]:
    """The true size at every moment, made forwards and backwards from the one on the loom, in mm."""
    change = dict(zip(STEPS[direction], np.exp(steps), strict=True))
    off = on_loom * change["relaxation"]
    first = off * change["wash"]
    made = {"on_loom": on_loom, "off_loom": off, "washed 1": first}
    made["washed 2"] = first * change["settling"] ** SECOND_WASH
    made["settled"] = first * change["settling"]
    if direction == "width":
        made["in_reed"] = on_loom / change["draw-in"]
    else:
        made["warp"] = on_loom / change["take-up"]
        made["picks"] = on_loom / change["pick"]
    return made


def made_world(law: Law, warps: int, seed: int, unseen: int = 20) -> World:
    """Draw a world, always the same from the same seed."""
    rng = np.random.default_rng(seed)
    shelf = Shelf(rng, warps, law.one_warp_a_yarn)
    kinds = shelf.kinds(warps)
    nature = Nature(law, rng, felting_yarn=shelf.yarns[0] if law.felting else "")
    observed: list[Observed] = []
    true: dict[tuple[str, str], Vector] = {}
    for n, kind in enumerate(kinds):
        name = f"warp {n}"
        for made, steps in _woven(law, rng, name, kind, nature.expected(kind) + nature.departure(), nature):
            observed.append(made)
            true[made.warp, made.piece] = steps
    ahead = []
    for kind in shelf.next_kinds(unseen, kinds[-1].year or FIRST_YEAR):
        expected = nature.expected(kind)
        ahead.append(Woven(kind, expected + nature.departure() + nature.piece(), expected))
    return World(law, tuple(observed), tuple(ahead), true)


def _woven(
    law: Law, rng: np.random.Generator, warp: str, kind: ClothKind, steps: Vector, nature: Nature
) -> Iterator[tuple[Observed, Vector]]:
    """The pieces of one warp, one to six of them, as their weaver measured them."""
    habit = {moment for moment, share in SEEN[law.direction].items() if rng.random() < share}
    plan = float(np.exp(rng.normal(6.1, 0.45))) if law.direction == "width" else float(np.exp(rng.normal(6.9, 0.5)))
    for n in range(1 + rng.choice(6, p=(0.3, 0.2, 0.15, 0.2, 0.05, 0.1))):
        true = steps + nature.piece()
        readings = tuple(_read(law.direction, rng, plan, true, habit))
        yield Observed(warp=warp, piece=f"piece {n + 1}", kind=kind, readings=readings), true


def _read(direction: str, rng: np.random.Generator, plan: float, true: Vector, habit: set[str]) -> Iterator[Reading]:
    """The readings of one piece: each with the tape's error, the reed and the picks counted and so better."""
    for moment, mm in sizes(direction, plan, true).items():
        if moment not in habit or rng.random() < 0.08:
            continue
        sd = TAPE / mm
        if moment == "in_reed":
            sd /= 4
        if moment == "picks":
            sd = 0.003
        yield Reading(moment, float(np.log(mm) + sd * rng.standard_normal()), sd)
    if rng.random() < 0.1 and {"off_loom", "washed 1"} <= habit:
        marks = sizes(direction, 250.0, true)
        for moment in ("off_loom", "washed 1"):
            sd = TAPE / marks[moment]
            yield Reading(moment, float(np.log(marks[moment]) + sd * rng.standard_normal()), sd, "marks")


def span(direction: str, first: str, last: str) -> Vector:
    """(k,) which steps lie between two moments: ln(last / first) = span . steps, found by trying each step."""
    found = []
    for step in np.eye(len(STEPS[direction])):
        made = sizes(direction, 1.0, step)
        found.append(np.log(made[last] / made[first]))
    return np.array(found)


SPANS = {
    "width": {
        "draw-in": ("in_reed", "on_loom"),
        "relaxation": ("on_loom", "off_loom"),
        "wash": ("off_loom", "washed 1"),
        "settling": ("washed 1", "settled"),
        "whole": ("in_reed", "washed 1"),
    },
    "length": {
        "take-up": ("warp", "on_loom"),
        "picks": ("picks", "on_loom"),
        "relaxation": ("on_loom", "off_loom"),
        "wash": ("off_loom", "washed 1"),
        "settling": ("washed 1", "settled"),
        "whole": ("on_loom", "washed 1"),
    },
}
"""What a table tells of: each step, and the whole that a weaver plans by."""


def on_grid(observed: Iterable[Observed]) -> list[Observed]:
    """The same records with each uncertainty moved to the nearest e^(n/8), where the forecast keeps them."""
    return [
        replace(
            piece,
            readings=tuple(
                replace(reading, sd=float(np.exp(np.round(8 * np.log(reading.sd)) / 8))) for reading in piece.readings
            ),
        )
        for piece in observed
    ]
