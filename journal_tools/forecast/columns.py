"""The effects that a journal can speak of: one column for each weave, fibre, yarn, finish and year."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

import numpy as np

from journal_tools.forecast.chain import STEPS
from journal_tools.forecast.hyper import EFFECTS, TERMS
from journal_tools.forecast.kind import ClothKind, covariate
from journal_tools.forecast.small import Floats, Indices

Column = tuple[str, str | int]  # the term, and whose effect it is

BLOCKS = ("level", *EFFECTS)
FIRST_SHARE = 0.65  # of the yarn that runs the way that is measured across: weft for width, warp for length
LEVEL: Column = ("level", "")
SLOPE: Column = ("closeness", "")


def terms_of(kind: ClothKind, direction: str, undated: int | None) -> dict[Column, float]:
    """The columns that a kind of cloth touches, with how much of each. An unknown name is a name too.

    undated: the year to take where none is known; None leaves the year out.
    """
    found: dict[Column, float] = {LEVEL: 1.0, ("weave", kind.weave): 1.0}
    for term, warp, weft in (
        ("fibre", kind.warp_fibre, kind.weft_fibre),
        ("yarn", kind.warp_yarn, kind.weft_yarn),
    ):
        first, other = (weft, warp) if direction == "width" else (warp, weft)
        for name, share in ((first, FIRST_SHARE), (other, 1 - FIRST_SHARE)):
            found[term, name] = found.get((term, name), 0.0) + share
    found["finish", kind.finish] = 1.0
    near = covariate(kind.closeness)
    if near:
        found[SLOPE] = near
    year = undated if kind.year is None else kind.year
    if year is not None:
        found["year", year] = 1.0
    return found


def middle_year(kinds: Iterable[ClothKind]) -> int | None:
    """The year that stands in for a cloth without one: the middle of those that are known."""
    years = sorted(kind.year for kind in kinds if kind.year is not None)
    return years[len(years) // 2] if years else None


@dataclass(frozen=True)
class Columns:
    """The columns of a journal, in order: level, weaves, …, and last the levels of the years.

    The year is a random walk: its first year is the level's, each later one has a column. place: where
    each column's steps stand in the vector of effects, −1 where nothing was measured (columns × K).
    many: length of that vector. first_year, years: of the walk, which takes `walk` rows at the end.
    block_of: of each place, its index in BLOCKS. step_of: of each place.
    """

    direction: str
    names: tuple[Column, ...]
    index: dict[Column, int]
    place: Indices
    many: int
    first_year: int | None
    last_year: int | None
    undated: int | None
    block_of: Indices
    step_of: Indices

    @property
    def walk(self) -> tuple[int, int, int]:
        """Start of the years in the vector of effects, how many years, and how many steps each."""
        years = sum(1 for term, _ in self.names if term == "year")
        if not years:
            return self.many, 0, 0
        start = int(np.sum(self.block_of != BLOCKS.index("year")))
        return start, years, (self.many - start) // years


def touched(kind: ClothKind, columns: Columns, undated: int | None) -> dict[Column, float]:
    """terms_of, without the first year of the walk, which has no column."""
    found = terms_of(kind, columns.direction, undated)
    if columns.first_year is not None:
        found.pop(("year", columns.first_year), None)
    return found


def columns_of(kinds: Sequence[ClothKind], measured: Floats, direction: str) -> Columns:
    """The columns that kinds (groups) touch; measured: which steps each group tells of (groups × K)."""
    steps = STEPS[direction]
    undated = middle_year(kinds)
    years = [kind.year for kind in kinds if kind.year is not None]
    first, last = (min(years), max(years)) if years else (None, None)
    told: dict[Column, Floats] = {}
    for kind, tells in zip(kinds, measured, strict=True):
        for column in terms_of(kind, direction, undated):
            told[column] = np.maximum(told.get(column, np.zeros(len(steps))), tells)
    walk = [told.pop(("year", year)) for year in sorted({*years}) if ("year", year) in told]
    if first is not None and last is not None and last > first:
        ever = np.max(walk, axis=0)  # a walk has its steps in every year or in none
        told |= {("year", year): ever for year in range(first + 1, last + 1)}
    names = sorted(told, key=lambda column: (BLOCKS.index(column[0]), column[1]))
    place = np.full((len(names), len(steps)), -1, dtype=np.intp)
    block_of, step_of = [], []
    many = 0
    for row, column in enumerate(names):
        for step, name in enumerate(steps):
            if told[column][step] and (column[0] == "level" or name in TERMS[column[0]]):
                place[row, step] = many
                block_of.append(BLOCKS.index(column[0]))
                step_of.append(step)
                many += 1
    return Columns(
        direction=direction,
        names=tuple(names),
        index={column: row for row, column in enumerate(names)},
        place=place,
        many=many,
        first_year=first,
        last_year=last,
        undated=undated,
        block_of=np.array(block_of, dtype=np.intp),
        step_of=np.array(step_of, dtype=np.intp),
    )
