"""A few sets of variances that stand for all, with the effects that go with each: what answers are made of."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from journal_tools.forecast.chain import STEPS
from journal_tools.forecast.columns import BLOCKS, Column, Columns, terms_of
from journal_tools.forecast.evidence import Evidence, Variances, real_covariance, real_effects
from journal_tools.forecast.hyper import TERMS
from journal_tools.forecast.kind import ClothKind
from journal_tools.forecast.small import Floats, Indices

KEPT_AS = np.float32
"""Half the memory, which is nearly all that a forecast takes: a seventh digit of a variance tells nobody anything."""


@dataclass(frozen=True)
class Node:
    """One set of variances. score: ln of how much it counts, up to a constant."""

    score: float
    variances: Variances
    effects: Floats
    covariance: NDArray[np.floating]

    @classmethod
    def of(cls, score: float, variances: Variances, evidence: Evidence, columns: Columns) -> Node:
        """Keep what answers need of an Evidence, and spend it."""
        real = real_effects(evidence.u, evidence.sds, columns)
        covariance = real_covariance(evidence.inverse(), evidence.sds, columns)
        return cls(score, variances, real, covariance.astype(KEPT_AS))


@dataclass(frozen=True)
class Local:
    """The few effects that a question touches. shares: kinds × columns. effects: N × columns × K, and
    covariance: N × columns·K × columns·K, in ln ratio. place: where each stands in the nodes, −1 if nowhere."""

    shares: Floats
    effects: Floats
    covariance: Floats
    place: Indices

    def steps(self) -> tuple[Floats, Floats]:
        """x'u of the kinds, stacked: mean (N × kinds·K) and covariance (N × kinds·K × kinds·K)."""
        nodes, _columns, steps = self.effects.shape
        kinds = len(self.shares)
        mean = np.einsum("gc,nck->ngk", self.shares, self.effects).reshape(nodes, -1)
        wide = np.kron(self.shares, np.eye(steps))
        return mean, (wide @ self.covariance @ wide.T).reshape(nodes, kinds * steps, kinds * steps)


@dataclass(frozen=True)
class Nodes:
    """N nodes. score (N); effect_sd: N × blocks × K; warp, piece: N × K × K; effects: N × many;
    covariance: N × many × many; index, place: where each column's steps stand among the many."""

    direction: str
    index: dict[Column, int]
    place: Indices
    first_year: int | None
    last_year: int | None
    undated: int | None
    score: Floats
    effect_sd: Floats
    warp: Floats
    piece: Floats
    effects: Floats
    covariance: NDArray[np.floating]

    @classmethod
    def of(cls, nodes: list[Node], columns: Columns) -> Nodes:
        """Put nodes together. The list is spent: two copies of all covariances would be the peak of a build."""
        many = len(nodes[0].effects)
        covariance: NDArray[np.floating] = np.empty((len(nodes), many, many), KEPT_AS)
        lean: list[Node] = []
        for place in reversed(range(len(nodes))):
            node = nodes.pop()
            covariance[place] = node.covariance
            lean.insert(0, replace(node, covariance=covariance[place]))
        return cls(
            columns.direction,
            columns.index,
            columns.place,
            columns.first_year,
            columns.last_year,
            columns.undated,
            np.array([node.score for node in lean]),
            np.array([node.variances.effect_sd for node in lean]),
            np.array([node.variances.warp for node in lean]),
            np.array([node.variances.piece for node in lean]),
            np.array([node.effects for node in lean]),
            covariance,
        )

    @property
    def weights(self) -> Floats:
        """How much each node counts (N, sum 1)."""
        return shares_of(self.score)

    @property
    def effective(self) -> float:
        """As many equal nodes would know as much."""
        return float(1 / np.sum(self.weights**2))

    def columns_for(self, kind: ClothKind, *, asked: bool) -> dict[Column, float]:
        """The columns that a kind touches. A year off the walk is its end and the years between, one by one.

        asked: a cloth without a year is of the newest one; else of the middle one, as in the fit.
        """
        found = terms_of(kind, self.direction, self.last_year if asked else self.undated)
        years = [name for term, name in found if term == "year"]
        if not years or self.first_year is None or self.last_year is None:
            return {column: share for column, share in found.items() if column[0] != "year"}
        year = int(years[0])
        if year > self.last_year:
            del found["year", year]
            found["year", self.last_year] = 1.0
            found |= {("step", later): 1.0 for later in range(self.last_year + 1, year + 1)}
        elif year < self.first_year:
            del found["year", year]
            found |= {("step", earlier): 1.0 for earlier in range(year, self.first_year)}
        found.pop(("year", self.first_year), None)
        return found

    def local(self, touched: Sequence[dict[Column, float]]) -> Local:
        """The effects that some kinds touch, at every node: known ones from the fit, others from what is believed."""
        columns = sorted({column for one in touched for column in one}, key=lambda name: (name[0], str(name[1])))
        steps = len(STEPS[self.direction])
        shares = np.array([[one.get(column, 0.0) for column in columns] for one in touched])
        nowhere = np.full(steps, -1)
        place = np.array([self.place[self.index[name]] if name in self.index else nowhere for name in columns])
        flat = place.ravel()
        known = flat >= 0
        at = np.where(known, flat, 0)
        nodes = len(self.score)
        if self.effects.shape[1]:
            effects = np.where(known, self.effects[:, at], 0.0)
            covariance = self.covariance[:, at[:, None], at].astype(float)
            covariance *= known[:, None] & known
        else:
            effects, covariance = np.zeros((nodes, len(flat))), np.zeros((nodes, len(flat), len(flat)))
        blocks = [BLOCKS.index("year" if term == "step" else term) for term, _ in columns]
        fresh = self.effect_sd[:, blocks].reshape(nodes, -1) ** 2
        own = np.arange(len(flat))
        covariance[:, own, own] += np.where(known, 0.0, fresh)
        return Local(shares, effects.reshape(nodes, -1, steps), covariance, place)

    def grown(self, columns: Iterable[Column], year: int | None) -> Nodes:
        """With places for more columns, and for years up to one, as they are believed beforehand."""
        grown = self
        if year is not None and self.last_year is None:
            grown = replace(grown, first_year=year, last_year=year, undated=year)
        while year is not None and grown.last_year is not None and year > grown.last_year:
            grown = grown._with_year(grown.last_year + 1)
        for column in sorted(columns, key=lambda name: (name[0], str(name[1]))):
            if column[0] != "step":
                grown = grown._with_column(column)
        return grown

    def _with_column(self, column: Column) -> Nodes:
        steps = STEPS[self.direction]
        index = dict(self.index)
        row = index.setdefault(column, len(index))
        place = self.place if row < len(self.place) else np.vstack([self.place, np.full((1, len(steps)), -1)])
        allowed = [column[0] == "level" or step in TERMS[column[0]] for step in steps]
        wanted = [step for step in range(len(steps)) if allowed[step] and place[row, step] < 0]
        if not wanted:
            return replace(self, index=index, place=place)
        many = self.effects.shape[1]
        place = place.copy()
        place[row, wanted] = many + np.arange(len(wanted))
        variance = self.effect_sd[:, BLOCKS.index(column[0]), wanted] ** 2
        effects = np.pad(self.effects, ((0, 0), (0, len(wanted))))
        covariance = np.pad(self.covariance, ((0, 0), (0, len(wanted)), (0, len(wanted))))
        own = many + np.arange(len(wanted))
        covariance[:, own, own] = variance
        return replace(self, index=index, place=place, effects=effects, covariance=covariance)

    def _with_year(self, year: int) -> Nodes:
        """The walk one year longer: the new level is the last one and a step of its own."""
        before, after = ("year", year - 1), ("year", year)
        if before not in self.index:  # the first year, which is the level's own
            return replace(self._with_column(after), last_year=year)
        grown = self._with_column(before)._with_column(after)
        old, new = (grown.place[grown.index[column]] for column in (before, after))
        old, new = old[old >= 0], new[new >= 0]
        effects, covariance = grown.effects.copy(), grown.covariance.copy()
        effects[:, new] += effects[:, old]
        covariance[:, new] += covariance[:, old]
        covariance[:, :, new] += covariance[:, :, old]
        return replace(grown, effects=effects, covariance=covariance, last_year=year)


def shares_of(scores: Floats) -> Floats:
    """Weights that add up to 1, from their logs."""
    found = np.exp(scores - np.max(scores))
    whole: Floats = found / np.sum(found)
    return whole
