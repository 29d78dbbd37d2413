"""What cloth does from the reed to the clothes line, for an invented workshop.

Every figure here is common practice, no source: good enough to make a lifelike journal, and nothing
to plan real cloth from. Losses are in per cent of the size before the step ("points").

    width   reed -> on the loom -> off the loom -> washed     whole: reed to the first wash
    length  (take-up), on the loom -> off the loom -> washed  whole: loom to the first wash

A warp departs from what is usual; its pieces depart from the warp. Cloth that did not draw in on the
loom relaxes more when it is cut off, so those two departures go against each other; take-up and the
relaxation in length likewise. Felt takes width and length together.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from random import Random
from typing import NamedTuple

AGAINST = -0.5
"""Correlation of draw-in with relaxation in width, and of take-up with relaxation in length."""

FELT_TOGETHER = 0.6
"""Correlation of whole width loss and whole length loss from warp to warp, in fulled cloth."""

PIECE_WIDTH, PIECE_LENGTH = 0.5, 0.9
"""Scatter, in points, of the whole losses of pieces inside one warp."""


class Steps(NamedTuple):
    """Losses of one warp or one piece, in per cent of the size before each step."""

    draw: float
    off_width: float
    wash_width: float
    take_up: float
    off_length: float
    wash_length: float

    @property
    def width_whole(self) -> float:
        """Width, reed to washed."""
        return whole(self.draw, self.off_width, self.wash_width)

    @property
    def length_whole(self) -> float:
        """Length, loom to washed; take-up is no part of it."""
        return whole(self.off_length, self.wash_length)


def whole(*steps: float) -> float:
    """The product of the steps, as a loss in per cent."""
    return 100 * (1 - math.prod(1 - step / 100 for step in steps))


@dataclass(frozen=True)
class Cloth:
    """A kind of cloth: what it usually loses at each step, and the range of the whole losses.

    wide, long: scatter of the whole losses from warp to warp, in points.
    kind: how later washes go on: "cotton", "linen" or "wool".
    """

    width: tuple[float, float, float]
    width_range: tuple[float, float]
    length: tuple[float, float, float]
    length_range: tuple[float, float]
    kind: str
    wide: float = 1.2
    long: float = 1.8
    fulled: bool = False
    may_grow: bool = False

    def usual(self) -> Steps:
        """The usual losses."""
        return Steps(*self.width, *self.length)

    def scatter(self) -> tuple[float, float]:
        """Scatter of the whole losses; never more than three tenths of the row's own range."""
        across, along = (high - low for low, high in (self.width_range, self.length_range))
        return min(self.wide, 0.3 * across), min(self.long, 0.3 * along)


CLOTHS = {
    "cotton plain": Cloth((4, 1.5, 6), (8, 14), (7, 3, 6), (6, 12), "cotton"),
    "cotton twill": Cloth((3, 1.5, 7), (8, 15), (5, 3, 6.5), (6, 12), "cotton"),
    "mercerised plain": Cloth((4, 1, 5), (7, 12), (6, 3, 5), (5, 10), "cotton"),
    "cotton lace": Cloth((6, 2, 8), (12, 18), (5, 3, 7), (7, 13), "cotton"),
    "cotton waffle": Cloth((5, 4, 16), (18, 28), (8, 6, 14), (15, 25), "cotton"),
    "rep": Cloth((2, 0.5, 2), (2, 7), (15, 3, 6), (6, 11), "cotton"),
    "cottolin plain": Cloth((4, 1, 5), (7, 13), (6, 2.5, 5.5), (6, 11), "cotton"),
    "cottolin twill": Cloth((3, 1, 5.5), (7, 13), (5, 2.5, 6), (6, 11), "cotton"),
    "linen plain": Cloth((3, 0.5, 4), (5, 10), (4, 1, 3.5), (3, 7), "linen"),
    "linen lace": Cloth((4.5, 0.5, 5), (7, 12), (3, 1, 4), (3, 7), "linen"),
    "woollen scoured": Cloth((4, 2, 7), (9, 17), (4, 5, 7), (8, 16), "wool", 2, 2.5),
    "woollen fulled": Cloth((4, 2, 20), (18, 32), (4, 5, 20), (17, 32), "wool", 4.5, 4.5, fulled=True),
    "worsted": Cloth((4, 2, 6), (8, 15), (4, 4, 6), (7, 13), "wool", 2, 2.5),
    "superwash": Cloth((4, 2, 3), (5, 11), (4, 4, 1), (1, 8), "wool", 2, 2.5, may_grow=True),
    "silk": Cloth((4, 0.5, 2.5), (4, 9), (4, 1.5, 2), (2, 6), "wool"),
    "alpaca": Cloth((5, 1, 4), (6, 13), (4, 2, 2), (0, 7), "wool", may_grow=True),
    "weft-faced": Cloth((1.5, 0.5, 1), (1, 5), (4, 1.5, 1.5), (2, 5), "wool"),
}


@dataclass(frozen=True)
class Conditions:
    """How a warp was woven and washed.

    closeness: sett over the usual sett of this yarn in this weave. picks: likewise for the picks.
    """

    closeness: float = 1.0
    picks: float = 1.0
    temple: bool = False
    tumbled: bool = False


def expected(cloth: Cloth, conditions: Conditions) -> Steps:
    """The usual losses, moved by sett, picks, temple and tumble dryer.

    A tenth closer takes a point off the whole width loss; a tenth more picks .8 off the whole length
    loss and adds one to take-up. A temple takes 2 off draw-in and gives 1.75 back at the cut-off. The
    dryer adds 3 in length and 1.5 in width, to cotton.
    """
    usual = cloth.usual()
    across = sum(cloth.width)
    along = usual.off_length + usual.wash_length
    wider = -10 * (conditions.closeness - 1) / across
    longer = -8 * (conditions.picks - 1) / along
    steps = Steps(
        usual.draw * (1 + wider),
        usual.off_width * (1 + wider),
        usual.wash_width * (1 + wider),
        usual.take_up + 10 * (conditions.picks - 1),
        usual.off_length * (1 + longer),
        usual.wash_length * (1 + longer),
    )
    if conditions.temple:
        steps = steps._replace(draw=steps.draw - 2, off_width=steps.off_width + 1.75)
    if conditions.tumbled and cloth.kind == "cotton":
        steps = steps._replace(wash_width=steps.wash_width + 1.5, wash_length=steps.wash_length + 3)
    return steps


def departure(rng: Random, cloth: Cloth) -> Steps:
    """How far one warp departs from what is expected of it, in points; nothing is cut off."""
    wide, long = cloth.scatter()
    loom = replace(cloth, wide=2, long=2.5, fulled=False).scatter() if cloth.fulled else (wide, long)
    draw_sd, off_sd, wash_sd = _shares(loom[0], cloth.width, AGAINST)
    _, slack_sd, water_sd = _shares(loom[1], (0.0, *cloth.length[1:]), 0.0)
    if cloth.fulled:
        on_loom = draw_sd**2 + off_sd**2 + 2 * AGAINST * draw_sd * off_sd
        wash_sd = math.sqrt(wide**2 - on_loom)
        water_sd = math.sqrt(long**2 - slack_sd**2)
    felt = FELT_TOGETHER * wide * long / (wash_sd * water_sd) if cloth.fulled else 0.0
    draw, off = _pair(rng, AGAINST)
    take_up, slack = _pair(rng, AGAINST)
    wash, water = _pair(rng, felt)
    return Steps(
        draw * draw_sd, off * off_sd, wash * wash_sd,
        take_up * cloth.length[0] / 5, slack * slack_sd, water * water_sd,
    )  # fmt: skip


def warp_steps(rng: Random, cloth: Cloth, conditions: Conditions) -> Steps:
    """The losses of one warp: inside the row's range as a whole, and each step not far from usual."""
    middle = expected(cloth, conditions)
    for _ in range(10_000):
        steps = Steps(*(m + d for m, d in zip(middle, departure(rng, cloth), strict=True)))
        if _lifelike(steps, middle, cloth):
            return steps
    raise ValueError(f"these conditions leave the range of {cloth}: {conditions}")


def _lifelike(steps: Steps, middle: Steps, cloth: Cloth) -> bool:
    for step, usual in zip(steps, middle, strict=True):
        if abs(step - usual) > max(0.5 * usual, 0.6) and not cloth.may_grow:
            return False
        if step < 0 and not cloth.may_grow:
            return False
    return within(steps.width_whole, cloth.width_range) and within(steps.length_whole, cloth.length_range)


def within(loss: float, between: tuple[float, float]) -> bool:
    """Whether a whole loss lies in a range."""
    return between[0] <= loss <= between[1]


def piece_steps(rng: Random, cloth: Cloth, warp: Steps, *, place: int, of: int, creep: float) -> Steps:
    """The losses of the piece at a place (0 first) in a warp of so many pieces.

    creep: what draw-in gains from the first piece to the last. The first piece of several is woven
    before the weaver has settled: wider on the loom, slacker in length. The last one hangs on a
    short warp and relaxes less.
    """
    draw_sd, off_sd, wash_sd = _shares(PIECE_WIDTH, cloth.width, AGAINST)
    _, slack_sd, water_sd = _shares(PIECE_LENGTH, (0.0, *cloth.length[1:]), 0.0)
    draw, off = _pair(rng, AGAINST)
    take_up, slack = _pair(rng, AGAINST)
    down = (place / (of - 1) - 0.5) if of > 1 else 0.0
    steps = Steps(
        warp.draw + draw * draw_sd + creep * down,
        max(0.0, warp.off_width + off * off_sd),
        warp.wash_width + rng.gauss(0, wash_sd),
        warp.take_up + take_up * cloth.length[0] / 20,
        max(0.0, warp.off_length + slack * slack_sd),
        warp.wash_length + rng.gauss(0, water_sd),
    )
    if of > 1 and place == 0:
        odd = rng.uniform(0.3, 0.8)
        steps = steps._replace(draw=steps.draw - odd, off_length=steps.off_length + odd)
    elif of > 2 and place == of - 1:
        steps = steps._replace(off_length=max(0.0, steps.off_length - rng.uniform(0.2, 0.6)))
    return steps


def creep(rng: Random) -> float:
    """What draw-in gains down a warp, in points."""
    return rng.uniform(0.5, 1.0)


def later_wash(rng: Random, cloth: Cloth, number: int) -> tuple[float, float]:
    """Width and length that wash number 2, 3, … still takes, in per cent of the size before it."""
    if number < 2:
        raise ValueError("the first wash is one of the steps")
    second = {"cotton": (0.5, 2.0), "linen": (0.5, 1.5), "wool": (0.0, 0.6)}[cloth.kind]
    low, high = second if number == 2 else (0.0, 0.7 if cloth.kind != "wool" else 0.3)
    if number > 3:
        high /= number - 2
    return rng.uniform(low, high), rng.uniform(low, high)


def weft_length(rng: Random, width_in_reed: float) -> float:
    """Yarn in one pick, with its turn, in the unit of the width."""
    return width_in_reed * rng.uniform(1.035, 1.055)


def fulled_to(scoured: float, stopped: float, minutes: float, last_minutes: float) -> float:
    """Size after some minutes of fulling that ended at `stopped`: slow at first, then quicker."""
    return scoured * math.pow(stopped / scoured, math.pow(minutes / last_minutes, 1.25))


def _shares(whole_sd: float, steps: tuple[float, float, float], correlation: float) -> list[float]:
    """Scatter of three steps that together scatter by `whole_sd`; the first two are correlated."""
    first, second, third = (math.sqrt(step) for step in steps)
    scale = whole_sd / math.sqrt(first**2 + second**2 + third**2 + 2 * correlation * first * second)
    return [scale * first, scale * second, scale * third]


def _pair(rng: Random, correlation: float) -> tuple[float, float]:
    """Two standard normal draws with a correlation."""
    first, other = rng.gauss(0, 1), rng.gauss(0, 1)
    return first, correlation * first + math.sqrt(1 - correlation**2) * other
