"""What the loom cannot do, said before the warp is wound."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from journal_tools.planning import arithmetic as sums
from journal_tools.planning.across import Across
from journal_tools.planning.allowances import SETT_OFF
from journal_tools.planning.wants import WantedStretch, Wants, loom_heddles
from journal_tools.quantities import show_density, show_length


@dataclass(frozen=True)
class Limit:
    """One thing that will not go as wanted. slug: its kind. words: a sentence or two."""

    slug: str
    words: str


def limits_of(wants: Wants, stretch: WantedStretch, across: Across) -> Iterator[Limit]:
    """Width, shafts, treadles, heddles and reed of one stretch against its loom."""
    loom, threaded = wants.loom, stretch.threaded
    if loom is None:
        if wants.warp.loom:
            yield Limit("no-such-loom", f"There is no record of a loom called {wants.warp.loom}: its width, reeds and"
                        " heddles are not known.")  # fmt: skip
        yield from _sett(wants, stretch, across, "reed")
        return
    if loom.width is not None and across.mm > float(loom.width.mm) + 0.001:
        over = show_length(across.mm - float(loom.width.mm), wants.unit)
        wide = show_length(across.mm, wants.unit)
        yield Limit("wider-than-loom", f"{wide} in the reed is {over} wider than {loom.heading} ({loom.width.text}).")
    if threaded is not None and loom.shafts is not None and threaded.shafts > loom.shafts.number:
        has = f"{loom.heading} has {loom.shafts.number}"
        yield Limit("more-shafts-than-loom", f"{_capital(threaded.name)} takes {threaded.shafts} shafts, and {has}.")
    if threaded is not None and loom.treadles is not None and threaded.treadles > loom.treadles.number:
        has = f"{loom.heading} has {loom.treadles.number}; some must be pressed together"
        ties = f"{_capital(threaded.name)} ties {threaded.treadles} treadles"
        yield Limit("more-treadles-than-loom", f"{ties}, and {has}.")
    if threaded is not None:
        for shaft in range(1, threaded.shafts + 1):
            wanted = sums.heddles(across.heddled, [sorted(end) for end in threaded.threading], shaft)
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
    yield from _sett(wants, stretch, across, f"reed of {loom.heading}" if loom.reeds else "reed")


def _sett(wants: Wants, stretch: WantedStretch, across: Across, reed: str) -> Iterator[Limit]:
    off = across.sleying.off
    if abs(off) > SETT_OFF:
        true, wanted = (show_density(per_m, wants.density_unit) for per_m in (across.sleying.sett, stretch.sett.per_m))
        said = "closer" if off > 0 else "more open"
        stated = stretch.laid.reed is not None and not across.others
        why = "in the reed that the record names" if stated else f"no {reed} comes nearer"
        share = f"{abs(off) * 100:.0f} %"
        yield Limit("sett-off", f"The true sett is {true}, {share} {said} than the {wanted} wanted: {why}.")


def _capital(words: str) -> str:
    return words[:1].upper() + words[1:]
