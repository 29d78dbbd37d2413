"""What comes again and again in a row of threads, wherever in the row it begins."""

from __future__ import annotations

from bisect import bisect
from collections.abc import Hashable, Sequence
from dataclasses import dataclass
from heapq import heapify, heappop, heappush
from typing import Generic, TypeVar

from journal_tools.notation.periods import periods

T = TypeVar("T", bound=Hashable)

_MOST_TRIED = 60
"""Repeat lengths tried at one place: more would find little, and make a long row without repeats slow."""


@dataclass(frozen=True)
class Run(Generic[T]):
    """A block that stands so many times, one after the other; once where nothing is repeated."""

    block: tuple[T, ...]
    times: int

    @property
    def length(self) -> int:
        """Items in all."""
        return len(self.block) * self.times


def runs_of(items: Sequence[T]) -> tuple[Run[T], ...]:
    """The row as blocks and how often each stands; put together again they are the row.

    The repeat that covers most is taken first, the earliest and shortest of equals, then what stands
    before and after it is treated alike.
    """
    offers = [_offer(start, end, length) for start, end, length in periods(_lettered(items))]
    heapify(offers)
    taken: list[tuple[int, int, int]] = []  # the repeats that are kept, by place: begin, end, length of the block
    while offers:
        _, start, length, end = heappop(offers)
        at = bisect(taken, (start, len(items) + 1, 0))
        beside = next((kept for kept in taken[max(0, at - 1) : at + 1] if kept[0] < end and start < kept[1]), None)
        if beside is None:
            taken.insert(at, (start, end - (end - start) % length, length))
            continue
        for begin, stop in ((start, beside[0]), (beside[1], end)):  # what stands before and after it
            if stop - begin >= 2 * length:
                heappush(offers, _offer(begin, stop, length))
    found: list[Run[T]] = []
    before = 0
    for begin, stop, length in [*taken, (len(items), len(items), 1)]:
        if begin > before:
            found.append(Run(tuple(items[before:begin]), 1))
        if stop > begin:
            found.append(Run(tuple(items[begin : begin + length]), (stop - begin) // length))
        before = stop
    return tuple(found)


def _offer(start: int, end: int, length: int) -> tuple[int, int, int, int]:
    """A repeat among others, that which saves most first, then the earliest, then the shortest."""
    return length - (end - start) // length * length, start, length, end


def root_of(items: Sequence[T]) -> tuple[T, ...]:
    """The shortest block that, repeated whole, makes the row."""
    for length in range(1, len(items) // 2 + 1):
        if len(items) % length == 0 and tuple(items[:length]) * (len(items) // length) == tuple(items):
            return tuple(items[:length])
    return tuple(items)


def runs_from_left(items: Sequence[T]) -> tuple[Run[T], ...]:
    """The row as blocks, taking at each place in turn the repeat that begins there and covers most."""
    text = _lettered(items)
    found: list[Run[T]] = []
    begun = at = 0
    while at < len(items):
        length, times = _best_at(text, at)
        if times < 2:
            at += 1
            continue
        if at > begun:
            found.append(Run(tuple(items[begun:at]), 1))
        found.append(Run(tuple(items[at : at + length]), times))
        begun = at = at + length * times
    if at > begun:
        found.append(Run(tuple(items[begun:at]), 1))
    return tuple(found)


def _lettered(items: Sequence[Hashable]) -> str:
    """The row as text, a letter for each kind of item: str finds and compares far faster than a loop."""
    letters = {item: chr(0x100 + n) for n, item in enumerate(dict.fromkeys(items))}
    return "".join(letters[item] for item in items)


def _best_at(text: str, at: int) -> tuple[int, int]:
    """(length, times) of the repeat that begins at a place and saves most; times 1 where none does."""
    best, saved, next_at = (0, 1), 0, at
    for _ in range(_MOST_TRIED):
        next_at = text.find(text[at], next_at + 1)
        length = next_at - at
        if next_at < 0 or next_at + length > len(text):
            break
        block, times = text[at:next_at], 1
        while text.startswith(block, at + length * times):
            times += 1
        if length * (times - 1) > saved:
            best, saved = (length, times), length * (times - 1)
    return best
