"""One yarn number, in whichever of its forms: a weighed length, tex and denier, a label, unequal plies."""

from __future__ import annotations

import re
from fractions import Fraction

from journal_tools.quantities.direct_yarn import read_direct
from journal_tools.quantities.labelled_yarn import EXAMPLE, read_label
from journal_tools.quantities.units import Units
from journal_tools.quantities.unreadable import Ambiguous, Unreadable
from journal_tools.quantities.weighed_yarn import read_weighed
from journal_tools.quantities.yarn_systems import show_grist

_UNEQUAL = re.compile(r" *unequal pl(?:y|ies)(?: of)? *:?", re.I)
_BESIDE = re.compile(r"(.*[A-Za-z0-9])(?:[,;] +| \()([^()]+)\)?")  # 8/2 cotton, 3360 yd/lb
_LETTERS = re.compile(r"[A-Za-z]{2,}")
_FINEST, _THICKEST = Fraction(1, 2), Fraction(100_000)  # tex: spider silk and ships' rope lie beyond


def read_yarn(flat: str, start: int, fibre: str | None, units: Units) -> tuple[Fraction, int | None, str, bool]:
    """Tex, plies, how it was read, and whether it was measured. Raises Unreadable.

    flat: a plain text, to be read from `start`. fibre: what the yarn is said to be elsewhere.
    """
    tex, plies, words, measured = _read(flat, start, fibre, units)
    if not _FINEST <= tex <= _THICKEST:
        kind = "finer" if tex < _FINEST else "thicker"
        raise Unreadable(flat, f"That would be {show_grist(tex)}, {kind} than any yarn. Write it like {EXAMPLE}.")
    return tex, plies, words, measured


def _read(flat: str, start: int, fibre: str | None, units: Units) -> tuple[Fraction, int | None, str, bool]:
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
