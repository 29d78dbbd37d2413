"""How many twills and satins there are, counted by weaving every one of them.

Sources: On-Line Encyclopedia of Integer Sequences A056357 (twills; Grünbaum & Shephard, Satins and
Twills, Mathematics Magazine 53, 1980, theorem 2), A193138, A193139 and A193140 (satins). The table by
longest float is computed from the definition.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from functools import cache
from itertools import groupby, permutations
from math import gcd

import numpy as np
import pytest
from numpy.typing import NDArray

from journal_tools.drafts import Draft, drawdown, longest_floats
from journal_tools.drafts.naming import name_of
from journal_tools.drafts.repeat import whole_repeat

TWILLS = {1: 0, 2: 1, 3: 1, 4: 3, 5: 3, 6: 7, 7: 8, 8: 17, 9: 22}
TWILLS_BY_FLOAT = {
    4: {1: 1, 2: 1, 3: 1},
    5: {2: 1, 3: 1, 4: 1},
    6: {1: 1, 2: 2, 3: 2, 4: 1, 5: 1},
    7: {2: 2, 3: 2, 4: 2, 5: 1, 6: 1},
    8: {1: 1, 2: 4, 3: 5, 4: 3, 5: 2, 6: 1, 7: 1},
}
# From n = 2, 3 and 3.
ISONEMAL = [0, 0, 0, 1, 0, 0, 1, 0, 1, 0, 1, 1, 0, 1, 1, 1, 0, 0, 1, 1, 0, 0, 3]
SQUARE = [0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 1, 0, 0, 0, 1]
SYMMETRIC = [0, 0, 0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 1, 1, 0, 0, 0, 1, 1, 0, 0, 3]

Cloth = NDArray[np.bool_]


def woven(lifts: list[set[int]]) -> Cloth:
    """Cloth on a straight draw of as many shafts as picks; shafts counted from 0 here."""
    straight = tuple(frozenset({shaft}) for shaft in range(1, len(lifts) + 1))
    return drawdown(Draft(straight, lift_plan=tuple(frozenset(s + 1 for s in lift) for lift in lifts)))


def twill(first_pick: int, period: int) -> Cloth:
    """The twill whose first pick lifts the shafts of these bits, moved on by one shaft a pick."""
    shafts = [shaft for shaft in range(period) if first_pick >> shaft & 1]
    return woven([{(shaft + pick) % period for shaft in shafts} for pick in range(period)])


def satin(period: int, step: int) -> Cloth:
    """One shaft a pick, each so many shafts on from the last."""
    return woven([{pick * step % period} for pick in range(period)])


@cache
def twills(period: int) -> tuple[Cloth, ...]:
    """One of each kind of twill: alike are those that differ by a shift, a mirror or the side seen."""
    kinds: dict[bytes, Cloth] = {}
    for first_pick in range(1, 2**period - 1):
        cloth = twill(first_pick, period)
        # Each pick is the one before moved by one end, so that the first stands for the whole cloth.
        assert all(np.array_equal(np.roll(cloth[pick - 1], 1), cloth[pick]) for pick in range(1, period))
        alike = [
            np.roll(row, shift).tobytes()
            for row in (cloth[0], cloth[0][::-1], ~cloth[0], ~cloth[0][::-1])
            for shift in range(period)
        ]
        kinds.setdefault(min(alike), cloth)
    return tuple(kinds.values())


def is_shift_of(one: Cloth, other: Cloth) -> bool:
    """Whether two cloths are the same but for where their repeat begins."""
    picks, ends = one.shape
    return any(
        np.array_equal(one, np.roll(other, (down, along), (0, 1))) for down in range(picks) for along in range(ends)
    )


@cache
def satin_steps(period: int) -> tuple[int, ...]:
    """One step of each kind of satin: alike are a step, the step back, and both with warp for weft."""
    kept: list[int] = []
    for step in range(2, period - 1):
        if gcd(step, period) == 1:
            inverse = pow(step, -1, period)
            if not {step, period - step, inverse, period - inverse} & set(kept):
                kept.append(step)
    return tuple(kept)


@cache
def symmetries(period: int, step: int) -> tuple[bool, bool]:
    """Whether a satin is square (a quarter turn gives it again) and symmetric (warp for weft does)."""
    cloth = satin(period, step)
    return is_shift_of(cloth, np.rot90(cloth)), is_shift_of(cloth, cloth.T)


@pytest.mark.parametrize("period", TWILLS)
def test_number_of_twills(period: int) -> None:
    """There are as many twills of a period as A056357 says."""

    assert TWILLS[period] == len(twills(period))


@pytest.mark.parametrize("period", TWILLS_BY_FLOAT)
def test_twills_by_longest_float(period: int) -> None:
    """The twills of a period are so many of each longest float (computed from the definition)."""
    floats = [longest_floats(cloth) for cloth in twills(period)]

    assert all(length.warp == length.weft for length in floats)
    assert TWILLS_BY_FLOAT[period] == Counter(length.warp for length in floats)


@pytest.mark.parametrize("period", range(5, 25))
def test_number_of_satins(period: int) -> None:
    """Satins with all threads alike are as many as A193140 says, square and symmetric ones as A193138 and 39."""
    kinds = [symmetries(period, step) for step in satin_steps(period)]

    assert ISONEMAL[period - 2] == sum(square or symmetric for square, symmetric in kinds)
    assert SYMMETRIC[period - 3] == sum(symmetric for _, symmetric in kinds)
    if period - 3 < len(SQUARE):
        assert SQUARE[period - 3] == sum(square for square, _ in kinds)


def figures(first_pick: Sequence[bool]) -> tuple[int, ...]:
    """How many ends a pick goes under, over, under and so on, as a twill is called: begun where that is highest."""
    start = next(n for n in range(len(first_pick)) if first_pick[n] and not first_pick[n - 1])
    runs = [len(list(alike)) for _, alike in groupby([*first_pick[start:], *first_pick[:start]])]
    return max(tuple(runs[n:] + runs[:n]) for n in range(0, len(runs), 2))


def alike(name: str) -> str:
    """One name for all twills of a kind: begun at another figure, read backwards, seen from the back."""
    numbers = name.removesuffix(" twill").split("/")
    return min("/".join(way[n:] + way[:n]) for way in (numbers, numbers[::-1]) for n in range(len(numbers)))


@pytest.mark.parametrize("period", range(3, 11))
def test_every_twill_has_its_name(period: int) -> None:
    """Every twill of 3 to 10 ends is called by its figures, and so are as many kinds as there are twills."""
    names = set()
    for number in range(1, 2**period - 1):
        cloth = twill(number, period)
        found = name_of(cloth)
        own = whole_repeat(cloth)[0].tolist()
        expected = "plain weave" if len(own) == 2 else "/".join(map(str, figures(own))) + " twill"
        assert expected == found.text
        names.add(alike(found.text))

    assert len(twills(period)) == len(names)


@pytest.mark.parametrize("period", range(5, 13))
def test_every_satin_has_its_name(period: int) -> None:
    """Regular satins are named with their steps: those of a step that has no part in common with the ends."""
    steps = {step: name_of(satin(period, step)) for step in range(2, period - 1)}
    regular = {step for step in steps if gcd(step, period) == 1}

    assert regular == {step for step, found in steps.items() if found.kind == "sateen"}
    assert all((f"{period}-end sateen", step) == (steps[step].text, steps[step].step) for step in regular)


def test_there_is_no_satin_on_six() -> None:
    """Six ends have no regular satin: whatever the order of six binding points, none is named as one."""
    orders = np.array(list(permutations(range(6))))
    cloths = orders[:, :, None] == np.arange(6)

    assert not any(name_of(cloth).kind in ("satin", "sateen") for cloth in cloths)
