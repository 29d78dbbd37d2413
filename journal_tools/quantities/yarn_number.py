"""How thick a yarn is: in tex, whatever its label counts.

A label gives a nominal number. A weighed length, yd/lb or m/kg says more than any label, and is
marked as measured.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from journal_tools.quantities.number import plain, strip_about
from journal_tools.quantities.units import USUAL, Units
from journal_tools.quantities.unreadable import Unreadable
from journal_tools.quantities.yarn_systems import SYSTEMS


@dataclass(frozen=True)
class YarnNumber:
    """The number of a yarn.

    tex: g in 1000 m, exact. text: as typed. reading: how it was read, in words. plies: where known.
    measured: from the weight of a length, which beats any label.
    """

    tex: Fraction
    text: str
    reading: str
    plies: int | None
    measured: bool

    @property
    def yards_per_pound(self) -> Fraction:
        """Yards in a pound."""
        return SYSTEMS["yd/lb"].number_of(self.tex)

    @property
    def metres_per_kg(self) -> Fraction:
        """Metres in a kilogram."""
        return SYSTEMS["m/kg"].number_of(self.tex)


def parse_yarn_number(text: str, fibre: str | None = None, units: Units = USUAL) -> YarnNumber:
    """Read a yarn number. `fibre`: what the yarn is said to be elsewhere, for a label that does not.

    Forms: 8/2 cotton, 16/2 linen, 2/20 worsted, 2 1/2 run, Nm 20/2, Ne 8/2, 20 tex x 2, R74 tex/2,
    150 denier, 3360 yd/lb, 6773 m/kg, 50 m = 12.3 g, unequal plies 60 + 40 cotton; and a label with
    its measure beside it: 8/2 cotton, 3360 yd/lb.
    Raises Unreadable; where a label has several readings, Ambiguous, with all of them.
    """
    # With the first yarn number and not before: the tables are slow to load, and many runs read none.
    from journal_tools.quantities.yarn_reading import read_yarn

    flat = plain(text).rstrip()
    try:
        about, start = strip_about(flat)
        tex, plies, words, measured = read_yarn(flat, start, fibre, units)
    except Unreadable as problem:
        raise problem.told_of(text) from None
    said = f"{' '.join(text.split())}: {'about ' if about else ''}{words}"
    return YarnNumber(tex, text, said, plies, measured)
