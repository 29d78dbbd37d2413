"""What comes again and again in a row of threads, wherever in the row it begins."""

from __future__ import annotations

from collections.abc import Hashable, Sequence
from dataclasses import dataclass
from typing import Generic, TypeVar

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
    text = _lettered(items)
    found: list[Run[T]] = []
    waiting = [(0, len(items))]
    while waiting:
        start, end = waiting.pop()
        at, length, times = _best(text[start:end])
        if times < 2:
            if end > start:
                found.append(Run(tuple(items[start:end]), 1))
            continue
        first, last = start + at, start + at + length * times
        if first > start:  # what stands before it comes first: its turn is after this one, on the pile
            waiting += [(last, end), (first, last), (start, first)]
        else:
            found.append(Run(tuple(items[first : first + length]), times))
            waiting.append((last, end))
    return tuple(found)


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


def _best(text: str) -> tuple[int, int, int]:
    """(place, length, times) of the repeat that saves most; times 1 where nothing is repeated."""
    best, saved = (0, len(text), 1), 0
    for at in range(len(text)):
        if len(text) - at <= saved:
            break
        length, times = _best_at(text, at)
        if length * (times - 1) > saved:
            best, saved = (at, length, times), length * (times - 1)
    return best


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
