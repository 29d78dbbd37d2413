"""What the journal learns from: every piece's sizes, on each yardstick, as the forecast takes them in.

Learned are sizes of dry cloth that nobody kept out with `learn:`, oddities that were accepted among them.
Cloth that was fulled to size teaches up to its scouring: what comes after is a decision, and is answered by
time. What an owner measures of a made-up piece is no wash.
"""

from __future__ import annotations

import dataclasses
import math
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from journal_tools.forecast import by_yarn
from journal_tools.forecast.cloth_kind import kind_of, recipe_of
from journal_tools.forecast.kind import ClothKind
from journal_tools.forecast.moments import moments
from journal_tools.forecast.observed import Observed, Reading
from journal_tools.ledger.chain import DIRECTIONS, Measure
from journal_tools.ledger.ledger import Ledger, PieceLedger, ledger_of
from journal_tools.ledger.ledger import learned as may_learn
from journal_tools.ledger.state import ON_LOOM, wash_number
from journal_tools.records import Journal

MARKS = "marks on the warp"
"""The name under which the marks on a warp stand beside its pieces."""

AGAIN = ", washed again"
"""What is added to a piece's name for washes by another recipe than its first."""


@dataclass(frozen=True)
class Learned:
    """What one piece teaches in one direction, and where it stands.

    source: the ledger of the piece; None for the marks on a warp. measures: the size behind each reading
    that was taken with a tape or counted in dents.
    """

    direction: str
    observed: Observed
    source: PieceLedger | None
    measures: Mapping[Reading, Measure]


def observed_of(journal: Journal, ledgers: Mapping[str, Ledger] | None = None) -> dict[str, tuple[Observed, ...]]:
    """What the journal has observed, by direction: "width" and "length"; warps in the order of their names.

    ledgers: of warps, by name, where they are at hand; else they are reckoned here.
    """
    learned = tuple(learned_of(journal, ledgers))
    return {
        direction: tuple(each.observed for each in learned if each.direction == direction) for direction in DIRECTIONS
    }


def learned_of(journal: Journal, ledgers: Mapping[str, Ledger] | None = None) -> Iterator[Learned]:
    """Everything that may be learned, warp by warp, with the record's own sizes behind it."""
    known = ledgers if ledgers is not None else {}
    for name, warp in sorted(journal.warps.items()):
        yield from learned_from(journal, known.get(name) or ledger_of(journal, warp))


def learned_from(journal: Journal, ledger: Ledger) -> Iterator[Learned]:
    """What one warp teaches: its pieces in the order woven, width before length, then its marks."""
    kinds: list[ClothKind] = []
    seen: Counter[str] = Counter()
    for piece in ledger.pieces:
        kinds.append(kind_of(journal, piece.laid))
        name = ", ".join(part for part in (piece.stretch, piece.name) if part)
        seen[name] += 1
        label = name if seen[name] == 1 else f"{name} ({seen[name]})"
        for direction in DIRECTIONS:
            yield from _of_piece(journal, ledger, piece, label, kinds[-1], direction)
    marks = by_yarn.of_marks(ledger.warp, ledger.tape)
    if marks and any(may_learn(piece.laid, "length", ON_LOOM, ON_LOOM)[0] for piece in ledger.pieces):
        yield Learned("length", Observed(ledger.warp.name, MARKS, _agreed(kinds), marks), None, {})


def _of_piece(
    journal: Journal, ledger: Ledger, piece: PieceLedger, label: str, kind: ClothKind, direction: str
) -> Iterator[Learned]:
    laid, in_doubt = piece.laid, piece.in_doubt(direction)
    measures = {
        reading: measure
        for reading, measure in readings_of(journal, piece, direction).items()
        if measure.state not in in_doubt and may_learn(laid, direction, measure.state, measure.state)[0]
    }
    readings = list(measures)
    if direction == "length" and may_learn(laid, direction, ON_LOOM, ON_LOOM)[0]:
        readings = [*by_yarn.of_piece(laid, ledger.tape), *measures]
    for recipe, part in _by_recipe(piece, measures, readings, kind):
        kept = _comparable(part)
        if not kept:
            continue
        name = label if recipe == kind.finish else (label + AGAIN).removeprefix(", ")
        cloth = dataclasses.replace(kind, finish=recipe)
        behind = {reading: measures[reading] for reading in kept if reading in measures}
        yield Learned(direction, Observed(ledger.warp.name, name, cloth, kept, piece.number), piece, behind)


def readings_of(journal: Journal, piece: PieceLedger, direction: str) -> dict[Reading, Measure]:
    """The sizes of a piece at the moments that can teach, those that may not be learned among them."""
    return {
        Reading(moment, math.log(measure.mm), measure.relative / 2, measure.yardstick): measure
        for moment, measure in moments(journal, piece.laid, piece.chains[direction])
    }


def _by_recipe(
    piece: PieceLedger, measures: Mapping[Reading, Measure], readings: Sequence[Reading], kind: ClothKind
) -> Iterator[tuple[str, Sequence[Reading]]]:
    """Readings by the recipe that made them: what later washes by another one took is a part of its own."""
    first = [reading for reading in readings if reading.moment == "washed 1"]
    later = [reading for reading in readings if reading.moment in ("washed 2", "settled")]
    last = max((wash_number(measures[reading].state) or 1 for reading in later), default=1)
    recipe = recipe_of(piece.laid, last)
    if first and later and recipe != kind.finish:
        yield kind.finish, [reading for reading in readings if reading not in later]
        yield recipe, [*first, *later]
    else:
        yield kind.finish, readings


def _comparable(readings: Sequence[Reading]) -> tuple[Reading, ...]:
    """Readings that have another on their yardstick to be compared with."""
    sticks = Counter(reading.yardstick for reading in readings)
    return tuple(reading for reading in readings if sticks[reading.yardstick] > 1)


def _agreed(kinds: Sequence[ClothKind]) -> ClothKind:
    """What all the cloths of a warp have in common: marks on it tell of all of them together."""
    fields: dict[str, Any] = {}
    for field in dataclasses.fields(ClothKind):
        said = {getattr(kind, field.name) for kind in kinds}
        fields[field.name] = said.pop() if len(said) == 1 else field.default
    return ClothKind(**fields)
