"""What the journal finds incredible in a figure, and the likeliest slip of the pen.

Every warp is left out in turn, and its losses are held against what the others make of them. One that has
less than a chance in a thousand is asked about: one question a warp, and none where the journal has too
few warps to know. Where the ledger asks about a size already, the slip is named in its question.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from typing import TYPE_CHECKING

from journal_tools.forecast.cloth_kind import kind_of
from journal_tools.forecast.learned import MARKS, Learned, learned_from, learned_of, readings_of
from journal_tools.forecast.observed import Reading
from journal_tools.forecast.slips import UNIT
from journal_tools.forecast.suspects import likeliest, odd_one, suspects_of
from journal_tools.ledger.chain import DIRECTIONS, Measure
from journal_tools.ledger.doubts import LOST, SLUGS, Doubt
from journal_tools.ledger.ledger import Ledger, PieceLedger, ledger_of
from journal_tools.problems import Problem, Severity
from journal_tools.quantities import show_length
from journal_tools.records import Journal
from journal_tools.records.warp import Warp

if TYPE_CHECKING:
    from journal_tools.forecast.forecast import Forecast
    from journal_tools.forecast.memory import Memory
    from journal_tools.forecast.weighing import Surprise

SLUG = "incredible-figure"

FEWEST = 8
"""Warps, in one direction, below which a journal does not know enough to be surprised (judgement)."""

CALLED = {
    "in_reed": "in the reed",
    "warp": "of warp",
    "picks": "by its picks",
    "on_loom": "on the loom",
    "off_loom": "off the loom",
    "washed 1": "washed",
    "washed 2": "washed twice",
    "settled": "settled",
}
IF_SO = " If it is so, write"


def worth_asking(journal: Journal, problems: Iterable[Problem], ledgers: Mapping[str, Ledger] | None = None) -> bool:
    """Whether `with_incredible` can have something to say, so that a fit is worth its time."""
    if any(problem.slug in SLUGS for problem in problems):
        return True
    warps: dict[str, set[str]] = {direction: set() for direction in DIRECTIONS}
    for each in learned_of(journal, ledgers):
        warps[each.direction].add(each.observed.warp)
        if len(warps[each.direction]) >= FEWEST:
            return True
    return False


def with_incredible(
    journal: Journal, memory: Memory, problems: Iterable[Problem], ledgers: Mapping[str, Ledger] | None = None
) -> tuple[Problem, ...]:
    """Problems, with what the memory adds to them, in the order of files and lines.

    Added are questions about incredible figures that nobody has accepted, and the likeliest slip to the
    ledger's own questions about a size. ledgers: of warps, by name, where they are at hand.
    """
    told = [*_with_slips(journal, memory, list(problems), ledgers)]
    asked = {(problem.file, problem.line) for problem in told if problem.line}
    found: dict[str, Problem] = {}
    for direction, surprise in sorted(memory.surprises(), key=lambda pair: (pair[1].p, -abs(pair[1].z))):
        forecast, warp = memory.forecasts[direction], journal.warps.get(surprise.warp)
        if warp is None or warp.name in found or len(forecast.held) < FEWEST:
            continue
        learned = _found(learned_from(journal, _ledger(journal, warp, ledgers)), direction, surprise)
        if learned is None or SLUG in _accepted(warp, learned) or _doubted(learned):
            continue
        problem = _question(warp, learned, forecast, surprise)
        if (problem.file, problem.line) not in asked:
            found[warp.name] = problem
    return tuple(sorted([*told, *found.values()]))


def _ledger(journal: Journal, warp: Warp, ledgers: Mapping[str, Ledger] | None) -> Ledger:
    return (ledgers or {}).get(warp.name) or ledger_of(journal, warp)


def _with_slips(
    journal: Journal, memory: Memory, problems: list[Problem], ledgers: Mapping[str, Ledger] | None
) -> Iterator[Problem]:
    """The ledger's questions about sizes that can hardly be so, with the likeliest slip."""
    doubted = {problem.file for problem in problems if problem.slug in SLUGS}
    asks = {
        (warp.file, *key): asked
        for warp in journal.warps.values()
        if warp.file in doubted
        for piece in _ledger(journal, warp, ledgers).pieces
        for key, asked in _doubts(journal, memory, piece)
    }
    for problem in problems:
        asked = asks.get((problem.file, problem.slug, problem.field, problem.read), "")
        yield replace(problem, right=problem.right.replace(IF_SO, f" {asked}{IF_SO}", 1)) if asked else problem


def _doubts(journal: Journal, memory: Memory, piece: PieceLedger) -> Iterator[tuple[tuple[str, str, str], str]]:
    """Each doubt of a piece, by what its question says, with what the likeliest slip makes one ask."""
    for direction, doubt in piece.doubts:
        behind = {
            reading: measure
            for reading, measure in readings_of(journal, piece, direction).items()
            if reading.yardstick == doubt.size.yardstick
        }
        if len(behind) < 2:
            continue
        suspects = list(suspects_of(piece.laid, direction, behind))
        found = likeliest(suspects, list(behind), kind_of(journal, piece.laid), memory.forecasts[direction])
        if found is None or (doubt.slug, found[1].kind) == (LOST, UNIT):  # this one it asks by itself
            continue
        suspect, slip = found
        asks = slip.asks
        if behind[suspect.reading] != doubt.size:
            asks = f"Look at the {suspect.text} {CALLED[suspect.reading.moment]}: {asks[0].lower()}{asks[1:]}"
        yield (doubt.slug, _field(piece, doubt), _shown(doubt.size)), asks


def _field(piece: PieceLedger, doubt: Doubt) -> str:
    key = doubt.size.state.key
    return f"{piece.name}: {key}" if piece.name else key


def _shown(measure: Measure) -> str:
    return show_length(measure.mm, measure.unit, measure.mark_mm)


def _found(learned: Iterable[Learned], direction: str, surprise: Surprise) -> Learned | None:
    wanted = (direction, surprise.piece)
    return next((each for each in learned if wanted == (each.direction, each.observed.piece)), None)


def _accepted(warp: Warp, learned: Learned) -> set[str]:
    levels = learned.source.laid.levels if learned.source is not None else ()
    return {slug for level in (warp, *levels) for slug in level.accepted}


def _doubted(learned: Learned) -> bool:
    """Whether the ledger asks about a size of this piece already, in this direction."""
    return learned.source is not None and any(way == learned.direction for way, _ in learned.source.doubts)


def _question(warp: Warp, learned: Learned, forecast: Forecast, surprise: Surprise) -> Problem:
    readings = [each for each in learned.observed.readings if each.yardstick == surprise.yardstick]
    asks = "Is a figure wrong, or what happened to it?"
    line, field, read = warp.line("warp"), f"warp: {MARKS}", ""
    if learned.source is not None:
        behind = {reading: learned.measures.get(reading) for reading in readings}
        suspects = list(suspects_of(learned.source.laid, learned.direction, behind))
        found = likeliest(suspects, readings, learned.observed.kind, forecast)
        odd = found[0].reading if found else odd_one(readings, learned.observed.kind, forecast)
        suspect = found[0] if found else next((each for each in suspects if each.reading is odd), None)
        asks = found[1].asks if found else asks
        if suspect is not None:
            (line, field), read = suspect.place(warp), suspect.text
    right = f"{_told(warp, learned, readings, surprise)} {asks}{IF_SO} `accepted: {SLUG.replace('-', ' ')}`."
    return Problem(warp.file, line, field, read, right, Severity.QUESTION, SLUG)


def _told(warp: Warp, learned: Learned, readings: Iterable[Reading], surprise: Surprise) -> str:
    """What was measured, beside what the other warps lead one to expect."""
    by_moment = {each.moment: each for each in readings}
    first, last = by_moment[surprise.first], by_moment[surprise.last]
    measured = learned.measures.get(last) or learned.measures.get(first)
    unit = measured.unit if measured is not None else warp.units or "in"
    low, high = (math.exp(first.log + surprise.expected + side * 2 * surprise.sd) for side in (-1, 1))
    one, other = (
        _shown(measure) if (measure := learned.measures.get(each)) else show_length(math.exp(each.log), unit)
        for each in (first, last)
    )
    goes = f"the {learned.direction} goes from {one} {CALLED[first.moment]} to {other} {CALLED[last.moment]}"
    between = f"{show_length(low, unit).removesuffix(' ' + unit)} to {show_length(high, unit)}"
    return f"{goes}, where your other warps would make it {between}."
