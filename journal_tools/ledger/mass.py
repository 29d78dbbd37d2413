"""What a piece should weigh, from its threads, beside what it weighed.

Areal mass, computed from the definition: every end and every pick is a length of yarn of a known
linear density (tex is g/km), so mass = Σ length x tex. The length of an end is the piece's length
on the loom undone by its take-up; the length of a pick is the width in the reed and a little more.
"""

from __future__ import annotations

from dataclasses import dataclass

WEFT_OVER_REED = 1.05
"""Weft in a pick over the width in the reed: 1.03 to 1.08 and the turns; common practice, no source."""

TAKE_UP_ELSE = 0.06
"""Take-up on the loom where the record tells none: middle of common practice, no source."""

TOLERANCE = 0.10
"""How far a weighed piece may be from its reckoning before the journal asks."""

WASHED_OUT = {"in_oil": (0.08, 0.15), "raw": (0.20, 0.25), "grey": (0.03, 0.08)}
"""Share of the weight lost in the first wash: spinning oil, silk gum, grey linen; common practice, no source."""

HUMIDITY = 0.03
"""What the weather does to the weight of a yarn: a few per cent (moisture regain tables, ASTM D1909)."""


@dataclass(frozen=True)
class Threads:
    """One system of threads in a piece. number: of ends or picks. length_mm: of one. tex: g/km.

    washed_out: share of its weight that the first wash takes, least and most.
    """

    number: int
    length_mm: float
    tex: float
    washed_out: tuple[float, float] = (0.0, 0.0)

    @property
    def grams(self) -> float:
        """What these threads weigh as they are bought."""
        return self.number * self.length_mm * self.tex / 1e6


@dataclass(frozen=True)
class Piece:
    """What the scale and the tape say of one piece.

    area_m2: of the finished cloth, None when it was not measured or a hem lies double on it.
    weighed: grams, None when it was not; state: when. fringe: share of the warp that is fringe.
    """

    area_m2: float | None
    weighed: float | None
    state: str = ""
    fringe: float = 0.0


@dataclass(frozen=True)
class Reckoned:
    """The reckoned weight of one piece, in grams, as bought and after the first wash.

    low, high: between these the weighed piece is no surprise. area_m2, weighed: of the piece.
    fringe: grams of it, washed, that hang outside the area.
    """

    bought: float
    washed: float
    low: float
    high: float
    area_m2: float | None
    weighed: float | None
    weighed_state: str = ""
    fringe: float = 0.0

    @property
    def areal_mass(self) -> float | None:
        """g/m² of the finished cloth as reckoned, without its fringe."""
        return (self.washed - self.fringe) / self.area_m2 if self.area_m2 else None

    @property
    def areal_mass_weighed(self) -> float | None:
        """g/m² of the finished cloth as weighed, less what its fringe should weigh."""
        if not self.area_m2 or self.weighed is None or self.weighed_state not in ("washed", "made_up"):
            return None
        return (self.weighed - self.fringe) / self.area_m2

    @property
    def far(self) -> bool:
        """Whether the weighed piece is further from its reckoning than the tolerance."""
        return self.weighed is not None and not self.low <= self.weighed <= self.high


def reckon(warp: Threads, weft: Threads, piece: Piece) -> Reckoned:
    """The reckoned weight of one piece beside the weighed one; see the module for the formula."""
    bought = warp.grams + weft.grams
    wet = piece.state in ("washed", "made_up", "")
    least = sum(threads.grams * threads.washed_out[0] for threads in (warp, weft))
    most = sum(threads.grams * threads.washed_out[1] for threads in (warp, weft))
    washed = bought - (least + most) / 2
    low, high = (bought - most, bought - least) if wet else (bought, bought)
    margin = TOLERANCE + HUMIDITY
    fringe = warp.grams * (1 - sum(warp.washed_out) / 2) * piece.fringe
    return Reckoned(
        bought, washed, low * (1 - margin), high * (1 + margin), piece.area_m2, piece.weighed, piece.state, fringe
    )


def areal_mass(
    ends_per_m: float, warp_tex: float, warp_crimp: float, picks_per_m: float, weft_tex: float, weft_crimp: float
) -> float:
    """g/m² of cloth from its finished sett, yarn numbers (tex) and crimps (D - F)/F, as fractions.

    Σ threads/m x (1 + crimp) x tex / 1000, computed from the definition.
    """
    return (ends_per_m * (1 + warp_crimp) * warp_tex + picks_per_m * (1 + weft_crimp) * weft_tex) / 1000
