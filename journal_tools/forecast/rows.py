"""Readings turned into what a fit needs, once: after this no piece costs anything.

The readings of a piece on one yardstick are l = offset + A z + noise, with A their positions in the
chain, W = diag(1 / sd²) and an offset (the size itself) that says nothing. With the offset taken out, a
piece tells G = A'WA − (A'w)(A'w)'/Σw about its steps z, and q = A'Wl − (A'w)(w'l)/Σw. That is the same
as differences with the covariance T diag(sd²) T', whichever moments were skipped, and pieces measured on
several yardsticks simply add theirs.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from operator import itemgetter

import numpy as np

from journal_tools.forecast.chain import STEPS, position
from journal_tools.forecast.hyper import Hyper
from journal_tools.forecast.kind import ClothKind, covariate
from journal_tools.forecast.observed import Observed, Reading
from journal_tools.forecast.small import Floats, Indices

LEAST_SD = 1e-4  # a hundredth of a per cent: finer than cloth can be read
GRID = 8.0  # sds are kept to e^(1/8), about 12 %, so that like pieces share their algebra


@cache
def kept_sd(sd: float) -> float:
    """A standard uncertainty as the fit uses it: on a grid 12 % apart, never below the least."""
    return math.exp(round(math.log(max(sd, LEAST_SD)) * GRID) / GRID)


@dataclass(frozen=True)
class Pattern:
    """What pieces with the same moments and uncertainties have in common (m readings, K steps).

    information: G (K × K). weigh: q = weigh @ logs (K × m). square: logs' square logs is their squared
    length (m × m). constant: of ln L, a piece.
    """

    information: Floats
    weigh: Floats
    square: Floats
    constant: float


def usable(piece: Observed, direction: str) -> tuple[Reading, ...]:
    """The readings of a piece that have another to be compared with, in the order of the chain."""
    places: dict[str, set[tuple[float, ...]]] = {}
    ordered = []
    for one in piece.readings:
        if math.isfinite(one.log) and math.isfinite(one.sd):
            places.setdefault(one.yardstick, set()).add(position(direction, one.moment))
            ordered.append((one.yardstick, one.moment, one.sd, one.log, one))
    ordered.sort(key=itemgetter(0, 1, 2, 3))
    return tuple(one for yardstick, _, _, _, one in ordered if len(places[yardstick]) > 1)


def pattern_of(readings: Sequence[Reading], direction: str) -> Pattern:
    """The algebra of one set of moments, yardsticks and uncertainties."""
    at = np.array([position(direction, one.moment) for one in readings])
    weights = np.array([kept_sd(one.sd) ** -2 for one in readings])
    square = np.diag(weights)
    constant = 0.0
    for yardstick in {one.yardstick for one in readings}:
        on = np.array([one.yardstick == yardstick for one in readings])
        mine = np.where(on, weights, 0.0)
        square -= np.outer(mine, mine) / mine.sum()
        log_det = -np.log(weights[on]).sum() + math.log(mine.sum())
        constant -= 0.5 * (log_det + (on.sum() - 1) * math.log(2 * math.pi))
    weigh = at.T @ square
    return Pattern(weigh @ at, weigh, square, constant)


def mean_of(kind: ClothKind, hyper: Hyper) -> Floats:
    """The steps of a kind of cloth before anything was measured (K)."""
    return hyper.level + covariate(kind.closeness) * hyper.slope_mean


@dataclass(frozen=True)
class Rows:
    """A journal as sums. A group is what shares a warp and a kind of cloth; a class shares a pattern.

    kinds, warp_of: of each group. warps: names in order. group_of: of each piece. Pieces of one group
    and one class are a cell: cell_group, cell_class, cell_number, cell_q (cells × K). information:
    classes × K × K; class_number; class_qq: sum of q q' (classes × K × K). squared: sum of the pieces'
    squared lengths. constant: of ln L. All logs are measured from mean_of.
    """

    direction: str
    pieces: tuple[Observed, ...]
    group_of: Indices
    kinds: tuple[ClothKind, ...]
    warps: tuple[str, ...]
    warp_of: Indices
    cell_group: Indices
    cell_class: Indices
    cell_number: Floats
    cell_q: Floats
    information: Floats
    class_number: Floats
    class_qq: Floats
    squared: float
    constant: float

    @property
    def steps(self) -> int:
        """How many steps the direction has: K."""
        return len(STEPS[self.direction])


def in_order(piece: Observed) -> tuple[object, ...]:
    """Where a piece stands when all are put in one order, so that the order they came in is nothing."""
    kind = piece.kind
    named = kind.weave, kind.warp_yarn, kind.weft_yarn, kind.warp_fibre, kind.weft_fibre, kind.finish
    placed = -1.0 if kind.closeness is None else kind.closeness, -1 if kind.year is None else kind.year
    readings = tuple((one.yardstick, one.moment, one.log, one.sd) for one in piece.readings)
    return piece.warp, named, placed, piece.piece, readings


def rows_of(observed: Sequence[Observed], direction: str, hyper: Hyper) -> Rows:
    """Lay a journal out for the fit. Pieces with nothing to compare are left out."""
    many = len(STEPS[direction])
    warps: dict[str, int] = {}
    groups: dict[tuple[str, ClothKind], int] = {}
    patterns: dict[tuple[tuple[str, str, float], ...], int] = {}
    found: list[Pattern] = []
    members: list[list[int]] = []
    logs: list[list[float]] = []
    pieces: list[Observed] = []
    group_of: list[int] = []
    for piece in sorted(observed, key=in_order):
        readings = usable(piece, direction)
        if not readings:
            continue
        first: dict[str, float] = {}
        for one in readings:
            first.setdefault(one.yardstick, one.log)
        key = tuple((one.yardstick, one.moment, kept_sd(one.sd)) for one in readings)
        if key not in patterns:
            patterns[key] = len(found)
            found.append(pattern_of(readings, direction))
            members.append([])
        members[patterns[key]].append(len(pieces))
        warps.setdefault(piece.warp, len(warps))
        group_of.append(groups.setdefault((piece.warp, piece.kind), len(groups)))
        logs.append([one.log - first[one.yardstick] for one in readings])
        pieces.append(piece)
    means = np.array([mean_of(kind, hyper) for _, kind in groups]).reshape(-1, many)
    group = np.array(group_of, dtype=np.intp)
    q = np.zeros((len(pieces), many))
    class_of = np.zeros(len(pieces), dtype=np.intp)
    class_qq = np.zeros((len(found), many, many))
    squared = 0.0
    for number, (pattern, mine) in enumerate(zip(found, members, strict=True)):
        read = np.array([logs[piece] for piece in mine])
        mean = means[group[mine]]
        raw = read @ pattern.weigh.T
        told = mean @ pattern.information
        squared += float(np.sum((read @ pattern.square) * read) - np.sum((2 * raw - told) * mean))
        q[mine] = raw - told
        class_of[mine] = number
        class_qq[number] = q[mine].T @ q[mine]
    cells, cell_of = np.unique(group * max(1, len(found)) + class_of, return_inverse=True)
    cell_q = np.zeros((len(cells), many))
    np.add.at(cell_q, cell_of, q)
    sizes = np.array([len(mine) for mine in members], dtype=float)
    return Rows(
        direction=direction,
        pieces=tuple(pieces),
        group_of=group,
        kinds=tuple(kind for _, kind in groups),
        warps=tuple(warps),
        warp_of=np.array([warps[warp] for warp, _ in groups], dtype=np.intp),
        cell_group=cells // max(1, len(found)),
        cell_class=cells % max(1, len(found)),
        cell_number=np.bincount(cell_of, minlength=len(cells)).astype(float),
        cell_q=cell_q,
        information=np.array([one.information for one in found]).reshape(-1, many, many),
        class_number=sizes,
        class_qq=class_qq,
        squared=squared,
        constant=float(sum(one.constant * size for one, size in zip(found, sizes, strict=True))),
    )
