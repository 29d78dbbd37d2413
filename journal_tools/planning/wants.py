"""What a record wants of its warp: pieces of a size, from these yarns, in this weave, on this loom."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Literal

from journal_tools.drafts import named_weave, weave_names
from journal_tools.forecast.closeness import closeness
from journal_tools.forecast.cloth_kind import draft_of, kind_of
from journal_tools.forecast.kind import ClothKind
from journal_tools.ledger.laid import Laid
from journal_tools.planning.fringe import fringe_of
from journal_tools.planning.setts import Told, beat_for, finish_for, sett_for
from journal_tools.planning.steered import fulls
from journal_tools.planning.threaded import Threaded, threaded_by
from journal_tools.problems import nearest
from journal_tools.records import Journal
from journal_tools.records.cloth import SizeAt
from journal_tools.records.hem import Hem
from journal_tools.records.loom import Loom
from journal_tools.records.warp import Planned, Stretch, Warp

WANTED = ("made_up", "washed", "hemmed", "off_loom", "on_loom")
"""The sizes that a plan may want, the one that is believed first."""

TOLD_IN = {"ft": "in", "yd": "in", "m": "cm"}
"""Sizes in feet, yards and metres are told in inches and centimetres."""

NO_PLAN = (
    "nothing is planned here yet. Say what you want under `plan:`, such as `piece: towel`, `count: 4` and"
    " `made_up: 18 x 27`, or with --count and --made-up."
)


class NotPlanned(Exception):
    """There is no plan to be made; the message says what is missing."""


@dataclass(frozen=True)
class Asked:
    """What only this asking wants, and no record holds.

    least_mm: the shortest piece that will do. sample_mm: woven length of a sample that is to be cut
    off and washed first. gap_mm: warp between two pieces. doubled: ends at each side that share the
    dent of their neighbour.
    """

    least_mm: float | None = None
    sample_mm: float | None = None
    gap_mm: float | None = None
    doubled: int = 0


@dataclass(frozen=True)
class WantedPiece:
    """One kind of piece, `count` times. Sizes in mm, None where nobody said.

    state: the state that the sizes are of. moment: the moment of the forecast that this is.
    hems_mm: what hems take from width and length, on the way from the cloth to that size.
    hem_first: sewn before washing. fringe_mm: warp left for the fringes of one piece; fringe_how: how that
    was reckoned, "" for as the record says. number: its place among the plans of its stretch. hem: as it is sewn.
    """

    name: str
    count: int
    width_mm: float | None
    length_mm: float | None
    state: str
    moment: str
    hems_mm: tuple[float, float]
    hem_first: bool
    fringe_mm: float
    number: int
    fringe_how: str = ""
    hem: Hem | None = None

    @property
    def told_state(self) -> str:
        """The state that its sizes are of, in words."""
        if self.state == "washed":
            return "settled" if self.moment == "settled" else "washed"
        return {"made_up": "made up", "on_loom": "on the loom", "off_loom": "off the loom"}.get(self.state, self.state)


@dataclass(frozen=True)
class WantedStretch:
    """What shares threading, sley, weave and weft. laid: its first plan, laid out in the record.

    washed_as: the finish that is meant where the record names none, and whose it was; "" else.
    """

    stretch: Stretch
    laid: Laid
    kind: ClothKind
    pieces: tuple[WantedPiece, ...]
    sett: Told
    beat: Told
    threaded: Threaded | None
    number: int
    washed_as: str = ""

    @property
    def name(self) -> str:
        """What the weaver calls it, "" for the only one."""
        return self.stretch.name or "" if self.stretch is not self.laid.warp else ""

    def fulled(self, journal: Journal) -> bool:
        """Whether the cloth is fulled: by the recipes that its record names, else by the one that is usual."""
        named = self.laid.said("finish") or ((self.kind.finish,) if self.kind.finish else ())
        return fulls(journal, named)

    @property
    def layers(self) -> int:
        """Layers of cloth on the loom at once."""
        return self.laid.warp.layers.number if self.laid.warp.layers else 1


@dataclass(frozen=True)
class Wants:
    """All that is wanted of one warp. unit: "in", "cm" or "mm", for words."""

    journal: Journal
    warp: Warp
    stretches: tuple[WantedStretch, ...]
    loom: Loom | None
    unit: str
    asked: Asked = field(default_factory=Asked)

    @property
    def density_unit(self) -> Literal["in", "cm"]:
        """Whether setts are told to the inch or to the centimetre: as the sett is typed, else like the sizes."""
        stated = self.stretches[0].stretch.sett or self.warp.sett
        if stated is not None:
            return stated.unit
        if self.unit != self.journal.settings.length:
            return "in" if self.unit == "in" else "cm"
        return "in" if self.journal.settings.units.density == "in" else "cm"


def wants_of(journal: Journal, warp: Warp, asked: Asked | None = None) -> Wants:
    """What a record wants. Raises NotPlanned where it has no plan, or one without a size or a sett."""
    if warp.plan and len([each for each in warp.stretches if not each.plan]) > 1:
        names = ", ".join(each.name or "one without a name" for each in warp.stretches)
        raise NotPlanned(f"which stretch is the plan of? Put `plan:` below it: {names}.")
    stretches = tuple(
        _stretch(journal, warp, number, stretch)
        for number, stretch in enumerate(warp.woven())
        if stretch.plan or (stretch is not warp and warp.plan)
    )
    if not stretches:
        raise NotPlanned(NO_PLAN)
    pieces = [piece for each in stretches for piece in each.pieces]
    if any(piece.width_mm for piece in pieces) and not any(piece.length_mm for piece in pieces):
        raise NotPlanned("how long is it to be? A size is width x length, such as `made_up: 18 x 27`.")
    loom = journal.looms.get(warp.loom) if warp.loom else None
    return Wants(journal, warp, stretches, loom, unit_of(journal, warp), asked or Asked())


def unit_of(journal: Journal, warp: Warp) -> str:
    """The unit to tell a plan in: the one that all wanted sizes are typed in, else the record's or the journal's."""
    typed = {
        length.unit
        for stretch in (warp, *warp.stretches)
        for plan in stretch.plan
        if (at := _wanted_size(plan)) is not None and at.size is not None
        for length in (*at.size.widths, *([at.size.length] if at.size.length else []))
    }
    known = {TOLD_IN.get(unit, unit) for unit in typed}
    return known.pop() if len(known) == 1 else warp.units or journal.settings.length


def _wanted_size(plan: Planned) -> SizeAt | None:
    """The size that a plan is made from."""
    state = next((state for state in WANTED if getattr(plan, state)), None)
    said: SizeAt | tuple[SizeAt, ...] | None = getattr(plan, state) if state is not None else None
    return said[-1] if isinstance(said, tuple) else said


def _stretch(journal: Journal, warp: Warp, number: int, stretch: Stretch) -> WantedStretch:
    plans = stretch.plan or warp.plan
    laid = [lay_planned(warp, stretch, plan) for plan in plans]
    pieces = tuple(_pieces(laid, plans))
    first = laid[0]
    loom = journal.looms.get(warp.loom) if warp.loom else None
    kind = kind_of(journal, first)
    recipe, washed_as = finish_for(journal, first, kind)
    kind = dataclasses.replace(kind, finish=recipe)
    sett = sett_for(journal, first, kind)
    if sett is None:
        said = first.said("weave") or ""
        near = nearest(said, weave_names()) if said and named_weave(said) is None else None
        meant = f'the weave was read as "{said}": is it {near}? Else, ' if near else ""
        raise NotPlanned(
            f"{meant}how close is it to be set? Say `sett: 20/in`, or `reed:` and `sley:`; or give the yarn's"
            " record its number or its wraps, and the warp its weave."
        )
    if kind.closeness is None:  # the sett is as it was in the past, or by a guide
        layers = warp.layers.number if warp.layers else 1
        yarn = journal.yarns.get(kind.warp_yarn)
        close = closeness(float(sett.per_m) / layers, yarn, kind.weave, draft_of(journal, first))
        kind = dataclasses.replace(kind, closeness=close)
    return WantedStretch(
        stretch,
        first,
        kind,
        pieces,
        sett,
        beat_for(journal, first, kind, sett),
        threaded_by(journal, first, loom),
        number,
        washed_as,
    )


def lay_planned(warp: Warp, stretch: Stretch, plan: Planned) -> Laid:
    """A plan laid out like a piece, so that what it does not say is looked for above it."""
    above = (stretch,) if stretch is warp else (stretch, warp)
    return Laid(warp, stretch, plan.piece or "", 1, above, plan, plan.piece or "", planned=True)


def _pieces(laid: Sequence[Laid], plans: Sequence[Planned]) -> Iterator[WantedPiece]:
    for number, (each, plan) in enumerate(zip(laid, plans, strict=True)):
        yield _piece(each, plan, number)


def _piece(laid: Laid, plan: Planned, number: int) -> WantedPiece:
    hem: Hem | None = laid.said("hem")
    hem = hem if hem is not None and hem.edges != "none" else None
    hem_first = hem is not None and hem.after_wash == 0
    state = next((state for state in WANTED if getattr(plan, state)), None)
    width = length = None
    if state is not None:
        said = getattr(plan, state)
        size = (said[-1] if state == "washed" else said).size
        width = _mm(size.width_mm) if size.widths else None
        length = _mm(size.length.mm) if size.length else None
    fringe_mm, fringe_how = fringe_of(laid)
    hemmed = state == "made_up" or state == "hemmed" or (state == "washed" and hem_first)
    return WantedPiece(
        plan.piece or "",
        plan.count.number if plan.count else 1,
        width,
        length,
        state or "on_loom",
        _moment(laid, plan, state or "on_loom", hem_first),
        hem.eats_mm if hem is not None and hemmed else (0.0, 0.0),
        hem_first,
        fringe_mm,
        number,
        fringe_how,
        hem if hemmed else None,
    )


def _mm(exact: Fraction | None) -> float | None:
    return None if exact is None else float(exact)


def _moment(laid: Laid, plan: Planned, state: str, hem_first: bool) -> str:
    """Where in the forecast's chain a planned size stands; a made-up one after all the washes named."""
    if state in ("on_loom", "off_loom"):
        return state
    if state == "hemmed" and hem_first:
        return "off_loom"
    named = laid.said("finish") or ()
    if state == "washed":
        last = plan.washed[-1].wash or 1
        return moment_after(last)
    return moment_after(max(1, len(named)))


def moment_after(wash: int) -> str:
    """The forecast's moment after a wash: from the third on the cloth is settled."""
    return f"washed {wash}" if wash < 3 else "settled"
