"""A length, exact in millimetres: 18 1/4 in, 46.5 cm, 3 yd 12 in."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from math import floor

from journal_tools.quantities.amount import Scale, read_amount
from journal_tools.quantities.number import ONE_CHARACTER, plain
from journal_tools.quantities.units import USUAL, Units
from journal_tools.quantities.unreadable import Unreadable

INCH = Fraction(254, 10)  # mm, exact since 1959
FOOT = 12 * INCH
YARD = 36 * INCH

LENGTHS = Scale(
    noun="a length",
    example="18 1/4 in or 46.5 cm",
    compound="3 yd 12 in",
    sizes={
        "in": INCH,
        "ft": FOOT,
        "yd": YARD,
        "mm": Fraction(1),
        "cm": Fraction(10),
        "m": Fraction(1000),
    },
    words={
        **dict.fromkeys(("in", "ins", "inch", "inches", '"', "''"), "in"),
        **dict.fromkeys(("ft", "foot", "feet", "'"), "ft"),
        **dict.fromkeys(("yd", "yds", "yard", "yards"), "yd"),
        **dict.fromkeys(("mm", "millimetre", "millimetres", "millimeter", "millimeters"), "mm"),
        **dict.fromkeys(("cm", "cms", "centimetre", "centimetres", "centimeter", "centimeters"), "cm"),
        **dict.fromkeys(("m", "metre", "metres", "meter", "meters"), "m"),
    },
)

# What a length is rounded to when nothing finer or coarser is asked for, in mm.
_USUAL_MARK = {
    "in": INCH / 8,
    "ft": FOOT / 8,
    "yd": YARD / 8,
    "mm": Fraction(1),
    "cm": Fraction(1),
    "m": Fraction(10),
}
_PRETTY = {pair: sign for sign, pair in ONE_CHARACTER.items()}
_TIMES = re.compile(r" *([0-9]{1,6})(?: *x *| +(?:[a-z]+ +)?of +)(?=[0-9.,~½¼¾⅛⅜⅝⅞⅓⅔a])", re.I)
_EACH = re.compile(r" +each\.? *$", re.I)
_BOTH = re.compile(r" +(?:at +|on +)?(?:each|both) +(?:ends?|sides?|edges?)\.? *$", re.I)


@dataclass(frozen=True)
class Length:
    """A length as it was written.

    mm: exact. unit: the finest typed, or the journal's. mark: in mm, the finest mark typed
    (1/8 in for "17 7/8", 1 mm for "46.5 cm"). about: it was called a rough figure. text: as typed.
    """

    mm: Fraction
    unit: str
    mark: Fraction
    about: bool
    text: str

    @property
    def inches(self) -> Fraction:
        """The length in inches."""
        return self.mm / INCH

    @property
    def cm(self) -> Fraction:
        """The length in centimetres."""
        return self.mm / 10


@dataclass(frozen=True)
class TimesLength:
    """So many of one length: "5 of 1/2 in", "2 in each end"."""

    count: int
    each: Length
    text: str

    @property
    def mm(self) -> Fraction:
        """All of them together, in mm."""
        return self.count * self.each.mm


def parse_length(text: str, units: Units = USUAL) -> Length:
    """Read a length; a bare number takes the unit of the journal. Raises Unreadable."""
    return length_of(text, units.length, units)


@lru_cache(maxsize=4096)  # the same lengths come again and again in a journal
def length_of(text: str, bare_unit: str, units: Units) -> Length:
    """Read a length in which a bare number is in `bare_unit`."""
    amount = read_amount(text, LENGTHS, bare_unit, units)
    return Length(amount.value, amount.unit, amount.mark, amount.about, text)


def parse_times_length(text: str, units: Units = USUAL) -> TimesLength:
    """Read "5 of 1/2 in", "2 in each end" (two of them), or one plain length. Raises Unreadable."""
    flat = plain(text)
    times = _TIMES.match(flat)
    both = _BOTH.search(flat)
    each_of_them = _EACH.search(flat) if times else None
    count = (int(times.group(1)) if times else 1) * (2 if both else 1)
    if not count:
        raise Unreadable(text, "None of something is no length. Write it like 5 of 1/2 in.", 0)
    start = times.end() if times else 0
    words = both or each_of_them
    try:
        each = parse_length(text[start : words.start() if words else None], units)
    except Unreadable as problem:
        raise problem.within(text, start) from None
    return TimesLength(count, each, text)


def show_length(mm: Fraction | float, unit: str, mark: Fraction | None = None, pretty: bool = False) -> str:
    """A length in words: "17 7/8 in", "46.5 cm", and "17⅞ in" when pretty.

    mm, mark: in mm. Rounded to the nearest mark, halves away from zero; without a mark, or with one
    that a tape in this unit does not carry, to 1/8 in, 1/8 ft, 1/8 yd, 1 mm or, in metres, 1 cm.
    """
    return f"{show_number_of(mm, unit, mark, pretty)} {unit}"


@lru_cache(maxsize=4096)
def show_number_of(mm: Fraction | float, unit: str, mark: Fraction | None = None, pretty: bool = False) -> str:
    """As `show_length`, without the unit."""
    size = LENGTHS.sizes[unit]
    step = mark if mark is not None and _carries(unit, mark / size) else _USUAL_MARK[unit]
    exact = Fraction(mm)
    steps = floor(abs(exact) / step + Fraction(1, 2))
    value = steps * step / size
    sign = "-" if exact < 0 and steps else ""
    return sign + _written(value, unit, pretty)


def _carries(unit: str, mark: Fraction) -> bool:
    """Whether a tape in this unit could have such a mark: 1/n of it, or 1, 2 and 5 where metric."""
    if mark <= 0:
        return False
    if unit in ("in", "ft", "yd"):
        return mark.denominator == 1 or (mark.numerator == 1 and mark.denominator <= 100)
    return 10**6 % mark.numerator == 0 and 10**4 % mark.denominator == 0


def _written(value: Fraction, unit: str, pretty: bool) -> str:
    whole, rest = divmod(value, 1)
    if not rest:
        return str(whole)
    if (rest.denominator % 5 == 0 and 10**4 % rest.denominator == 0) or unit in ("mm", "cm", "m"):
        return f"{float(value):.4f}".rstrip("0").rstrip(".")
    sign = _PRETTY.get((rest.numerator, rest.denominator)) if pretty else None
    if sign:
        return f"{whole}{sign}" if whole else sign
    return f"{whole} {rest}" if whole else str(rest)
