"""What is added to a record when cloth has been measured."""

from __future__ import annotations

import dataclasses
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from journal_tools.editing.change import Change
from journal_tools.editing.change import Path as KeyPath
from journal_tools.editing.splice import splice, splice_file
from journal_tools.problems import nearest
from journal_tools.quantities import Size, Units, Unreadable, parse_count, parse_length, parse_size, parse_weight
from journal_tools.records.cloth import Cloth, SizeAt
from journal_tools.records.front_matter import read_file
from journal_tools.records.warp import Piece, Stretch, Warp

STATES: Mapping[str, str] = {
    "in_reed": "in the reed (width)",
    "on_loom": "on the loom, tension on (width x length)",
    "off_loom": "off the loom, rested (width x length)",
    "hemmed": "hemmed (width x length)",
    "washed": "washed and dry (width x length)",
    "made_up": "made up, as the owner measures it (width x length)",
    "picks": "picks, counted",
    "weight": "weight",
}
"""What can be measured of a piece, and how it is asked for."""


class NotMeasured(Exception):
    """Nothing was written; the message says why, and what would do."""


@dataclass(frozen=True)
class Spot:
    """Where in a record one piece's sizes stand.

    said: what the record says of it already. name: what the weaver calls it, "piece 2" or "stretch 2"
    where it has no name, "" for a record that is one piece. stretch: the stretch it is of, "" for none.
    """

    path: KeyPath
    said: Cloth
    name: str = ""
    stretch: str = ""

    def has(self, state: str) -> bool:
        """Whether the record has this already, here and not above."""
        value = getattr(self.said, state)
        return value is not None and value != ()

    @property
    def washes(self) -> int:
        """The number of its last wash, 0 for none."""
        return max((at.wash or place for place, at in enumerate(self.said.washed, start=1)), default=0)

    def wash(self, number: int) -> tuple[int, SizeAt] | None:
        """One of its washes and its place among them, None where the record does not have it."""
        numbered = ((place, at) for place, at in enumerate(self.said.washed) if (at.wash or place + 1) == number)
        return next(numbered, None)

    def washed_again(self, size: Size) -> Spot:
        """The same with one wash more, so that the next one is the one after."""
        washed = (*self.said.washed, SizeAt(size=size, wash=self.washes + 1))
        return dataclasses.replace(self, said=dataclasses.replace(self.said, washed=washed))


def spots(warp: Warp) -> tuple[Spot, ...]:
    """Every piece of a warp in the order woven; a stretch or a record without pieces stands for itself."""
    if not warp.stretches:
        return _pieces((), warp, "") or (Spot((), warp),)
    found: list[Spot] = []
    for order, stretch in enumerate(warp.stretches):
        path: KeyPath = ("stretches", order)
        name = stretch.name or f"stretch {order + 1}"
        found += _pieces(path, stretch, name) or [Spot(path, stretch, name, name)]
    return tuple(found)


def _pieces(above: KeyPath, stretch: Stretch, name: str) -> tuple[Spot, ...]:
    return tuple(
        Spot((*above, "pieces", order), piece, piece.name or f"piece {order + 1}", name)
        for order, piece in enumerate(stretch.pieces)
    )


def find_spot(warp: Warp, piece: str | None, stretch: str | None = None) -> Spot:
    """Where the sizes of a piece stand; no name is needed where there is only one.

    Raises NotMeasured where it is not clear which piece is meant.
    """
    every = spots(warp)
    inside = [spot for spot in every if stretch in (None, spot.stretch)]
    if not inside:
        raise NotMeasured(f'{warp.heading} has no stretch called "{stretch}". It has: {_listed(stretches(warp))}.')
    found = [spot for spot in inside if piece in (None, spot.name)]
    if len(found) == 1:
        return found[0]
    names = list(dict.fromkeys(spot.name for spot in inside if spot.name))
    if not found:
        near = nearest(piece or "", names)
        hint = f" Did you mean {near}?" if near else f" It has: {_listed(names)}."
        raise NotMeasured(f'{warp.heading} has no piece called "{piece}".{hint} To add one, say --add as well.')
    if piece is None:
        raise NotMeasured(f"{warp.heading} has several pieces; say which with --piece: {_listed(names)}.")
    where = _listed(spot.stretch for spot in found)
    raise NotMeasured(f'{warp.heading} has more than one piece called "{piece}"; say which with --stretch: {where}.')


def stretches(warp: Warp) -> tuple[str, ...]:
    """The names of a warp's stretches, "stretch 2" where one has none."""
    return tuple(stretch.name or f"stretch {number}" for number, stretch in enumerate(warp.stretches, start=1))


def new_spot(warp: Warp, piece: str, stretch: str | None) -> tuple[Spot, Change]:
    """A piece that the record does not have yet: where it will stand, and the change that makes it.

    Raises NotMeasured where it is not clear which stretch it belongs to.
    """
    above: KeyPath = ()
    into: Stretch = warp
    named = [place for place, name in enumerate(stretches(warp)) if stretch in (None, name)]
    if warp.stretches and len(named) != 1:
        raise NotMeasured(f"say which stretch the piece is of, with --stretch: {_listed(stretches(warp))}.")
    if stretch is not None and not warp.stretches:
        raise NotMeasured(f"{warp.heading} has no stretches; leave out --stretch.")
    if warp.stretches:
        above, into = ("stretches", named[0]), warp.stretches[named[0]]
    if piece in [each.name for each in into.pieces]:
        raise NotMeasured(f'{warp.heading} has a piece called "{piece}" already; leave out --add.')
    sizes = [state for state in ("on_loom", "off_loom", "hemmed", "washed", "made_up") if getattr(into, state)]
    if sizes and not into.pieces:
        raise NotMeasured(
            f"{into.name or warp.heading} has sizes of its own ({_listed(sizes)}), which a new piece would"
            " take for its own. Put them below `pieces:` as the first piece, with a name, and then add this one."
        )
    path = (*above, "pieces", len(into.pieces))
    return Spot(path, Piece(name=piece), piece), Change((*above, "pieces"), {"name": piece}, append=True)


def _listed(names: Iterable[str]) -> str:
    return ", ".join(names) or "none"


def read_as(state: str, typed: str, units: Units) -> Any:
    """What was typed for a state, as a quantity. Raises Unreadable, so that it can be asked again."""
    readers: Mapping[str, Callable[[str, Units], Any]] = {
        "in_reed": _reed,
        "picks": parse_count,
        "weight": parse_weight,
    }
    return readers.get(state, _both)(typed, units)


def _reed(typed: str, units: Units) -> Any:
    words = typed.rsplit(maxsplit=1)
    if words[1:] in (["dents"], ["dent"]):
        return parse_count(words[0], units)
    if words[1:] in (["folded"], ["opened"]):
        return parse_length(words[0], units)
    return parse_length(typed, units)


def _both(typed: str, units: Units) -> Any:
    if "x" not in typed.lower() and "×" not in typed:
        raise Unreadable(
            read=typed,
            right="width x length is wanted, such as 17 7/8 x 30 1/8;"
            " for one that was not measured write ?, such as 17 7/8 x ?.",
        )
    return parse_size(typed, units)


def change_for(spot: Spot, state: str, typed: str, *, replace: bool = False, wash: int | None = None) -> Change:
    """The change that writes one measured state.

    wash: which wash it is; else it is added as the next one, or replaces the last. Raises NotMeasured
    when the record has it already and it is not to be replaced.
    """
    if state == "washed":
        return _mended_wash(spot, typed, wash or spot.washes) if replace else _new_wash(spot, typed, wash)
    if spot.has(state) and not replace:
        raise NotMeasured(f"the record has {state} already; say --replace to put {typed} in its place.")
    return Change((*spot.path, state, *_inside(getattr(spot.said, state))), typed)


def _new_wash(spot: Spot, typed: str, number: int | None) -> Change:
    """A wash that the record does not have: the next one, or the one of this number."""
    last = spot.washes
    if number is not None and spot.wash(number) is not None:
        raise NotMeasured(f"the record has wash {number} already; say --replace to put {typed} in its place.")
    if number not in (None, last + 1):
        return Change((*spot.path, f"washed {number}"), typed)
    if not last:
        return Change((*spot.path, "washed"), typed)
    by_number = any(key.startswith("washed ") for key in spot.said.lines)
    in_words = spot.said.washed[0].wash is None and _inside(spot.said.washed[0])
    if by_number or in_words:
        return Change((*spot.path, f"washed {last + 1}"), typed)
    return Change((*spot.path, "washed"), typed, append=True)


def _mended_wash(spot: Spot, typed: str, number: int) -> Change:
    """Another size for a wash that the record has, wherever it stands; the first one where it has none."""
    if not spot.washes and number <= 1:
        return Change((*spot.path, "washed"), typed)
    found = spot.wash(number)
    if found is None:
        raise NotMeasured(f"the record has no wash {number} to replace; its last one is wash {spot.washes}.")
    place, size = found
    if f"washed {number}" in spot.said.lines:
        where: KeyPath = (f"washed {number}",)
    else:
        where = ("washed",) if size.wash is None else ("washed", place)
    return Change((*spot.path, *where, *_inside(size)), typed)


def _inside(size: object) -> KeyPath:
    """Where the figure itself stands, when the record says more of it: how it was taken, on which day."""
    return ("size",) if isinstance(size, SizeAt) and len(size.lines) > 1 else ()


def text_with(path: Path, changes: list[Change], file: str) -> str:
    """The record's text as it would be with the changes. Raises SpliceRefused where that is not safe."""
    return splice(read_file(path, file).text, changes, file)


def write(path: Path, changes: list[Change], file: str, *, dry_run: bool = False) -> None:
    """Splice the changes into the record. Raises SpliceRefused, and leaves the file, when that is not safe.

    dry_run: find out whether it could be done, and write nothing.
    """
    if dry_run:
        text_with(path, changes, file)
    else:
        splice_file(path, changes, file)


def has_hems(warp: Warp, spot: Spot) -> bool:
    """Whether a hem is recorded or planned for this piece, so that a hemmed size can be measured."""
    stretch: Stretch = warp.stretches[int(spot.path[1])] if spot.path[:1] == ("stretches",) else warp
    said = next((level.hem for level in (spot.said, stretch, warp) if level.hem is not None), None)
    if said is not None:
        return said.edges != "none"
    planned = [plan.hemmed for plan in (*stretch.plan, *warp.plan)]
    return any(each is not None for each in (*planned, stretch.hemmed, *(piece.hemmed for piece in stretch.pieces)))


def with_units(units: Units, warp: Warp) -> Units:
    """The units of a record that states its own."""
    if warp.units in ("in", "cm", "mm"):
        return dataclasses.replace(units, length=warp.units, density="in" if warp.units == "in" else "cm")  # type: ignore[arg-type]
    return units
