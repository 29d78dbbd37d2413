"""What was measured of a piece, as the forecast takes it in."""

from __future__ import annotations

from dataclasses import dataclass

from journal_tools.forecast.kind import ClothKind


@dataclass(frozen=True)
class Reading:
    """One size of one piece on one yardstick.

    moment: "in_reed", "warp" (length of the warp yarn that wove the piece), "picks" (their count
    times the intended pick pitch), "on_loom", "off_loom", "washed 1", "washed 2" or "settled".
    log: ln of the size in mm. sd: standard uncertainty (k = 1) of log. yardstick: "cloth", "hemmed",
    "marks" or any other name; only readings on one yardstick compare.
    """

    moment: str
    log: float
    sd: float
    yardstick: str = "cloth"


@dataclass(frozen=True)
class Observed:
    """One piece in one direction, or `number` alike pieces that were measured together.

    Alike pieces measured as one tell of the piece scatter once, and not `number` times: the figure is
    one piece's, whichever it was.
    """

    warp: str
    piece: str
    kind: ClothKind
    readings: tuple[Reading, ...]
    number: int = 1
