"""The ledger of a warp: what its cloth did at every step, beside what was planned."""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from journal_tools.ledger.account import Account, account_of
from journal_tools.ledger.chain import (
    DIRECTIONS,
    Measure,
    Tape,
    chain_of,
    loss_over,
    losses,
    made_up_of,
    tape_of,
)
from journal_tools.ledger.doubts import Doubt, doubts_of
from journal_tools.ledger.laid import Laid, lay_out, lay_plan
from journal_tools.ledger.mass import Reckoned
from journal_tools.ledger.row import Owner, Row, averaged, row_of, span_of
from journal_tools.ledger.state import MADE_UP, OFF_LOOM, State, wash_number
from journal_tools.ledger.threads import FinishedCounts, finished_counts, weigh
from journal_tools.records.journal import Journal
from journal_tools.records.learn import Learn, names
from journal_tools.records.warp import Warp


@dataclass(frozen=True)
class SizeLine:
    """One state of one piece in one direction: measured, planned, or both.

    measured_mm, planned_mm: None where nobody said. u_mm: U (k = 2) of the measured size.
    unit: of the tape. mark_mm: its mark, or the plan's where that is finer.
    yardstick: "cloth", "hemmed", "marks" or "made up".
    """

    direction: str
    state: State
    measured_mm: float | None
    planned_mm: float | None
    u_mm: float
    unit: str
    mark_mm: Fraction
    yardstick: str

    @property
    def off_mm(self) -> float | None:
        """Measured less planned, each to the tape's mark as it is shown; None unless both are known."""
        if self.measured_mm is None or self.planned_mm is None:
            return None
        return self.to_the_mark(self.measured_mm) - self.to_the_mark(self.planned_mm)

    def to_the_mark(self, mm: float) -> float:
        """A size, or a mean of several, as the tape would be read: to the nearest mark, halves up."""
        return math.floor(round(mm / float(self.mark_mm), 6) + 0.5) * float(self.mark_mm)

    @property
    def beyond(self) -> bool:
        """Whether it is further off plan than its ± explains."""
        return self.off_mm is not None and abs(self.off_mm) > self.u_mm * (1 + 1e-9)


@dataclass(frozen=True)
class PieceLedger:
    """One piece, or pieces written down as alike. name: "" for the only one.

    plan: what it was planned as, "" for a plan without a name and for none. doubts: sizes that can
    hardly be so and that nobody has accepted, each with its direction. chains: the sizes of each
    direction in order, on all their yardsticks.
    """

    stretch: str
    name: str
    number: int
    sizes: tuple[SizeLine, ...]
    rows: tuple[Row, ...]
    counts: FinishedCounts
    mass: Reckoned | None
    laid: Laid
    plan: str = ""
    doubts: tuple[tuple[str, Doubt], ...] = ()
    chains: Mapping[str, tuple[Measure, ...]] = field(default_factory=dict)

    def in_doubt(self, direction: str) -> set[State]:
        """The states whose sizes count for nothing until the weaver has said that they are so."""
        return {size.state for way, doubt in self.doubts if way == direction for size in doubt.out}

    def size(self, direction: str, state: State) -> SizeLine | None:
        """The line of one state."""
        return next((line for line in self.sizes if (line.direction, line.state) == (direction, state)), None)

    def last(self, direction: str) -> SizeLine | None:
        """The last size measured before the piece was made up, or the made-up one."""
        lines = [line for line in self.sizes if line.direction == direction and line.measured_mm is not None]
        cloth = [line for line in lines if line.state != MADE_UP] or lines
        return cloth[-1] if cloth else None


@dataclass(frozen=True)
class Ledger:
    """All that is reckoned of one warp."""

    warp: Warp
    pieces: tuple[PieceLedger, ...]
    stretch_rows: tuple[Row, ...]
    warp_rows: tuple[Row, ...]
    account: Account | None
    tape: Tape

    @property
    def rows(self) -> tuple[Row, ...]:
        """Every row of a piece, in order."""
        return tuple(row for piece in self.pieces for row in piece.rows)

    def whole(self, direction: str) -> Row | None:
        """The whole loss that stands for the warp: of its first stretch that has one, to the last wash."""
        wholes = [row for row in self.stretch_rows if row.direction == direction and row.whole]
        return max(
            (row for row in wholes if row.stretch == wholes[0].stretch),
            key=lambda row: wash_number(row.last) or 0,
            default=None,
        )


def ledger_of(journal: Journal, warp: Warp) -> Ledger:
    """The ledger of one warp."""
    laid = lay_out(warp)
    tape = tape_of(laid, warp.tape or journal.settings.tape)
    account = account_of(warp, laid)
    pieces = tuple(_piece(journal, each, tape, account) for each in laid)
    rows = [row for piece in pieces for row in piece.rows]
    return Ledger(warp, pieces, averaged(rows, "stretch"), averaged(rows, "warp"), account, tape)


def _piece(journal: Journal, laid: Laid, tape: Tape, account: Account | None) -> PieceLedger:
    plan = lay_plan(laid)
    plan_tape = tape_of([plan], None) if plan else tape
    chains = {direction: chain_of(laid, direction, tape) for direction in DIRECTIONS}
    planned = {direction: chain_of(plan, direction, plan_tape) if plan else () for direction in DIRECTIONS}
    stretch = laid.stretch.name or "" if laid.stretch is not laid.warp else ""
    steered = laid.steered or _fulled(journal, laid)
    owner = Owner(laid.warp.name, stretch, laid.name, laid.number, steered)
    accepted = {slug for level in laid.levels for slug in level.accepted} | set(laid.warp.accepted)
    doubts = tuple(
        (direction, doubt)
        for direction in DIRECTIONS
        for doubt in doubts_of(chains[direction], direction, steered)
        if doubt.slug not in accepted and learned(laid, direction, doubt.against.state, doubt.size.state)[0]
    )
    return PieceLedger(
        stretch,
        laid.name,
        laid.number,
        tuple(
            line
            for direction in DIRECTIONS
            for line in _sizes(direction, (laid, chains[direction], tape), (plan, planned[direction], plan_tape))
        ),
        tuple(_rows(laid, owner, chains, planned, doubts)),
        finished_counts(laid, chains["width"], chains["length"]),
        weigh(journal, laid, chains["width"], chains["length"], account),
        laid,
        plan.name if plan is not None else "",
        doubts,
        chains,
    )


def _fulled(journal: Journal, laid: Laid) -> bool:
    recipes = [journal.finishes.get(name) for name in laid.said("finish") or ()]
    return any(recipe is not None and recipe.fulling for recipe in recipes)


def _rows(
    laid: Laid,
    owner: Owner,
    chains: Mapping[str, Sequence[Measure]],
    planned: Mapping[str, Sequence[Measure]],
    doubts: Sequence[tuple[str, Doubt]],
) -> Iterator[Row]:
    for direction in DIRECTIONS:
        out = {size.state for way, doubt in doubts if way == direction for size in doubt.out}
        plans = _planned_losses(planned[direction], direction)
        for loss in losses(chains[direction]):
            first, last = loss.first.state, loss.last.state
            planned_loss = plans.get(span_of(direction, first, last))
            learns = (False, IN_DOUBT) if out & {first, last} else learned(laid, direction, first, last)
            yield row_of(owner, direction, loss, planned_loss, learns)


def _planned_losses(chain: Sequence[Measure], direction: str) -> dict[tuple[str, str, str], float]:
    """The loss between every two sizes that a plan states and that can be compared, by span."""
    found: dict[tuple[str, str, str], float] = {}
    for first, last in itertools.combinations(range(len(chain)), 2):
        loss = loss_over(chain[first : last + 1])
        if loss is not None:
            found[span_of(direction, loss.first.state, loss.last.state)] = loss.loss
    return found


def learned(laid: Laid, direction: str, first: State, last: State) -> tuple[bool, str]:
    """Whether the journal may learn this loss, and the weaver's reason when it may not.

    A rule about a state keeps out every loss that begins or ends at it.
    """
    for rule in (rule for level in laid.levels for rule in level.learn):
        if rule.yes:
            return True, ""
        if _covers(rule, laid, direction, (first, last)):
            return False, rule.reason
    return True, ""


def _covers(rule: Learn, laid: Laid, direction: str, ends: tuple[State, State]) -> bool:
    if rule.direction is not None and rule.direction != direction:
        return False
    if rule.state is not None and not any(_is_called(state, rule.state) for state in ends):
        return False
    called = (laid.stretch.name, laid.piece or laid.name, laid.band_name)
    return rule.source is None or any(name and names(rule.source, name) for name in called)


def _is_called(state: State, said: str) -> bool:
    """Whether a state is the one said: `washed` is every wash, and the only wash is `washed 1`."""
    number = wash_number(state)
    if number is None or said == "washed":
        return said == (state.key if number is None else "washed")
    return said == f"washed_{number}"


IN_DOUBT = "a size of it is asked about"

Chained = tuple[Laid, Sequence[Measure], Tape]


def _sizes(direction: str, done: Chained, wanted: tuple[Laid | None, Sequence[Measure], Tape]) -> Iterator[SizeLine]:
    measured, planned = _with_made_up(direction, *done), _with_made_up(direction, *wanted)
    unmeasured = [each.state for each in planned if _at(measured, each.state) is None]
    for state in sorted({*(each.state for each in measured), *unmeasured}):
        is_so, should_be = _at(measured, state), _at(planned, state)
        if is_so is not None and should_be is not None and is_so.yardstick != should_be.yardstick:
            yield _line(direction, state, is_so, None)
            yield _line(direction, state, None, should_be)
        else:
            yield _line(direction, state, is_so, should_be)


def _with_made_up(direction: str, laid: Laid | None, chain: Sequence[Measure], tape: Tape) -> list[Measure]:
    """The sizes of a chain that are sizes of cloth, and the made-up one; where marks were sewn is none."""
    made = made_up_of(laid, direction, tape) if laid is not None else None
    kept = [each for each in chain if each.state != OFF_LOOM or each.yardstick != "marks"]
    return [*kept, *([made] if made else [])]


def _at(chain: Sequence[Measure], state: State) -> Measure | None:
    number = wash_number(state)
    for each in chain:
        if each.state == state or (number is not None and wash_number(each.state) == number):
            return each
    return None


def _line(direction: str, state: State, measured: Measure | None, planned: Measure | None) -> SizeLine:
    known = measured or planned
    assert known is not None
    return SizeLine(
        direction,
        state,
        measured.mm if measured else None,
        planned.mm if planned else None,
        measured.u_mm if measured else 0.0,
        known.unit,
        min(each.mark_mm for each in (measured, planned) if each is not None),
        known.yardstick,
    )
