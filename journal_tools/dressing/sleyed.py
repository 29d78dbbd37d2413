"""The sley order in its reed: dents, the sett that it truly gives and the width that it takes."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import groupby

from journal_tools.ledger.ends import dents_for
from journal_tools.planning.arithmetic import ends_in
from journal_tools.planning.sleying import sleyings
from journal_tools.quantities import Density
from journal_tools.records import Stretch, Warp
from journal_tools.records.loom import Loom


@dataclass(frozen=True)
class SleyedBand:
    """Ends side by side with one order. name: "" where there is only one band.

    reed: dents to the metre. order: ends in each dent. dents: how many it takes. last: ends in the
    last dent, which may not be full.
    """

    name: str
    ends: int
    reed: Fraction
    order: tuple[int, ...]

    @property
    def dents(self) -> int:
        """Dents that it takes."""
        return dents_for(self.ends, self.order)

    @property
    def last(self) -> int:
        """Ends in its last dent."""
        return self.ends - ends_in(self.dents - 1, self.order) if self.dents else 0

    @property
    def full(self) -> bool:
        """Whether the last dent holds what the order gives it."""
        return self.last == self.order[(self.dents - 1) % len(self.order)]

    @property
    def sett(self) -> Fraction:
        """Ends to the metre: the reed times the mean ends in a dent."""
        return self.reed * Fraction(sum(self.order), len(self.order))

    @property
    def mm(self) -> Fraction:
        """Its width in the reed."""
        return self.dents * 1000 / self.reed

    @property
    def runs(self) -> tuple[DentRun, ...]:
        """One round of the order: how many dents one after the other hold so many ends."""
        return tuple(DentRun(len(list(same)), held) for held, same in groupby(self.order))

    @property
    def held(self) -> tuple[int, ...]:
        """The ends of every dent that it takes, first to last."""
        rounds = -(-self.dents // len(self.order))
        dents = list((self.order * rounds)[: self.dents])
        if dents:
            dents[-1] = self.last
        return tuple(dents)


@dataclass(frozen=True)
class DentRun:
    """Dents one after the other that hold as many ends each; 0 where they are left empty."""

    dents: int
    each: int

    @property
    def ends(self) -> int:
        """Ends in all of them."""
        return self.dents * self.each


@dataclass(frozen=True)
class Sleyed:
    """A warp in the reed.

    reed: as typed. floating: dents at the edges, both together, for floating selvedges.
    layers: layers of cloth that share the sett. found: whether the order was worked out here, from
    the sett that the record says. said: the sett that the record says, None where it says none.
    said_mm: the width that it says. by_draft: whether the order is the draft's own, which crams and spaces.
    threaded: ends of one repeat of the threading, 0 where nobody knows. set_aside: the ends in dents of
    a draft where the warp's own sley stands. wanted: ends with heddles, which bands may not add up to; 0
    where nobody knows.
    """

    reed: Density
    bands: tuple[SleyedBand, ...]
    floating: int
    layers: int
    found: bool
    said: Density | None
    said_mm: Fraction | None
    by_draft: bool = False
    threaded: int = 0
    set_aside: tuple[int, ...] = ()
    wanted: int = 0

    @property
    def ends(self) -> int:
        """Ends that the dents hold, floating selvedges not among them."""
        return sum(band.ends for band in self.bands)

    @property
    def all_held(self) -> bool:
        """Whether the bands hold as many ends as have heddles."""
        return self.ends == self.wanted or not self.wanted

    @property
    def crammed(self) -> bool:
        """Whether the draft crams some dents and spaces others."""
        return self.by_draft and len(self.bands[0].runs) > 1

    @property
    def keeps_step(self) -> bool:
        """Whether the draft's ends in dents and its threading's repeat come out together, one a number of the other."""
        less, more = sorted((sum(self.bands[0].order), self.threaded))
        return not self.by_draft or not less or more % less == 0

    @property
    def dents(self) -> int:
        """Dents in all, with those of floating selvedges."""
        return sum(band.dents for band in self.bands) + self.floating

    @property
    def mm(self) -> Fraction:
        """Width in the reed: dents over dents to the metre."""
        return sum((band.mm for band in self.bands), Fraction(0)) + self.floating * 1000 / self.reed.per_m

    @property
    def sett(self) -> Fraction:
        """Ends to the metre that the reed truly gives, all layers together; the mean of several bands."""
        if len(self.bands) == 1:
            return self.bands[0].sett
        return self.ends * 1000 / sum((band.mm for band in self.bands), Fraction(0))


def sleyed_of(
    warp: Warp,
    stretch: Stretch,
    ends: int,
    floating: int,
    loom: Loom | None,
    drafted: tuple[int, ...] = (),
    threaded: int = 0,
) -> Sleyed | None:
    """How a stretch is sleyed; None where no reed is known, or neither a sley nor a sett.

    ends: those with heddles. floating: ends without, each in a dent of its own outside of the rest
    (common practice, no source). drafted: the ends in each dent that the draft says, for a crammed and
    spaced warp; a sley of the warp's own goes before. threaded: ends of the threading's repeat.
    """
    said = _said_sett(warp, stretch)
    reed, own = _reed(warp, stretch), stretch.sley or warp.sley
    bands = stretch.across or warp.across or {}
    by_draft = not bands and not own and bool(drafted)
    order = drafted if by_draft else own
    found = False
    if not bands and not order and said is not None:
        reeds = (reed,) if reed is not None else loom.reeds if loom is not None else ()
        best = next(iter(sleyings(float(said.per_m), [float(each.per_m) for each in reeds])), None)
        if best is not None:
            reed, order, found = next(each for each in reeds if float(each.per_m) == best.dents_per_m), best.order, True
    if reed is None or ends <= 0 or not (order or bands):
        return None
    laid = tuple(_bands(stretch, warp, reed, order or ()))
    if not laid and not order:
        return None
    laid = laid or (SleyedBand("", ends, reed.per_m, order or ()),)
    layers = warp.layers.number if warp.layers else 1
    aside = drafted if drafted and not by_draft else ()
    said_mm = _said_mm(stretch, warp, reed)
    return Sleyed(reed, laid, floating, layers, found, said, said_mm, by_draft, threaded, aside, ends)


def sley_lacks(warp: Warp, stretch: Stretch, drafted: tuple[int, ...]) -> tuple[str, ...]:
    """What the record must say before a sleying can be told: "reed", "sley", or both; none where both are there."""
    order = stretch.sley or warp.sley or stretch.across or warp.across or drafted or _said_sett(warp, stretch)
    return (*(() if _reed(warp, stretch) else ("reed",)), *(() if order else ("sley",)))


def _said_sett(warp: Warp, stretch: Stretch) -> Density | None:
    return stretch.sett or warp.sett or next((wound.sett for wound in warp.warp if wound.sett), None)


def _reed(warp: Warp, stretch: Stretch) -> Density | None:
    banded = (stretch.across or warp.across or {}).values()
    return stretch.reed or warp.reed or next((band.reed for band in banded if band.reed), None)


def _bands(stretch: Stretch, warp: Warp, reed: Density, order: tuple[int, ...]) -> Iterator[SleyedBand]:
    for name, band in (stretch.across or warp.across or {}).items():
        own = band.sley or order
        if band.ends is not None and own and any(own):
            yield SleyedBand(name, band.ends.number, (band.reed or reed).per_m, own)


def _said_mm(stretch: Stretch, warp: Warp, reed: Density) -> Fraction | None:
    width = stretch.in_reed or warp.in_reed
    if width is None:
        return None
    if width.length is not None:
        opened = width.fold == "opened" and warp.layers is not None
        return width.length.mm / (warp.layers.number if opened and warp.layers else 1)
    return width.dents.number * 1000 / reed.per_m if width.dents is not None else None
