"""Reads a list of items with commas, brackets and repeats; what an item is, its caller knows.

sequence = item { "," item }
item     = [ number "times" | "mirrored" | "pointed" ] "(" sequence ")" | thread
"""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import TypeVar

from journal_tools.quantities import Unreadable

Thread = TypeVar("Thread")

MOST_THREADS = 20_000
"""The longest sequence that is read: 40 in of cloth at 500 threads to the inch."""

_BLANK = re.compile(r"\s*")
_REPEAT = re.compile(r"([0-9]+)\s*times\s*\(")
_FOLD = re.compile(r"(mirrored|pointed)\s*\(")
_BARE_FOLD = re.compile(r"\b(?:mirrored|pointed)\b(?!\s*\()")
_ODD_REPEAT = re.compile(r"\b([0-9]+)\s*(?:time|[xX×*])?\s*\(")
_BARE_REPEAT = re.compile(r"\b[0-9]+\s*times\b(?!\s*\()")
_WORD = re.compile(r"[^\s,()]+")
_DASHES = str.maketrans("–—−‐‑", "-----")  # what phones and word processors make of a hyphen


def read_sequence(
    text: str, thread: Callable[[str, int], tuple[list[Thread], int] | None], wanted: str, example: str
) -> tuple[Thread, ...]:
    """Every thread of a sequence, its repeats written out.

    thread: reads the item at a column of the text; gives its threads and the column after it, or
    None where there is no such item. wanted, example: what an item is, in words and in notation.
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
            times = how_many(text, repeat.group(1), column) if repeat else 1
            outer.append((end - 1, times, fold.group(1) if fold else "", items))
            items = []
        elif expecting:
            found = thread(plain, column)
            if found is None:
                raise _no_item(text, plain, column, wanted, example)
            items += found[0]
            end, expecting = found[1], False
        elif mark == ",":
            end, expecting = column + 1, True
        elif mark == ")" and outer:
            _, times, way, before = outer.pop()
            inside = folded(items, way) if way else items
            _refuse_long(text, len(before) + times * len(inside))
            items, end = before + times * inside, column + 1
        else:
            comma_helps = mark == "(" or (mark != ")" and thread(plain, column) is not None)
            raise _no_item(text, plain, column, wanted, example, comma_helps)
        _refuse_long(text, len(items))
        column = _skip(plain, end)
    if outer:
        opened = outer[-1][0]
        right = f"There is a bracket opened at column {opened + 1} that nothing closes."
        raise Unreadable(text, right, opened, text.rstrip() + ")" * len(outer))
    return tuple(items)


def folded(items: list[Thread], way: str) -> list[Thread]:
    """Threads and then the same backwards; "pointed": turning on the last, which stands once, "mirrored": twice."""
    return items + (items[-2::-1] if way == "pointed" else items[::-1])


def how_many(text: str, digits: str, column: int) -> int:
    """A number of threads or of repeats, at least 1. Raises Unreadable."""
    here = f"at column {column + 1}"
    if len(digits) > len(str(MOST_THREADS)) or int(digits) > MOST_THREADS:
        raise Unreadable(text, f"The number {here} is too large: {MOST_THREADS:,} threads at most.", column)
    if not int(digits):
        raise Unreadable(text, f"None at all {here}: leave it out, or write how many.", column)
    return int(digits)


def _skip(plain: str, column: int) -> int:
    found = _BLANK.match(plain, column)
    return found.end() if found else column


def _refuse_long(text: str, length: int) -> None:
    if length > MOST_THREADS:
        right = f"That is {length:,} threads; {MOST_THREADS:,} are read at most. Write one repeat."
        raise Unreadable(text, right)


def _no_item(text: str, plain: str, column: int, wanted: str, example: str, comma_helps: bool = False) -> Unreadable:
    """What to say of the first character that cannot be where it stands.

    comma_helps: whether an item has just ended and another begins here.
    """
    here = f"at column {column + 1}"
    for odd in _ODD_REPEAT.finditer(plain):
        if odd.start() <= column < odd.end():
            mended = f"{text[: odd.start()]}{odd.group(1)} times {text[odd.end() - 1 :]}"
            repeat = f"{odd.group(1)} times (…)"
            right = f'A repeat is written with "times", at column {odd.start() + 1}: {repeat}.'
            return Unreadable(text, right, odd.start(), mended)
    for bare in _BARE_REPEAT.finditer(plain):
        if bare.start() <= column < bare.end():
            bracket = f"{bare.group()} ({example})"
            right = f"What is repeated stands in brackets, at column {bare.end() + 1}: {bracket}."
            return Unreadable(text, right, bare.end())
    for bare in _BARE_FOLD.finditer(plain):
        if bare.start() <= column < bare.end():
            turned, where = bare.group(), f"at column {bare.end() + 1}"
            right = f"What is {turned} stands in brackets, {where}: {turned} ({example})."
            return Unreadable(text, right, bare.end())
    mark = plain[column : column + 1]
    if mark == "" and text.rstrip().endswith(","):
        right = f"Nothing stands after the last comma. {wanted} there, or no comma."
        return Unreadable(text, right, column, text.rstrip().removesuffix(","))
    if mark == "":
        return Unreadable(text, f"Nothing stands after the last bracket. {wanted} there.", column)
    if mark == ",":
        right = f"Nothing stands before the comma {here}. {wanted} there, or one comma less."
        return Unreadable(text, right, column, text[:column] + text[column + 1 :])
    if mark == ")" and "(" in plain[:column]:
        return Unreadable(text, f"Nothing stands before the bracket closed {here}. {wanted} there.", column)
    if mark == ")":
        right = f"There is a bracket closed {here} that nothing opens."
        return Unreadable(text, right, column, text[:column] + text[column + 1 :])
    word = _WORD.match(plain, column)
    read = f'"{word.group()[:30]}"' if word else "the bracket"
    if comma_helps:
        mended = f"{text[:column].rstrip()}, {text[column:]}"
        return Unreadable(text, f"A comma is wanted before {read} {here}.", column, mended)
    right = f"{read[0].upper()}{read[1:]} {here} cannot be read. {wanted}, such as {example}."
    return Unreadable(text, right, column)
