"""A yarn's number as on its label: 8/2 cotton, 2/20 worsted, Nm 20/2, 60 + 40 cotton."""

from __future__ import annotations

import re
from fractions import Fraction
from typing import NamedTuple

from journal_tools.quantities.number import read_number
from journal_tools.quantities.units import Units
from journal_tools.quantities.unreadable import Ambiguous, Unreadable, did_you_mean
from journal_tools.quantities.yarn_labels import (
    FIBRE_WORDS,
    LABELS,
    OTHER_WORDS,
    SYSTEM_WORDS,
    Order,
    Reading,
    family_of,
    shape_of,
)
from journal_tools.quantities.yarn_systems import SYSTEMS, show_count, show_grist

EXAMPLE = "8/2 cotton, 16/2 linen, 2/20 worsted, Nm 20/2, R74 tex/2, 3360 yd/lb or 50 m = 12.3 g"
_MOST_PLIES = 60
_COUNTED = ("no plies", "a single", "two plies", "three plies", "four plies", "five plies", "six plies")

_NUMBER = r"([0-9]+(?:[.,][0-9]+)*)"
_MARK = r"(?:('?s)(?![A-Za-z]))?"  # 40s, 40's: this is the size
_PAIR = re.compile(rf"{_NUMBER}{_MARK} ?([-/]) ?{_NUMBER}{_MARK}", re.I)
_PLIES_OF = re.compile(rf"([0-9]{{1,2}})[ -]?pl(?:y|ies)(?: of)?(?![a-z])([^0-9]*){_NUMBER}{_MARK}", re.I)
_MIXED = re.compile(r"[0-9]+[ -][0-9]+/[0-9]+|[0-9]*[½¼¾]")
_SINGLE = re.compile(rf"{_NUMBER}{_MARK}")
_PERCENT = re.compile(r"[0-9]+(?:[.,][0-9]+)? ?%")
_WORD = re.compile(r"[A-Za-z]+")
_JUNK = re.compile(r"[^A-Za-z ,.()&-]")


class _Figures(NamedTuple):
    """The figures of a label: one number, or two of which either may be the plies.

    order: where the label itself says which is which. plies: of "2 plies of 8".
    """

    first: Fraction
    second: Fraction | None
    order: Order | None
    plies: int
    others: str


class Labelled(NamedTuple):
    """One reading of a label, with its size and its plies."""

    reading: Reading
    size: Fraction
    plies: int

    @property
    def tex(self) -> Fraction:
        """Grams in 1000 m."""
        tex = SYSTEMS[self.reading.system].tex_of(self.size)
        return tex if self.reading.order is Order.FINISHED else tex * self.plies

    def written(self) -> str:
        """A label that has this reading alone."""
        written = SYSTEMS[self.reading.system].written
        size = show_count(self.size)
        if self.reading.order is Order.FINISHED:
            return f"{size}s-{self.plies} spun silk"
        if self.plies == 1:
            return written.format(size)
        size_first = self.reading.order is Order.SIZE_FIRST
        pair = (self.size, Fraction(self.plies)) if size_first else (Fraction(self.plies), self.size)
        family = next(f for f, row in LABELS.items() if {r.system for r in row["8"]} == {self.reading.system})
        if LABELS[family][shape_of(*pair)] == (self.reading,):
            return written.format("/".join(show_count(n) for n in pair))
        return f"{self.plies} plies of {written.format(size)}"

    def system(self) -> str:
        """What its system is called."""
        spun_silk = self.reading.order is Order.FINISHED
        return "spun silk count" if spun_silk else SYSTEMS[self.reading.system].words

    def words(self) -> str:
        """How it was read: "two plies of Ne 8"."""
        size = SYSTEMS[self.reading.system].written.format(show_count(self.size))
        if self.reading.order is Order.FINISHED:
            return f"{_plies_in_words(self.plies)}, {size} when finished"
        return f"{_plies_in_words(self.plies)} of {size}"


def _plies_in_words(plies: int) -> str:
    return _COUNTED[plies] if plies < len(_COUNTED) else f"{plies} plies"


def read_label(flat: str, start: int, fibre: str | None, units: Units) -> Labelled:
    """Read the plain text from `start` as a label; `fibre` is what the yarn is elsewhere said to be.

    Raises Unreadable; where there are several readings, Ambiguous, with the yards in a pound of each.
    """
    figures = _figures(flat, start, units)
    _check_words(flat, start, figures.others)
    words = [word.lower() for word in _WORD.findall(figures.others)]
    if figures.second is None and not words and figures.order is None and figures.plies == 1:
        raise Unreadable(flat, f"A bare number does not say what it counts. Write {EXAMPLE}.", start)
    family = _family(flat, words, fibre)
    found = _readings(figures, family, words)
    if not found or all(one.plies > _MOST_PLIES for one in found):
        raise Unreadable(flat, f"A yarn number looks like {EXAMPLE}.", start)
    if len(found) > 1:
        raise _several(flat, start, found, units)
    return found[0]


def _figures(flat: str, start: int, units: Units) -> _Figures:
    body = flat[:start] + _PERCENT.sub(_blank, flat[start:])
    if mixed := _MIXED.search(body, start):
        others = body[start : mixed.start()] + " " + body[mixed.end() :]
        return _Figures(_number(flat, mixed, 0, units), None, None, 1, others)
    if plied := _PLIES_OF.search(body, start):
        size = _number(flat, plied, 3, units)
        plies = int(_number(flat, plied, 1, units))
        others = f"{body[start : plied.start()]} {plied.group(2)} {body[plied.end() :]}"
        return _Figures(size, None, Order.SIZE_FIRST, plies, others)
    if pair := _PAIR.search(body, start):
        first, second = _number(flat, pair, 1, units), _number(flat, pair, 4, units)
        marks = bool(pair.group(2)), bool(pair.group(5))
        order = {(True, False): Order.SIZE_FIRST, (False, True): Order.PLIES_FIRST}.get(marks)
        if order is None and pair.group(3) == "-":
            at = pair.start(3)
            slash = flat[:at] + "/" + flat[at + 1 :]
            raise Unreadable(flat, f"Write a slash between the two numbers: {slash}.", at, slash)
        return _Figures(first, second, order, 1, body[start : pair.start()] + " " + body[pair.end() :])
    if single := _SINGLE.search(body, start):
        order = Order.SIZE_FIRST if single.group(2) else None
        others = body[start : single.start()] + " " + body[single.end() :]
        return _Figures(_number(flat, single, 1, units), None, order, 1, others)
    raise Unreadable(flat, f"A yarn number looks like {EXAMPLE}.", start)


def _blank(found: re.Match[str]) -> str:
    return " " * len(found.group())


def _number(flat: str, found: re.Match[str], group: int, units: Units) -> Fraction:
    try:
        value = read_number(found.group(group), 0, units, EXAMPLE).value
    except Unreadable as problem:
        raise Unreadable(flat, problem.right, found.start(group)) from None
    if not value:
        right = "Neither the size nor the plies can be 0. Write it like 8/2 cotton."
        raise Unreadable(flat, right, found.start(group))
    return value


def _check_words(flat: str, start: int, others: str) -> None:
    if junk := _JUNK.search(others):
        column = flat.rfind(junk.group())
        raise Unreadable(flat, f"One yarn number is wanted here, such as {EXAMPLE}.", column)
    known = {*SYSTEM_WORDS, *FIBRE_WORDS, *OTHER_WORDS}
    strange = [word for word in _WORD.findall(others) if word.lower() not in known]
    if strange:
        word = strange[0]
        column = flat.find(word, start)
        near = did_you_mean(word, known)
        mended = flat[:column] + near + flat[column + len(word) :] if near and len(strange) == 1 else ""
        right = f"Did you mean {near}?" if near else f"A yarn number looks like {EXAMPLE}."
        raise Unreadable(flat, f'"{word}" says nothing of a yarn here. {right}', column, mended)


def _family(flat: str, words: list[str], fibre: str | None) -> str:
    """The row of the table: by the system's name, else the label's fibre, else the yarn's."""
    systems = {SYSTEM_WORDS[w] for w in words if w in SYSTEM_WORDS}
    if len(systems) > 1:
        raise Unreadable(flat, "Two systems are named here, and one is wanted. Write it like Ne 8/2 or 16/2 lea.")
    if systems:
        return systems.pop()
    if any(w in FIBRE_WORDS for w in words):
        return family_of(words)
    elsewhere = [w.lower() for w in _WORD.findall(fibre or "")]
    return "worsted" if "worsted" in elsewhere else family_of(elsewhere)


def _readings(figures: _Figures, family: str, words: list[str]) -> list[Labelled]:
    row = LABELS[family]
    if figures.second is None:
        return [Labelled(reading, figures.first, figures.plies) for reading in row["8"]]
    readings = row[shape_of(figures.first, figures.second)]
    if figures.order is Order.SIZE_FIRST and family == "silk" and "spun" in words:
        readings = (Reading("Ne", Order.FINISHED),)
    elif figures.order:
        readings = tuple(Reading(single.system, figures.order) for single in row["8"])
    found = []
    for reading in readings:
        pair = figures.first, figures.second
        size, plies = reversed(pair) if reading.order is Order.PLIES_FIRST else pair
        if plies.denominator == 1:
            found.append(Labelled(reading, size, int(plies)))
    return found


def _several(flat: str, start: int, found: list[Labelled], units: Units) -> Ambiguous:
    said = [f"{one.written()} ({one.system()}, {show_grist(one.tex, units)})" for one in found]
    return Ambiguous(
        flat,
        f"It can be {', '.join(said[:-1])} or {said[-1]}. Write the one that it is, or how far it goes, "
        "such as 3360 yd/lb or 6773 m/kg.",
        start,
    )
