"""A yarn's number in tex, decitex or denier: 20 tex x 2, R74 tex/2, 150 denier.

Singles and plies ("20 tex x 2") and the number of the finished yarn ("R 40 tex / 2") are the two
forms of the tex system; both from memory of ISO 1139.
"""

from __future__ import annotations

import re
from fractions import Fraction
from math import prod

from journal_tools.quantities.number import read_number
from journal_tools.quantities.units import Units
from journal_tools.quantities.unreadable import Ambiguous, Unreadable
from journal_tools.quantities.yarn_labels import FIBRE_WORDS, OTHER_WORDS
from journal_tools.quantities.yarn_systems import SYSTEMS, show_grist

_EXAMPLE = "74 tex, 20 tex x 2 or R 40 tex / 2"
_UNITS = {
    "tex": "tex",
    **dict.fromkeys(("dtex", "decitex"), "dtex"),
    **dict.fromkeys(("den", "denier", "deniers"), "denier"),
}
_NUMBER = r"([0-9]+(?:[.,][0-9]+)*)"
_UNIT = r"(?: ?(tex|dtex|decitex|den|denier|deniers) ?)?"
_HAS_UNIT = re.compile(r"(?<![a-z])(?:tex|dtex|decitex|den|deniers?)(?![a-z])", re.I)
_FINISHED = re.compile(rf" *R{_UNIT} ?{_NUMBER}{_UNIT}(?: ?/ ?([0-9]{{1,2}}))?{_UNIT} *", re.I)
_SINGLES = re.compile(rf" *{_UNIT} ?{_NUMBER}{_UNIT}((?: ?x ?[0-9]{{1,2}}(?![0-9]))*){_UNIT} *", re.I)
_SLASH = re.compile(rf" *{_UNIT} ?{_NUMBER}{_UNIT} ?/ ?([0-9]+){_UNIT} *", re.I)
_WORD = re.compile(r"[A-Za-z]+")


def read_direct(flat: str, start: int, units: Units) -> tuple[Fraction, int | None, str] | None:
    """Tex, plies and words, or None where no such unit stands in the plain text. Raises Unreadable."""
    if not _HAS_UNIT.search(flat, start):
        return None
    # Blanks in the place of words keep every column.
    bare = _WORD.sub(lambda m: " " * len(m.group()) if _is_aside(m.group()) else m.group(), flat)
    bare = bare.rstrip(" ,.")
    if found := _FINISHED.fullmatch(bare, start):
        before, number, between, plies, after = found.groups()
        size, unit = _size(flat, found.start(2), number, (before, between, after), units)
        said = f"{size} {unit} in all"
        if plies is None:
            return SYSTEMS[unit].tex_of(size), None, said
        count = _plies(flat, found.start(4), [plies])
        return SYSTEMS[unit].tex_of(size), count, f"{said}, of {count} plies"
    if found := _SINGLES.fullmatch(bare, start):
        before, number, between, times, after = found.groups()
        size, unit = _size(flat, found.start(2), number, (before, between, after), units)
        tex = SYSTEMS[unit].tex_of(size)
        if not times:
            return tex, None, f"{size} {unit}"
        count = _plies(flat, found.start(4), re.findall("[0-9]+", times))
        return tex * count, count, f"{count} plies of {size} {unit}"
    if found := _SLASH.fullmatch(bare, start):
        before, number, between, plies, after = found.groups()
        size, unit = _size(flat, found.start(2), number, (before, between, after), units)
        single = SYSTEMS[unit].tex_of(size)
        count = _plies(flat, found.start(4), [plies])
        raise Ambiguous(
            flat,
            f"Is {number} {unit} the single or the plied yarn? "
            f"Write {number} {unit} x {plies} ({show_grist(single * count, units)}) "
            f"or R {number} {unit} / {plies} ({show_grist(single, units)}).",
            found.start(2),
        )
    raise Unreadable(flat, f"Such a yarn number looks like {_EXAMPLE}.", start)


def _is_aside(word: str) -> bool:
    return word.lower() in FIBRE_WORDS or word.lower() in OTHER_WORDS


def _size(flat: str, start: int, number: str, named: tuple[str | None, ...], units: Units) -> tuple[Fraction, str]:
    """The number, above zero, and its one unit."""
    names = [_UNITS[n.lower()] for n in named if n]
    if len(names) != 1:
        raise Unreadable(flat, f"One unit is wanted, such as {_EXAMPLE}.", start)
    try:
        size = read_number(number, 0, units, _EXAMPLE).value
    except Unreadable as problem:
        raise Unreadable(flat, problem.right, start) from None
    if not size:
        raise Unreadable(flat, f"No yarn weighs nothing. Write it like {_EXAMPLE}.", start)
    return size, names[0]


def _plies(flat: str, start: int, typed: list[str]) -> int:
    """The plies; a cabled yarn ("20 tex x 2 x 3") has several numbers of them."""
    count = prod(int(n) for n in typed)
    if not count:
        raise Unreadable(flat, f"A yarn has at least one ply. Write it like {_EXAMPLE}.", start)
    return count
