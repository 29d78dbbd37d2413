"""Which thread lies on top, at every crossing of the cloth."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from journal_tools.drafts.draft import Draft

if TYPE_CHECKING:  # reading records needs drafts and no arrays, and starts faster without
    import numpy as np
    from numpy.typing import NDArray


def drawdown(draft: Draft) -> NDArray[np.bool_]:
    """The interlacement of a draft: shape (picks, ends), True where the warp lies over the weft.

    Row 0 is the first pick, column 0 the first end as written. An end is moved by a pick when any
    of its shafts is: moved ends lie over the weft in a rising shed, under it in a sinking one. So
    an end without a heddle is never over the weft in a rising shed and always in a sinking one.
    """
    import numpy as np

    # Equal picks and equal ends are crossed once: there are few different ones in any draft.
    picks, pick_of = _different(draft.picks)
    ends, end_of = _different(draft.threading)
    shafts = draft.shafts
    moved: NDArray[np.bool_] = _members(picks, shafts) @ _members(ends, shafts).T > 0
    over = moved if draft.rising else ~moved
    return over[np.ix_(pick_of, end_of)]


def _different(sets: Sequence[frozenset[int]]) -> tuple[list[frozenset[int]], NDArray[np.intp]]:
    """The different sets, and for each place which of them stands there."""
    import numpy as np

    number = {some: n for n, some in enumerate(dict.fromkeys(sets))}
    return list(number), np.array([number[some] for some in sets], dtype=np.intp)


def _members(sets: Sequence[frozenset[int]], shafts: int) -> NDArray[np.float32]:
    """Shape (sets, shafts): 1 where the shaft belongs to the set."""
    import numpy as np

    table = np.zeros((len(sets), shafts), dtype=np.float32)
    rows = [row for row, some in enumerate(sets) for _ in some]
    table[rows, [shaft - 1 for some in sets for shaft in some]] = 1
    return table
