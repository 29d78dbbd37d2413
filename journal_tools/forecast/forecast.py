"""The forecast of one direction: fitted to a journal once, then asked.

    observed → Forecast.fit → belief of any ratio of any kind of cloth, and what it rests on

The model is the joint one of the steps: ln(later / earlier) = level + weave + fibre + yarn + finish +
closeness + year + the warp's own + the piece's own, each term with its own variance a step, warps and
pieces with a covariance between their steps. Variances are averaged over, at 32 nodes round their mode.
The same journal gives the same answer, in whatever order it comes.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from journal_tools.forecast.asking import Held, Steps, asked, with_warp
from journal_tools.forecast.belief import Belief
from journal_tools.forecast.chain import span
from journal_tools.forecast.design import design_of
from journal_tools.forecast.evidence import Journal, Variances, gather
from journal_tools.forecast.hyper import Hyper
from journal_tools.forecast.kind import ClothKind
from journal_tools.forecast.laying import nodes_round
from journal_tools.forecast.mode import CAP, NU, Mode, mode_of
from journal_tools.forecast.nodes import Node, Nodes
from journal_tools.forecast.normal import t_weights_of
from journal_tools.forecast.observed import Observed
from journal_tools.forecast.posterior import moments_of, t_weights
from journal_tools.forecast.priors import Priors, priors_for
from journal_tools.forecast.rests_on import RestsOn, rests_on
from journal_tools.forecast.rows import Rows, mean_of, rows_of
from journal_tools.forecast.small import Floats
from journal_tools.forecast.weighing import Surprise, Weighing

PARTS = 9  # equally likely parts of the t law in an answer
FAR = 4.0  # of any number of theta: the climb has run away


@dataclass(frozen=True)
class Forecast:
    """What a journal leads one to expect in one direction.

    said: "" or what was done where the usual way failed. nodes: the variances and effects averaged over.
    """

    direction: str
    hyper: Hyper
    nodes: Nodes
    nu: float
    weighing: Weighing
    held: dict[str, tuple[tuple[Observed, ...], float]]
    said: str = ""

    @classmethod
    def fit(cls, observed: Sequence[Observed], direction: str, priors: Priors | None = None) -> Forecast:
        """Learn from every piece. Nothing observed gives what is believed beforehand.

        Raises ValueError for a moment that the direction has not.
        """
        believed = priors or priors_for(direction)
        hyper = believed.hyper(np.zeros(believed.size))
        journal = _laid_out(observed, direction, hyper)
        said = ""
        mode = mode_of(journal, believed)
        if _astray(mode):
            said = "found the variances again in shorter steps"
            mode = mode_of(journal, believed, CAP / 3)
        if _astray(mode):
            said = "weighed the variances that are believed beforehand"
            mode = replace(mode, theta=np.zeros(believed.size), curvature=np.eye(believed.size))
        nodes = nodes_round(journal, believed, mode)
        weighing = Weighing(journal, hyper, mode.variances, mode.evidence, mode.moments)
        return cls(direction, hyper, nodes, NU, weighing, _held(journal, mode.weight), said)

    @classmethod
    def fixed(cls, observed: Sequence[Observed], direction: str, hyper: Hyper, nu: float = NU) -> Forecast:
        """With every variance known: what an oracle would say. nu: of the warps' t law; infinite: normal."""
        journal = _laid_out(observed, direction, hyper)
        variances = Variances.of(hyper, direction)
        weight = np.ones(len(journal.rows.warps))
        for _ in range(1 if np.isinf(nu) else 20):
            evidence = gather(journal, variances, weight)
            moments = moments_of(journal, evidence)
            found = weight if np.isinf(nu) else t_weights(moments, variances, weight, nu)
            moved = float(np.max(np.abs(np.log(found / weight)), initial=0.0))
            if moved < 1e-3:
                break
            weight = found
        node = Node.of(0.0, variances, gather(journal, variances, weight), journal.design.columns)
        weighing = Weighing(journal, hyper, variances, evidence, moments)
        nodes = Nodes.of([node], journal.design.columns)
        return cls(direction, hyper, nodes, nu, weighing, _held(journal, weight))

    @property
    def effective_nodes(self) -> float:
        """As many equally good nodes would know as much: under 4 of 32 is poor."""
        return self.nodes.effective

    @property
    def _weights(self) -> tuple[float, ...]:
        return t_weights_of(self.nu, PARTS)

    def steps(self, kind: ClothKind, *, seen: Sequence[Observed] = ()) -> Steps:
        """The steps of a kind of cloth, all together; see belief."""
        touched = [self.nodes.columns_for(kind, asked=True)]
        own, held = None, None
        if seen:
            own = self._one_warp(seen)
            names = {piece.warp for piece in seen} & self.held.keys()
            if own is not None and names:
                pieces, weight = self.held[min(names)]
                held = Held(rows_of(pieces, self.direction, self.hyper), weight)
        for rows in (own, held.rows if held else None):
            touched += [self.nodes.columns_for(one, asked=False) for one in (rows.kinds if rows else ())]
        return asked(self.nodes, touched, mean_of(kind, self.hyper), self._weights, own, held)

    def belief(self, kind: ClothKind, first: str, last: str, *, seen: Sequence[Observed] = ()) -> Belief:
        """What to expect of ln(last / first); both are moments of the direction.

        seen: all pieces measured so far of the very warp that is asked about, a washed sample or a width
        on the loom: what they did of their own counts for the rest. The journal may hold them already.
        """
        return self.steps(kind, seen=seen).along(span(self.direction, first, last))

    def with_more(self, observed: Sequence[Observed]) -> Forecast:
        """With whole new warps in it: effects and the nodes' weights move, the variances stay. Quick.

        A warp that the journal holds already must not come again. What an answer rests on is still
        told of the journal that was fitted.
        """
        nodes, held = self.nodes, dict(self.held)
        for warp in sorted({piece.warp for piece in observed}):
            pieces = tuple(piece for piece in observed if piece.warp == warp)
            rows = self._one_warp(pieces)
            if rows is not None:
                touched = [nodes.columns_for(kind, asked=False) for kind in rows.kinds]
                nodes, weight = with_warp(nodes, touched, rows, self._weights)
                held[warp] = pieces, weight
        return replace(self, nodes=nodes, held=held)

    def rests_on(self, kind: ClothKind, first: str, last: str) -> RestsOn:
        """Which warps the belief rests on, and which of them moves it most."""
        return rests_on(self.weighing, kind, span(self.direction, first, last))

    def surprises(self, below: float = 0.001) -> tuple[Surprise, ...]:
        """Losses that the other warps make unlikely: one a warp, the worst first.

        At .001 about one clean journal in thirty is asked one needless question.
        """
        return self.weighing.surprises(below)

    def _one_warp(self, pieces: Sequence[Observed]) -> Rows | None:
        """Pieces of one warp laid out, whatever names they bear; None where they tell nothing."""
        name = min(piece.warp for piece in pieces)
        rows = rows_of([replace(piece, warp=name) for piece in pieces], self.direction, self.hyper)
        return rows if rows.kinds else None


def _laid_out(observed: Sequence[Observed], direction: str, hyper: Hyper) -> Journal:
    rows = rows_of(observed, direction, hyper)
    return Journal.of(rows, design_of(rows))


def _held(journal: Journal, weight: Floats) -> dict[str, tuple[tuple[Observed, ...], float]]:
    """The pieces of each warp, and its λ."""
    pieces: dict[str, list[Observed]] = {}
    for piece in journal.rows.pieces:
        pieces.setdefault(piece.warp, []).append(piece)
    return {warp: (tuple(pieces[warp]), float(one)) for warp, one in zip(journal.rows.warps, weight, strict=True)}


def _astray(mode: Mode) -> bool:
    return float(np.max(np.abs(mode.theta))) > FAR
