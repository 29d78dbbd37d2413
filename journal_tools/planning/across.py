"""The width of a plan: from the size wanted back to dents, ends and whole repeats."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from journal_tools.planning import arithmetic as sums
from journal_tools.planning.allowances import USUAL_REEDS
from journal_tools.planning.knowing import Belief
from journal_tools.planning.order import Order, order_of
from journal_tools.planning.sleying import Sleying, sleyings
from journal_tools.planning.wants import NotPlanned, WantedPiece, WantedStretch, Wants

SAME_SETT = 0.01
"""A stated reed and sley are kept where they give the wanted sett to a hundredth."""


TAPE_DENTS = 2
"""Dents by which a width off a tape may miss the dents that the ends take."""


@dataclass(frozen=True)
class Across:
    """How a stretch stands in the reed.

    wanted_mm: width in the reed that the wanted size takes; mm: the one that whole dents and repeats
    give, as it stands on the loom. ends: floating and doubled ones among them; heddled: those with a
    heddle. draft_over: ends beyond whole repeats of the draft and its balance.
    others: what the other reeds would do, best first. known_reed: whether a record has this reed.
    sleyed: whether the warp stands in the reed already, so that none of this is to be chosen.
    """

    sleying: Sleying
    wanted_mm: float
    mm: float
    dents: int
    ends: int
    heddled: int
    floating: int
    order: Order | None
    times: int
    draft_repeats: int
    draft_over: int
    others: tuple[Sleying, ...]
    known_reed: bool
    sleyed: bool = False

    @property
    def mirrored(self) -> bool:
        """Whether the colours mirror at the middle; true without an order."""
        return self.order is None or self.order.mirrored(self.times)


def cloth_width(piece: WantedPiece, hem_ratio: float) -> float | None:
    """Width of cloth at the state wanted, before any hem took of it; None where no width is wanted."""
    if piece.width_mm is None:
        return None
    return sums.cloth_for(piece.width_mm, piece.hems_mm[0], hem_ratio)


def across_of(wants: Wants, stretch: WantedStretch, reed_mm: float | None, sleyed: bool = False) -> Across:
    """Dents, ends and repeats nearest to a width in the reed (mm, as it stands on the loom).

    reed_mm: None where nobody wants a width: then the record's own width or ends hold. sleyed: the warp
    is on the loom, so what its record says of the reed holds, whatever is wanted.
    Raises NotPlanned where nothing says how wide.
    """
    if sleyed and (stands := _as_it_stands(wants, stretch, reed_mm)) is not None:
        return stands
    picked, others, known = _reed(wants, stretch)
    floating = 2 if any(warp.floating_selvedges for warp in wants.warp.warp) else 0
    fixed = stretch.stretch.ends if stretch.stretch is not wants.warp else None
    own_ends = fixed.number if fixed is not None else None
    doubled = wants.asked.doubled * 2
    if own_ends is None and reed_mm is None:
        reed_mm = stretch.laid.reed_mm or _stated_width(stretch)
        if reed_mm is None and (own_ends := _counted(stretch)) is None:
            raise NotPlanned("how wide is it to be? Give a size, such as `made_up: 18 x 27`, or `in_reed: 20 1/4`.")
    if own_ends is not None:
        floating = 0 if fixed is not None else floating
        heddled, order, times = own_ends, None, 0
        wanted_mm = sums.width_of(sums.dents_for(own_ends, picked.order) + floating, picked.dents_per_m)
    else:
        assert reed_mm is not None
        wanted_mm = reed_mm
        room = sums.ends_in(sums.dents_in(reed_mm, picked.dents_per_m) - floating, picked.order) + doubled
        heddled, order, times = _fit(stretch, max(room, 1))
    dents = max(1, sums.dents_for(heddled - doubled, picked.order)) + floating
    repeats, over = _repeats(stretch, heddled)
    return Across(
        picked, wanted_mm, sums.width_of(dents, picked.dents_per_m), dents, heddled + floating, heddled, floating,
        order, times, repeats, over, others, known,
    )  # fmt: skip


def _as_it_stands(wants: Wants, stretch: WantedStretch, wanted_mm: float | None) -> Across | None:
    """A warp on the loom as its record has it; None where the record says neither width nor ends."""
    laid = stretch.laid
    picked, _, _ = _reed(wants, stretch)
    if laid.reed is not None and laid.said("sley"):
        order = tuple(laid.said("sley"))
        sett = sums.sett_of(float(laid.reed.per_m), order)
        picked = Sleying(float(laid.reed.per_m), order, sett, sett / stretch.sett.per_m - 1)
    floating = 2 if any(warp.floating_selvedges for warp in wants.warp.warp) else 0
    said, ends = _measured_width(stretch), _counted(stretch)
    if ends is not None:
        dents = sums.dents_for(ends, picked.order) + floating
        if said is not None and abs(dents - sums.dents_in(said, picked.dents_per_m)) > TAPE_DENTS:
            dents = sums.dents_in(said, picked.dents_per_m)  # crammed or spaced: the tape knows better
        said, heddled = said or sums.width_of(dents, picked.dents_per_m), ends
    elif (said := said or laid.reed_mm) is not None:
        dents = sums.dents_in(said, picked.dents_per_m)
        heddled = sums.ends_in(dents - floating, picked.order)
    else:
        return None
    _, order_, times = _fit(stretch, heddled)
    repeats, over = _repeats(stretch, heddled)
    return Across(
        picked, said if wanted_mm is None else wanted_mm, said, dents, heddled + floating, heddled, floating,
        order_, times, repeats, over, (), True, True,
    )  # fmt: skip


def reed_for(cloth_mm: float, belief: Belief, opens_by: int) -> float:
    """Width in the reed for a width of cloth: cloth / (what is left of it) / the widths that it opens by."""
    return cloth_mm / math.exp(belief.mean) / opens_by


def _reed(wants: Wants, stretch: WantedStretch) -> tuple[Sleying, tuple[Sleying, ...], bool]:
    wanted = stretch.sett.per_m
    owned = [float(reed.per_m) for reed in wants.loom.reeds] if wants.loom is not None else []
    stated = stretch.laid.reed
    order: Sequence[int] = stretch.laid.said("sley") or ()
    if stated is not None and order:
        sett = sums.sett_of(float(stated.per_m), order)
        if abs(sett / wanted - 1) < SAME_SETT:
            kept = Sleying(float(stated.per_m), tuple(order), sett, sett / wanted - 1)
            return kept, _others(kept, sleyings(wanted, owned)), not owned or kept.dents_per_m in owned
    if stated is not None and (not order or not owned):
        kept = sleyings(wanted, [float(stated.per_m)])[0]
        return kept, _others(kept, sleyings(wanted, owned)), not owned or kept.dents_per_m in owned
    unit = wants.density_unit
    usual = [dents * (1000 / 25.4 if unit == "in" else 100) for dents in USUAL_REEDS[unit]]
    found = sleyings(wanted, owned or usual)
    return found[0], found[1:], bool(owned)


def _others(kept: Sleying, found: Sequence[Sleying]) -> tuple[Sleying, ...]:
    return tuple(each for each in found if each.dents_per_m != kept.dents_per_m)


def _measured_width(stretch: WantedStretch) -> float | None:
    """Width in the reed as the record has it beside its plan, folded where the cloth opens."""
    said = stretch.laid.said("in_reed")
    if said is None:
        return None
    if said.length is not None:
        return float(said.length.mm) / (stretch.laid.opens_by if said.fold == "opened" else 1)
    reed = stretch.laid.reed
    return None if said.dents is None or reed is None else sums.width_of(said.dents.number, float(reed.per_m))


def _stated_width(stretch: WantedStretch) -> float | None:
    said = stretch.laid.said("in_reed")
    return float(said.length.mm) if said is not None and said.length is not None else None


def _counted(stretch: WantedStretch) -> int | None:
    """Ends that the record says, floating selvedges not among them."""
    said = stretch.laid.said("ends")
    if said is not None:
        return int(said.number)
    wound = stretch.laid.warp.warp
    counted = [warp.ends.number if warp.ends else len(warp.order.items) if warp.order else None for warp in wound]
    return sum(number or 0 for number in counted) or None


def _fit(stretch: WantedStretch, room: int) -> tuple[int, Order | None, int]:
    """Ends nearest to the room for them: whole repeats of the colour order, else of the draft, balanced."""
    wound = stretch.laid.warp.warp
    order = None
    if len(wound) == 1 and wound[0].order is not None:
        order = order_of(wound[0].order.text, room)
        if not order.one_colour or order.beside:
            times = order.times_for(room)
            return order.beside + times * order.repeat_ends, order, times
    repeat, extra = _draft_repeat(stretch)
    if repeat > room:
        repeat, extra = 1, 0  # a threading written out whole is no repeat
    ends = sums.whole_repeats(room, repeat, extra) * repeat + extra
    return ends, order, ends if order is not None else 0


def _draft_repeat(stretch: WantedStretch) -> tuple[int, int]:
    """Ends in a repeat of the draft and the ends that balance it; plain weave needs no mirror."""
    if stretch.threaded is None:
        return 1, 0
    repeat = len(stretch.threaded.threading)
    return repeat, sums.balance(stretch.threaded.threading) if repeat > 2 else 0


def _repeats(stretch: WantedStretch, heddled: int) -> tuple[int, int]:
    repeat, extra = _draft_repeat(stretch)
    if stretch.threaded is None or heddled < repeat + extra:
        return 0, 0
    return divmod(heddled - extra, repeat)
