"""What is said of the first character of a list that cannot be where it stands, and what would be right."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass

from journal_tools.quantities import Unreadable

_ODD_REPEAT = re.compile(r"\b([0-9]+)\s*(?:(?:time|[x×*])\s*)?\(", re.I)
_TIMES = r"(?:times\b|x(?![^\W\d_])|[×*])"
_REPEAT = re.compile(rf"([0-9]+)\s*{_TIMES}(?:\s*(\S.*))?$", re.I)
_REPEAT_BEHIND = re.compile(rf"(.*?\S)?\s*{_TIMES}\s*([0-9]+)$", re.I)
_BARE_FOLD = re.compile(r"\b(?:mirrored|pointed)\b(?!\s*\()", re.I)
_WORD = re.compile(r"[^\s,()]+")

LONGEST_ITEM = 80
"""Letters of an item that is looked through for what was meant."""


@dataclass(frozen=True)
class Blanks:
    """What blanks between numbers mean. mended: the whole text as it is meant, "" where that cannot be known.

    said: one more sentence on them, with a blank before it.
    """

    mended: Callable[[str], str]
    said: str = ""


def slip(
    text: str, plain: str, column: int, wanted: str, example: str, comma_helps: bool, blanks: Blanks | None = None
) -> Unreadable:
    """What to say. text: as typed. plain: the same with plain hyphens, letter for letter.

    wanted, example: what an item is, in words and in notation. comma_helps: whether an item has just ended
    and another begins here. blanks: what is meant by blanks between numbers.
    """
    here = f"at column {column + 1}"
    for odd in _ODD_REPEAT.finditer(plain):
        if odd.start() <= column < odd.end():
            mended = f"{text[: odd.start()]}{odd.group(1)} times {text[odd.end() - 1 :]}"
            repeat = f"{odd.group(1)} times (…)"
            right = f'A repeat is written with "times", at column {odd.start() + 1}: {repeat}.'
            return Unreadable(text, right, odd.start(), mended)
    if (repeated := _repeat_without_brackets(text, plain, column, example)) is not None:
        return repeated
    for bare in _BARE_FOLD.finditer(plain):
        if bare.start() <= column < bare.end():
            turned, where = bare.group().lower(), f"at column {bare.end() + 1}"
            right = f"What is {turned} stands in brackets, {where}: {turned} ({example})."
            return Unreadable(text, right, bare.end())
    mark = plain[column : column + 1]
    if mark in (";", "|"):
        right = f'A comma is wanted in place of "{mark}" {here}.'
        return Unreadable(text, right, column, f"{text[:column]},{text[column + 1 :]}")
    if mark in ("", ",", ")"):
        return _nothing_there(text, plain, column, wanted)
    word = _WORD.match(plain, column)
    read = f'"{word.group()[:30]}"' if word else "the bracket"
    if comma_helps:
        mended, more = f"{text[:column].rstrip()}, {text[column:]}", ""
        if blanks is not None and mark.isdigit():
            mended, more = blanks.mended(text), blanks.said
        return Unreadable(text, f"A comma is wanted before {read} {here}.{more}", column, mended)
    right = f"{read[0].upper()}{read[1:]} {here} cannot be read. {wanted}, such as {example}."
    return Unreadable(text, right, column)


def _repeat_without_brackets(text: str, plain: str, column: int, example: str) -> Unreadable | None:
    """`3 times 1-4`, `2 x 1-4`, and `1-4 times 3`."""
    start = max((plain.rfind(mark, 0, column) for mark in ",;()"), default=-1) + 1
    end = min((place for mark in ",;()" if (place := plain.find(mark, column)) >= 0), default=len(plain))
    item = plain[start:end]
    start, item = start + len(item) - len(item.lstrip()), item.strip()
    if len(item) > LONGEST_ITEM:
        return None
    if found := _REPEAT.match(item):
        number, what = found.groups()
        at = start + (found.start(2) if what else len(item))
        right = f"What is repeated stands in brackets, at column {at + 1}: {number} times ({what or example})."
        mended = f"{text[:at]}({what}){text[start + len(item) :]}" if what and not plain[end:].strip(" )") else ""
        return Unreadable(text, right, at, mended)
    if found := _REPEAT_BEHIND.match(item):
        what, number = found.groups()
        if what is not None:
            mended = f"{text[:start]}{number} times ({what}){text[start + len(item) :]}"
            right = f"How many times stands first, at column {start + 1}: {number} times ({what})."
            return Unreadable(text, right, start, mended)
        if plain[:start].rstrip().endswith(")"):
            right = f"How many times stands before the brackets, and not at column {start + 1}: {number} times (…)."
            return Unreadable(text, right, start)
    return None


def _nothing_there(text: str, plain: str, column: int, wanted: str) -> Unreadable:
    """An item is missing before a comma, a bracket or the end, or a bracket closes nothing."""
    here, mark = f"at column {column + 1}", plain[column : column + 1]
    if mark == "" and text.rstrip().endswith(","):
        right = f"Nothing stands after the last comma. {wanted} there, or no comma."
        return Unreadable(text, right, column, text.rstrip().removesuffix(","))
    if mark == "":
        return Unreadable(text, f"Nothing stands after the last bracket. {wanted} there.", column)
    without = text[:column] + text[column + 1 :]
    if mark == ",":
        right = f"Nothing stands before the comma {here}. {wanted} there, or one comma less."
        return Unreadable(text, right, column, without)
    if "(" in plain[:column]:
        return Unreadable(text, f"Nothing stands before the bracket closed {here}. {wanted} there.", column)
    return Unreadable(text, f"There is a bracket closed {here} that nothing opens.", column, without)
