"""One end that breaks a threading which holds before and after."""

from __future__ import annotations

import pytest

from journal_tools.drafts.slips import slip_in, slips_in


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


def straight(times: int) -> list[int]:
    """A straight draw on four shafts."""
    return [1, 2, 3, 4] * times


HERRINGBONE = [1, 2, 3, 4] * 3 + [2, 1, 4, 3] * 3
JUMBLED = [*HERRINGBONE * 2, *HERRINGBONE[:1], 4, 3, 2, *HERRINGBONE[4:], *HERRINGBONE * 4]
TWO_CROSSED = [*straight(10), 1, 3, 2, 4, *straight(10), 2, 1, 3, 4, *straight(9)]


@pytest.mark.parametrize(
    ("order", "found"),
    [
        ([*straight(10), 1, 3, 2, 4, *straight(10)], [("crossed", 41, 2)]),
        ([*straight(12), 1, 2, 4, 3, *straight(12)], [("crossed", 50, 2)]),
        ([*straight(1), 1, 3, 2, 4, *straight(23)], [("crossed", 5, 2)]),
        ([*straight(98), 1, 3, 2, 4, *straight(1)], [("crossed", 393, 2)]),
        ([*straight(10), 1, 2, 2, 4, *straight(10), 1, 2, 4, *straight(10)], [("wrong", 42, 1), ("missing", 86, 0)]),
        (TWO_CROSSED, [("crossed", 41, 2), ("crossed", 84, 2)]),
        ([5, 6] * 10 + straight(30) + [1, 3, 2, 4] + straight(30) + [5, 6] * 9, [("crossed", 141, 2)]),
        (JUMBLED, [("differ", 49, 3)]),
    ],
)  # fmt: skip
def test_where_they_are(order: list[int], found: list[tuple[str, int, int]]) -> None:
    """Two ends crossed, several slips in one warp, a small jumble, and a slip between borders are told by the end."""
    assert found == [(slip.kind, slip.place, slip.threads) for slip in slips_in(order)]


@pytest.mark.parametrize(
    "order",
    [
        [1, 2] * 8 + [2, 1] * 8 + [1, 2] * 8,
        [1, 2] * 8 + [3] + [1, 2] * 12 + [3] + [1, 2] * 10,
        [*straight(8), 1, *straight(8), 1, *straight(10), 1, *straight(9)],
        [1, 3, 2, 3] * 4 + [1, 4, 2, 4] + [1, 3, 2, 3] * 4 + [1, 4, 2, 4] * 3,
        straight(8) + [3, 2, 1, 4] * 8 + straight(9),
        [*HERRINGBONE * 4, *HERRINGBONE[:12], 1],
        [5, 6] * 10 + straight(30) + [6, 5] * 10,
    ],
)
def test_meant(order: list[int]) -> None:
    """Stripes that change step or stand out on a shaft of their own, blocks, turns and borders are no slips."""
    assert () == slips_in(order)


@pytest.mark.parametrize("place", range(4, 94))
def test_every_crossing(place: int) -> None:
    """Two neighbours crossed anywhere in a warp but at its very edges are found where they are."""
    order = straight(25)
    order[place : place + 2] = order[place + 1], order[place]
    [found] = slips_in(order)

    assert ("crossed", place, order[place]) == (found.kind, found.place, found.read)
