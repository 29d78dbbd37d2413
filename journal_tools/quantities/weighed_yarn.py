"""A yarn's number from the weight of a length: 50 m = 12.3 g, 3360 yd/lb, 1200 m/kg."""

from __future__ import annotations

import re
from fractions import Fraction

from journal_tools.quantities.amount import Scale, read_amount
from journal_tools.quantities.length import LENGTHS
from journal_tools.quantities.units import Units
from journal_tools.quantities.unreadable import Unreadable
from journal_tools.quantities.weight import WEIGHTS

_EXAMPLE = "50 m = 12.3 g, 3360 yd/lb or 1200 m/kg"
_EQUALS = re.compile(r" *(?:=|(?<![a-z])weigh(?:s|ed)?(?![a-z])) *", re.I)
_OVER = re.compile(r" *(?:/|(?<![a-z])per(?![a-z])) *((?:[0-9]+(?:[.,][0-9]+)? *)?([A-Za-z]+)\.?) *$", re.I)
_YARDS_A_POUND = re.compile(r"(?<![a-z])ypp *$", re.I)
_LAST_WORD = re.compile(r"([A-Za-z]+)\.? *$")


def read_weighed(flat: str, start: int, units: Units) -> Fraction | None:
    """Tex, or None where the plain text is no weight of a length. Raises Unreadable."""
    equals = _EQUALS.search(flat, start)
    over = _OVER.search(flat, start)
    if equals:
        left, right, at = flat[start : equals.start()], flat[equals.end() :], equals.end()
    elif short := _YARDS_A_POUND.search(flat, start):
        left, right, at = f"{flat[start : short.start()]} yd", "1 lb", short.start()
    elif over and _scale_of(over.group(2)):
        right = over.group(1)
        right = right if right[0].isdigit() else f"1 {right}"
        left, at = flat[start : over.start()], over.start(1)
    else:
        return None
    sides = [(left, start), (right, at)]
    found = {scale.noun: _read(flat, side, column, scale, units) for side, column, scale in _sorted(flat, sides)}
    mm, grams = found[LENGTHS.noun], found[WEIGHTS.noun]
    if not mm or not grams:
        raise Unreadable(flat, f"Nothing cannot be weighed. Write it like {_EXAMPLE}.", start)
    return grams / mm * 10**6


def _scale_of(word: str) -> Scale | None:
    return next((s for s in (LENGTHS, WEIGHTS) if word.lower() in s.words), None)


def _sorted(flat: str, sides: list[tuple[str, int]]) -> list[tuple[str, int, Scale]]:
    """Each side with its scale: one is a length, the other a weight, in either order."""
    found = []
    for side, column in sides:
        word = _LAST_WORD.search(side)
        scale = _scale_of(word.group(1)) if word else None
        if scale is None:
            raise Unreadable(flat, f"A unit is missing here. Write it like {_EXAMPLE}.", column)
        found.append((side, column, scale))
    if found[0][2] is found[1][2]:
        raise Unreadable(flat, f"One length and one weight are wanted, such as {_EXAMPLE}.", found[1][1])
    return found


def _read(flat: str, side: str, column: int, scale: Scale, units: Units) -> Fraction:
    try:
        return read_amount(side, scale, "", units).value
    except Unreadable as problem:
        raise Unreadable(flat, problem.right, column) from None
