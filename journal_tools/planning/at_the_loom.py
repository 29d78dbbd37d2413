"""What a plan says of loom, reed, heddles, picks and hems: short sentences, one for each."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction
from typing import Literal

from journal_tools.planning import arithmetic as sums
from journal_tools.planning.planned import PlannedPiece, PlannedStretch
from journal_tools.planning.sleying import Sleying
from journal_tools.quantities import Length, show_density, show_length
from journal_tools.records.hem import AFTER_ALL
from journal_tools.records.loom import Loom

PerUnit = Literal["in", "cm"]


def loom_words(loom: Loom | None, unit: str) -> str:
    """`On The big loom, 36 in wide, 4 shafts.`, in a unit; "" for no loom."""
    if loom is None:
        return ""
    mark = Fraction(127, 40) if unit == "in" else Fraction(5)
    wide = f", {show_length(loom.width.mm, unit, mark)} wide" if loom.width is not None else ""
    shafts = f", {loom.shafts.number} shafts" if loom.shafts is not None else ""
    return f"On {loom.heading}{wide}{shafts}."


def in_dents(sleying: Sleying) -> str:
    """`2 in a dent`, `1-2 in the dents`."""
    order = sleying.written
    if order == "1":
        return "one in a dent"
    return f"{order} in the dents" if "-" in order else f"{order} in a dent"


def reed_words(sleying: Sleying, unit: PerUnit) -> str:
    """The reed, `12/in`: in the unit in which its number is whole, the one given first."""
    units: tuple[PerUnit, ...] = (unit, "in", "cm")
    for each in units:
        dents = sleying.dents_per_m * (0.0254 if each == "in" else 0.01)
        if abs(dents * 2 - round(dents * 2)) < 1e-3:
            return show_density(sleying.dents_per_m, each)
    return show_density(sleying.dents_per_m, unit)


def spread_words(each: PlannedStretch) -> str:
    """`Threaded straight over 4 shafts, 121 heddles on each.`, where the weave would do with fewer; "" else."""
    threaded = each.wanted.threaded
    if threaded is None or threaded.spread == threaded.threading:
        return ""
    shafts = len(threaded.spread)
    spread = [sorted(end) for end in threaded.spread]
    on = [sums.heddles(each.across.heddled, spread, shaft + 1) for shaft in range(shafts)]
    most = f"{on[0]} heddles on each" if len(set(on)) == 1 else f"{min(on)} or {max(on)} heddles on each"
    return f"Threaded straight over {shafts} shafts, {most}."


def picks_words(each: PlannedStretch, unit: PerUnit) -> str:
    """`20 picks an inch (as in 3 past warps).`"""
    beat, layers = each.wanted.beat, each.wanted.layers
    number = show_density(beat.per_m, unit).partition("/")[0]
    of = f" of all {layers} layers together" if layers > 1 else ""
    how = f" ({beat.how})" if beat.how else ""
    return f"{number} picks {'an inch' if unit == 'in' else 'a centimetre'}{of}{how}."


def hem_words(pieces: Iterable[PlannedPiece]) -> Iterator[str]:
    """`Hem of 1 in with 3/8 in turned under, both ends, sewn after washing.`, each kind of hem once."""
    said = dict.fromkeys(words for piece in pieces if (words := _hem(piece)))
    yield from said


def _hem(piece: PlannedPiece) -> str:
    hem = piece.wanted.hem
    if hem is None or hem.depth is None:
        return ""
    turned = f"with {_typed(hem.turn)} turned under" if hem.turn is not None else "with nothing turned under"
    wash = hem.after_wash
    named = {None: "", 0: ", sewn before washing", AFTER_ALL: ", sewn after washing"}
    when = named.get(wash, f", sewn after wash {wash}")
    return f"Hem of {_typed(hem.depth)} {turned}, {hem.edges}{when}."


def _typed(length: Length) -> str:
    """A length in the unit and to the mark that it was typed in."""
    return show_length(length.mm, length.unit, length.mark)
