"""What a column of a sheet can be: a closed list, by the words that stand in the file of columns."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

MOST_WASHES = 9

LENGTHS = ("in", "cm", "mm", "yd", "ft", "m")
WEIGHTS = ("g", "kg", "oz", "lb")
DENSITIES = ("/in", "/cm", "/10 cm")
YIELDS = ("yd/lb", "m/kg")

UNITS: Mapping[str, tuple[str, ...]] = {
    "length": LENGTHS,
    "weight": WEIGHTS,
    "density": DENSITIES,
    "yield": YIELDS,
}
"""The units that a figure of each kind can be in."""


@dataclass(frozen=True)
class Meaning:
    """One thing that a column can hold.

    name: as the file of columns says it. key: of the record. kind: how its cells are read. level: whose
    it is: "warp", "cloth" (a piece's, or the warp's where all pieces agree), "piece", "yarn".
    once: whether only one column of a sheet can be it. side: "width", "length" or "size" of a state.
    """

    name: str
    key: str
    kind: str
    level: str
    once: bool = True
    side: str = ""

    @property
    def units(self) -> tuple[str, ...]:
        """Units that its bare figures can be in; none for what has no unit."""
        return UNITS.get(self.kind, ())


STATES = {
    "on_loom": "on the loom",
    "off_loom": "off the loom",
    "hemmed": "hemmed",
    "washed": "washed",
    **{f"washed {number}": f"washed {number}" for number in range(1, MOST_WASHES + 1)},
    "made_up": "made up",
}
"""The states after the reed, by their keys in a record, and what they are called."""


def _sizes() -> Iterator[Meaning]:
    yield Meaning("width in the reed", "in_reed", "length", "cloth")
    for key, words in STATES.items():
        for side in ("width", "length"):
            yield Meaning(f"{side} {words}", key, "length", "piece", side=side)
        yield Meaning(f"size {words}", key, "size", "piece", side="size")


WARP = Meaning("warp", "title", "words", "warp")
PIECE = Meaning("piece", "name", "words", "piece")
NOTES = Meaning("notes", "notes", "notes", "piece", once=False)
LEAVE_OUT = Meaning("leave out", "", "", "", once=False)

MEANINGS: Mapping[str, Meaning] = {
    meaning.name: meaning
    for meaning in (
        WARP,
        PIECE,
        Meaning("how many", "count", "count", "piece"),
        Meaning("date", "started", "date", "warp"),
        Meaning("date finished", "finished", "date", "warp"),
        Meaning("yarn", "yarn", "words", "warp"),
        Meaning("weft yarn", "weft", "words", "cloth"),
        Meaning("colour", "colour", "words", "warp"),
        Meaning("fibre", "fibre", "words", "yarn"),
        Meaning("yarn number", "number", "words", "yarn"),
        Meaning("yield", "yield", "yield", "yarn"),
        Meaning("weft fibre", "weft fibre", "words", "yarn"),
        Meaning("weft yarn number", "weft number", "words", "yarn"),
        Meaning("weft yield", "weft yield", "yield", "yarn"),
        Meaning("weave", "weave", "words", "cloth"),
        Meaning("sett", "sett", "density", "cloth"),
        Meaning("reed", "reed", "density", "cloth"),
        Meaning("sley", "sley", "words", "cloth"),
        Meaning("ends", "ends", "count", "cloth"),
        Meaning("beat", "beat", "density", "piece"),
        Meaning("picks", "picks", "count", "piece"),
        Meaning("loom", "loom", "words", "warp"),
        Meaning("finish", "finish", "words", "cloth"),
        Meaning("warp wound", "wound", "length", "warp"),
        Meaning("weight", "weight", "weight", "piece"),
        Meaning("hours", "hours", "words", "warp"),
        Meaning("cost", "cost", "money", "warp"),
        *_sizes(),
        NOTES,
        LEAVE_OUT,
    )
}
"""Every meaning by its name, in the order in which they are told."""

LISTED = ", ".join(name for name in MEANINGS if not any(char.isdigit() for char in name))
"""The names for a person; each of "washed" can be of a numbered wash too."""
