"""Threads in a piece: finished ends and picks to the length, and what they should weigh."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from journal_tools.ledger.account import Account, loom_length_mm
from journal_tools.ledger.chain import Measure, loss_over
from journal_tools.ledger.laid import Laid
from journal_tools.ledger.mass import TAKE_UP_ELSE, WASHED_OUT, WEFT_OVER_REED, Piece, Reckoned, Threads, reckon
from journal_tools.ledger.state import IN_REED, OFF_LOOM, wet
from journal_tools.records.journal import Journal
from journal_tools.records.yarn import Yarn
from journal_tools.records.yarns_used import YarnInUse, warp_threads, weft_threads


@dataclass(frozen=True)
class FinishedCounts:
    """Threads to the metre of finished cloth. None where the record cannot tell.

    over_hem: whether the picks were counted on cloth that was hemmed after, so that the figure goes
    on by the hemmed piece's own loss.
    """

    ends_per_m: float | None
    picks_per_m: float | None
    over_hem: bool = False


def finished_counts(laid: Laid, width: Sequence[Measure], length: Sequence[Measure]) -> FinishedCounts:
    """Ends over washed width and picks over washed length of one piece.

    Where a hem lies between, picks over the last length before it, gone on by the loss since.
    """
    ends_per_m, _ = _per_metre(laid.ends, width)
    picks = laid.picks.number / laid.opens_by if laid.picks else None  # one row of opened cloth takes a pick a layer
    picks_per_m, over_hem = _per_metre(picks, length)
    return FinishedCounts(ends_per_m, picks_per_m, over_hem)


def _per_metre(threads: float | None, chain: Sequence[Measure]) -> tuple[float | None, bool]:
    if not any(wet(each.state) for each in chain):
        return None, False
    cloth = [each for each in chain if each.yardstick == "cloth" and each.state >= OFF_LOOM]
    since = loss_over(chain[chain.index(cloth[-1]) :]) if cloth else None
    if threads is None or since is None:
        return None, False
    return threads / (cloth[-1].mm * (1 - since.loss)) * 1000, since.joined


def weigh(
    journal: Journal, laid: Laid, width: Sequence[Measure], length: Sequence[Measure], account: Account | None
) -> Reckoned | None:
    """The reckoned weight of one piece; None where ends, picks, sizes or yarn numbers are missing."""
    warp_tex, warp_lost = _tex(warp_threads(journal, laid.warp))
    weft_tex, weft_lost = _tex(weft_threads(journal, laid.warp, laid.said("weft") or ()))
    loom_mm = loom_length_mm(laid)
    reed = next((each.mm for each in width if each.state == IN_REED), None)
    picks = _pick_count(laid, loom_mm)
    if not (warp_tex and weft_tex and loom_mm and reed and picks and laid.ends) or laid.band is not None:
        return None
    told = account.take_up if account is not None else None
    taken = told.loss if told is not None and told.basis != "at most" else TAKE_UP_ELSE  # not what went astray
    warp = Threads(laid.ends, loom_mm / (1 - max(taken, 0.0)) + laid.fringe_mm, warp_tex, warp_lost)
    weft = Threads(picks, reed / laid.opens_by * WEFT_OVER_REED, weft_tex, weft_lost)
    weights = laid.said("weight") or {}
    state = next((key for key in ("washed", "made_up", "in_oil", "off_loom", "on_loom") if key in weights), "")
    weighed = float(weights[state].grams) if state else None
    return reckon(warp, weft, Piece(_area_m2(width, length), weighed, state, laid.fringe_mm / warp.length_mm))


def _pick_count(laid: Laid, loom_mm: float | None) -> int | None:
    if laid.picks is not None:
        return None if laid.said("tabby") == "not counted" else laid.picks.number
    beat = laid.said("beat")
    return round(float(beat.per_m) * loom_mm / 1000) if beat is not None and loom_mm else None


def _tex(used: Sequence[tuple[YarnInUse, int]]) -> tuple[float | None, tuple[float, float]]:
    """Mean linear density of several yarns by their threads, and what the first wash takes of them.

    None unless all are known.
    """
    known = [(yarn.record, number) for yarn, number in used if yarn.record is not None]
    total = sum(number for _, number in known)
    if not total or len(known) < len(used) or any(record.tex is None for record, _ in known):
        return None, (0.0, 0.0)
    grams = [(record, number * float(record.tex or 0)) for record, number in known]
    heavy = sum(each for _, each in grams)
    lost = [(*_washed_out(record), each / heavy) for record, each in grams]
    return heavy / total, (sum(low * share for low, _, share in lost), sum(high * share for _, high, share in lost))


def _washed_out(yarn: Yarn) -> tuple[float, float]:
    said = [bounds for key, bounds in WASHED_OUT.items() if getattr(yarn, key)]
    return (sum(each[0] for each in said), sum(each[1] for each in said))


def _area_m2(width: Sequence[Measure], length: Sequence[Measure]) -> float | None:
    if not width or not length or width[-1].yardstick != "cloth" or length[-1].yardstick != "cloth":
        return None
    if width[-1].state <= OFF_LOOM or width[-1].state != length[-1].state:
        return None
    return width[-1].mm * length[-1].mm / 1e6
