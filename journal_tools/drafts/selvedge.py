"""Whether the weft catches the outermost end as it turns.

The shuttle leaves at one edge and comes back there with the next pick. It goes round the outermost end
only if that end has changed sides in between; else the weft slips in to the first end that has.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    from journal_tools.drafts.draft import Draft


@dataclass(frozen=True)
class Selvedge:
    """The turns of one shuttle, and how many of them miss the outermost end.

    turns: at each edge, until weave and shuttle begin again: one every second pick. begin: the side to throw
    the first pick from, "left" or "right", so that no more are missed than from the other; "" where nothing is
    told. missed_left, missed_right: begun so. missed_otherwise: of both edges, begun from the other side.
    """

    turns: int
    missed_left: int
    missed_right: int
    begin: str
    missed_otherwise: int = 0

    @property
    def catches(self) -> bool:
        """Whether every turn catches, begun from the right side."""
        return not self.missed_left and not self.missed_right


UNTOLD = Selvedge(0, 0, 0, "")
"""Where there is more than one shuttle or cloth, of which nothing is said."""


def selvedge(over: NDArray[np.bool_]) -> Selvedge:
    """The turns at both edges of a cloth (picks, ends) woven over and over with one shuttle."""
    import numpy as np

    # An odd number of picks comes back to the same side after two repeats.
    woven = np.concatenate([over, over]) if len(over) % 2 else over
    still = woven == np.roll(woven, -1, axis=0)
    left, right = still[:, 0], still[:, -1]
    from_left = int(left[1::2].sum()), int(right[0::2].sum())  # the first pick ends at the right
    from_right = int(left[0::2].sum()), int(right[1::2].sum())
    if sum(from_right) < sum(from_left):
        return Selvedge(len(woven) // 2, *from_right, "right", sum(from_left))
    return Selvedge(len(woven) // 2, *from_left, "left", sum(from_right))


def shuttles(draft: Draft) -> int:
    """How many shuttles weave a draft: one for each role and colour of the weft that come together."""
    picks = len(draft.picks)
    order, colours = draft.weft_order or ("",), draft.weft_colours or ("",)
    return len({(order[pick % len(order)], colours[pick % len(colours)]) for pick in range(picks)})
