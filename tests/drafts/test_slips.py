"""One end that breaks a threading which holds before and after."""

from __future__ import annotations

import pytest

from journal_tools.drafts.slips import slip_in


@pytest.mark.parametrize(
    ("order", "kind", "place"),
    [
        ([1, 2, 3, 4] * 4 + [1, 3, 3, 4] + [1, 2, 3, 4] * 3, "wrong", 17),
        ([1, 2, 3, 4] * 4 + [1, 3, 4] + [1, 2, 3, 4] * 3, "missing", 17),
        ([1, 2, 3, 4] * 4 + [1, 2, 2, 3, 4] + [1, 2, 3, 4] * 3, "extra", 18),
        ([1, 2, 2, 4] + [1, 2, 3, 4] * 7, "wrong", 2),
    ],
)
def test_a_slip(order: list[int], kind: str, place: int) -> None:
    """One end that breaks a repeat which holds before and after is asked about, with its place."""
    found = slip_in(order)
    assert found is not None

    assert (kind, place, 4) == (found.kind, found.place, found.repeat)


@pytest.mark.parametrize(
    "order",
    [
        [1, 2, 3, 4] * 8,
        [1, 2, 3, 4] * 8 + [1],
        [1, 2, 3, 4] * 8 + [3, 2, 1, 4] * 8,
        [1, 2, 3, 4, 3, 2] * 5 + [1],
        [1, 2, 1, 2, 3, 4, 3, 4] * 3 + [1, 2],
        [1, 2, 1, 2, 3, 2, 1, 2, 1],
        [1, 2] * 8 + [3] + [2, 1] * 8,
        [1, 1] + [1, 2] * 8 + [1, 1],
        [1, 2, 2, 1] + [2, 1] * 9 + [2, 2, 1],
    ],
)
def test_no_slip(order: list[int]) -> None:
    """A balancing end, a border, a pattern that turns and what is the same from both edges are no slips."""
    assert slip_in(order) is None
