"""A text is offered in place of a slip only where it reads: the slips behind the first one are mended as well."""

from __future__ import annotations

from collections.abc import Callable
from functools import wraps
from typing import TypeVar

from journal_tools.quantities import Unreadable

Read = TypeVar("Read")

MOST = 60
"""Slips of one text that are mended; a text with more is not of this notation."""


def offers_what_reads(parse: Callable[[str], Read]) -> Callable[[str], Read]:
    """A reader whose complaint offers a text that it can read, or none."""

    @wraps(parse)
    def read(text: str) -> Read:
        try:
            return parse(text)
        except Unreadable as told:
            raise Unreadable(told.read, told.right, told.column, _that_reads(told.mended, parse)) from None

    return read


def _that_reads(mended: str, parse: Callable[[str], object]) -> str:
    for _ in range(MOST):
        try:
            parse(mended)
        except Unreadable as again:
            if not again.mended:
                break
            mended = again.mended
        else:
            return mended
    return ""
