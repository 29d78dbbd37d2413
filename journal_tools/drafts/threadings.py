"""Names that are a threading's, which is treadled as one likes: they say little of how the cloth is woven."""

from __future__ import annotations

import re
from collections.abc import Sequence

from journal_tools.drafts.repeat import period

Ends = Sequence[frozenset[int]]

NAMES = ("rosepath", "honeysuckle", "monks belt", "overshot", "crackle", "summer and winter", "ms and os")
"""Names of threadings (common practice, no source)."""

KNOWN = {"rosepath": (1, 2, 3, 4, 3, 2, 1, 4)}
"""One repeat of those that are always threaded alike, on whichever shaft they begin (common practice, no source)."""

MOST = 200
"""Ends of a repeat that is compared."""


def is_of_a_threading(said: str) -> bool:
    """Whether what a weave is said to be is the name of a threading."""
    return any(name in _folded(said) for name in NAMES)


def is_called(said: str, found: str) -> bool:
    """Whether a cloth of such a threading was found under the name that it is said to have."""
    return any(name in _folded(said) and name in _folded(found) for name in NAMES)


def threaded_as(said: str, threading: Ends) -> bool | None:
    """Whether a draft is threaded as it is said to be; None where nobody can tell.

    Begun at another end or shaft or read backwards, with an end that closes it or without, it is the same.
    """
    known = next((ends for name, ends in KNOWN.items() if name in _folded(said)), None)
    if known is None or len(threading) > MOST:
        return None
    once = period(threading)
    if once == len(threading) and len(threading) % 2 and threading[0] == threading[-1]:
        once -= 1
    return _shape(threading[:once]) == _shape([frozenset({shaft}) for shaft in known])


def _folded(said: str) -> str:
    return re.sub("['’]", "", said.lower()).replace("-", " ").replace("rose path", "rosepath")


def _shape(order: Ends) -> tuple[int, ...]:
    """An order that goes round, by which of its threads are the same: the least of all its ways to be written."""
    found = []
    for way in (order, order[::-1]):
        for start in range(len(way)):
            number: dict[frozenset[int], int] = {}
            turned = [*way[start:], *way[:start]]
            found.append(tuple(number.setdefault(each, len(number)) for each in turned))
    return min(found)
