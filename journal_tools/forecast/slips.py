"""Slips of the pen: what might have been meant where a figure cannot be right."""

from __future__ import annotations

import itertools
import re
from collections.abc import Iterator
from dataclasses import dataclass

from journal_tools.quantities import FOOT, INCH, YARD

PER_UNIT = {"in": float(INCH), "ft": float(FOOT), "yd": float(YARD), "mm": 1.0, "cm": 10.0, "m": 1000.0}
INCHES = ("in", "ft", "yd")

SWAPPED, TOO_MANY, MISSING, UNIT, TURNED = "swapped", "too many", "missing", "unit", "turned"
LIKELY = (TURNED, UNIT, SWAPPED, TOO_MANY, MISSING)
"""The kinds of slips, the likeliest first (judgement)."""

# One number, whole or decimal, with a fraction behind it at most: digits elsewhere are left alone.
_ONE_NUMBER = re.compile(r"(?P<before>\D*)(?P<number>\d+(?:[.,]\d+)?)(?P<after>(?:[ -]+\d+/\d+)?[^\d/]*)")


@dataclass(frozen=True)
class Slip:
    """One slip. share: what was meant over what was written. asks: a question about it."""

    kind: str
    share: float
    asks: str


def slips_of(text: str, written: float, unit: str | None) -> Iterator[Slip]:
    """The slips that could have made a figure.

    text: as typed. written: what it was read as, in units of its first number: 18.25 for "18 1/4 in".
    unit: of a length, None for a count.
    """
    if unit is not None:
        inches = unit in INCHES
        asks = f"Is it in {'centimetres' if inches else 'inches'}?"
        yield Slip(UNIT, 1 / 2.54 if inches else 2.54, asks)
    found = _ONE_NUMBER.fullmatch(text.strip())
    if found is None or not written:
        return
    number = found["number"]
    for kind, changed in _changed(number):
        meant = written + _value(changed) - _value(number)
        if meant <= 0 or changed == number:
            continue
        shown = f"{found['before']}{changed}{found['after']}".strip()
        yield Slip(kind, meant / written, ASKS[kind].format(shown))


ASKS = {
    SWAPPED: "Were two digits changed over, and is it {}?",
    TOO_MANY: "Is there a digit too many, and is it {}?",
    MISSING: "Is a digit missing, and is it {}?",
}


def _changed(number: str) -> Iterator[tuple[str, str]]:
    """A number with two neighbouring digits changed over, with one digit less, and with one more."""
    places = [place for place, sign in enumerate(number) if sign.isdigit()]
    for left, right in itertools.pairwise(places):
        swapped = list(number)
        swapped[left], swapped[right] = swapped[right], swapped[left]
        yield SWAPPED, "".join(swapped)
    whole = len(re.split("[.,]", number)[0])
    if whole > 1:
        yield from ((TOO_MANY, number[:place] + number[place + 1 :]) for place in range(whole))
    for place in range(whole + 1):
        for digit in "0123456789" if place else "123456789":
            yield MISSING, f"{number[:place]}{digit}{number[place:]}"


def _value(number: str) -> float:
    return float(number.replace(",", "."))
