"""Reading a size off a tape, and writing it down as a weaver does."""

from __future__ import annotations

from fractions import Fraction

MM = {"in": 25.4, "cm": 10.0}


def width_mark(unit: str, size: float) -> Fraction:
    """The finest mark worth reading in a width, in the unit."""
    if unit == "in":
        return Fraction(1, 8)
    return Fraction(1, 2) if size < 110 else Fraction(1)


def length_mark(unit: str, size: float) -> Fraction:
    """The finest mark worth reading in a length, in the unit."""
    if unit == "in":
        return Fraction(1, 8) if size < 45 else Fraction(1, 4) if size < 80 else Fraction(1, 2)
    return Fraction(1, 2) if size < 110 else Fraction(1)


def read(size: float, mark: Fraction) -> Fraction:
    """The nearest mark; a size half way between two goes to the higher."""
    return mark * int(size / float(mark) + 0.5)


def show(size: Fraction | float, unit: str) -> str:
    """`17 7/8` in inches, `46.5` in centimetres; the unit stands once, elsewhere."""
    exact = Fraction(size)
    if unit == "cm":
        return f"{float(exact):.1f}".removesuffix(".0")
    units, part = divmod(exact, 1)
    if not part:
        return str(units)
    return f"{units} {part}" if units else str(part)


def size(width: Fraction, length: Fraction, unit: str) -> str:
    """Width x length."""
    return f"{show(width, unit)} x {show(length, unit)}"
