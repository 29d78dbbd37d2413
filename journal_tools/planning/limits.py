"""What the loom and the yarn cannot do, said before the warp is wound."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from journal_tools.drafts import weave_names
from journal_tools.forecast.closeness import closeness
from journal_tools.forecast.cloth_kind import draft_of, weave_name
from journal_tools.planning import arithmetic as sums
from journal_tools.planning.across import Across
from journal_tools.planning.allowances import SETT_OFF, STEPS
from journal_tools.planning.looms import listed, that_take
from journal_tools.planning.planned_piece import PlannedPiece
from journal_tools.planning.threaded import loom_heddles
from journal_tools.planning.wants import WantedStretch, Wants
from journal_tools.problems import nearest
from journal_tools.quantities import show_density, show_length
from journal_tools.records.loom import Loom


@dataclass(frozen=True)
class Limit:
    """One thing that will not go as wanted. slug: its kind. words: a sentence or two."""

    slug: str
    words: str

    @property
    def bars(self) -> bool:
        """Whether the warp cannot be woven so at all."""
        return self.slug in ("wider-than-loom", "more-shafts-than-loom", "closer-than-yarn")


def limits_of(
    wants: Wants, stretch: WantedStretch, across: Across, pieces: Sequence[PlannedPiece] = ()
) -> Iterator[Limit]:
    """Width, shafts, treadles, heddles and reed of one stretch against its loom; its yarn, weave and widths."""
    loom = wants.loom
    if loom is not None:
        yield from _of_loom(wants, loom, stretch, across, pieces)
    elif wants.warp.loom:
        looms = f" Looms here: {listed(wants.journal)}." if wants.journal.looms else ""
        yield Limit("no-such-loom", f"There is no record of a loom called {wants.warp.loom}: its width, reeds and"
                    f" heddles are not known.{looms}")  # fmt: skip
    yield from _sett(wants, stretch, across, f"reed of {loom.heading}" if loom is not None and loom.reeds else "reed")
    yield from _closeness(wants, stretch)
    yield from _weave(wants, stretch)
    yield from _widths(wants, stretch, across, pieces)


def _of_loom(
    wants: Wants, loom: Loom, stretch: WantedStretch, across: Across, pieces: Sequence[PlannedPiece]
) -> Iterator[Limit]:
    threaded = stretch.threaded
    if loom.width is not None and across.mm > float(loom.width.mm) + 0.001:
        wide, over, has_wide = (
            _size(wants, mm) for mm in (across.mm, across.mm - float(loom.width.mm), float(loom.width.mm))
        )
        said = f"{wide} in the reed is {over} wider than {loom.heading} ({has_wide})."
        yield Limit("wider-than-loom", said + _instead(wants, loom, stretch, across, pieces))
    if threaded is not None and loom.shafts is not None and threaded.shafts > loom.shafts.number:
        has = f"{loom.heading} has {loom.shafts.number}"
        yield Limit("more-shafts-than-loom", f"{_capital(threaded.name)} takes {threaded.shafts} shafts, and {has}.")
    if threaded is not None and loom.treadles is not None and threaded.treadles > loom.treadles.number:
        has = f"{loom.heading} has {loom.treadles.number}; some must be pressed together"
        ties = f"{_capital(threaded.name)} ties {threaded.treadles} treadles"
        yield Limit("more-treadles-than-loom", f"{ties}, and {has}.")
    if threaded is not None:
        spread = [sorted(end) for end in threaded.spread]
        for shaft in range(1, max((max(end, default=0) for end in spread), default=0) + 1):
            wanted = sums.heddles(across.heddled, spread, shaft)
            has_heddles = loom_heddles(loom, shaft)
            if has_heddles is not None and wanted > has_heddles:
                yield Limit(
                    "too-few-heddles",
                    f"Shaft {shaft} takes {wanted} heddles and {loom.heading} has {has_heddles} on it:"
                    f" {wanted - has_heddles} more to put on.",
                )
    if not across.known_reed:
        reed = show_density(across.sleying.dents_per_m, wants.density_unit)
        yield Limit("no-such-reed", f"{loom.heading} has no {reed} reed in its record.")


def _instead(
    wants: Wants, loom: Loom, stretch: WantedStretch, across: Across, pieces: Sequence[PlannedPiece]
) -> str:
    """The widest that the loom does take, and the other looms that take what is wanted."""
    said = ""
    assert loom.width is not None
    widest = max(pieces, key=lambda each: each.reed_mm or 0.0, default=None)
    dents = int(float(loom.width.mm) * across.sleying.dents_per_m / 1000 + sums.NEAR)
    if widest is not None and widest.width is not None:
        kept = (widest.width.mm + widest.hems_width_mm) / across.mm
        fits = sums.width_of(dents, across.sleying.dents_per_m) * kept - widest.hems_width_mm
        fits = sums.downward(fits, STEPS[wants.unit].tape)
        if fits > 0:
            said = f" The widest that fits there comes to {_size(wants, fits)} {widest.wanted.told_state}."
    shafts = stretch.threaded.shafts if stretch.threaded is not None else 0
    others = that_take(wants.journal, loom, across.mm, shafts)
    return said + (f" {_and(others)} would take it." if others else "")


def _sett(wants: Wants, stretch: WantedStretch, across: Across, reed: str) -> Iterator[Limit]:
    off = across.sleying.off
    if abs(off) > SETT_OFF:
        true, wanted = (show_density(per_m, wants.density_unit) for per_m in (across.sleying.sett, stretch.sett.per_m))
        said = "closer" if off > 0 else "more open"
        stated = stretch.laid.reed is not None and not across.others
        why = "in the reed that the record names" if stated else f"no {reed} comes nearer"
        share = f"{abs(off) * 100:.0f} %"
        yield Limit("sett-off", f"The true sett is {true}, {share} {said} than the {wanted} wanted: {why}.")


def _closeness(wants: Wants, stretch: WantedStretch) -> Iterator[Limit]:
    """A sett beyond the greatest of the yarn in the weave."""
    yarn = wants.journal.yarns.get(stretch.kind.warp_yarn)
    close = closeness(
        stretch.sett.per_m / stretch.layers, yarn, stretch.kind.weave, draft_of(wants.journal, stretch.laid)
    )
    if close is not None and close > 1:
        sett = show_density(stretch.sett.per_m, wants.density_unit)
        said = f"{sett} is closer than the yarn can lie in {stretch.kind.weave or 'this weave'}, by Ashenhurst’s rule."
        yield Limit("closer-than-yarn", said)


def _weave(wants: Wants, stretch: WantedStretch) -> Iterator[Limit]:
    """A weave whose name is none that is known, neither by itself nor from other warps."""
    weave, accepted = stretch.laid.said("weave"), (*wants.warp.accepted, *stretch.stretch.accepted)
    if not weave or stretch.threaded is not None or "no-such-weave" in accepted:
        return
    others = {
        weave_name(level.weave): level.weave
        for warp in wants.journal.warps.values()
        if warp.name != wants.warp.name
        for level in (warp, *warp.stretches)
        if level.weave
    }
    if weave_name(weave) in others:
        return
    near = nearest(weave, (*weave_names(), *others.values()))
    known = f"is it {near}?" if near else f"known by name are {', '.join(weave_names())}, and what your warps have."
    yield Limit(
        "no-such-weave",
        f'The weave was read as "{weave}", which is none that is known: {known} Its shafts, heddles and closest sett'
        " cannot be told; a draft would tell them.",
    )


def _widths(wants: Wants, stretch: WantedStretch, across: Across, pieces: Sequence[PlannedPiece]) -> Iterator[Limit]:
    """Pieces of one stretch that want another width than its widest one."""
    wide = [piece for piece in pieces if piece.reed_mm is not None]
    widest = max(wide, key=lambda each: each.reed_mm or 0.0, default=None)
    for piece in wide:
        if widest is None or piece.width is None or piece.wanted.width_mm is None:
            continue
        wasted = (widest.reed_mm or 0.0) - (piece.reed_mm or 0.0)
        if wasted < STEPS[wants.unit].weave:
            continue
        name, wider = piece.wanted.name or "one piece", widest.wanted.name or "the other"
        comes, wants_ = (_size(wants, mm) for mm in (piece.width.mm, piece.wanted.width_mm))
        yield Limit(
            "two-widths",
            f"On one warp with the {wider}, the {name} comes to {comes} wide for the {wants_} wanted: it wastes"
            f" {_size(wants, wasted)} of the width in the reed. Cut it down, or give it its own stretch.",
        )


def _size(wants: Wants, mm: float) -> str:
    """A size to the mark of a tape."""
    return show_length(mm, wants.unit, Fraction(127, 40) if wants.unit == "in" else Fraction(5))


def _and(names: Sequence[str]) -> str:
    return " or ".join(names) if len(names) < 3 else f"{', '.join(names[:-1])} or {names[-1]}"


def _capital(words: str) -> str:
    return words[:1].upper() + words[1:]
