"""The ends of a piece: its hems and its fringe."""

from __future__ import annotations

import re
from dataclasses import dataclass

from journal_tools.quantities import Length, TimesLength, Unreadable
from journal_tools.records import readers
from journal_tools.records.model import Model, read_model, says
from journal_tools.records.spot import Spot

HEM_EDGES = {"both ends": (0, 2), "one end": (0, 1), "all four": (2, 2), "sides": (2, 0), "none": (0, 0)}
"""Words for hemmed edges: how many of them shorten the width, and the length."""

AFTER_ALL = 1_000
"""More washes than any cloth has: a hem sewn "after washing" comes after all of them."""


@dataclass(frozen=True, kw_only=True)
class Hem(Model):
    """A hem: what it eats at each hemmed edge is its depth and its turn-under."""

    depth: Length | None = says(readers.length, "The finished depth.", "1 in", public=True)
    turn: Length | None = says(readers.length, "What is turned under.", "3/8 in", public=True)
    edges: str = says(
        readers.choice(*HEM_EDGES), "Which edges are hemmed.", "both ends", public=True, default="both ends"
    )
    sewn: str | None = says(lambda spot: sewn(spot), "When it is sewn.", "before washing", public=True)
    weft: str | None = says(readers.text, "The weft of the hem.", "sewing thread")

    @property
    def eats_mm(self) -> tuple[float, float]:
        """What the hems take from the width and from the length, in mm."""
        each = float((self.depth.mm if self.depth else 0) + (self.turn.mm if self.turn else 0))
        across, along = HEM_EDGES[self.edges]
        return across * each, along * each

    def touches(self, direction: str) -> bool:
        """Whether the hems shorten this direction, "width" or "length"."""
        return HEM_EDGES[self.edges][0 if direction == "width" else 1] > 0

    @property
    def after_wash(self) -> int | None:
        """The wash it is sewn after: 0 before any, `AFTER_ALL` after the last, None when not said."""
        if self.sewn is None:
            return None
        if self.sewn == "before washing":
            return 0
        numbered = re.search(r"\d+", self.sewn)
        return int(numbered[0]) if numbered else AFTER_ALL


def sewn(spot: Spot) -> str:
    """When a hem is sewn: `before washing`, `after washing` or `after wash 2`."""
    typed = " ".join(spot.text().lower().split())
    if typed in ("before washing", "after washing") or re.fullmatch(r"after wash \d{1,2}", typed):
        return typed
    raise Unreadable(read=spot.text(), right="`before washing`, `after washing` or `after wash 2` is wanted.")


def hem(spot: Spot) -> Hem:
    """`none`, a depth, or a mapping."""
    if spot.is_mapping:
        return read_model(spot, Hem)
    if spot.text().lower() in ("none", "no"):
        return Hem(edges="none")
    return Hem(depth=readers.length(spot))


@dataclass(frozen=True, kw_only=True)
class Fringe(Model):
    """A fringe: warp left unwoven at the ends of a piece."""

    allowed: TimesLength | None = says(readers.times_length, "The warp left for it.", "2 in each end", public=True)
    style: str | None = says(readers.text, "Cut, or twisted before or after washing.", "twisted before washing")
    twisted: str | None = says(readers.text, "When it was twisted.", "before fulling")
    after_twist: Length | None = says(readers.length, "Its length once twisted.", "1 5/8 in", public=True)
    finished: Length | None = says(readers.length, "Its length when all is done.", "1 1/2 in", public=True)


def fringe(spot: Spot) -> Fringe:
    """A length, or a mapping."""
    if spot.is_mapping:
        return read_model(spot, Fringe)
    return Fringe(allowed=readers.times_length(spot))
