"""Ends in the dents of a reed, one dent after another: `20 times (2), none, 4 times (4)`."""

from __future__ import annotations

import re
from collections.abc import Sequence

from journal_tools.notation.lists import Sets
from journal_tools.notation.manner import Apart
from journal_tools.notation.mended import offers_what_reads
from journal_tools.notation.sequence import read_sequence
from journal_tools.notation.shorthand import shorthand
from journal_tools.quantities import Unreadable

MOST_IN_A_DENT = 100
"""Ends in one dent; more is a slip, such as a comma left out."""

EXAMPLE = "20 times (2), none, 4 times (4)"

_NONE = re.compile(r"none\b", re.I)
_NUMBER = re.compile(r"[0-9]+")
_JOINED = re.compile(r"([0-9]+)\s*([-+])\s*([0-9]+)")


@offers_what_reads
def parse_dents(text: str) -> Sets:
    """The number of ends in each dent, as a set of that one number; of an empty dent an empty set.

    `none` and 0 are an empty dent. Raises Unreadable, for runs and sums too: a dent has one number.
    """

    def dent(plain: str, column: int) -> tuple[list[frozenset[int]], int] | None:
        if none := _NONE.match(plain, column):
            return [frozenset()], none.end()
        if joined := _JOINED.match(plain, column):
            raise _one_number(text, column, *joined.groups())
        if not (found := _NUMBER.match(plain, column)):
            return None
        digits = found.group()
        if len(digits) > len(str(MOST_IN_A_DENT)) or int(digits) > MOST_IN_A_DENT:
            right = f"A dent holds {MOST_IN_A_DENT} ends at most; {digits[:30]} at column {column + 1} is more."
            raise Unreadable(text, right, column)
        return [frozenset({int(digits)} - {0})], found.end()

    return read_sequence(text, dent, "The number of ends in a dent is wanted", EXAMPLE, "dents")


def print_dents(dents: Sequence[frozenset[int]]) -> str:
    """The notation of ends in dents, as parse_dents gives them: with repeats, and no runs, for it reads none."""
    return shorthand(dents, Apart())


def _one_number(text: str, column: int, first: str, mark: str, second: str) -> Unreadable:
    """What to say of `2-4` and `2+2`."""
    way = f"write {first}, {second}, a number for each dent"
    if mark == "-":
        way = f"runs are for shafts; {way}"
    elif len(first) + len(second) < 8:
        way = f"write {int(first) + int(second)} for one dent; for two, {first}, {second}"
    right = f"A dent has one number of ends, and at column {column + 1} are two: {way}."
    return Unreadable(text, right, column)
