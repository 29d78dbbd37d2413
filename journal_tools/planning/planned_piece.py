"""What a plan holds of one kind of piece."""

from __future__ import annotations

from dataclasses import dataclass

from journal_tools.planning.allowances import TOO_WIDE
from journal_tools.planning.along import Expected, Risk
from journal_tools.planning.wants import WantedPiece


@dataclass(frozen=True)
class PlannedPiece:
    """One kind of piece. All sizes are in mm, of one piece; None where nobody wants that direction.

    weave_mm: length on the loom, tension on, to a step that a ribbon shows; picks: the same in picks.
    on_loom, width, length: what to expect on the loom, and at the state that was wanted.
    risk: of coming up short, where it is worth a word; risk_warp_mm: what to wind more against it.
    hems_mm: what of weave_mm the hems take; hems_width_mm: what they take of the washed width. reed_mm: the
    width in the reed, folded where the cloth opens, that this kind of piece alone would want.
    blind: width and length as they were expected before cloth of this very warp was measured; None
    where none was. minutes: of fulling until the width wanted: likely, least, most; None where it is not fulled.
    """

    wanted: WantedPiece
    weave_mm: float | None
    picks: int | None
    on_loom: Expected
    width: Expected | None
    length: Expected | None
    width_loss: float
    length_loss: float
    risk: Risk | None
    risk_warp_mm: float
    hems_mm: float = 0.0
    blind: tuple[Expected | None, Expected | None] | None = None
    minutes: tuple[float, float, float] | None = None
    hems_width_mm: float = 0.0
    reed_mm: float | None = None

    @property
    def useless(self) -> bool:
        """Whether a range is too wide to weave by."""
        return any(each is not None and each.doubt > TOO_WIDE for each in (self.width, self.length))
