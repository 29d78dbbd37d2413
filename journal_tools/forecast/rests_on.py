"""Which warps of the journal an answer rests on."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from journal_tools.forecast.columns import touched
from journal_tools.forecast.kind import ClothKind
from journal_tools.forecast.small import Floats
from journal_tools.forecast.weighing import Weighing


@dataclass(frozen=True)
class RestsOn:
    """What an answer rests on, said before the answer.

    basis: "yarn and weave", "yarn", "fibre and weave", "fibre" or "common practice": the nearest that
    the journal holds. yarn_warps, weave_warps, both, fibre_warps: names of the warps that measured any of
    the steps asked about in such cloth, those that move the answer most first. heaviest: the warp without
    which the answer would move most, "" in an empty journal; moves: by how much it moves it, in ln ratio.
    """

    basis: str
    yarn_warps: tuple[str, ...]
    weave_warps: tuple[str, ...]
    both: tuple[str, ...]
    fibre_warps: tuple[str, ...]
    heaviest: str
    moves: float


def rests_on(weighing: Weighing, kind: ClothKind, span: Sequence[float]) -> RestsOn:
    """What the answer for a kind of cloth and a span of steps rests on."""
    rows = weighing.journal.rows
    moves = weighing.influence(_answer(weighing, kind, span))
    way = np.array(span) != 0
    tells = np.zeros(len(rows.kinds), dtype=bool)
    informed = np.diagonal(rows.information, axis1=1, axis2=2) > 0
    np.logical_or.at(tells, rows.cell_group, (informed[rows.cell_class] & way).any(axis=1))
    told = np.nonzero(tells)[0].tolist()
    order = sorted({int(rows.warp_of[group]) for group in told}, key=lambda warp: (-abs(moves[warp]), rows.warps[warp]))

    def alike(groups: set[int]) -> tuple[str, ...]:
        warps = {int(rows.warp_of[group]) for group in groups}
        return tuple(rows.warps[warp] for warp in order if warp in warps)

    def sharing(*fields: str) -> set[int]:
        wanted = {getattr(kind, field) for field in fields} - {""}
        return {group for group in told if wanted & {getattr(rows.kinds[group], field) for field in fields}}

    yarn, weave = sharing("warp_yarn", "weft_yarn"), sharing("weave")
    fibre = sharing("warp_fibre", "weft_fibre")
    bases = {"yarn and weave": yarn & weave, "yarn": yarn, "fibre and weave": fibre & weave, "fibre": fibre}
    basis = next((name for name, groups in bases.items() if groups), "common practice")
    heaviest = order[0] if order else None
    return RestsOn(
        basis,
        alike(yarn),
        alike(weave),
        alike(yarn & weave),
        alike(fibre),
        "" if heaviest is None else rows.warps[heaviest],
        0.0 if heaviest is None else float(-moves[heaviest]),
    )


def _answer(weighing: Weighing, kind: ClothKind, span: Sequence[float]) -> Floats:
    """The answer as a product with the effects of the fit (many)."""
    columns = weighing.journal.design.columns
    found = np.zeros(columns.many)
    asked = touched(kind, columns, columns.last_year)
    for (term, name), share in asked.items():
        if term == "year" and columns.last_year is not None:
            name = min(int(name), columns.last_year)
        row = columns.index.get((term, name))
        if row is not None:
            places = columns.place[row]
            found[places[places >= 0]] += share * np.array(span)[places >= 0]
    return found
