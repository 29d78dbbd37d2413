"""How many small cloths hang together, counted by weaving all of them.

The counts of m × n cloths are computed from the definition (exhaustively). Source of the straight draw:
On-Line Encyclopedia of Integer Sequences A359972, patterns of n picks on four shafts threaded 1-4 in
which no end and no pick runs on one side throughout, alike up to cyclic shifts and reversals.
"""

from __future__ import annotations

from itertools import product

import numpy as np
import pytest
from numpy.typing import NDArray

from journal_tools.drafts import Draft, drawdown
from journal_tools.drafts.hanging import hanging

COUNTED = {(2, 2): (2, 2), (2, 3): (6, 6), (2, 4): (14, 14), (3, 3): (102, 102), (3, 4): (906, 906)}
"""Picks and ends: cloths without a thread that runs on one side throughout, and those that hang together."""

A359972 = {1: 0, 2: 3, 3: 30, 4: 465}
TOGETHER = {2: 3, 3: 30, 4: 460}
"""Of these, how many hang together: computed from the definition."""


def crossed(over: NDArray[np.bool_]) -> bool:
    """Whether every thread changes sides."""
    return all((table.any(axis=0) & ~table.all(axis=0)).all() for table in (over, over.T))


@pytest.mark.parametrize("size", COUNTED)
def test_small_cloths(size: tuple[int, int]) -> None:
    """Up to three by four, a cloth whose threads all change sides hangs together."""
    picks, ends = size
    found = [np.array(cells).reshape(size) for cells in product([False, True], repeat=picks * ends)]
    kept = [over for over in found if crossed(over)]

    assert COUNTED[size] == (len(kept), sum(hanging(over).together for over in kept))


def test_four_by_four() -> None:
    """Of 22,874 cloths of four by four whose threads all change sides, 144 come apart all the same."""
    codes = np.arange(2**16)
    tables = ((codes[:, None] >> np.arange(16)) & 1).astype(bool).reshape(-1, 4, 4)
    changing = [(t.any(axis=1) & ~t.all(axis=1)).all(axis=1) for t in (tables, tables.transpose(0, 2, 1))]
    kept = tables[changing[0] & changing[1]]

    assert 22_874 == len(kept)
    assert 22_730 == sum(hanging(over).together for over in kept)


@pytest.mark.parametrize("picks", TOGETHER)
def test_straight_draw(picks: int) -> None:
    """Of the published patterns on a straight draw of four shafts so many hang together."""
    straight = tuple(frozenset({shaft}) for shaft in range(1, 5))
    lifts = [frozenset(shaft + 1 for shaft in range(4) if code >> shaft & 1) for code in range(16)]
    seen: set[tuple[int, ...]] = set()
    kinds = []
    for plan in product(range(1, 15), repeat=picks):
        if plan not in seen:
            seen |= alike(plan)
            over = drawdown(Draft(straight, lift_plan=tuple(lifts[code] for code in plan)))
            kinds += [over] if crossed(over) else []

    assert A359972[picks] == len(kinds)
    assert TOGETHER[picks] == sum(hanging(over).together for over in kinds)


def alike(plan: tuple[int, ...]) -> set[tuple[int, ...]]:
    """The same pattern begun at another pick or end, or read backwards either way. plan: bits of each pick's shafts."""
    found = set()
    for turned in (plan, tuple(int(f"{code:04b}"[::-1], 2) for code in plan)):
        for by in range(4):
            moved = tuple((code << by | code >> (4 - by)) & 15 for code in turned)
            for way in (moved, moved[::-1]):
                found |= {way[start:] + way[:start] for start in range(len(way))}
    return found
