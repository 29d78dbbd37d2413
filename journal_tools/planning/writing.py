"""A plan written into the record that it was made from: sizes under `plan:`, and nothing else."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from journal_tools.editing.change import Change, Value, tree_of
from journal_tools.editing.splice import splice_file
from journal_tools.planning.planned import Plan, PlannedPiece, PlannedStretch
from journal_tools.planning.words import Words
from journal_tools.records.front_matter import read_file


@dataclass(frozen=True)
class Written:
    """One planned figure on its way into a record. was: what stands there, "" for nothing. what: whose it is."""

    change: Change
    was: str
    what: str

    @property
    def words(self) -> str:
        """`towel, in_reed: 20 in -> 20 1/8 in`."""
        return f"{self.what}: {self.was} -> {self.change.value}"


def write_plan(folder: Path, plan: Plan, figures: Sequence[Written]) -> None:
    """Put figures into the record of a plan; every other byte stays. Raises SpliceRefused.

    folder: the journal's.
    """
    file = plan.wants.warp.file
    splice_file(folder / file, tuple(each.change for each in figures), file)


def figures_for(folder: Path, plan: Plan) -> Iterator[Written]:
    """Width in the reed, size on the loom and picks under each `plan:`, in the order of the record.

    A figure that stands there already, with its unit or without, is left as it was typed.
    """
    node = read_file(folder / plan.wants.warp.file, plan.wants.warp.file).node
    tree = tree_of(node) if node is not None else {}
    own_unit = f" {plan.wants.warp.units or plan.wants.journal.settings.length}"
    for each in plan.stretches:
        above = _above(plan, each)
        listed = isinstance(_at(tree, above), list)
        for piece in each.pieces:
            path = (*above, piece.wanted.number) if listed else above
            for key, value in figures_of(Words(plan), each, piece).items():
                found = _at(tree, (*path, key))
                was = " ".join(found.split()) if isinstance(found, str) else str(found or "")
                if key != piece.wanted.state and was not in (value, value.replace(own_unit, "")):
                    name = piece.wanted.name or each.wanted.name
                    yield Written(Change((*path, key), value), was, f"{name}, {key}" if name else key)


def figures_of(words: Words, each: PlannedStretch, piece: PlannedPiece) -> dict[str, str]:
    """What a plan says of a kind of piece on the way to the size wanted."""
    unit = f" {words.unit}"
    found = {"in_reed": words.size(each.across.mm)}
    width = words.size(piece.on_loom.mm).removesuffix(unit)
    if each.wanted.laid.opens_by > 1:
        found["in_reed"] += " folded"
    if piece.weave_mm is not None:
        folded = " folded" if each.wanted.laid.opens_by > 1 else ""
        found["on_loom"] = f"{width} x {words.hand(piece.weave_mm)}{folded}"
    if piece.picks:
        found["picks"] = str(piece.picks)
    return found


def _above(plan: Plan, each: PlannedStretch) -> tuple[str | int, ...]:
    """Where the plan stands: in the stretch, or above all of them."""
    warp, stretch = plan.wants.warp, each.wanted.stretch
    if stretch is warp or not stretch.plan:
        return ("plan",)
    return ("stretches", warp.stretches.index(stretch), "plan")


def _at(tree: Value, path: tuple[str | int, ...]) -> Value | None:
    for step in path:
        if isinstance(tree, Mapping) and isinstance(step, str):
            tree = tree.get(step, "")
        elif isinstance(tree, Sequence) and not isinstance(tree, str) and isinstance(step, int):
            tree = tree[step]
        else:
            return None
    return tree


def _wound(fields: Mapping[str, Value], plan: Plan) -> dict[str, Value]:
    """What is to be wound: the colours in whole repeats, or so many ends; and how long."""
    across, said = plan.stretches[0].across, fields.get("warp")
    found: dict[str, Value] = dict(said) if isinstance(said, Mapping) else {}
    if across.order is not None:
        found["order"] = across.order.written(across.times)
    else:
        found = {"ends": str(across.heddled), **found}
    return {**found, "wound": Words(plan).wind(plan.length.wind_mm)}


def new_fields(fields: Mapping[str, Value], plan: Plan) -> dict[str, Value]:
    """The fields of a new record with the plan in them: how it is set up, and sizes on the way."""
    words, (each, *_) = Words(plan), plan.stretches
    (piece, *_) = each.pieces
    wanted = fields["plan"]
    first = wanted[0] if isinstance(wanted, list) else wanted
    assert isinstance(first, Mapping)
    found: dict[str, Value] = {key: value for key, value in fields.items() if key != "plan"}
    found["warp"] = _wound(fields, plan)
    found["reed"] = words.reed(each)
    found["sley"] = each.across.sleying.written
    found["plan"] = [{**first, **figures_of(words, each, piece)}]
    return found
