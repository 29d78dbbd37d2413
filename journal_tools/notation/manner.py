"""How the items of a list are written: threads with runs, sets one by one, stripes with their number."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from typing import Protocol, TypeVar

Item = TypeVar("Item", contravariant=True)

DOWNWARDS, ASTRAY, NEVER = 2, 5, 99
"""Letters that a repeat must save whose unit goes down from its highest shaft; whose unit begins elsewhere than a
weaver would begin it; and where no unit may begin."""


class Manner(Protocol[Item]):
    """What a list's items look like, one by one and in runs, and where a unit of them begins by nature."""

    def one(self, item: Item) -> str:
        """An item by itself."""

    def run(self, items: Sequence[Item]) -> str:
        """Items that run on, in one."""

    def ends(self, items: Sequence[Item]) -> list[int]:
        """Of each place, the place behind the longest run from there on."""

    def is_run(self, items: Sequence[Item], ends: Sequence[int], at: int, end: int) -> bool:
        """Whether items that run on are written in one."""

    def parts(self, unit: Sequence[Item]) -> int:
        """How much a unit holds, as one counts at the loom."""

    def astray(self, unit: Sequence[Item]) -> int:
        """Letters that a repeat must save for beginning its unit here, 0 where a weaver would begin it."""


class Apart:
    """Sets one after the other, each written out: lift plans."""

    def one(self, item: frozenset[int]) -> str:
        """`1+3`, or `none`."""
        return "+".join(map(str, sorted(item))) or "none"

    def run(self, items: Sequence[frozenset[int]]) -> str:
        """Never wanted here."""
        return ", ".join(map(self.one, items))

    def ends(self, items: Sequence[frozenset[int]]) -> list[int]:
        """Nothing runs on."""
        return list(range(1, len(items) + 1))

    def is_run(self, items: Sequence[frozenset[int]], ends: Sequence[int], at: int, end: int) -> bool:
        """No."""
        return False

    def parts(self, unit: Sequence[frozenset[int]]) -> int:
        """One a pick."""
        return len(unit)

    def astray(self, unit: Sequence[frozenset[int]]) -> int:
        """A unit begins with the lowest shafts."""
        lowest = min(unit, key=lambda each: sorted(each) or [len(unit) + max(map(max, filter(None, unit)), default=0)])
        return 0 if unit[0] == lowest and (len(unit) == 1 or unit[1] != lowest) else ASTRAY


class Threads(Apart):
    """Threads with their runs: `1-4, 3-2`."""

    def run(self, items: Sequence[frozenset[int]]) -> str:
        """`1-4`."""
        return f"{min(items[0])}-{min(items[-1])}"

    def ends(self, items: Sequence[frozenset[int]]) -> list[int]:
        """Where numbers go on by one, up or down."""
        found, step = list(range(1, len(items) + 1)), 0
        for place in range(len(items) - 2, -1, -1):
            here, behind = items[place], items[place + 1]
            before, step = step, min(behind) - min(here) if len(here) == len(behind) == 1 else 0
            if abs(step) == 1:
                found[place] = found[place + 1] if step == before else place + 2
        return found

    def is_run(self, items: Sequence[frozenset[int]], ends: Sequence[int], at: int, end: int) -> bool:
        """Four and more; three, which may tear pairs, beside such a run or in a row of threes; two that turn back."""
        if end - at > 3:
            return True
        if end - at == 3:
            longer = (at > 3 and ends[at - 4] == at) or (end < len(items) and ends[end] > end + 3)
            return longer or _threes(ends, at) > 2
        return at > 3 and ends[at - 4] == at and (items[at], items[at + 1]) == (items[at - 2], items[at - 3])

    def astray(self, unit: Sequence[frozenset[int]]) -> int:
        """A unit begins on its lowest shaft and goes up, or is one run; or it goes down from its highest."""
        ends = self.ends(unit)
        if len(unit) > 2 and ends[0] == len(unit):
            return 0
        highest = unit[0] == max(unit, key=sorted) and ends[0] > 3
        return min(super().astray(unit), DOWNWARDS if highest else ASTRAY)


def _threes(ends: Sequence[int], at: int) -> int:
    """How many runs of three stand in a row, before, at and behind a place; counted to three."""
    behind = 0
    while behind < 3 and at + 3 * behind < len(ends) and ends[at + 3 * behind] == at + 3 * behind + 3:
        behind += 1
    before = 0
    while before < 2 and at >= 3 * before + 3 and ends[at - 3 * before - 3] == at - 3 * before:
        before += 1
    return behind + before if behind else 0


class Stripes:
    """Threads of one colour together, with their number: `20 bone, 4 slate`."""

    def one(self, item: str) -> str:
        """A thread."""
        return item

    def run(self, items: Sequence[str]) -> str:
        """A stripe."""
        return f"{len(items)} {items[0]}"

    def ends(self, items: Sequence[str]) -> list[int]:
        """Where the stripe ends."""
        found = list(range(1, len(items) + 1))
        for place in range(len(items) - 2, -1, -1):
            if items[place] == items[place + 1]:
                found[place] = found[place + 1]
        return found

    def is_run(self, items: Sequence[str], ends: Sequence[int], at: int, end: int) -> bool:
        """Always."""
        return True

    def parts(self, unit: Sequence[str]) -> int:
        """One a stripe."""
        return 1 + sum(one != other for one, other in pairwise(unit))

    def astray(self, unit: Sequence[str]) -> int:
        """A unit begins with a stripe, and never within one."""
        return NEVER if unit[0] == unit[-1] else 0
