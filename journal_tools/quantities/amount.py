"""A figure with its unit, or several in falling order: 18 1/4 in, 3 yd 12 in, 1 lb 4 oz."""

from __future__ import annotations

import re
from collections.abc import Mapping
from fractions import Fraction
from typing import NamedTuple

from journal_tools.quantities.number import plain, read_number, strip_about
from journal_tools.quantities.units import Units
from journal_tools.quantities.unreadable import Unreadable

_UNIT = re.compile(r" *([A-Za-z]+\.?|''|[\"'])")


class Scale(NamedTuple):
    """The units of one kind of quantity.

    noun: with its article. example: two right texts. compound: one of several parts.
    sizes: unit -> its size in the base unit. words: every way to write a unit, in lower case -> the unit.
    """

    noun: str
    example: str
    compound: str
    sizes: Mapping[str, Fraction]
    words: Mapping[str, str]

    @property
    def names(self) -> str:
        """The units, for a message: "in, ft, yd, mm, cm or m"."""
        *most, last = self.sizes
        return f"{', '.join(most)} or {last}"


class Amount(NamedTuple):
    """What was read. value, mark: in the scale's base unit. bare: no unit was written."""

    value: Fraction
    mark: Fraction
    unit: str
    about: bool
    bare: bool


def read_amount(text: str, scale: Scale, bare_unit: str, units: Units) -> Amount:
    """Read the whole text as one amount. `bare_unit` is what a number without a unit is in.

    The unit of a compound is its finest, and so is its mark. Raises Unreadable.
    """
    flat = plain(text).rstrip()
    about, start = strip_about(flat)
    try:
        return _read(flat, start, scale, bare_unit, units)._replace(about=about)
    except Unreadable as problem:
        raise problem.told_of(text) from None


def _read(flat: str, at: int, scale: Scale, bare_unit: str, units: Units) -> Amount:
    value, mark, unit, bare = Fraction(0), Fraction(0), "", False
    while at < len(flat) or not unit:
        number = read_number(flat, at, units, scale.example)
        found = _UNIT.match(flat, number.end)
        start, at = at, found.end() if found else number.end
        while flat.startswith(" ", at):
            at += 1
        bare = not found
        if bare and at < len(flat):
            raise _left_over(flat, at, scale)
        before, unit = unit, _unit_of(flat, found, scale) if found else bare_unit
        size = scale.sizes[unit]
        if before and (bare or size >= scale.sizes[before]):
            raise _out_of_order(flat, start, scale)
        value += number.value * size
        mark = _mark_of(number.value, number.step, number.decimal, unit) * size
    return Amount(value, mark, unit, False, bare)


def _mark_of(value: Fraction, step: Fraction, decimal: bool, unit: str) -> Fraction:
    """18.25 in was a quarter on the tape, not a hundredth; 46.5 cm was a millimetre."""
    parts = value.denominator
    if decimal and unit in ("in", "ft", "yd") and parts > 1 and parts & (parts - 1) == 0:
        return Fraction(1, parts)
    return step


def _unit_of(text: str, found: re.Match[str], scale: Scale) -> str:
    word = found.group(1)
    unit = scale.words.get(word.rstrip(".").lower())
    if unit is None:
        raise Unreadable(
            text,
            f'"{word}" is no unit for {scale.noun}. Use {scale.names}, such as {scale.example}.',
            found.start(1),
        )
    return unit


def _out_of_order(text: str, at: int, scale: Scale) -> Unreadable:
    return Unreadable(
        text,
        f"Each part of {scale.noun} needs its unit, the large one first, such as {scale.compound}.",
        at,
    )


def _left_over(text: str, at: int, scale: Scale) -> Unreadable:
    if text[at] == "-":
        right = f"One figure is wanted, not a range. Write it like {scale.example}, or ~18 for about 18."
    elif text[at].isdigit():
        right = f"Two numbers stand side by side. Write it like {scale.example}, and 1200 without a blank."
    else:
        right = f"{scale.noun.capitalize()} looks like {scale.example}."
    return Unreadable(text, right, at)
