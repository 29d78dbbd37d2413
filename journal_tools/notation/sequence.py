"""Reads a list of items with commas, brackets and repeats; what an item is, its caller knows.

sequence = item { "," item }
item     = [ number "times" | "mirrored" | "pointed" ] "(" sequence ")" | thread
"""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import TypeVar

from journal_tools.notation.slips import Blanks, slip
from journal_tools.quantities import Unreadable

Thread = TypeVar("Thread")

MOST_THREADS = 20_000
"""The longest sequence that is read: 40 in of cloth at 500 threads to the inch."""

_BLANK = re.compile(r"\s*")
_REPEAT = re.compile(r"([0-9]+)\s*times\s*\(", re.I)
_FOLD = re.compile(r"(mirrored|pointed)\s*\(", re.I)
_DASHES = str.maketrans("–—−‐‑", "-----")  # what phones and word processors make of a hyphen


def read_sequence(
    text: str,
    thread: Callable[[str, int], tuple[list[Thread], int] | None],
    wanted: str,
    example: str,
    counted: str = "threads",
    blanks: Blanks | None = None,
) -> tuple[Thread, ...]:
    """Every thread of a sequence, its repeats written out.

    thread: reads the item at a column of the text; gives its threads and the column after it, or
    None where there is no such item. wanted, example: what an item is, in words and in notation. counted: what
    the list is a list of. blanks: what is meant by blanks between numbers.
    Raises Unreadable for anything else, and for more than MOST_THREADS.
    """
    plain = text.translate(_DASHES)  # one character for one, so that columns stay
    items: list[Thread] = []
    outer: list[tuple[int, int, str, list[Thread]]] = []  # a bracket's column, times, fold, what stood before
    column, expecting = _skip(plain, 0), True
    if column == len(plain):
        raise Unreadable(text, f"Nothing is written here. It looks like this: {example}.")
    while expecting or column < len(plain):
        repeat, fold = _REPEAT.match(plain, column), _FOLD.match(plain, column)
        mark = plain[column : column + 1]
        if expecting and (repeat or fold or mark == "("):
            opened_by = repeat or fold
            end = opened_by.end() if opened_by else column + 1
            times = how_many(text, repeat.group(1), column, counted) if repeat else 1
            outer.append((end - 1, times, fold.group(1).lower() if fold else "", items))
            items = []
        elif expecting:
            found = thread(plain, column)
            if found is None:
                raise slip(text, plain, column, wanted, example, False)
            items += found[0]
            end, expecting = found[1], False
        elif mark == ",":
            end, expecting = column + 1, True
        elif mark == ")" and outer:
            _, times, way, before = outer.pop()
            inside = folded(items, way) if way else items
            _refuse_long(text, len(before) + times * len(inside), counted)
            items, end = before + times * inside, column + 1
        else:
            comma_helps = mark == "(" or (mark != ")" and thread(plain, column) is not None)
            raise slip(text, plain, column, wanted, example, comma_helps, blanks)
        _refuse_long(text, len(items), counted)
        column = _skip(plain, end)
    if outer:
        opened = outer[-1][0]
        right = f"There is a bracket opened at column {opened + 1} that nothing closes."
        raise Unreadable(text, right, opened, text.rstrip() + ")" * len(outer))
    return tuple(items)


def folded(items: list[Thread], way: str) -> list[Thread]:
    """Threads and then the same backwards; "pointed": turning on the last, which stands once, "mirrored": twice."""
    return items + (items[-2::-1] if way == "pointed" else items[::-1])


def how_many(text: str, digits: str, column: int, counted: str = "threads") -> int:
    """A number of threads or of repeats, at least 1. Raises Unreadable."""
    here = f"at column {column + 1}"
    if len(digits) > len(str(MOST_THREADS)) or int(digits) > MOST_THREADS:
        raise Unreadable(text, f"The number {here} is too large: {MOST_THREADS:,} {counted} at most.", column)
    if not int(digits):
        raise Unreadable(text, f"None at all {here}: leave it out, or write how many.", column)
    return int(digits)


def _skip(plain: str, column: int) -> int:
    found = _BLANK.match(plain, column)
    return found.end() if found else column


def _refuse_long(text: str, length: int, counted: str) -> None:
    if length > MOST_THREADS:
        right = f"That is {length:,} {counted}; {MOST_THREADS:,} are read at most. Write one repeat."
        raise Unreadable(text, right)
