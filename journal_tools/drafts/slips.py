"""A slip in a long order of threads: one thread wrong, missing or too many in a repeat that otherwise holds."""

from __future__ import annotations

from collections.abc import Hashable, Sequence
from dataclasses import dataclass
from typing import Generic, Literal, TypeVar

from journal_tools.drafts.repeat import period

Thread = TypeVar("Thread", bound=Hashable)

LEAST_TIMES = 2
"""Repeats that must hold before one that does not is taken for a slip (judgement)."""

LONGEST = 200
"""The longest repeat that is looked for."""


@dataclass(frozen=True)
class Slip(Generic[Thread]):
    """kind: "wrong", "missing" (before this place) or "extra". place: from 0. repeat: its length.
    read: the thread that stands there, right: the one that the repeat wants; None where there is none."""

    kind: Literal["wrong", "missing", "extra"]
    place: int
    repeat: int
    read: Thread | None
    right: Thread | None


def slip_in(order: Sequence[Thread]) -> Slip[Thread] | None:
    """The one slip that would make an order repeat throughout, None where it does already or no one slip explains it.

    Only a break after two whole repeats is found, or, read backwards, before two. What is the same read inward
    from both edges, as a border at both or the middle of a pattern that is its own mirror image, is meant.
    """
    if _holds(order):
        return None
    found = _forward(order) or _backward(order)
    return None if found is None or _is_mirrored(order, found) else found


def _backward(order: Sequence[Thread]) -> Slip[Thread] | None:
    back = _forward(order[::-1])
    if back is None:
        return None
    place = len(order) - back.place - (0 if back.kind == "missing" else 1)
    return Slip(back.kind, place, back.repeat, back.read, back.right)


def _is_mirrored(order: Sequence[Thread], slip: Slip[Thread]) -> bool:
    """Whether a slip and all between it and the nearer edge are the same from the other edge."""
    alike = next((n for n in range(len(order)) if order[n] != order[-1 - n]), len(order))
    beside = 1 if slip.kind == "missing" else 0  # a gap is between two threads, which must both be the same
    return min(slip.place + 1, len(order) - slip.place + beside) <= alike


def _holds(order: Sequence[Thread]) -> bool:
    """Whether an order repeats already, at least twice."""
    return period(order) < len(order)


def _forward(order: Sequence[Thread]) -> Slip[Thread] | None:
    size = len(order)
    for length in range(2, min(LONGEST, size // (LEAST_TIMES + 1)) + 1):
        if len(set(order[:length])) < 2:
            continue
        place = next((n for n in range(length, size) if order[n] != order[n - length]), size)
        if place < LEAST_TIMES * length or place == size:
            continue
        right = order[place - length]
        rest = order[place:]
        unit = order[:length]
        wanted = [unit[(place + n) % length] for n in range(len(rest) + 2)]
        if len(rest) > 2 and list(rest[1:]) == wanted[1 : len(rest)]:
            return Slip("wrong", place, length, order[place], right)
        if len(rest) < length:
            continue  # a last part that goes another way is a border, and no slip
        if list(rest) == wanted[1 : len(rest) + 1]:
            return Slip("missing", place, length, None, right)
        if list(rest[1:]) == wanted[: len(rest) - 1]:
            return Slip("extra", place, length, order[place], None)
    return None
