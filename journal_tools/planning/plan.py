"""A plan: from the sizes wanted back to the reed, the loom and the warp, and forward to what will come of it."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from journal_tools.forecast.kind import ClothKind
from journal_tools.forecast.observed import Observed
from journal_tools.ledger import Ledger
from journal_tools.planning import arithmetic as sums
from journal_tools.planning.across import Across, across_of, cloth_width, reed_for
from journal_tools.planning.allowances import SAMPLE, STEPS
from journal_tools.planning.along import LOW, Expected, expected, risk_of, woven_length
from journal_tools.planning.knowing import Belief, Knows
from journal_tools.planning.limits import limits_of
from journal_tools.planning.material import lines_of, picks_of, yarns_of
from journal_tools.planning.pace import hours_for
from journal_tools.planning.planned import Plan, PlannedPiece, PlannedStretch
from journal_tools.planning.sample import Sample, length_doubt, sample_of
from journal_tools.planning.steered import fulled_belief, minutes_to
from journal_tools.planning.wants import Asked, WantedPiece, WantedStretch, Wants, wants_of
from journal_tools.planning.warp_length import retie_mm, warp_length
from journal_tools.records import Journal
from journal_tools.records.warp import Warp

__all__ = ["Plan", "plan_of"]


def plan_of(
    journal: Journal,
    memory: Knows,
    warp: Warp,
    asked: Asked | None = None,
    seen: Mapping[str, Sequence[Observed]] | None = None,
    ledgers: Mapping[str, Ledger] | None = None,
) -> Plan:
    """Plan a warp from its record.

    seen: pieces of the very warp that were measured already, by direction, such as a washed sample.
    ledgers: of warps, by name, where they are at hand; only fulled cloth asks for them.
    Raises NotPlanned where the record does not say enough.
    """
    wants = wants_of(journal, warp, asked)
    planner = _Planner(wants, memory, seen or {}, ledgers)
    stretches = tuple(planner.stretch(each) for each in wants.stretches)
    lines = tuple(lines_of(wants, stretches))
    step = STEPS[wants.unit].wind
    length = warp_length(lines, _mean(stretches, "take_up"), step)
    return Plan(
        wants,
        stretches,
        length,
        warp_length(lines, _mean(stretches, "take_up_high"), step).wind_mm,
        yarns_of(wants, stretches, length.wind_mm),
        hours_for(journal, max(each.across.ends for each in stretches), picks_of(stretches), warp.name),
        max((len(pieces) for pieces in planner.seen.values()), default=0),
        any(_was_washed(piece) for pieces in planner.seen.values() for piece in pieces),
        tuple(_left_out(wants)),
    )


def _was_washed(piece: Observed) -> bool:
    return any(reading.moment in ("washed 1", "washed 2", "settled") for reading in piece.readings)


def _left_out(wants: Wants) -> Iterator[str]:
    """Stretches without a plan, of a record that has several."""
    planned = {each.number for each in wants.stretches}
    for number, stretch in enumerate(wants.warp.woven()):
        if number not in planned:
            yield stretch.name or f"stretch {number + 1}"


class _Planner:
    """Plans stretch by stretch, asking the memory what the cloth will do."""

    def __init__(
        self,
        wants: Wants,
        memory: Knows,
        seen: Mapping[str, Sequence[Observed]],
        ledgers: Mapping[str, Ledger] | None,
    ) -> None:
        self.wants, self.memory, self.seen, self.ledgers = wants, memory, seen, ledgers
        self.step = STEPS[wants.unit]

    def belief(self, direction: str, kind: ClothKind, first: str, last: str, blind: bool = False) -> Belief:
        """Of this warp, with what was measured of it; blind: as if nothing had been."""
        return self.memory.belief(direction, kind, first, last, seen=() if blind else self.seen.get(direction, ()))

    def stretch(self, wanted: WantedStretch) -> PlannedStretch:
        """One stretch: as wide as its widest piece wants."""
        laid, kind = wanted.laid, wanted.kind
        fulled = wanted.fulled(self.wants.journal)
        ends = {piece.number: self._ends(wanted, piece, fulled) for piece in wanted.pieces}
        wide = {
            piece.number: reed_for(cloth, ends[piece.number][0], laid.opens_by)
            for piece in wanted.pieces
            if (cloth := cloth_width(piece, self._hem_ratio(wanted, piece, "width"))) is not None
        }
        across = across_of(self.wants, wanted, max(wide.values(), default=None), any(self.seen.values()))
        take = self.belief("length", kind, "warp", "on_loom")
        take_up, high = 1 - math.exp(take.mean), 1 - math.exp(take.quantile(LOW, of="batch"))
        pieces = tuple(
            replace(
                self._piece(wanted, piece, across, take_up, *ends[piece.number]), reed_mm=wide.get(piece.number)
            )
            for piece in wanted.pieces
        )
        count = self._fulled("width", kind)[1] if fulled else None
        last = wanted.pieces[0].moment
        sample = None if fulled else self._sample(wanted, pieces[0], across, take_up)
        return PlannedStretch(
            wanted, across, pieces, self.memory.rests_on("width", kind, "in_reed", last),
            () if across.sleyed else tuple(limits_of(self.wants, wanted, across, pieces)), take_up, high, count, sample,
        )  # fmt: skip

    def _sample(self, wanted: WantedStretch, piece: PlannedPiece, across: Across, take_up: float) -> Sample | None:
        """What a sample would say of the first kind of piece; None where its width needs no wash."""
        kind, last = wanted.kind, wanted.pieces[0].moment
        if last in ("on_loom", "off_loom") or piece.width is None:
            return None
        woven, tape = self.wants.asked.sample_mm or SAMPLE, self.step.tape
        now, start = self.belief("width", kind, "in_reed", last), across.mm * wanted.laid.opens_by
        retie = retie_mm(self.wants.loom)
        sample = sample_of(self.memory, kind, last, now, piece.width, start, take_up, retie, tape, woven)
        if piece.length is None:
            return sample
        now = self.belief("length", kind, "on_loom", last)
        return replace(sample, length=length_doubt(self.memory, kind, last, now, piece.length, tape, woven))

    def _ends(self, wanted: WantedStretch, piece: WantedPiece, fulled: bool) -> tuple[Belief, Belief]:
        """What becomes of width and length from the reed and the loom to the state wanted."""
        kind, to = wanted.kind, piece.moment
        if fulled and to not in ("on_loom", "off_loom"):
            return self._fulled("width", kind)[0], self._fulled("length", kind)[0]
        return self.belief("width", kind, "in_reed", to), self.belief("length", kind, "on_loom", to)

    def _fulled(self, direction: str, kind: ClothKind) -> tuple[Belief, int]:
        """What past fullings came to, and how many warps that is."""
        return fulled_belief(self.wants.journal, self.wants.warp, direction, kind.warp_yarn, self.ledgers)

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
            hems[1] / math.exp(length.mean),
            self._blind(wanted, piece, across, weave, hems),
            self._minutes(wanted, piece, across.mm * opened, hems[0]),
            hems[0],
        )

    def _minutes(
        self, wanted: WantedStretch, piece: WantedPiece, reed_mm: float, hems_mm: float
    ) -> tuple[float, float, float] | None:
        """Minutes of fulling; None where it is not fulled, or is as narrow as that when only scoured."""
        journal, yarn = self.wants.journal, wanted.kind.warp_yarn
        fulled = wanted.fulled(journal) and piece.moment not in ("on_loom", "off_loom")
        if not fulled or piece.width_mm is None:
            return None
        # What the forecast learns of fulled cloth ends at its scouring, which is its first wash there.
        scoured = reed_mm * math.exp(self.belief("width", wanted.kind, "in_reed", "washed 1").mean)
        return minutes_to(journal, self.wants.warp, yarn, scoured, piece.width_mm + hems_mm, self.ledgers)

    def _blind(
        self, wanted: WantedStretch, piece: WantedPiece, across: Across, weave: float | None, hems: tuple[float, ...]
    ) -> tuple[Expected | None, Expected | None] | None:
        """What the other warps alone would say of this piece; None where nothing of this one was measured."""
        fulled = wanted.fulled(self.wants.journal)
        if not any(self.seen.values()) or fulled or piece.moment == "on_loom":
            return None
        width = self.belief("width", wanted.kind, "in_reed", piece.moment, blind=True)
        length = self.belief("length", wanted.kind, "on_loom", piece.moment, blind=True)
        start = across.mm * wanted.laid.opens_by
        return (
            None if piece.width_mm is None else expected(start, width, hems[0], piece.count),
            None if weave is None else expected(weave, length, hems[1], piece.count),
        )


def _mean(stretches: Sequence[PlannedStretch], what: str) -> float:
    """A share of the cloth, over stretches by how much is woven of each."""
    weights = [sum((piece.weave_mm or 0.0) * piece.wanted.count for piece in each.pieces) or 1.0 for each in stretches]
    shares: list[float] = [getattr(each, what) for each in stretches]
    return sum(weight * share for weight, share in zip(weights, shares, strict=True)) / sum(weights)
