"""The words for one warp of the invented workshop: what was put on the loom, and what was measured.

Figures are in the record's own unit, inches or centimetres. What a design types out itself (in
`head`, `keys`, `tail`, or a piece given as fields) stands in the record as it is; everything else is
left to the physics. What the weaver wrote about a warp stands under its name in notes/.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import TypeAlias

from tests.workshop.block_yaml import Value

Fields: TypeAlias = Mapping[str, Value]


@dataclass(frozen=True)
class Piece:
    """One piece, or several that measured alike.

    long: what the weaver aimed at on the loom. shows: the states that were measured, in words.
    washes: how many washes were measured. weighed: states that were weighed, in words. widths: how
    many widths were read at the last wash. how: words about one state's measuring, by state.
    """

    name: str
    long: float
    shows: str = "on_loom off_loom washed"
    washes: int = 1
    count: int = 1
    weighed: str = ""
    picks: bool = False
    widths: int = 1
    warp_used: bool = False
    how: Mapping[str, Fields] = field(default_factory=dict)
    extra: Fields = field(default_factory=dict)


@dataclass(frozen=True)
class Hem:
    """Depth and turn-under of each hemmed edge, and when it is sewn."""

    depth: float
    turn: float
    edges: str = "both ends"
    sewn: str = "before washing"
    weft: str = ""

    @property
    def eats(self) -> tuple[float, float]:
        """What it takes from the width and from the length."""
        each = 2 * (self.depth + self.turn)
        return (each if self.edges == "all four" else 0.0), each


@dataclass(frozen=True)
class Fringe:
    """Warp left at each end, and what became of it."""

    allowed: float
    style: str
    after_twist: float = 0.0
    finished: float = 0.0


@dataclass(frozen=True)
class Plan:
    """What was wanted, as the weaver reckoned it: believed losses in per cent, from the reed and from
    the length on the loom, rounded to the quarter inch or half centimetre.
    """

    piece: str
    count: int
    long: float
    width: tuple[float, ...]
    length: tuple[float, ...]
    shows: str = "on_loom off_loom washed"
    picks: int = 0


@dataclass(frozen=True)
class Waste:
    """Where warp goes besides cloth. thrums: the least that the loom leaves behind.

    misread: how much longer the book says the warp was than it was, by a slip of the weaver's.
    """

    front: float
    header: float
    thrums: float
    gap: float = 0.0
    gaps: str = "gaps"
    more: Mapping[str, float] = field(default_factory=dict)
    misread: float = 0.0


@dataclass(frozen=True)
class Stretch:
    """What shares threading, sley, weave and weft.

    cloth: the row of the physics. usual: usual ends and picks of this yarn in this weave, to the
    record's unit. beat: picks on the loom.
    """

    cloth: str
    keys: Fields
    pieces: tuple[Piece | Fields, ...]
    usual: tuple[float, float] = (0.0, 0.0)
    beat: float = 0.0
    show_beat: bool = False
    name: str = ""
    hem: Hem | None = None
    fringe: Fringe | None = None
    plan: Plan | None = None
    fulling: tuple[int, ...] = ()
    in_reed: float = 0.0
    sett: float = 0.0
    weft: str = ""
    tail: Fields = field(default_factory=dict)


@dataclass(frozen=True)
class Design:
    """One record. `head` comes first, `tail` last; `seed` is another roll of the same dice.

    yarn: the warp's yarn by its name, for its weight. in_reed: left at 0 it is reckoned from the
    order, the reed and the sley. flat: six-line form, sizes without a list of pieces.
    """

    name: str
    title: str
    yarn: str
    stretches: tuple[Stretch, ...]
    head: Fields = field(default_factory=dict)
    tail: Fields = field(default_factory=dict)
    unit: str = "in"
    in_reed: float = 0.0
    waste: Waste | None = None
    temple: bool = False
    tumbled: bool = False
    marked: tuple[float, ...] = ()
    flat: bool = False
    seed: int = 0
