"""The arithmetic of a plan: small and pure, so that a page in a browser can do the very same.

Lengths are in mm, densities in threads or dents to the metre, yarn in tex (g/km), weights in g,
losses and shares are fractions. What the page does is held against the same table of cases.

Percentages are undone by dividing: a loss s turns L into L (1 - s), so L is wanted of L / (1 - s);
L (1 + s) falls short. Losses one after another multiply. Source: arithmetic; the crimp and take-up
of ASTM D3883 are undone in the same way.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from journal_tools.ledger.ends import dents_for as dents_for
from journal_tools.planning.allowances import WEFT_OVER_REED

NEAR = 1e-6
"""What a division may leave over: a thousandth of a thousandth of a step is no step."""


def before_loss(after_mm: float, loss: float) -> float:
    """The size that a loss leaves `after_mm` of: after / (1 - loss)."""
    return after_mm / (1 - loss)


def after_loss(before_mm: float, loss: float) -> float:
    """What a loss leaves of a size: before x (1 - loss)."""
    return before_mm * (1 - loss)


def whole_loss(losses: Sequence[float]) -> float:
    """Several losses, one after another: 1 - the product of what each leaves."""
    return 1 - math.prod(1 - loss for loss in losses)


def nearest(mm: float, step: float) -> float:
    """The nearest whole number of steps, halves up."""
    return math.floor(mm / step + 0.5 + NEAR) * step


def upward(mm: float, step: float) -> float:
    """The next whole number of steps that is not less."""
    return math.ceil(mm / step - NEAR) * step


def downward(mm: float, step: float) -> float:
    """The last whole number of steps that is not more."""
    return math.floor(mm / step + NEAR) * step


def sett_of(dents_per_m: float, sley: Sequence[int]) -> float:
    """Ends to the metre of a reed under a sley order: dents x the mean ends in a dent."""
    return dents_per_m * sum(sley) / len(sley)


def dents_in(width_mm: float, dents_per_m: float) -> int:
    """The whole dents nearest to a width."""
    return math.floor(width_mm * dents_per_m / 1000 + 0.5 + NEAR)


def width_of(dents: int, dents_per_m: float) -> float:
    """Width in the reed: dents used / dents to the metre, in mm. Exact, since dents are counted."""
    return dents * 1000 / dents_per_m


def ends_in(dents: int, sley: Sequence[int]) -> int:
    """Ends that so many dents hold, the order begun at its start."""
    rounds, over = divmod(dents, len(sley))
    return rounds * sum(sley) + sum(sley[:over])


def whole_repeats(ends: float, repeat: int, beside: int = 0) -> int:
    """How many whole repeats, one at least, come nearest to so many ends with `beside` outside of them."""
    return max(1, math.floor((ends - beside) / repeat + 0.5 + NEAR))


def balance(repeat: Sequence[object]) -> int:
    """Ends to add after whole repeats so that the right edge mirrors the left; 0 when none do.

    The fewest first ends of the repeat that make repeat + them read the same from both sides:
    1, 2, 3, 4, 3, 2 wants its first end once more. A straight draw has no mirror and wants none.
    """
    for extra in range(len(repeat)):
        row = [*repeat, *repeat[:extra]]
        if row == row[::-1]:
            return extra
    return 0


def cloth_for(made_up_mm: float, hems_mm: float, hem_ratio: float = 1.0) -> float:
    """Washed cloth that a made-up size takes: made up + hems x hem_ratio.

    hems_mm: depth and turn-under of every hemmed edge. hem_ratio: washed / off the loom when they
    are sewn before washing, since the fold shrinks too; 1 when they are sewn after.
    """
    return made_up_mm + hems_mm * hem_ratio


def weave_to(cloth_mm: float, ratio: float) -> float:
    """Length on the loom, tension on, for so much washed cloth; ratio: washed / on the loom."""
    return cloth_mm / ratio


def picks_for(length_mm: float, picks_per_m: float) -> int:
    """Picks in a length, to the nearest whole pick."""
    return math.floor(length_mm * picks_per_m / 1000 + 0.5 + NEAR)


def warp_for(cloth_mm: float, take_up: float) -> float:
    """Warp that weaves so much cloth under tension: cloth / (1 - take-up)."""
    return cloth_mm / (1 - take_up)


def hems_eat(depth_mm: float, turn_mm: float, edges: int) -> float:
    """What hems take from one direction: (depth + turn-under) for each hemmed edge."""
    return (depth_mm + turn_mm) * edges


def warp_grams(ends: int, warp_mm: float, tex: float) -> float:
    """Weight of so many ends of a warp: ends x length x tex."""
    return ends * warp_mm * tex / 1e6


def weft_mm(reed_mm: float) -> float:
    """Weft in one pick: width in the reed x 1.05."""
    return reed_mm * WEFT_OVER_REED


def weft_grams(picks: float, reed_mm: float, tex: float) -> float:
    """Weight of so many picks: picks x length of a pick x tex."""
    return picks * weft_mm(reed_mm) * tex / 1e6


def cones(short_g: float, put_up_g: float) -> int:
    """Whole put-ups that hold so much; none when nothing is short."""
    return max(0, math.ceil(short_g / put_up_g - NEAR))


def heddles(ends: int, threading: Sequence[Sequence[int]], shaft: int) -> int:
    """Heddles on a shaft when the threading is repeated over so many ends."""
    on = [shaft in end for end in threading]
    rounds, over = divmod(ends, len(on))
    return rounds * sum(on) + sum(on[:over])


def one_in(chance: float) -> int:
    """A chance as `1 in N`, N whole, two at least."""
    return max(2, math.floor(1 / chance + 0.5 + NEAR))
