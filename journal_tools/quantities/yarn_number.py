"""How thick a yarn is: in tex, whatever its label counts.

A label gives a nominal number. A weighed length, yd/lb or m/kg says more than any label, and is
marked as measured.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

from journal_tools.quantities.direct_yarn import read_direct
from journal_tools.quantities.labelled_yarn import EXAMPLE, read_label
from journal_tools.quantities.number import plain, strip_about
from journal_tools.quantities.units import USUAL, Units
from journal_tools.quantities.unreadable import Ambiguous, Unreadable
from journal_tools.quantities.weighed_yarn import read_weighed
from journal_tools.quantities.yarn_systems import SYSTEMS, show_grist

_UNEQUAL = re.compile(r" *unequal pl(?:y|ies)(?: of)? *:?", re.I)
_BESIDE = re.compile(r"(.*[A-Za-z0-9])(?:[,;] +| \()([^()]+)\)?")  # 8/2 cotton, 3360 yd/lb
_LETTERS = re.compile(r"[A-Za-z]{2,}")
_FINEST, _THICKEST = Fraction(1, 2), Fraction(100_000)  # tex: spider silk and ships' rope lie beyond


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
    flat = plain(text).rstrip()
    try:
        about, start = strip_about(flat)
        tex, plies, words, measured = _read(flat, start, fibre, units)
        _check(flat, tex)
    except Unreadable as problem:
        raise problem.told_of(text) from None
    said = f"{' '.join(text.split())}: {'about ' if about else ''}{words}"
    return YarnNumber(tex, text, said, plies, measured)


def _read(flat: str, start: int, fibre: str | None, units: Units) -> tuple[Fraction, int | None, str, bool]:
    """Tex, plies, how it was read, and whether it was measured."""
    plies: int | None = None
    beside = _BESIDE.fullmatch(flat, start)
    tex = read_weighed(beside.group(2).rstrip(), 0, units) if beside else None
    if beside and tex is not None:
        plies = _plies_of(flat[: beside.end(1)], start, fibre, units)
    else:
        tex = read_weighed(flat, start, units)
    if tex is not None:
        return tex, plies, f"{float(tex):.4g} tex, {show_grist(tex, units)}, by its weight", True
    if "+" in flat:
        tex, plies, words = _read_unequal(flat, start, fibre, units)
    else:
        tex, plies, words = _read_one(flat, start, fibre, units)
    return tex, plies, f"{words}, {show_grist(tex, units)}", False


def _plies_of(flat: str, start: int, fibre: str | None, units: Units) -> int | None:
    """The plies of a label that has its measure beside it: its other readings do not matter then."""
    try:
        return _read_one(flat, start, fibre, units)[1]
    except Ambiguous:
        return None


def _read_one(flat: str, start: int, fibre: str | None, units: Units) -> tuple[Fraction, int | None, str]:
    direct = read_direct(flat, start, units)
    if direct:
        return direct
    label = read_label(flat, start, fibre, units)
    return label.tex, label.plies, label.words()


def _read_unequal(flat: str, start: int, fibre: str | None, units: Units) -> tuple[Fraction, int, str]:
    """Plies of different sizes: their weights add, so their counts add as reciprocals."""
    before = _UNEQUAL.match(flat, start)
    parts = flat[before.end() if before else start :].split("+")
    # "60 + 40 cotton": what is said of one part holds for a part of which nothing is said.
    said = next((" ".join(_LETTERS.findall(part)) for part in reversed(parts) if _LETTERS.search(part)), "")
    tex, plies, words = Fraction(0), 0, []
    for part in parts:
        whole = part if _LETTERS.search(part) else f"{part.strip()} {said}"
        try:
            of_one, plies_of_one, in_words = _read_one(whole, 0, fibre, units)
        except Unreadable as problem:
            raise type(problem)(flat, f"Of {part.strip() or 'a ply'}: {problem.right}", start) from None
        tex += of_one
        plies += plies_of_one or 1
        words.append(in_words)
    return tex, plies, " and ".join(words)


def _check(flat: str, tex: Fraction) -> None:
    if not _FINEST <= tex <= _THICKEST:
        kind = "finer" if tex < _FINEST else "thicker"
        raise Unreadable(flat, f"That would be {show_grist(tex)}, {kind} than any yarn. Write it like {EXAMPLE}.")
