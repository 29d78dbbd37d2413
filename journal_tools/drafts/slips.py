"""Slips in a long order of threads: wrong, crossed, missing or too many in a repeat that otherwise holds."""

from __future__ import annotations

from collections.abc import Hashable, Iterator, Sequence
from dataclasses import dataclass, replace
from operator import eq
from typing import Generic, Literal, TypeVar

from journal_tools.drafts.repeat import period

Thread = TypeVar("Thread", bound=Hashable)

LEAST_TIMES = 2
"""Repeats that must hold before one that does not is taken for a slip (judgement)."""

LONGEST = 200
"""The longest repeat that is looked for."""

HELD_ON = 12
"""Threads of a repeat from which on it must hold once after a slip, a shorter one twice as long or so many; and from
which on several threads in a row that differ are one slip (judgement)."""

A_WARP = 60
"""Threads from which on an order is more than one repeat, and half of it must repeat but for slips; a shorter one must
as a whole (judgement)."""

MOST = 4
"""Slips in one order; more are a pattern (judgement)."""

LARGEST_JUMBLE = 6
"""Threads in a row that differ from the other repeats and are one slip (judgement)."""

Kind = Literal["wrong", "crossed", "missing", "extra", "differ"]


@dataclass(frozen=True)
class Slip(Generic[Thread]):
    """kind: "wrong", "crossed" (with the next), "missing" (before this place), "extra" or "differ" (several).

    place: from 0. repeat: its length. read: the thread that stands there, right: the one that the repeat wants; None
    where there is none, or several. threads: how many stand wrong, 0 for a missing one.
    """

    kind: Kind
    place: int
    repeat: int
    read: Thread | None
    right: Thread | None
    threads: int = 1


def slip_in(order: Sequence[Thread]) -> Slip[Thread] | None:
    """The first of the slips in an order, None where there are none."""
    return next(iter(slips_in(order)), None)


def slips_in(order: Sequence[Thread]) -> tuple[Slip[Thread], ...]:
    """The slips, four at most, without which an order, or most of it, would repeat; none where it does already.

    Somewhere two whole repeats must hold. What is the same read inward from both edges, as a border at both or the
    middle of a pattern that is its own mirror image, is meant; so is what comes again and again.
    """
    if period(order) < len(order):
        return ()
    alike = next((n for n in range(len(order)) if order[n] != order[-1 - n]), len(order))
    for length in range(2, min(LONGEST, len(order) // (LEAST_TIMES + 1)) + 1):
        found, unit, explained = _slips_of(order, length)
        enough = len(order) if len(order) < A_WARP else len(order) / 2
        if not found or len(found) > MOST or explained < enough:
            continue
        found = [slip for slip in found if not _is_mirrored(slip, len(order), alike)]
        return () if not found or _is_meant(found, unit) else tuple(found)
    return ()


def _slips_of(order: Sequence[Thread], length: int) -> tuple[list[Slip[Thread]], frozenset[Thread], int]:
    """The slips in a repeat of this length, its different threads, and how many threads it explains with them."""
    nothing: tuple[list[Slip[Thread]], frozenset[Thread], int] = [], frozenset(), 0
    holds = bytes(map(eq, order[length:], order))
    run = max(holds.split(b"\0"), key=len)
    if len(run) < (LEAST_TIMES - 1) * length:
        return nothing
    start = holds.index(run)
    stop, size = start + len(run) + length, len(order)
    unit = frozenset(order[start : start + length])
    if len(unit) < 2 or _is_several(order[start : start + length]):
        return nothing
    after, last = _onward(order, start, stop, length)
    before, first = _onward(order[::-1], size - stop, size - start, length)
    return [*(_turned(slip, size) for slip in reversed(before)), *after], unit, last - (size - first)


def _is_several(unit: Sequence[Thread]) -> bool:
    """Whether a repeat is itself a shorter one, a whole number of times."""
    shorter = period(unit)
    return shorter < len(unit) and len(unit) % shorter == 0


def _turned(slip: Slip[Thread], size: int) -> Slip[Thread]:
    """A slip of an order that was read backwards."""
    there = replace(slip, place=size - slip.place - slip.threads)
    return replace(there, read=slip.right, right=slip.read) if slip.kind == "crossed" else there


def _onward(order: Sequence[Thread], start: int, at: int, length: int) -> tuple[list[Slip[Thread]], int]:
    """The slips from a place on, before which a repeat holds from `start`, and how far it holds with them."""
    found: list[Slip[Thread]] = []
    unit = [*order[start : start + length]]
    phase = (at - start) % length
    while at < len(order) and len(found) <= MOST:
        mended = next(_mends(order, at, [*unit[phase:], *unit[:phase]]), None)
        if mended is None:
            break
        slip, held = mended
        found.append(slip)
        at += slip.threads + held
        phase = (phase + _meant(slip) + held) % length
    return found, at


def _mends(order: Sequence[Thread], at: int, unit: Sequence[Thread]) -> Iterator[tuple[Slip[Thread], int]]:
    """The slips that explain a break where a unit is wanted, the plainest first, with how many threads hold then."""
    length, left = len(unit), len(order) - at
    enough = max(length, min(2 * length, HELD_ON))

    def tried(kind: Kind, threads: int, read: Thread | None, right: Thread | None, least: int) -> Iterator[
        tuple[Slip[Thread], int]
    ]:
        slip = Slip(kind, at, length, read, right, threads)
        held = _held(order, at + threads, unit, _meant(slip))
        if held >= enough or (held == left - threads and left >= least):
            yield slip, held

    yield from tried("wrong", 1, order[at], unit[0], 3)
    if left > 1 and (order[at], order[at + 1]) == (unit[1], unit[0]):
        yield from tried("crossed", 2, order[at], order[at + 1], 4)
    # A last part that goes another way is a border, and no slip.
    yield from tried("missing", 0, None, unit[0], length)
    yield from tried("extra", 1, order[at], None, length)
    for threads in range(2, min(LARGEST_JUMBLE if length >= HELD_ON else 0, left - length) + 1):
        if order[at + threads - 1] != unit[threads - 1]:
            yield from tried("differ", threads, None, None, left)


def _meant(slip: Slip[Thread]) -> int:
    """How many threads of the repeat should stand where a slip is."""
    return {"missing": 1, "extra": 0}.get(slip.kind, slip.threads)


def _held(order: Sequence[Thread], at: int, unit: Sequence[Thread], phase: int) -> int:
    """For how many threads from a place on an order goes as a unit does from a phase on."""
    length = len(unit)
    wrong = (n for n in range(at, len(order)) if order[n] != unit[(phase + n - at) % length])
    return next(wrong, len(order)) - at


def _is_mirrored(slip: Slip[Thread], size: int, alike: int) -> bool:
    """Whether a slip and all between it and the nearer edge are the same from the other edge."""
    beside = 1 if slip.kind == "missing" else 0  # a gap is between two threads, which must both be the same
    last = max(slip.threads, 1)
    return min(slip.place + last, size - slip.place + beside) <= alike


def _is_meant(found: Sequence[Slip[Thread]], unit: frozenset[Thread]) -> bool:
    """Whether several slips are a pattern: all the same, with a thread of their own, or in a repeat of two."""
    if len(found) == 1:
        return False
    kinds = {(slip.kind, slip.read, slip.right) for slip in found}
    of_its_own = [slip for slip in found if slip.read is not None and slip.read not in unit]
    return found[0].repeat == 2 or len(of_its_own) > 1 or (len(found) > 2 and len(kinds) == 1)
