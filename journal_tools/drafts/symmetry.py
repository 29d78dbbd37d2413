"""What may be done to a cloth without changing how it is woven, wherever it begins."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from journal_tools.drafts.repeat import same_begun_elsewhere, whole_repeat

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray


@dataclass(frozen=True)
class Symmetry:
    """mirrored_sideways: left for right. mirrored_upright: first pick for last. half_turn: by 180°.
    alike_both_sides: the back, turned over sideways, is woven as the face. exchanged: as warp lies, so weft lies."""

    mirrored_sideways: bool
    mirrored_upright: bool
    half_turn: bool
    alike_both_sides: bool
    exchanged: bool


def symmetry(repeat: NDArray[np.bool_]) -> Symmetry:
    """The symmetries of a cloth of which this is a repeat (picks, ends)."""
    repeat = whole_repeat(repeat)

    def same(changed: NDArray[np.bool_]) -> bool:
        return same_begun_elsewhere(repeat, changed)

    return Symmetry(
        same(repeat[:, ::-1]),
        same(repeat[::-1]),
        same(repeat[::-1, ::-1]),
        same(~repeat[:, ::-1]),
        same(~repeat.T),
    )
