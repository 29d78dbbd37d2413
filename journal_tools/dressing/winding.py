"""A warp in the order in which it is wound: bouts, ends of each colour, and spools wanted at once."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from journal_tools.dressing.bouts import Bout, bouts_of
from journal_tools.quantities import Length
from journal_tools.records import Journal, Warp
from journal_tools.records.warp import WarpYarn
from journal_tools.records.yarns_used import YarnInUse, yarn_in_use

HANDFUL_MM = Fraction(508, 10)
"""Width of a bout in the reed, where the order allows it: 2 in (common practice, no source)."""
NO_SETT = 40
"""Ends of a bout where no sett is known."""
TOGETHER = (2, 4)
"""Ends that are wound at once with a paddle, of which the spools are counted."""


@dataclass(frozen=True)
class Strand:
    """A colour of the warp: as it was named, the yarn, its ends, and their length, None where nobody says."""

    name: str
    yarn: YarnInUse
    ends: int
    length_mm: Fraction | None


@dataclass(frozen=True)
class Spools:
    """Spools of each colour wanted at once. together: ends wound at once; 0 for a whole bout or section."""

    together: int
    of: Mapping[str, int]

    @property
    def number(self) -> int:
        """Spools in all."""
        return sum(self.of.values())


@dataclass(frozen=True)
class Winding:
    """One warp as it is wound; where there are several, each on a beam of its own.

    role: what it does in the cloth, "" where nobody says. wound: how long, None where nobody says.
    strands: ends of each colour, floating selvedges among them. bouts: of what has heddles.
    floating: the yarn of the floating selvedges, "" for none. aimed: ends that a bout was to have.
    by_draft: whether the order is the draft's own, since the warp has none.
    """

    role: str
    wound: Length | None
    strands: tuple[Strand, ...]
    bouts: tuple[Bout, ...]
    spools: tuple[Spools, ...]
    floating: str
    aimed: int
    by_draft: bool = False

    @property
    def ends(self) -> int:
        """Ends with heddles."""
        return sum(bout.ends for bout in self.bouts)

    @property
    def order(self) -> tuple[str, ...]:
        """The colour of each end with a heddle."""
        return tuple(colour for bout in self.bouts for colour in bout.order)


def windings_of(
    journal: Journal, warp: Warp, ends: int, floating: int, sett: Fraction | None, drafted: Sequence[str], unit: int = 1
) -> tuple[Winding, ...]:
    """Every warp of a record.

    ends: those with heddles, used where the record counts none of one warp. floating: ends without,
    of both edges: each warp that names their yarn winds two, or the first warp all, where none does.
    sett: ends to the metre of all. drafted: the draft's own order of colours, which
    a warp with no other takes where it has that many yarns. unit: ends of the threading's repeat.
    """
    made: list[Winding] = []
    wound = warp.warp or (WarpYarn(),)
    left = 0 if any(each.floating_selvedges for each in wound) else floating
    for each in wound:
        items, by_draft = _order(warp, each, ends if len(wound) == 1 else 0, drafted)
        if items:
            share = sett * len(items) / ends if sett is not None and len(wound) > 1 and ends else sett
            edges, left = (2 if each.floating_selvedges else left), 0
            made.append(_winding(journal, warp, each, items, share, edges, by_draft, unit if len(wound) == 1 else 1))
    return tuple(made)


def _order(warp: Warp, wound: WarpYarn, ends: int, drafted: Sequence[str]) -> tuple[tuple[str, ...], bool]:
    """The colour of each end, and whether it is the draft's."""
    if wound.order is not None:
        return wound.order.items, False
    number = wound.ends.number if wound.ends is not None else ends
    yarn = wound.yarn or warp.yarn or next(iter(warp.yarns or ()), "")
    if drafted and not wound.yarn and not warp.yarn:
        return (tuple(drafted) * (-(-number // len(drafted))))[:number], True
    return (yarn,) * number if yarn else (), False


def _winding(
    journal: Journal,
    warp: Warp,
    wound: WarpYarn,
    items: tuple[str, ...],
    sett: Fraction | None,
    floating: int,
    by_draft: bool,
    unit: int,
) -> Winding:
    aimed = max(4, round(sett * HANDFUL_MM / 1000)) if sett is not None else NO_SETT
    bouts = bouts_of(items, aimed, unit)
    selvedge = (wound.floating_selvedges or items[0]) if floating else ""
    counted = Counter(items)
    counted.update({selvedge: floating} if floating else {})
    strands = tuple(
        Strand(name, yarn_in_use(journal, warp, name), number, number * wound.wound.mm if wound.wound else None)
        for name, number in counted.items()
    )
    spools = tuple(spools_of(bouts, together) for together in (*TOGETHER, 0))
    return Winding(wound.role or "", wound.wound, strands, bouts, spools, selvedge, aimed, by_draft)


def spools_of(bouts: Sequence[Bout], together: int) -> Spools:
    """Spools of each colour, when so many ends are wound at once from the first of each bout; 0 for all of it."""
    most: dict[str, int] = {}
    for order in dict.fromkeys(bout.order for bout in bouts):
        size = together or len(order)
        for start in range(0, len(order), size):
            for colour, number in Counter(order[start : start + size]).items():
                most[colour] = max(most.get(colour, 0), number)
    return Spools(together, most)
