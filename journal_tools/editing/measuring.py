"""What is added to a record when cloth has been measured."""

from __future__ import annotations

import dataclasses
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from journal_tools.editing.change import Change
from journal_tools.editing.change import Path as KeyPath
from journal_tools.editing.splice import splice_file
from journal_tools.problems import nearest
from journal_tools.quantities import Units, Unreadable, parse_count, parse_length, parse_size, parse_weight
from journal_tools.records.cloth import Cloth
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
    """Where in a record one piece's sizes stand. said: what the record says of it already."""

    path: KeyPath
    said: Cloth

    def has(self, state: str) -> bool:
        """Whether the record has this already, here and not above."""
        value = getattr(self.said, state)
        return value is not None and value != ()

    @property
    def washes(self) -> int:
        """How many washes it has."""
        return len(self.said.washed)


def piece_names(warp: Warp) -> tuple[str, ...]:
    """The names of the pieces of a warp, in the order woven; a piece without one by its number."""
    return tuple(
        piece.name or str(number)
        for stretch in warp.woven()
        for number, piece in enumerate(stretch.pieces, start=1)
    )


def find_spot(warp: Warp, piece: str | None) -> Spot:
    """Where the sizes of a piece stand; without a name, the record itself when it has no pieces.

    Raises NotMeasured where it is not clear which piece is meant.
    """
    names = piece_names(warp)
    if piece is None:
        if names:
            raise NotMeasured(f"{warp.heading} has several pieces; say which with --piece: {', '.join(names)}.")
        if len(warp.stretches) > 1:
            listed = ", ".join(stretch.name or str(number) for number, stretch in enumerate(warp.stretches, 1))
            raise NotMeasured(f"{warp.heading} has several stretches; say which with --piece: {listed}.")
        return Spot(("stretches", 0), warp.stretches[0]) if warp.stretches else Spot((), warp)
    for path, said in _places(warp):
        if (getattr(said, "name", None) or str(int(path[-1]) + 1)) == piece:
            return Spot(path, said)
    near = nearest(piece, names)
    hint = f" Did you mean {near}?" if near else f" It has: {', '.join(names) or 'no pieces'}."
    raise NotMeasured(f'{warp.heading} has no piece called "{piece}".{hint} To add one, say --add as well.')


def new_spot(warp: Warp, piece: str, stretch: str | None) -> tuple[Spot, Change]:
    """A piece that the record does not have yet: where it will stand, and the change that makes it.

    Raises NotMeasured where it is not clear which stretch it belongs to.
    """
    if piece in piece_names(warp):
        raise NotMeasured(f'{warp.heading} has a piece called "{piece}" already; leave out --add.')
    above: KeyPath = ()
    into: Stretch = warp
    if warp.stretches:
        named = [(number, each) for number, each in enumerate(warp.stretches) if stretch in (None, each.name)]
        if len(named) != 1:
            listed = ", ".join(each.name or "?" for each in warp.stretches)
            raise NotMeasured(f"say which stretch the piece is of, with --stretch: {listed}.")
        above, into = ("stretches", named[0][0]), named[0][1]
    path = (*above, "pieces", len(into.pieces))
    return Spot(path, Piece(name=piece)), Change((*above, "pieces"), {"name": piece}, append=True)


def _places(warp: Warp) -> list[tuple[KeyPath, Cloth]]:
    found: list[tuple[KeyPath, Cloth]] = []
    for order, stretch in enumerate(warp.stretches):
        found += [(("stretches", order, "pieces", n), piece) for n, piece in enumerate(stretch.pieces)]
        if not stretch.pieces:
            found.append((("stretches", order), stretch))
    return found + [(("pieces", n), piece) for n, piece in enumerate(warp.pieces)]


def read_as(state: str, typed: str, units: Units) -> Any:
    """What was typed for a state, as a quantity. Raises Unreadable, so that it can be asked again."""
    readers: Mapping[str, Callable[[str, Units], Any]] = {
        "in_reed": _reed,
        "picks": parse_count,
        "weight": parse_weight,
    }
    return readers.get(state, _both)(typed, units)


def _reed(typed: str, units: Units) -> Any:
    if typed.split()[-1:] in (["dents"], ["dent"]):
        return parse_count(typed.rsplit(maxsplit=1)[0], units)
    return parse_length(typed, units)


def _both(typed: str, units: Units) -> Any:
    if "x" not in typed.lower() and "×" not in typed:
        raise Unreadable(
            read=typed,
            right="width x length is wanted, such as 17 7/8 x 30 1/8; for one that was not measured write ?, such as 17 7/8 x ?.",
        )
    return parse_size(typed, units)


def change_for(spot: Spot, state: str, typed: str, *, replace: bool = False) -> Change:
    """The change that writes one measured state; a wash is added as the next one.

    Raises NotMeasured when the record has it already and it is not to be replaced.
    """
    if state == "washed":
        return _wash(spot, typed, replace)
    if spot.has(state) and not replace:
        raise NotMeasured(f"the record has {state} already; say --replace to put {typed} in its place.")
    return Change((*spot.path, state), typed)


def _wash(spot: Spot, typed: str, replace: bool) -> Change:
    keys = [key for key in spot.said.lines if key.startswith("washed ")]
    number = spot.washes if replace and spot.washes else spot.washes + 1
    in_words = spot.washes == 1 and len(spot.said.washed[0].lines) > 1
    if keys or (in_words and not replace):
        return Change((*spot.path, f"washed {number}"), typed)
    if not spot.washes or (replace and spot.washes == 1 and not spot.said.washed[0].wash):
        return Change((*spot.path, "washed"), typed)
    if replace:
        return Change((*spot.path, "washed", number - 1), typed)
    return Change((*spot.path, "washed"), typed, append=True)


def write(path: Path, changes: list[Change], file: str) -> None:
    """Splice the changes into the record. Raises SpliceRefused, and leaves the file, when that is not safe."""
    splice_file(path, changes, file)


def with_units(units: Units, warp: Warp) -> Units:
    """The units of a record that states its own."""
    if warp.units in ("in", "cm", "mm"):
        return dataclasses.replace(units, length=warp.units, density="in" if warp.units == "in" else "cm")  # type: ignore[arg-type]
    return units
