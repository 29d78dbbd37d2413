"""A warp in the order in which it is wound: bouts, ends of each colour, and spools wanted at once."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import groupby

from journal_tools.dressing.colour_words import colour_words
from journal_tools.dressing.runs import runs_of
from journal_tools.quantities import Length
from journal_tools.records import Journal, Warp
from journal_tools.records.warp import WarpYarn
from journal_tools.records.yarns_used import YarnInUse, yarn_in_use

HANDFUL_MM = Fraction(508, 10)
"""Width of a bout in the reed, where the order allows it: 2 in (common practice, no source)."""
NO_SETT = 40
"""Ends of a bout where no sett is known."""
BY_TURNS = 4
"""Stripes of one end from which on an order may have two colours by turns."""
TOGETHER = (2, 4)
"""Ends that are wound at once with a paddle, of which the spools are counted."""

Stripe = tuple[str, int]
"""A colour and its ends."""


@dataclass(frozen=True)
class Bout:
    """Ends that are wound, tied and taken off together. stripes: colours and ends, in order.

    first: the number of its first end, counted from 1.
    """

    stripes: tuple[Stripe, ...]
    first: int

    @property
    def ends(self) -> int:
        """Ends in it."""
        return sum(ends for _, ends in self.stripes)

    @property
    def last(self) -> int:
        """The number of its last end."""
        return self.first + self.ends - 1

    @property
    def order(self) -> tuple[str, ...]:
        """The colour of each end."""
        return _order_of(self.stripes)


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


def windings_of(
    journal: Journal, warp: Warp, ends: int, floating: int, sett: Fraction | None, drafted: Sequence[str]
) -> tuple[Winding, ...]:
    """Every warp of a record.

    ends: those with heddles, used where the record counts none of one warp. floating: ends without,
    of both edges. sett: ends to the metre of all. drafted: the draft's own order of colours, which
    a warp with no other takes where it has that many yarns.
    """
    made = []
    wound = warp.warp or (WarpYarn(),)
    for each in wound:
        items, by_draft = _order(warp, each, ends if len(wound) == 1 else 0, drafted)
        if items:
            share = sett * len(items) / ends if sett is not None and len(wound) > 1 and ends else sett
            edges = floating if each.floating_selvedges or len(wound) == 1 else 0
            made.append(_winding(journal, warp, each, items, share, edges, by_draft))
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
) -> Winding:
    aimed = max(4, round(sett * HANDFUL_MM / 1000)) if sett is not None else NO_SETT
    bouts = bouts_of(items, aimed)
    selvedge = (wound.floating_selvedges or items[0]) if floating else ""
    counted = Counter(items)
    counted.update({selvedge: floating} if floating else {})
    strands = tuple(
        Strand(name, yarn_in_use(journal, warp, name), number, number * wound.wound.mm if wound.wound else None)
        for name, number in counted.items()
    )
    spools = tuple(spools_of(bouts, together) for together in (*TOGETHER, 0))
    return Winding(wound.role or "", wound.wound, strands, bouts, spools, selvedge, aimed, by_draft)


def stripes_of(items: Sequence[str]) -> tuple[Stripe, ...]:
    """Colours and ends, in order."""
    return tuple((colour, len(list(same))) for colour, same in groupby(items))


def bouts_of(items: Sequence[str], aimed: int) -> tuple[Bout, ...]:
    """The order in bouts of about so many ends, cut between repeats of the colours where that can be.

    A repeat of more than two bouts is cut between its stripes, and a stripe that is too long evenly.
    A short rest goes with the bout before it.
    """
    packed: list[list[Stripe]] = []
    for atom in _atoms(items, aimed):
        held = _ends(packed[-1]) if packed else 0
        if packed and abs(held + _ends(atom) - aimed) <= abs(held - aimed):
            packed[-1] += atom
        else:
            packed.append(list(atom))
    if len(packed) > 1 and 2 * _ends(packed[-1]) < aimed:
        rest = packed.pop()
        packed[-1] += rest
    bouts, first = [], 1
    for each in packed:
        bouts.append(Bout(_joined(each), first))
        first += bouts[-1].ends
    return tuple(bouts)


def spools_of(bouts: Sequence[Bout], together: int) -> Spools:
    """Spools of each colour, when so many ends are wound at once from the first of each bout; 0 for all of it."""
    most: dict[str, int] = {}
    for order in dict.fromkeys(bout.order for bout in bouts):
        size = together or len(order)
        for start in range(0, len(order), size):
            for colour, number in Counter(order[start : start + size]).items():
                most[colour] = max(most.get(colour, 0), number)
    return Spools(together, most)


def _atoms(items: Sequence[str], aimed: int) -> Iterator[tuple[Stripe, ...]]:
    """What is not cut: a repeat of the colours, a stripe, or an even part of one."""
    for block, times in _repeats(items):
        whole = times > 1 and _ends(block) <= 2 * aimed
        for _ in range(times):
            if whole:
                yield block
                continue
            for colour, ends in block:
                parts = max(1, round(Fraction(ends, aimed))) if 2 * ends > 3 * aimed else 1
                each, more = divmod(ends, parts)
                for part in range(parts):
                    yield ((colour, each + (part < more)),)  # the fuller ones first, so that like stands with like


def _repeats(items: Sequence[str]) -> list[tuple[tuple[Stripe, ...], int]]:
    """Blocks of stripes and how often each stands, as the shorter notation has it.

    Repeats of whole stripes keep `4 slate, 24 bone` together behind an edge of 20 bone; repeats of
    ends see that of two colours in turn, where a stripe of two ends would hide it.
    """
    stripes = stripes_of(items)
    by_stripe = [(run.block, run.times) for run in runs_of(stripes)]
    if sum(ends == 1 for _, ends in stripes) < BY_TURNS:
        return by_stripe
    by_end = [(stripes_of(run.block), run.times) for run in runs_of(items) if len(set(run.block)) > 1]
    if sum(_ends(block) * times for block, times in by_end) < len(items):
        return by_stripe  # a stripe of one colour stands between: it is cut evenly, as a stripe
    return min(by_stripe, by_end, key=lambda found: sum(len(colour_words(_order_of(block))) for block, _ in found))


def _order_of(stripes: Sequence[Stripe]) -> tuple[str, ...]:
    return tuple(colour for colour, ends in stripes for _ in range(ends))


def _ends(stripes: Sequence[Stripe]) -> int:
    return sum(ends for _, ends in stripes)


def _joined(stripes: Sequence[Stripe]) -> tuple[Stripe, ...]:
    """Neighbours of one colour as one stripe."""
    together = [(colour, _ends(list(same))) for colour, same in groupby(stripes, key=lambda stripe: stripe[0])]
    return tuple(together)
