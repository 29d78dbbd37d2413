"""Figures that are written down twice and should say the same: sett and sley, ends and width, hems and size."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from journal_tools.ledger.chain import Measure, Tape, chain_of, made_up_of
from journal_tools.ledger.ends import dents_for, heddled_ends
from journal_tools.ledger.laid import Laid
from journal_tools.ledger.state import wash_number
from journal_tools.quantities import show_density, show_length
from journal_tools.records.warp import Stretch, Warp

SETT_OFF = 0.06
"""A reed of 12 for a sett of 25 is 4 % off, and meant. Judgement."""

ENDS_OFF = 0.06
ENDS_EDGES = 8
"""Ends doubled at the edges and floating selvedges: so many more or fewer say nothing (judgement)."""

MADE_UP_OFF = 0.03
"""How far a made-up length may be from the washed one less its hems, beside the readings' own ± (judgement)."""


@dataclass(frozen=True)
class Disagreement:
    """Two figures that do not agree. key: of the one read; read: it as typed; right: what is asked."""

    slug: str
    key: str
    read: str
    right: str


def of_stretch(warp: Warp, stretch: Stretch, floating: int) -> Iterator[Disagreement]:
    """Sett against reed and sley, and ends against the width in the reed.

    floating: ends without heddles, both edges together; each has a dent of its own.

    Layers, bands and several warps have setts of their own, and are not asked about.
    """
    reed, order = stretch.reed or warp.reed, stretch.sley or warp.sley
    if reed is None or not order or warp.layers or stretch.across or warp.across or len(warp.warp) > 1:
        return
    per_m = reed.per_m * sum(order) / len(order)
    sley = "-".join(map(str, order))
    sett = stretch.sett or warp.sett or next((wound.sett for wound in warp.warp if wound.sett), None)
    if sett is not None and abs(sett.per_m / per_m - 1) > SETT_OFF:
        made = show_density(per_m, reed.unit)
        right = f"a {reed.text} reed sleyed {sley} gives {made}. Which of the three is another?"
        yield Disagreement("sett-is-not-the-sley", "sett", sett.text, right)
    levels = (stretch,) if stretch is warp else (stretch, warp)
    laid = Laid(warp, stretch, "", 1, levels, stretch)
    if (ends := laid.ends) is None or (mm := laid.reed_mm) is None or (width := laid.reed_width) is None:
        return
    fill = mm / 1000 * float(per_m)
    if abs(ends - fill) > max(ENDS_OFF * fill, ENDS_EDGES):
        said = stretch.ends or warp.ends
        edges = 0 if said is not None and said.from_the_middle else floating
        dents = dents_for(heddled_ends(warp, stretch, floating) or 0, order) + edges
        stands = show_length(dents * 1000 / reed.per_m, reed.unit)
        right = (
            f"{ends} ends sleyed {sley} in a {reed.text} reed stand {stands} wide."
            " Is it the width, the ends, the reed or the sley?"
        )
        yield Disagreement("ends-do-not-fill-the-width", "in_reed", width.text, right)


def of_piece(laid: Laid, tape: Tape) -> Iterator[Disagreement]:
    """The made-up size against the last washed one, less the hems where they were sewn after it."""
    for direction in ("width", "length"):
        made = made_up_of(laid, direction, tape)
        washed = [each for each in chain_of(laid, direction, tape) if wash_number(each.state) is not None]
        if made is None or not washed or washed[-1].yardstick == "marks" or laid.band is not None:
            continue
        last = washed[-1]
        eaten = _eaten(laid, direction) if last.yardstick == "cloth" else 0.0
        slack = MADE_UP_OFF * last.mm + made.u_mm + last.u_mm
        fringe = laid.said("fringe") is not None and direction == "length"
        if made.mm > last.mm + slack and not fringe:
            right = (
                f"the {direction} is {_shown(made)}, where it was {_shown(last)} {last.state.name}."
                " Were pieces joined, or is one of the two another?"
            )
            yield Disagreement("made-up-is-larger", "made_up", _shown(made), right)
        elif eaten and abs(last.mm - eaten - made.mm) > slack:
            left = show_length(last.mm - eaten, last.unit, last.mark_mm)
            right = (
                f"the {direction} is {_shown(made)}, where {_shown(last)} {last.state.name} less its hems is {left}."
                " Is a size or the hem another?"
            )
            yield Disagreement("hems-do-not-add-up", "made_up", _shown(made), right)


def _eaten(laid: Laid, direction: str) -> float:
    return laid.hem.eats_mm[0 if direction == "width" else 1] if laid.hem is not None else 0.0


def _shown(measure: Measure) -> str:
    return show_length(measure.mm, measure.unit, measure.mark_mm)
