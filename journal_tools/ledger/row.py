"""The row: one loss of one piece, stretch or warp. All that is shown or learned of losses reads rows."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from journal_tools.ledger.chain import Loss
from journal_tools.ledger.state import (
    IN_REED,
    OFF_LOOM,
    ON_LOOM,
    State,
    skipped,
    wash_number,
    washed,
    washes_before_hem,
)

LEVELS = ("piece", "stretch", "warp")

NAMED = {
    ("width", "in_reed", "on_loom"): "draw-in",
    ("width", "on_loom", "off_loom"): "relaxation",
    ("length", "on_loom", "off_loom"): "relaxation",
}


@dataclass(frozen=True)
class Row:
    """One loss, with both of its ends named.

    warp, stretch, piece: names; piece and stretch are "" above their level.
    level: "piece", "stretch" or "warp". number: pieces it stands for.
    direction: "width" or "length". first, last: the states at its ends.
    between: states in between that nobody measured, so that the loss spans them.
    loss: 1 - later/earlier, a fraction. uncertainty: its U (k = 2), a fraction.
    planned: the loss that the plan's own sizes give, None where the plan does not say.
    joined: a product over a hem or from edges to marks. steered: fulled to size, a decision.
    learn: whether the weaver lets the journal learn from it; reason: why not.
    spread: sample standard deviation between the pieces that were measured, None for fewer than two;
    pieces written down as alike are one measuring.
    """

    warp: str
    stretch: str
    piece: str
    level: str
    number: int
    direction: str
    first: State
    last: State
    loss: float
    uncertainty: float
    between: tuple[State, ...] = ()
    planned: float | None = None
    joined: bool = False
    steered: bool = False
    learn: bool = True
    reason: str = ""
    spread: float | None = None

    @property
    def whole(self) -> bool:
        """Whether it runs from the first state of its direction to a wash."""
        start = IN_REED if self.direction == "width" else ON_LOOM
        return self.first == start and wash_number(self.last) is not None

    @property
    def label(self) -> str:
        """`width, reed to washed`: a loss is never named without its ends."""
        return f"{self.direction}, {self.first.short} to {self.last.short}"

    @property
    def trade_name(self) -> str:
        """The trade's word for this loss, "" where it has none."""
        return NAMED.get((self.direction, self.first.key, self.last.key), "")

    @property
    def span(self) -> tuple[str, str, str]:
        """What losses must share to be compared: direction and both ends; the only wash is wash 1."""
        return span_of(self.direction, self.first, self.last)


def span_of(direction: str, first: State, last: State) -> tuple[str, str, str]:
    """The span of a loss between two states; see `Row.span`."""
    began, number = wash_number(first), wash_number(last)
    return (
        direction,
        f"washed {began}" if began is not None else first.key,
        f"washed {number}" if number is not None else last.key,
    )


@dataclass(frozen=True)
class Owner:
    """Whose rows they are: the names that a row carries, and what holds for all of them."""

    warp: str
    stretch: str
    piece: str
    number: int
    steered: bool


def row_of(owner: Owner, direction: str, loss: Loss, planned: float | None, learned: tuple[bool, str]) -> Row:
    """The row of one piece's loss."""
    measured = {_moment(each) for each in loss.through}
    return Row(
        owner.warp,
        owner.stretch,
        owner.piece,
        "piece",
        owner.number,
        direction,
        loss.first.state,
        loss.last.state,
        loss.loss,
        loss.uncertainty,
        tuple(state for state in skipped(_moment(loss.first.state), _moment(loss.last.state)) if state not in measured),
        planned,
        loss.joined,
        owner.steered and loss.last.state.rank > 3,
        *learned,
    )


def _moment(state: State) -> State:
    """The state whose place in the order tells what was skipped: a hem stands for the state it follows."""
    if state.key != "hemmed":
        return state
    washes = washes_before_hem(state)
    return OFF_LOOM if washes == 0 else washed(washes) if washes is not None else state


def averaged(rows: Iterable[Row], level: str) -> tuple[Row, ...]:
    """Rows of pieces gathered by stretch or by warp; like spans with like, each piece counted once.

    Pieces that the weaver keeps out of learning stay out of an average that has others. The ± is
    the pieces' own, not divided by their number, since the tape and the cloth's wander are shared.
    """
    groups: dict[tuple[str, ...], list[Row]] = {}
    for row in rows:
        key = (row.stretch if level == "stretch" else "", *row.span)
        groups.setdefault(key, []).append(row)
    return tuple(_average(group, level) for group in groups.values())


def _average(rows: Sequence[Row], level: str) -> Row:
    used = [row for row in rows if row.learn] or list(rows)
    number = sum(row.number for row in used)
    mean = sum(row.loss * row.number for row in used) / number
    uncertainty = math.sqrt(sum(row.uncertainty**2 * row.number for row in used) / number)
    plans = [row for row in used if row.planned is not None]
    planned = (
        sum((row.planned or 0) * row.number for row in plans) / sum(row.number for row in plans) if plans else None
    )
    first = used[0]
    return Row(
        first.warp,
        first.stretch if level == "stretch" else "",
        "",
        level,
        number,
        first.direction,
        first.first,
        first.last,
        mean,
        uncertainty,
        tuple(sorted(set.intersection(*(set(row.between) for row in used)))),
        planned,
        all(row.joined for row in used),
        any(row.steered for row in used),
        any(row.learn for row in used),
        first.reason if not any(row.learn for row in used) else "",
        _spread([row.loss for row in used]),
    )


def _spread(values: Sequence[float]) -> float | None:
    """Sample standard deviation, None for a single value."""
    if len(values) < 2:
        return None
    mean = math.fsum(values) / len(values)
    return math.sqrt(math.fsum((value - mean) ** 2 for value in values) / (len(values) - 1))
