"""A plan: from the sizes wanted back to the reed, the loom and the warp, and forward to what will come of it."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from journal_tools.forecast.kind import ClothKind
from journal_tools.forecast.observed import Observed
from journal_tools.planning import arithmetic as sums
from journal_tools.planning.across import Across, across_of, cloth_width, reed_for
from journal_tools.planning.allowances import GAP, STEPS, TOO_WIDE
from journal_tools.planning.along import LOW, Expected, Risk, expected, risk_of, woven_length
from journal_tools.planning.knowing import Belief, Knows, RestsOn
from journal_tools.planning.limits import Limit, limits_of
from journal_tools.planning.pace import Hours, hours_for
from journal_tools.planning.sample import Sample, sample_of
from journal_tools.planning.steered import fulled_belief, fulls
from journal_tools.planning.wants import Asked, WantedPiece, WantedStretch, Wants, wants_of
from journal_tools.planning.warp_length import Line, WarpLength, header, loom_waste, retie_mm, warp_length
from journal_tools.planning.yarn_needs import Tally, YarnNeed
from journal_tools.records import Journal
from journal_tools.records.warp import Warp
from journal_tools.records.yarns_used import YarnInUse, warp_threads, weft_threads, yarn_in_use


@dataclass(frozen=True)
class PlannedPiece:
    """One kind of piece. All sizes are in mm, of one piece; None where nobody wants that direction.

    weave_mm: length on the loom, tension on, to a step that a ribbon shows; picks: the same in picks.
    on_loom, width, length: what to expect on the loom, and at the state that was wanted.
    risk: of coming up short, where it is worth a word; risk_warp_mm: what to wind more against it.
    """

    wanted: WantedPiece
    weave_mm: float | None
    picks: int | None
    on_loom: Expected
    width: Expected | None
    length: Expected | None
    width_loss: float
    length_loss: float
    risk: Risk | None
    risk_warp_mm: float

    @property
    def useless(self) -> bool:
        """Whether a range is too wide to weave by."""
        return any(each is not None and each.doubt > TOO_WIDE for each in (self.width, self.length))


@dataclass(frozen=True)
class PlannedStretch:
    """What shares a threading. rests_on: of the width; fulled: of how many fulled warps the end sizes are, or None."""

    wanted: WantedStretch
    across: Across
    pieces: tuple[PlannedPiece, ...]
    rests_on: RestsOn
    limits: tuple[Limit, ...]
    take_up: float
    take_up_high: float
    fulled: int | None
    sample: Sample | None


@dataclass(frozen=True)
class Plan:
    """One warp planned. length: line by line; long_mm: what to wind should it take up as much as it may.

    seen: how many pieces of the very warp were measured already, and counted.
    """

    wants: Wants
    stretches: tuple[PlannedStretch, ...]
    length: WarpLength
    long_mm: float
    yarns: tuple[YarnNeed, ...]
    hours: Hours | None
    seen: int

    @property
    def ends(self) -> int:
        """Ends of the widest stretch."""
        return max(each.across.ends for each in self.stretches)

    @property
    def costs(self) -> dict[str, float]:
        """Cost of the yarn used, by currency; "" where none is named."""
        found: dict[str, float] = {}
        for yarn in self.yarns:
            if yarn.cost is not None:
                found[yarn.currency] = found.get(yarn.currency, 0.0) + yarn.cost
        return found


def plan_of(
    journal: Journal,
    memory: Knows,
    warp: Warp,
    asked: Asked | None = None,
    seen: Mapping[str, Sequence[Observed]] | None = None,
) -> Plan:
    """Plan a warp from its record.

    seen: pieces of the very warp that were measured already, by direction, such as a washed sample.
    Raises NotPlanned where the record does not say enough.
    """
    wants = wants_of(journal, warp, asked)
    planner = _Planner(wants, memory, seen or {})
    stretches = tuple(planner.stretch(each) for each in wants.stretches)
    lines = tuple(_lines(wants, stretches))
    step = STEPS[wants.unit].wind
    woven = sum(line.mm for line in lines if line.woven) or 1.0
    length = warp_length(lines, _mean(stretches, "take_up"), step)
    return Plan(
        wants,
        stretches,
        length,
        warp_length(lines, _mean(stretches, "take_up_high"), step).wind_mm,
        _yarns(wants, stretches, length.wind_mm),
        hours_for(journal, max(each.across.ends for each in stretches), _picks(stretches), warp.name)
        if woven
        else None,
        max((len(pieces) for pieces in planner.seen.values()), default=0),
    )


class _Planner:
    """Plans stretch by stretch, asking the memory what the cloth will do."""

    def __init__(self, wants: Wants, memory: Knows, seen: Mapping[str, Sequence[Observed]]) -> None:
        self.wants, self.memory, self.seen = wants, memory, seen
        self.step = STEPS[wants.unit]

    def belief(self, direction: str, kind: ClothKind, first: str, last: str) -> Belief:
        return self.memory.belief(direction, kind, first, last, seen=self.seen.get(direction, ()))

    def stretch(self, wanted: WantedStretch) -> PlannedStretch:
        """One stretch: as wide as its widest piece wants."""
        laid, kind = wanted.laid, wanted.kind
        journal, warp = self.wants.journal, self.wants.warp
        fulled = fulls(journal, laid.said("finish") or ())
        ends = {piece.number: self._ends(wanted, piece, fulled) for piece in wanted.pieces}
        wide = [
            reed_for(cloth, ends[piece.number][0], laid.opens_by)
            for piece in wanted.pieces
            if (cloth := cloth_width(piece, self._hem_ratio(wanted, piece, "width"))) is not None
        ]
        across = across_of(self.wants, wanted, max(wide, default=None))
        take = self.belief("length", kind, "warp", "on_loom")
        take_up, high = 1 - math.exp(take.mean), 1 - math.exp(take.quantile(LOW, of="batch"))
        pieces = tuple(self._piece(wanted, piece, across, take_up, *ends[piece.number]) for piece in wanted.pieces)
        count = fulled_belief(journal, warp, "width", kind.warp_yarn)[1] if fulled else None
        last = wanted.pieces[0].moment
        sample = None
        if not fulled and last not in ("on_loom", "off_loom") and (first := pieces[0].width) is not None:
            now, start = self.belief("width", kind, "in_reed", last), across.mm * laid.opens_by
            loom = self.wants.loom
            sample = sample_of(self.memory, kind, last, now, first, start, take_up, retie_mm(loom), self.step.tape)
        return PlannedStretch(
            wanted, across, pieces, self.memory.rests_on("width", kind, "in_reed", last),
            tuple(limits_of(self.wants, wanted, across)), take_up, high, count, sample,
        )  # fmt: skip

    def _ends(self, wanted: WantedStretch, piece: WantedPiece, fulled: bool) -> tuple[Belief, Belief]:
        """What becomes of width and length from the reed and the loom to the state wanted."""
        kind, to = wanted.kind, piece.moment
        if fulled and to not in ("on_loom", "off_loom"):
            journal, warp = self.wants.journal, self.wants.warp
            width, length = (fulled_belief(journal, warp, way, kind.warp_yarn)[0] for way in ("width", "length"))
            return width, length
        return self.belief("width", kind, "in_reed", to), self.belief("length", kind, "on_loom", to)

    def _hem_ratio(self, wanted: WantedStretch, piece: WantedPiece, direction: str) -> float:
        """What a hem sewn before washing is once washed: it shrinks with the cloth."""
        if not piece.hem_first or piece.moment in ("on_loom", "off_loom"):
            return 1.0
        return math.exp(self.belief(direction, wanted.kind, "off_loom", piece.moment).mean)

    def _piece(
        self, wanted: WantedStretch, piece: WantedPiece, across: Across, take_up: float, width: Belief, length: Belief
    ) -> PlannedPiece:
        opened = wanted.laid.opens_by
        hems = tuple(
            eaten * self._hem_ratio(wanted, piece, way)
            for eaten, way in zip(piece.hems_mm, ("width", "length"), strict=True)
        )
        draw = self.belief("width", wanted.kind, "in_reed", "on_loom")
        weave = woven_length(piece, length, self._hem_ratio(wanted, piece, "length"))
        weave = None if weave is None else sums.upward(weave, self.step.weave)
        risk = None
        if weave is not None and piece.moment != "on_loom":
            risk = risk_of(weave, length, hems[1], piece.count, self.step.weave, self.wants.asked.least_mm)
        more = (risk.more_mm or 0.0) * piece.count if risk is not None else 0.0
        return PlannedPiece(
            piece,
            weave,
            None if weave is None else sums.picks_for(weave, wanted.beat.per_m),
            expected(across.mm, draw, 0.0, piece.count),
            None if piece.width_mm is None else expected(across.mm * opened, width, hems[0], piece.count),
            None if weave is None else expected(weave, length, hems[1], piece.count),
            1 - math.exp(width.mean),
            1 - math.exp(length.mean),
            risk,
            sums.warp_for(more, take_up),
        )


def _mean(stretches: Sequence[PlannedStretch], what: str) -> float:
    """A share of the cloth, over stretches by how much is woven of each."""
    weights = [sum((piece.weave_mm or 0.0) * piece.wanted.count for piece in each.pieces) or 1.0 for each in stretches]
    shares: list[float] = [getattr(each, what) for each in stretches]
    return sum(weight * share for weight, share in zip(weights, shares, strict=True)) / sum(weights)


def _lines(wants: Wants, stretches: Sequence[PlannedStretch]) -> Iterator[Line]:
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
                yield Line(name, piece.weave_mm, piece.wanted.count, woven=True)
            if piece.wanted.fringe_mm:
                yield Line("fringes", piece.wanted.fringe_mm, piece.wanted.count)
        gaps = sum(piece.wanted.count for piece in each.pieces if not piece.wanted.fringe_mm) - 1
        if gaps > 0:
            yield Line("gaps between them", gap, gaps)
    yield loom_waste(wants.journal, wants.warp, wants.loom)


def _picks(stretches: Sequence[PlannedStretch]) -> int:
    return sum((piece.picks or 0) * piece.wanted.count for each in stretches for piece in each.pieces)


def _yarns(wants: Wants, stretches: Sequence[PlannedStretch], wind_mm: float) -> tuple[YarnNeed, ...]:
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
