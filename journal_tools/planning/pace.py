"""How long it will take, from the hours that past warps took."""

from __future__ import annotations

import statistics
from collections.abc import Iterator
from dataclasses import dataclass

from journal_tools.ledger.account import loom_length_mm
from journal_tools.ledger.laid import Laid, lay_out
from journal_tools.planning.allowances import END_TO_PICKS, PAST_PACE
from journal_tools.quantities import Unreadable, parse_hours
from journal_tools.records import Journal
from journal_tools.records.warp import Warp


@dataclass(frozen=True)
class Hours:
    """Hours in all, from winding to the last hem. low, high: what the tenth and ninth tenth of past warps say.

    warps: how many had their hours written down.
    """

    hours: float
    low: float
    high: float
    warps: int


def work(ends: float, picks: float) -> float:
    """What there is to do, in picks: an end is wound, threaded and sleyed in the time of four (judgement)."""
    return END_TO_PICKS * ends + picks


def hours_for(journal: Journal, ends: float, picks: float, but: str = "") -> Hours | None:
    """Hours for so much work at the pace of past warps; None where fewer than three have their hours.

    The middle of past hours / work, since one warp that lay about for a year moves no middle.
    """
    paces = sorted(pace for warp in journal.warps.values() if warp.name != but and (pace := _pace(warp)) is not None)
    if len(paces) < PAST_PACE:
        return None
    todo = work(ends, picks)
    low, high = (_quantile(paces, share) for share in (0.1, 0.9))
    return Hours(statistics.median(paces) * todo, low * todo, high * todo, len(paces))


def _pace(warp: Warp) -> float | None:
    """Hours for one unit of work; None where the record does not tell."""
    if warp.hours is None:
        return None
    try:
        hours = float(parse_hours(warp.hours).hours)
    except Unreadable:
        return None
    laid = lay_out(warp)
    ends = max((each.ends or 0 for each in laid), default=0)
    picks = list(_picks(laid))
    if not ends or not hours or not picks or None in picks:
        return None
    return hours / work(ends, sum(each or 0 for each in picks))


def _picks(laid: tuple[Laid, ...]) -> Iterator[float | None]:
    """Picks of each piece, counted or reckoned from the beat or the sett; bands of a piece once."""
    for each in {id(each.levels[0]): each for each in laid}.values():
        length = loom_length_mm(each)
        beat = each.said("beat") or each.warp.sett_of(each.stretch)
        if each.picks is not None:
            yield float(each.picks.number * each.number)
        elif length and beat is not None:
            yield float(beat.per_m) * length / 1000 * each.number
        else:
            yield None


def _quantile(ordered: list[float], share: float) -> float:
    """By straight lines between the ordered figures."""
    at = share * (len(ordered) - 1)
    low = int(at)
    high = min(low + 1, len(ordered) - 1)
    return ordered[low] + (ordered[high] - ordered[low]) * (at - low)
