"""The systems in which yarn is numbered, and what each is in tex.

    indirect: lengths in a weight, so a larger number is a finer yarn; tex = one / number
        yd/lb     tex = 453.59237 g / 0.9144 m, over the number
        Ne        hanks of 840 yd in a pound; worsted 560, lea 300, run 1600, cut 300, skein 256
        Nm        metres in a gram
    direct: weight of a length, so a larger number is a coarser yarn; tex = one x number
        tex       grams in 1000 m; dtex in 10 000 m, denier in 9000 m

The pound and the yard are exact, the lengths of the hanks are those of ASTM D2260 Table 1; the
256 yd of the Yorkshire skein (1536 yd of 6 lb) stand in no standard known here.
"""

from __future__ import annotations

from fractions import Fraction
from typing import NamedTuple

from journal_tools.quantities.length import YARD
from journal_tools.quantities.units import USUAL, Units
from journal_tools.quantities.weight import POUND

TEX_OF_A_YARD_A_POUND = POUND / YARD * 10**6  # 496 054.648...: grams in 1000 m


class System(NamedTuple):
    """One way to number yarn.

    words: what it is called. one: tex of the number 1. direct: whether tex grows with the number.
    written: how a number in it is written, with {} in the number's place.
    """

    words: str
    one: Fraction
    written: str
    direct: bool = False

    def tex_of(self, number: Fraction) -> Fraction:
        """Tex of a yarn of this number; the number must be above zero."""
        return self.one * number if self.direct else self.one / number

    def number_of(self, tex: Fraction) -> Fraction:
        """The number of a yarn of so many tex, exact."""
        return tex / self.one if self.direct else self.one / tex


def _hanks_of(yards: int, words: str, written: str) -> System:
    return System(words, TEX_OF_A_YARD_A_POUND / yards, written)


SYSTEMS = {
    "Ne": _hanks_of(840, "cotton count", "Ne {}"),
    "worsted": _hanks_of(560, "worsted count", "{} worsted"),
    "lea": _hanks_of(300, "linen count", "{} lea"),
    "run": _hanks_of(1600, "woollen run", "{} run"),
    "cut": _hanks_of(300, "woollen cut", "{} cut"),
    "skein": _hanks_of(256, "Yorkshire skein", "{} skein"),
    "Nm": System("metric count", Fraction(1000), "Nm {}"),
    "yd/lb": _hanks_of(1, "yards in a pound", "{} yd/lb"),
    "m/kg": System("metres in a kilogram", Fraction(10**6), "{} m/kg"),
    "tex": System("tex", Fraction(1), "{} tex", direct=True),
    "dtex": System("decitex", Fraction(1, 10), "{} dtex", direct=True),
    "denier": System("denier", Fraction(1, 9), "{} denier", direct=True),
}


def show_count(number: Fraction) -> str:
    """A yarn number in figures: "8", "2.5"."""
    return f"{float(number):.6f}".rstrip("0").rstrip(".")


def show_grist(tex: Fraction, units: Units = USUAL) -> str:
    """How far a yarn goes: "3,360 yd/lb", and "6773 m/kg, 3,360 yd/lb" in a metric journal."""
    imperial = f"{round(SYSTEMS['yd/lb'].number_of(tex)):,} yd/lb"
    if units.length == "in":
        return imperial
    return f"{round(SYSTEMS['m/kg'].number_of(tex))} m/kg, {imperial}"
