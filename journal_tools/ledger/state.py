"""The states that cloth goes through, in their order, and what weavers call them."""

from __future__ import annotations

import math
import re
from dataclasses import dataclass
from functools import lru_cache

from journal_tools.records.hem import AFTER_ALL


@dataclass(frozen=True, order=True)
class State:
    """One state of the cloth.

    rank: its place in the order, so that states compare. key: as a record says it.
    name: in full, "on the loom". short: as one end of a loss, "loom".
    """

    rank: float
    key: str
    name: str
    short: str


IN_REED = State(0, "in_reed", "in the reed", "reed")
ON_LOOM = State(1, "on_loom", "on the loom", "loom")
OFF_LOOM = State(2, "off_loom", "off the loom", "off")
SCOURED = State(3, "scoured", "only scoured", "scoured")
MADE_UP = State(9_000, "made_up", "made up", "made up")

FIXED = {state.key: state for state in (IN_REED, ON_LOOM, OFF_LOOM, SCOURED, MADE_UP)}
STANDARD = (IN_REED, ON_LOOM, OFF_LOOM)
"""The states that every cloth goes through before water."""


def fulled(minutes: int) -> State:
    """The cloth after so many minutes of fulling; minute 0 is only scoured."""
    if minutes == 0:
        return SCOURED
    return State(3 + minutes / 10_000, f"fulled {minutes}", f"fulled {minutes} min", f"fulled {minutes} min")


def washed(number: int | None) -> State:
    """The cloth after a wash; None when the record has a single wash that it does not number."""
    if number is None:
        return State(11, "washed", "washed", "washed")
    return State(10 + number, f"washed {number}", f"washed {number}", f"washed {number}")


def hemmed(after_wash: int) -> State:
    """The cloth just hemmed, after so many washes."""
    return State(OFF_LOOM.rank + 5 if after_wash == 0 else 10.5 + after_wash, "hemmed", "hemmed", "hemmed")


def washes_before_hem(state: State) -> int | None:
    """How many washes a hemmed cloth had had; None for a hem sewn "after washing", however many those were."""
    if state.rank < 10:
        return 0
    washes = math.floor(state.rank - 10.5)
    return washes if washes < AFTER_ALL else None


@lru_cache(maxsize=256)
def wash_number(state: State) -> int | None:
    """Which wash a washed state follows, None for any other state."""
    match = re.fullmatch(r"washed(?: (\d+))?", state.key)
    return int(match[1] or 1) if match else None


def wet(state: State) -> bool:
    """Whether the cloth has just been in the water."""
    return wash_number(state) is not None or state.key == SCOURED.key or state.key.startswith("fulled")


def skipped(first: State, last: State) -> tuple[State, ...]:
    """The states between two that every such cloth went through: those a loss spans when nobody measured them.

    A first wash is not counted as skipped between the loom and a wash that is not numbered.
    """
    between = [state for state in STANDARD if first < state < last]
    number = wash_number(last) or 0
    began = wash_number(first) or 0
    return (*between, *(washed(wash) for wash in range(began + 1, number)))
