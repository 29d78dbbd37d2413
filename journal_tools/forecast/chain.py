"""The steps of the cloth in each direction, and where each moment stands on them.

Every step is ln(later / earlier), so a loss is negative and steps add. With ln of the size on the
loom as the origin:

    width   in_reed = − draw-in                 length   warp  = − take-up
                                                         picks = − pick
    off_loom  = relaxation
    washed 1  = relaxation + wash
    washed 2  = relaxation + wash + 0.7 settling     judgement: most of what is left goes in wash 2
    settled   = relaxation + wash + settling         wash 3 or later, or a wash that took under 0.5 %
"""

from __future__ import annotations

from functools import cache

DRAW_IN, TAKE_UP, PICK, RELAXATION, WASH, SETTLING = "draw-in", "take-up", "pick", "relaxation", "wash", "settling"

STEPS: dict[str, tuple[str, ...]] = {
    "width": (DRAW_IN, RELAXATION, WASH, SETTLING),
    "length": (TAKE_UP, PICK, RELAXATION, WASH, SETTLING),
}
IN_WASH_2 = 0.7  # the share of settling that the second wash takes

_AFTER: dict[str, dict[str, float]] = {
    "on_loom": {},
    "off_loom": {RELAXATION: 1.0},
    "washed 1": {RELAXATION: 1.0, WASH: 1.0},
    "washed 2": {RELAXATION: 1.0, WASH: 1.0, SETTLING: IN_WASH_2},
    "settled": {RELAXATION: 1.0, WASH: 1.0, SETTLING: 1.0},
}
_POSITIONS: dict[str, dict[str, dict[str, float]]] = {
    "width": {"in_reed": {DRAW_IN: -1.0}, **_AFTER},
    "length": {"warp": {TAKE_UP: -1.0}, "picks": {PICK: -1.0}, **_AFTER},
}
MOMENTS: dict[str, tuple[str, ...]] = {direction: tuple(found) for direction, found in _POSITIONS.items()}


@cache
def position(direction: str, moment: str) -> tuple[float, ...]:
    """Where a moment stands, as one coefficient a step. ValueError for a moment that is not in the chain."""
    try:
        along = _POSITIONS[direction][moment]
    except KeyError:
        raise ValueError(f"{moment!r} is no moment of {direction}: {', '.join(MOMENTS[direction])}") from None
    return tuple(along.get(step, 0.0) for step in STEPS[direction])


def span(direction: str, first: str, last: str) -> tuple[float, ...]:
    """What ln(last / first) is made of, as one coefficient a step."""
    return tuple(
        later - earlier for earlier, later in zip(position(direction, first), position(direction, last), strict=True)
    )
