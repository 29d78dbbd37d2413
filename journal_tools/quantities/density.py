"""Ends, picks, dents or wraps in an inch or a centimetre: 24/in, 9.5/cm, 50 per 10 cm."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from math import floor
from typing import Literal

from journal_tools.quantities.length import INCH
from journal_tools.quantities.number import Number, plain, read_number, strip_about
from journal_tools.quantities.units import USUAL, Units
from journal_tools.quantities.unreadable import Unreadable

PerUnit = Literal["in", "cm"]

_EXAMPLE = "24/in or 9.5/cm"
_SIZE: dict[PerUnit, Fraction] = {"in": INCH / 1000, "cm": Fraction(1, 100)}  # m
_PER: dict[str, PerUnit] = {
    **dict.fromkeys(("in", "inch", "inches", '"', "''"), "in"),
    **dict.fromkeys(("cm", "centimetre", "centimeter", "centimetres", "centimeters"), "cm"),
}
_ALONE: dict[str, PerUnit] = {
    **dict.fromkeys(("epi", "ppi", "dpi", "wpi", "dent", "dents"), "in"),
    **dict.fromkeys(("epc", "ppc", "dpc", "wpc"), "cm"),
}
_OVER = re.compile(
    r" *(?:ends?|picks?|threads?|dents?|wraps?)? *(?:/|per\b) *([0-9]{1,3})? *([A-Za-z]+|''|\")\.? *$",
    re.I,
)
_PER_TEN = re.compile(r"([0-9]{1,4}) ?/ ?10 *")
_WORD = re.compile(r"[ -]*([A-Za-z]+)\.? *$")


@dataclass(frozen=True)
class Density:
    """So many in a length. per_m: in one metre, exact. unit: "in" or "cm", as it was written."""

    per_m: Fraction
    unit: PerUnit
    text: str
    about: bool

    @property
    def per_inch(self) -> Fraction:
        """So many in one inch."""
        return self.per_m * _SIZE["in"]

    @property
    def per_cm(self) -> Fraction:
        """So many in one centimetre."""
        return self.per_m * _SIZE["cm"]


def parse_density(text: str, units: Units = USUAL) -> Density:
    """Read a sett, a beat or a reed; a bare number takes the unit of the journal.

    Forms: 24, 24/in, 9.5/cm, 24 per in, 50 per 10 cm, 24 epi, 24 ppi, 12 dent. Raises Unreadable.
    """
    flat = plain(text).rstrip()
    about, start = strip_about(flat)
    over = _OVER.search(flat, start)
    count = _read_count(text, flat[: over.start()] if over else flat, start, units)
    if over:
        unit = _PER.get(over.group(2).lower())
        if unit is None:
            raise Unreadable(text, f'"{over.group(2)}" is no length to count in. Write {_EXAMPLE}.', over.start(2))
        many = int(over.group(1) or 1)
        value = count.value / many if many else Fraction(0)
        end = over.start()
    else:
        word = _WORD.match(flat, count.end)
        unit = _ALONE.get(word.group(1).lower()) if word else units.density
        if unit is None:
            raise Unreadable(text, f"Say in what it was counted: {_EXAMPLE}.", count.end)
        value = count.value
        end = word.start() if word else len(flat)
    if count.end != end:
        raise Unreadable(text, f"One figure is wanted here, such as {_EXAMPLE}.", count.end)
    if not value:
        raise Unreadable(text, f"None at all is no cloth. Write it like {_EXAMPLE}.", start)
    return Density(value / _SIZE[unit], unit, text, about)


def _read_count(text: str, flat: str, start: int, units: Units) -> Number:
    """The number of ends. "50/10" is how metric reeds are named: so many in ten centimetres."""
    ten = _PER_TEN.fullmatch(flat, start)
    try:
        if ten and units.density == "cm":
            return Number(Fraction(int(ten.group(1)), 10), Fraction(1, 10), False, ten.end())
        if ten:
            many = ten.group(1)
            raise Unreadable(
                flat,
                f"Say in what it was counted: {many}/10 cm for {many} in ten centimetres.",
                start,
                f"{many}/10 cm",
            )
        return read_number(flat, start, units, _EXAMPLE)
    except Unreadable as problem:
        raise problem.told_of(text) from None


def parse_wraps(text: str, units: Units = USUAL) -> Density:
    """Read wraps of a yarn round a ruler: 30/in, 30 wpi, 12/cm. Raises Unreadable."""
    return parse_density(text, units)


def show_density(per_m: Fraction | float, unit: PerUnit) -> str:
    """A density in words, one decimal at most: "24/in", "9.5/cm"."""
    tenths = floor(Fraction(per_m) * _SIZE[unit] * 10 + Fraction(1, 2))
    return f"{tenths / 10:.1f}".removesuffix(".0") + f"/{unit}"
