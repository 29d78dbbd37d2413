"""What a plan takes: warp, line by line, and yarn, colour by colour."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from journal_tools.planning import arithmetic as sums
from journal_tools.planning.across import Across
from journal_tools.planning.allowances import GAP
from journal_tools.planning.planned import PlannedStretch
from journal_tools.planning.wants import Wants
from journal_tools.planning.warp_length import Line, header, loom_waste, retie_mm
from journal_tools.planning.yarn_needs import Tally, YarnNeed
from journal_tools.records import Journal
from journal_tools.records.warp import Warp
from journal_tools.records.yarns_used import YarnInUse, warp_threads, weft_threads, yarn_in_use


def lines_of(wants: Wants, stretches: Sequence[PlannedStretch]) -> Iterator[Line]:
    """Where each inch goes, take-up apart."""
    asked = wants.asked
    yield header()
    if asked.sample_mm:
        yield Line("sample, washed first", asked.sample_mm, woven=True)
        yield Line("cut off and tied on again", retie_mm(wants.loom))
    gap = GAP if asked.gap_mm is None else asked.gap_mm
    for number, each in enumerate(stretches):
        if number:
            yield Line(
                "cut off and tied on again", retie_mm(wants.loom), how=f"before {each.wanted.name or 'the next'}"
            )
        for piece in each.pieces:
            if piece.weave_mm is not None:
                name = piece.wanted.name or each.wanted.name or "cloth"
                yield Line(name, piece.weave_mm, piece.wanted.count, woven=True, hems_mm=piece.hems_mm)
            if piece.wanted.fringe_mm:
                yield Line("fringes", piece.wanted.fringe_mm, piece.wanted.count, piece.wanted.fringe_how)
        gaps = sum(piece.wanted.count for piece in each.pieces if not piece.wanted.fringe_mm) - 1
        if gaps > 0:
            yield Line("gaps between them", gap, gaps)
    yield loom_waste(wants.journal, wants.warp, wants.loom)


def picks_of(stretches: Sequence[PlannedStretch]) -> int:
    """Picks of all pieces together."""
    return sum((piece.picks or 0) * piece.wanted.count for each in stretches for piece in each.pieces)


def yarns_of(wants: Wants, stretches: Sequence[PlannedStretch], wind_mm: float) -> tuple[YarnNeed, ...]:
    """Warp of the widest stretch, which is wound for all of them, and the weft of each."""
    journal, warp = wants.journal, wants.warp
    tally = Tally()
    widest = max(stretches, key=lambda each: each.across.ends)
    tally.wind(_wound(journal, warp, widest.across), wind_mm)
    for each in stretches:
        wefts = each.wanted.laid.said("weft") or ()
        thrown = weft_threads(journal, warp, wefts) or warp_threads(journal, warp)
        for piece in each.pieces:
            if piece.picks and thrown:
                tally.throw(piece.picks * piece.wanted.count, thrown, each.across.mm)
        if wants.asked.sample_mm and each is stretches[0] and thrown:
            tally.throw(sums.picks_for(wants.asked.sample_mm, each.wanted.beat.per_m), thrown, each.across.mm)
    return tally.needs(journal.settings.currency or "")


def _wound(journal: Journal, warp: Warp, across: Across) -> Iterator[tuple[YarnInUse, float]]:
    threads = warp_threads(journal, warp)
    if across.order is not None and warp.warp:
        beside = warp.warp[0].yarn
        for colour, number in across.order.colours(across.times).items():
            yield yarn_in_use(journal, warp, colour if colour or beside is None else beside), number
    elif threads:
        total = sum(number for _, number in threads)
        for yarn, number in threads:
            yield yarn, across.heddled * number / total
    selvedge = next((wound.floating_selvedges for wound in warp.warp if wound.floating_selvedges), None)
    if selvedge and across.floating:
        yield yarn_in_use(journal, warp, selvedge), across.floating
