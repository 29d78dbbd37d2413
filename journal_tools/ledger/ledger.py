"""The ledger of a warp: what its cloth did at every step, beside what was planned."""

from __future__ import annotations

import dataclasses
import itertools
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from journal_tools.ledger.account import Account, account_of
from journal_tools.ledger.chain import DIRECTIONS, Measure, Tape, chain_of, loss_between, losses, made_up_of, tape_of
from journal_tools.ledger.laid import Laid, lay_out, lay_plan
from journal_tools.ledger.mass import Reckoned
from journal_tools.ledger.row import Owner, Row, averaged, row_of
from journal_tools.ledger.state import MADE_UP, State, wash_number
from journal_tools.ledger.threads import FinishedCounts, finished_counts, weigh
from journal_tools.records.cloth import Learn
from journal_tools.records.journal import Journal
from journal_tools.records.warp import Warp


@dataclass(frozen=True)
class SizeLine:
    """One state of one piece in one direction: measured, planned, or both.

    measured_mm, planned_mm: None where nobody said. u_mm: U (k = 2) of the measured size.
    unit, mark_mm: of the tape. yardstick: "cloth", "hemmed", "marks" or "made up".
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
        """Measured less planned, None unless both are known."""
        if self.measured_mm is None or self.planned_mm is None:
            return None
        return self.measured_mm - self.planned_mm

    @property
    def beyond(self) -> bool:
        """Whether it is further off plan than its ± explains."""
        return self.off_mm is not None and abs(self.off_mm) > self.u_mm


@dataclass(frozen=True)
class PieceLedger:
    """One piece, or pieces written down as alike. name: "" for the only one."""

    stretch: str
    name: str
    number: int
    sizes: tuple[SizeLine, ...]
    rows: tuple[Row, ...]
    counts: FinishedCounts
    mass: Reckoned | None
    laid: Laid

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
    chains = {direction: chain_of(laid, direction, tape) for direction in DIRECTIONS}
    planned = {direction: chain_of(plan, direction, tape) if plan else () for direction in DIRECTIONS}
    stretch = laid.stretch.name or "" if laid.stretch is not laid.warp else ""
    steered = laid.steered or _fulled(journal, laid)
    owner = Owner(laid.warp.name, stretch, laid.name, laid.number, steered)
    return PieceLedger(
        stretch,
        laid.name,
        laid.number,
        tuple(_sizes(laid, plan, chains, planned, tape)),
        tuple(_rows(laid, owner, chains, planned)),
        finished_counts(laid, chains["width"], chains["length"]),
        weigh(journal, laid, chains["width"], chains["length"], account),
        laid,
    )


def _fulled(journal: Journal, laid: Laid) -> bool:
    recipes = [journal.finishes.get(name) for name in laid.said("finish") or ()]
    return any(recipe is not None and recipe.fulling for recipe in recipes)


def _rows(
    laid: Laid, owner: Owner, chains: Mapping[str, Sequence[Measure]], planned: Mapping[str, Sequence[Measure]]
) -> Iterator[Row]:
    for direction in DIRECTIONS:
        plans = _planned_losses(planned[direction], direction)
        for loss in losses(chains[direction]):
            row = row_of(owner, direction, loss, None, learned(laid, direction, loss.last.state))
            yield dataclasses.replace(row, planned=plans.get(row.span))


def _planned_losses(chain: Sequence[Measure], direction: str) -> dict[tuple[str, str, str], float]:
    """The loss between every two sizes that a plan states and that can be compared, by span."""
    nobody = Owner("", "", "", 1, False)
    found: dict[tuple[str, str, str], float] = {}
    for first, last in itertools.combinations(chain, 2):
        loss = loss_between(chain, first, last)
        if loss is not None:
            row = row_of(nobody, direction, loss, None, (True, ""))
            found[row.span] = loss.loss
    return found


def learned(laid: Laid, direction: str, last: State) -> tuple[bool, str]:
    """Whether the journal may learn this loss, and the weaver's reason when it may not."""
    for number, level in enumerate(laid.levels):
        for rule in level.learn:
            if rule.yes:
                return True, ""
            if _covers(rule, laid, direction, last, own=number == 0):
                return False, rule.reason
    return True, ""


def _covers(rule: Learn, laid: Laid, direction: str, last: State, *, own: bool) -> bool:
    if rule.direction is not None and rule.direction != direction:
        return False
    if rule.state is not None and rule.state.replace("_", " ") not in (last.key.replace("_", " "), last.key.split(" ")[0]):
        return False
    return rule.source is None or own or rule.source in (laid.stretch.name, laid.name, laid.name.split(" ")[0])


def _sizes(
    laid: Laid,
    plan: Laid | None,
    chains: Mapping[str, Sequence[Measure]],
    planned: Mapping[str, Sequence[Measure]],
    tape: Tape,
) -> Iterator[SizeLine]:
    for direction in DIRECTIONS:
        made = made_up_of(laid, direction, tape)
        wanted = made_up_of(plan, direction, tape) if plan else None
        measured = [each for each in [*chains[direction], *([made] if made else [])] if each.state.key != "off_loom" or each.yardstick != "marks"]
        plans = [*planned[direction], *([wanted] if wanted else [])]
        unplanned = [each.state for each in plans if _at(measured, each.state) is None]
        for state in sorted({*(each.state for each in measured), *unplanned}):
            yield _line(direction, state, _at(measured, state), _at(plans, state))


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
        known.mark_mm,
        known.yardstick,
    )
