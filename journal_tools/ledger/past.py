"""What a yarn did before: every warp in it, and each step's losses over all of them."""

from __future__ import annotations

import statistics
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from journal_tools.ledger.ledger import Ledger, ledger_of
from journal_tools.ledger.row import Row
from journal_tools.ledger.state import wash_number
from journal_tools.quantities import Density
from journal_tools.records.journal import Journal
from journal_tools.records.warp import Stretch, Warp
from journal_tools.records.yarns_used import find_yarn, warp_yarns, weft_yarns


@dataclass(frozen=True)
class PastWarp:
    """One warp that had the yarn. use: "warp", "weft" or "warp and weft"."""

    warp: Warp
    ledger: Ledger
    use: str

    def weave(self, stretch: str) -> str:
        """The weave of one of its stretches."""
        found: Stretch = next((each for each in self.warp.stretches if each.name == stretch), self.warp)
        return found.weave or self.warp.weave or ""

    def weaves(self) -> set[str]:
        """Every weave of it, in small letters."""
        return {self.weave(each.name or "").casefold() for each in self.warp.woven()}

    def sett(self, stretch: str) -> Density | None:
        """The sett of one of its stretches."""
        found: Stretch = next((each for each in self.warp.stretches if each.name == stretch), self.warp)
        return self.warp.sett_of(found)


@dataclass(frozen=True)
class Step:
    """The losses of one step over all warps of a yarn.

    Means, spreads and ranges count one figure for each stretch of a warp, those alone that may be
    learned and were not fulled to size. spread: sample standard deviation, None for fewer than two.
    left_out: how many figures are not counted.
    """

    direction: str
    label: str
    span: tuple[str, str, str]
    whole: bool
    losses: tuple[float, ...]
    left_out: int

    @property
    def mean(self) -> float | None:
        """Mean loss, None when no figure counts."""
        return statistics.fmean(self.losses) if self.losses else None

    @property
    def spread(self) -> float | None:
        """Standard deviation between the figures."""
        return statistics.stdev(self.losses) if len(self.losses) > 1 else None


@dataclass(frozen=True)
class Past:
    """What one yarn did. warps: newest first, undated last. steps: in the order of the cloth.

    weaves: the same steps for each weave by itself, the one with most figures first: a waffle and a
    plain weave of one yarn have no mean worth weaving to.
    """

    yarn: str
    warps: tuple[PastWarp, ...]
    steps: tuple[Step, ...]
    weaves: tuple[tuple[str, tuple[Step, ...]], ...] = ()

    def step(self, direction: str, whole: bool = True) -> Step | None:
        """The whole loss with the most figures, in one direction."""
        return most_figures(self.steps, direction, whole)

    def of_weave(self, weave: str) -> Past:
        """The same for one weave alone, by its name; no warps when the yarn was in none."""
        warps = tuple(each for each in self.warps if weave.casefold() in each.weaves())
        steps = next((steps for name, steps in self.weaves if name.casefold() == weave.casefold()), ())
        return Past(self.yarn, warps, steps, tuple(each for each in self.weaves if each[1] is steps))


def most_figures(steps: Iterable[Step], direction: str, whole: bool = True) -> Step | None:
    """The whole loss with the most figures, in one direction."""
    found = [each for each in steps if each.direction == direction and each.whole is whole]
    return max(found, key=lambda each: len(each.losses), default=None)


def past_of(journal: Journal, typed: str, ledgers: Mapping[str, Ledger] | None = None) -> Past:
    """The past of a yarn, by its name, an old name, its title or its label. No warps: an empty past."""
    name, _, _ = find_yarn(journal, typed)
    known = ledgers or {}
    warps = tuple(
        PastWarp(warp, known.get(warp.name) or ledger_of(journal, warp), use)
        for warp in journal.warps_newest_first()
        if (use := uses_of(journal, warp).get(name)) is not None
    )
    return past_from(name, warps)


def past_from(name: str, warps: tuple[PastWarp, ...]) -> Past:
    """The past of a yarn whose warps are known, newest first."""
    rows = [(each.weave(row.stretch), row) for each in warps for row in each.ledger.stretch_rows]
    groups: dict[str, list[tuple[str, Row]]] = {}
    for weave, row in rows:
        groups.setdefault(weave.casefold(), []).append((weave, row))
    by_weave = [(group[0][0], steps_of(row for _, row in group)) for group in groups.values()]
    most = sorted(by_weave, key=lambda each: -max(len(step.losses) for step in each[1]))
    return Past(name, warps, steps_of(row for _, row in rows), tuple(most))


def uses_of(journal: Journal, warp: Warp) -> dict[str, str]:
    """The yarns of a warp by name, each with its use: "warp", "weft" or "warp and weft"."""
    wound = dict.fromkeys((yarn.name for yarn in warp_yarns(journal, warp)), "warp")
    thrown = dict.fromkeys((yarn.name for yarn in weft_yarns(journal, warp)), "weft")
    both = dict.fromkeys(wound.keys() & thrown.keys(), "warp and weft")
    return wound | thrown | both


def steps_of(rows: Iterable[Row]) -> tuple[Step, ...]:
    """Rows of stretches gathered by span, width before length, steps before wholes."""
    groups: dict[tuple[str, str, str], list[Row]] = {}
    for row in rows:
        groups.setdefault(row.span, []).append(row)
    ordered = sorted(groups.values(), key=lambda group: _order(group[0]))
    return tuple(_step(group) for group in ordered)


def _order(row: Row) -> tuple[object, ...]:
    number = wash_number(row.last)
    return (row.direction == "length", row.whole, row.first.rank, row.last.rank if number is None else 10 + number)


def _step(group: Sequence[Row]) -> Step:
    counted = [row for row in group if row.learn and not row.steered]
    first = group[0]
    label = f"{first.direction}, {first.first.short} to {first.last.short}"
    numbered = next((row for row in group if row.last.key == first.span[2]), first)
    alone = all(row.last.key == "washed" for row in group)
    if not alone and wash_number(first.last) is not None:
        label = numbered.label
    return Step(
        first.direction, label, first.span, first.whole, tuple(row.loss for row in counted), len(group) - len(counted)
    )


def as_json(past: Past) -> list[dict[str, object]]:
    """One object for each warp, piece and step, newest warp first.

    Keys: warp, stretch, piece, pieces (how many it stands for), started, weave, use, direction
    ("width" or "length"), from, to (states), loss, uncertainty (k = 2), planned (null when the plan
    does not say), all three as fractions; skipped (states nobody measured), whole, joined, steered
    and learn (true or false), reason.
    """
    return [
        {
            "warp": row.warp,
            "stretch": row.stretch,
            "piece": row.piece,
            "pieces": row.number,
            "started": each.warp.started.text if each.warp.started else None,
            "weave": each.weave(row.stretch),
            "use": each.use,
            "direction": row.direction,
            "from": row.first.key,
            "to": row.last.key,
            "loss": round(row.loss, 6),
            "uncertainty": round(row.uncertainty, 6),
            "planned": None if row.planned is None else round(row.planned, 6),
            "skipped": [state.key for state in row.between],
            "whole": row.whole,
            "joined": row.joined,
            "steered": row.steered,
            "learn": row.learn,
            "reason": row.reason,
        }
        for each in past.warps
        for row in each.ledger.rows
    ]
