"""A size, always width x length: 19 3/8 x 33, 153 x 220 cm, 19 3/4, 19 5/8 x 20."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal, NamedTuple

from journal_tools.quantities.length import Length, length_of, show_number_of
from journal_tools.quantities.number import plain, strip_about
from journal_tools.quantities.units import USUAL, Units
from journal_tools.quantities.unreadable import Unreadable

Fold = Literal["folded", "opened"]

_EXAMPLE = "19 3/8 x 33, or ? x 33 where the width was not measured"
# No unit holds an x; "approx" does.
_TIMES = re.compile(r"(?<!appro)x|(?<![a-z])by(?![a-z])", re.I)
_FOLD = re.compile(r"[ ,]+(folded|opened) *$", re.I)
# A comma with no blank after it is decimal, unless a fraction stands before it.
_SEPARATOR = re.compile(r"[,;] +|;|(?<=/[0-9]),|(?<=/[0-9]{2}),|(?<=[½¼¾⅛⅜⅝⅞]),")
_HAS_UNIT = re.compile(r"[A-Za-z\"']")
_WIDEST_GUESS = 5000  # mm: no loom is wider, so a borrowed unit that says so was not meant


@dataclass(frozen=True)
class Size:
    """A cloth's size as it was written.

    widths: as many as were measured, or none. length: or None. At least one of the two is there.
    fold: whether a double cloth lay folded or opened, where it says so.
    """

    widths: tuple[Length, ...]
    length: Length | None
    fold: Fold | None
    text: str

    @property
    def width_mm(self) -> Fraction | None:
        """The mean of the widths, in mm."""
        if not self.widths:
            return None
        return sum((w.mm for w in self.widths), Fraction(0)) / len(self.widths)

    @property
    def length_mm(self) -> Fraction | None:
        """The length, in mm."""
        return self.length.mm if self.length else None

    @property
    def about(self) -> bool:
        """Whether any part of it was called a rough figure."""
        return any(w.about for w in self.widths) or bool(self.length and self.length.about)


class _Figure(NamedTuple):
    """One figure of the size, and where it starts."""

    text: str
    start: int


def parse_size(text: str, units: Units = USUAL) -> Size:
    """Read a size. A unit holds for the bare figures before it, else after it, else the journal's.

    `?` stands for a side that was not measured. A comma and a blank separate several widths.
    Raises Unreadable.
    """
    flat = plain(text)
    fold_word = _FOLD.search(flat)
    body = flat[: fold_word.start()] if fold_word else flat.rstrip()
    about, start = strip_about(body)
    times = list(_TIMES.finditer(body, start))
    if len(times) > 1:
        raise Unreadable(text, f"A size has one x: width x length, as {_EXAMPLE}.", times[1].start())
    across = _figures(text, body, start, times[0].start() if times else len(body))
    along = _figures(text, body, times[0].end(), len(body)) if times else []
    if len(along) > 1:
        raise Unreadable(text, f"Only one length stands after the x, as {_EXAMPLE}.", along[1].start)
    if not _measured(across) and not _measured(along):
        raise Unreadable(text, "Nothing was measured here: leave the line out, or write ~18.", start)
    if len(across) > 1 and len(_measured(across)) < len(across):
        raise Unreadable(text, f"Leave out the widths that were not measured: {_EXAMPLE}.", start)
    figures = _measured(across) + _measured(along)
    wide = len(_measured(across))
    lengths = [
        _read(text, figure, unit, about, units)
        for figure, unit in zip(figures, _units_of(text, figures, units), strict=True)
    ]
    for figure, width in zip(figures[:wide], lengths[:wide], strict=True):
        if width.mm > _WIDEST_GUESS and width.unit != units.length and _own_unit(text, figure, units) is None:
            mended = f"{figure.text} {units.length} x {along[0].text}"
            raise Unreadable(
                text,
                f"Is it {figure.text} {width.unit} wide? Write the unit of the width too: {mended}.",
                figure.start,
                mended if len(across) == 1 else "",
            )
    return Size(tuple(lengths[:wide]), lengths[-1] if len(lengths) > wide else None, _fold_of(fold_word), text)


def show_size(
    width_mm: Fraction | None,
    length_mm: Fraction | None,
    unit: str,
    mark: Fraction | None = None,
    pretty: bool = False,
) -> str:
    """A size in words: "17 7/8 x 30 1/8 in", "? x 30 1/8 in", and "17⅞ × 30⅛ in" when pretty."""
    sides = ["?" if mm is None else show_number_of(mm, unit, mark, pretty) for mm in (width_mm, length_mm)]
    return f" {'×' if pretty else 'x'} ".join(sides) + f" {unit}"


def _figures(text: str, body: str, start: int, end: int) -> list[_Figure]:
    """The figures of one side of the x, without the blanks around them."""
    found = []
    for left, right in _between(body, start, end):
        piece = body[left:right]
        left += len(piece) - len(piece.lstrip())
        if not piece.strip():
            raise Unreadable(text, f"A figure is missing here. Write {_EXAMPLE}.", left)
        found.append(_Figure(piece.strip(), left))
    return found


def _between(body: str, start: int, end: int) -> Iterator[tuple[int, int]]:
    for separator in _SEPARATOR.finditer(body, start, end):
        yield start, separator.start()
        start = separator.end()
    yield start, end


def _measured(figures: list[_Figure]) -> list[_Figure]:
    return [f for f in figures if f.text != "?"]


def _units_of(text: str, figures: list[_Figure], units: Units) -> list[str]:
    """The unit of each: its own, else that of the next which has one, else of the one before."""
    own = [_own_unit(text, figure, units) for figure in figures]
    nearby = ([*own[i:], *reversed(own[:i]), units.length] for i in range(len(own)))
    return [next(unit for unit in some if unit) for some in nearby]


def _own_unit(text: str, figure: _Figure, units: Units) -> str | None:
    _, start = strip_about(figure.text)
    if not _HAS_UNIT.search(figure.text, start):
        return None
    return _read(text, figure, units.length, False, units).unit


def _read(text: str, figure: _Figure, bare_unit: str, about: bool, units: Units) -> Length:
    try:
        length = length_of(figure.text, bare_unit, units)
    except Unreadable as problem:
        raise problem.within(text, figure.start) from None
    if not length.mm:
        raise Unreadable(text, "A side of nothing is no cloth. Write ? for what was not measured.", figure.start)
    return Length(length.mm, length.unit, length.mark, about or length.about, length.text)


def _fold_of(word: re.Match[str] | None) -> Fold | None:
    if word is None:
        return None
    return "folded" if word.group(1).lower() == "folded" else "opened"
