"""The moment of each size of a piece: which sizes can teach, and what counts as settled.

Left out are sizes of damp cloth, sizes after fulling has begun, and made-up sizes.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from journal_tools.ledger.chain import Measure
from journal_tools.ledger.laid import Laid
from journal_tools.ledger.state import SCOURED, State, wash_number, washes_before_hem
from journal_tools.records import Journal

SETTLED_BELOW = 0.005
"""A wash that takes less than this leaves the cloth settled."""

SETTLED_FROM = 3
"""The wash from which cloth counts as settled, whatever it takes."""


def moments(journal: Journal, laid: Laid, chain: Sequence[Measure]) -> Iterator[tuple[str, Measure]]:
    """Each size of a chain that can teach, in order, with its moment; of several at one moment, the last."""
    steered = is_steered(journal, laid)
    damp = {state for state, at in laid.measured() if at.dry == "damp"}
    found: dict[tuple[str, str], Measure] = {}
    before: dict[str, Measure] = {}
    settled: set[str] = set()
    for measure in chain:
        number, stick = wash_number(measure.state), measure.yardstick
        if measure.mm <= 0 or measure.state in damp:
            continue
        if steered and (number is not None or measure.state.key.startswith("fulled")):
            continue
        if number is not None:
            if is_settled(before.get(stick), measure):
                settled.add(stick)
            before[stick] = measure
        washes = max((wash_number(each.state) or 0 for each in before.values()), default=0)
        moment = _moment(measure.state, washes, stick in settled)
        if moment is None or (measure.state.key == "hemmed" and stick == "cloth" and (moment, stick) in found):
            continue  # hemmed at its ends, a cloth measured just before is as wide as it was
        found[moment, stick] = measure
    yield from ((moment, measure) for (moment, _), measure in found.items())


def is_steered(journal: Journal, laid: Laid) -> bool:
    """Whether a piece was fulled to size, by its own checks or by its recipe."""
    recipes = (journal.finishes.get(name) for name in laid.said("finish") or ())
    return laid.steered or any(recipe is not None and recipe.fulling for recipe in recipes)


def is_settled(before: Measure | None, after: Measure) -> bool:
    """Whether a wash left the cloth settled: the third or a later one, or one that took under 0.5 %."""
    number = wash_number(after.state) or 0
    if number >= SETTLED_FROM:
        return True
    if before is None or wash_number(before.state) != number - 1:
        return False
    return 1 - after.mm / before.mm < SETTLED_BELOW


def _moment(state: State, washes: int, settled: bool) -> str | None:
    """The moment that a state is of; cloth just hemmed is at the moment of the state that it was hemmed in."""
    number = wash_number(state)
    if state.key == "hemmed":
        after = washes_before_hem(state)
        number = washes if after is None else min(after, washes)
        if after == 0:
            return "off_loom"
    if state == SCOURED:
        return "washed 1"
    if number:
        return "settled" if settled or number >= SETTLED_FROM else f"washed {number}"
    return state.key if state.key in ("in_reed", "on_loom", "off_loom") else None
