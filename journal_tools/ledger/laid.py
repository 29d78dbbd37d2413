"""Pieces laid out: each with all that its record says of it, itself or by its stretch or its warp."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from journal_tools.ledger.state import OFF_LOOM, ON_LOOM, State, fulled, hemmed, washed
from journal_tools.quantities import CountOf, Density, Length, TimesLength
from journal_tools.records.cloth import Cloth, ReedWidth, SizeAt
from journal_tools.records.hem import Fringe, Hem
from journal_tools.records.learn import kind_of
from journal_tools.records.model import Model
from journal_tools.records.warp import Band, BandSizes, Piece, Planned, Stretch, Warp


@dataclass(frozen=True)
class Laid:
    """One piece, or one band of it, or a plan for some.

    levels: where values are looked for, nearest first. number: how many pieces it stands for.
    sizes: what it says itself of its sizes, which for a band or a plan is all there is.
    piece: the piece's own name. band_name: the band's, "" for a piece that has none.
    """

    warp: Warp
    stretch: Stretch
    name: str
    number: int
    levels: tuple[Cloth, ...]
    sizes: Cloth | BandSizes | Planned
    piece: str = ""
    band: Band | None = None
    band_name: str = ""
    planned: bool = False

    def said(self, key: str) -> Any:
        """The nearest value for a key; None or an empty tuple when nobody says it."""
        nothing = None
        for level in self.levels:
            value = getattr(level, key)
            if value is not None and value != ():
                return value
            nothing = value
        return nothing

    def _size(self, key: str) -> Any:
        own = getattr(self.sizes, key, None)
        if own is not None and own != ():
            return own
        return self.said(key) if isinstance(self.sizes, Cloth) else own

    @property
    def reed_width(self) -> ReedWidth | None:
        """Width in the reed; a band's own, a plan's own, else the nearest."""
        own: ReedWidth | None = getattr(self.sizes, "in_reed", None)
        if own is not None or self.planned:
            return own
        if self.band is not None:
            return self.band.in_reed
        found: ReedWidth | None = self.said("in_reed")
        return found

    @property
    def reed(self) -> Density | None:
        """Dents to the metre of the reed, as typed."""
        if self.band is not None and self.band.reed is not None:
            return self.band.reed
        found: Density | None = self.said("reed")
        return found

    @property
    def picks(self) -> CountOf | None:
        """Picks in one piece."""
        found: CountOf | None = self.said("picks")
        return found

    @property
    def hem(self) -> Hem | None:
        """The hem, None when there is none or nobody says.

        A piece with a size `hemmed:` and no word about its hem may be hemmed on any edge, so that
        nothing from before the hem is compared with what came after it.
        """
        found: Hem | None = self.said("hem")
        if found is None and self._size("hemmed") is not None:
            return Hem(edges="all four")
        return found if found is not None and found.edges != "none" else None

    @property
    def fringe_mm(self) -> float:
        """Warp left for the fringe of one piece, in mm."""
        found: Fringe | None = self.said("fringe")
        allowed: TimesLength | None = found.allowed if found else None
        return float(allowed.mm) if allowed else 0.0

    @property
    def opens_by(self) -> int:
        """How many loom widths the opened cloth is wide: 1 unless it opens."""
        return self.warp.layers.number if self.warp.opens and self.warp.layers else 1

    @property
    def reed_mm(self) -> float | None:
        """Width in the reed as it stands on the loom, folded where the cloth opens; None when nobody says."""
        reed = self.reed_width
        if reed is None:
            return None
        if reed.length is not None:
            return float(reed.length.mm) / (self.opens_by if reed.fold == "opened" else 1)
        if reed.dents is None or self.reed is None:
            return None
        return float(reed.dents.number / self.reed.per_m * 1000)

    @property
    def steered(self) -> bool:
        """Whether it was fulled, so that its last loss was a decision."""
        return bool(self.said("fulling"))

    @property
    def hemmed_after(self) -> int | None:
        """The number of washes before the hem was sewn; None when there is no hem or nobody says."""
        if self.hem is None:
            return None
        if self.hem.after_wash is not None:
            return self.hem.after_wash
        said = next((level for level in (self.sizes, *self.levels) if "hemmed" in level.lines), None)
        if said is None or (said is not self.sizes and not isinstance(self.sizes, Cloth)):
            return None
        order = list(said.lines)
        before = [key for key in order[: order.index("hemmed")] if key.startswith("washed")]
        return max((wash for key in before for wash in _washes_under(key, said, self._size("washed"))), default=0)

    def measured(self) -> Iterator[tuple[State, SizeAt]]:
        """Every size after the reed, in the order of the states."""
        found: list[tuple[State, SizeAt]] = []
        for state in ("on_loom", "off_loom"):
            if (at := self._size(state)) is not None:
                found.append((_STATES[state], at))
        if (at := self._size("hemmed")) is not None:
            found.append((hemmed(self.hemmed_after or 0), at))
        if isinstance(self.sizes, Cloth):
            found += [(fulled(check.minutes), check.at) for check in self.said("fulling") or ()]
        washes: tuple[SizeAt, ...] = self._size("washed") or ()
        alone = len(washes) == 1 and washes[0].wash in (None, 1)
        found += [(washed(None if alone else at.wash or 1), at) for at in washes]
        yield from sorted(found, key=lambda pair: pair[0])

    @property
    def made_up(self) -> SizeAt | None:
        """What the owner measures."""
        found: SizeAt | None = self._size("made_up")
        return found

    @property
    def ends(self) -> int | None:
        """Ends across the piece, floating selvedges among them; None when nobody says."""
        if self.band is not None:
            return self.band.ends.number if self.band.ends else None
        found = self.said("ends")
        if found is not None:
            return int(found.number)
        counted = [ends for wound in self.warp.warp if (ends := wound.end_count) is not None]
        return sum(counted) if counted else None

    def readings(self) -> Iterator[Length]:
        """Every length of it that was written down."""
        if (reed := self.reed_width) is not None and reed.length is not None:
            yield reed.length
        made_up = [(OFF_LOOM, self.made_up)] if self.made_up is not None else []
        for _, at in [*self.measured(), *made_up]:
            if at.size is not None:
                yield from at.size.widths
                if at.size.length is not None:
                    yield at.size.length


_STATES = {"on_loom": ON_LOOM, "off_loom": OFF_LOOM}


def _washes_under(key: str, said: Model, sizes: Sequence[SizeAt]) -> list[int]:
    """The washes that a key speaks of: `washed 2` of one, `washed` of all that no key of their own names."""
    if key != "washed":
        return [int(key.removeprefix("washed"))]
    named = {int(each.removeprefix("washed")) for each in said.lines if each.startswith("washed ")}
    return [at.wash or 1 for at in sizes if (at.wash or 1) not in named]


def lay_out(warp: Warp) -> tuple[Laid, ...]:
    """Every piece of a warp in the order woven; a piece with bands is one for each band."""
    return tuple(laid for stretch in warp.woven() for laid in _lay_stretch(warp, stretch))


def _lay_stretch(warp: Warp, stretch: Stretch) -> Iterator[Laid]:
    above: tuple[Cloth, ...] = (stretch,) if stretch is warp else (stretch, warp)
    if not stretch.pieces:
        number = stretch.count.number if stretch.count else 1
        yield Laid(warp, stretch, "", number, above, stretch)
    for order, piece in enumerate(stretch.pieces, start=1):
        name = piece.name or (f"piece {order}" if len(stretch.pieces) > 1 else "")
        yield from _lay_piece(Laid(warp, stretch, name, piece.number, (piece, *above), piece, piece.name or ""), piece)


def _lay_piece(laid: Laid, piece: Piece) -> Iterator[Laid]:
    if not piece.across:
        yield laid
        return
    known = dict(laid.warp.across or {}) | dict(laid.stretch.across or {})
    for band, sizes in piece.across.items():
        name = f"{laid.name}, {band}" if laid.name else band
        own = known.get(band, Band())
        yield Laid(laid.warp, laid.stretch, name, laid.number, laid.levels, sizes, laid.piece, own, band)


def lay_plan(laid: Laid) -> Laid | None:
    """The plan that this piece was woven to, laid out; None when there is none.

    A plan is tied to pieces by name: "napkin" is the plan of "napkin 1" and of "napkins 2-6".
    """
    plans = laid.stretch.plan or laid.warp.plan
    found = next((plan for plan in plans if plan.piece and kind_of(plan.piece) == kind_of(laid.piece)), None)
    if found is None and len(plans) == 1 and (not plans[0].piece or not laid.piece):
        found = plans[0]
    if found is None:
        return None
    name = found.piece or ""
    return Laid(laid.warp, laid.stretch, name, 1, laid.levels, found, name, laid.band, laid.band_name, planned=True)
