"""Finds repeats and mirrors in a sequence, so that 396 ends are printed as a weaver would write them."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterator, Sequence
from dataclasses import dataclass
from heapq import heappop, heappush
from typing import Generic, TypeVar

from journal_tools.notation.palindromes import widest

Item = TypeVar("Item", bound=Hashable)

_MOST_TRIED = 60
"""Repeat lengths tried at one place. More would find little and make a long random order slow."""

_WORTH_A_MIRROR = 12
"""Letters that a mirror must save: repeats are what a weaver sees first, and mirrors only where they tell more."""

_LEAST_MIRROR = 8
"""Threads that a mirror covers at least."""

_MOST_DEEP = 12
"""Mirrors within and beside one another: a weaver loses count sooner, and a long order would take for ever."""

_MOST_LATER, _LONGEST_SHIFTED = 8, 16
"""Threads by which a repeat is tried to begin later, and threads of the longest for which it is."""

_LOOSE = 8
"""Letters that must be saved where a repeat is begun later than it could be."""

_UNIT, _TORN = 4, 6
"""Threads of a unit that is kept whole, and the letters that this may cost."""


def once(item: Item) -> tuple[str, Item]:
    """How a thread is turned on: it stands once."""
    return "pointed", item


def shorthand(
    items: Sequence[Item],
    written: Callable[[Sequence[Item]], str],
    turned_on: Callable[[Item], tuple[str, Item]] = once,
) -> str:
    """The items in notation: what comes again and again stands once, in brackets; what turns, half.

    written: the notation of items that hold no repeat worth brackets. turned_on: what of an item in the
    middle of a mirror stands in its half, and the word for that. At each place the repeat that covers
    most is taken, the shortest where two cover the same, if brackets are no longer than writing it
    out, or little longer where a unit of four and more would be torn into runs. A stretch that reads
    the same backwards is written as its first half, in `pointed (…)` where it turns on one thread and
    in `mirrored (…)` where on two, if that saves a dozen letters. What the brackets hold is treated alike.
    """
    return _Printer(written, turned_on).shortest(list(items))


class _Printer(Generic[Item]):
    """Prints parts of one sequence, each different one once."""

    def __init__(
        self, written: Callable[[Sequence[Item]], str], turned_on: Callable[[Item], tuple[str, Item]]
    ) -> None:
        self._written, self._turned_on = written, turned_on
        self._known: dict[tuple[Item, ...], str] = {}
        self._deep = 0

    def shortest(self, items: list[Item]) -> str:
        key = tuple(items)
        if key not in self._known:
            plain = self._repeated(items)
            turned = ""
            if len(plain) > 2 * _WORTH_A_MIRROR and self._deep < _MOST_DEEP:
                self._deep += 1
                turned = self._mirrored(items, len(plain))
                self._deep -= 1
            self._known[key] = turned if turned and len(turned) + _WORTH_A_MIRROR <= len(plain) else plain
        return self._known[key]

    def _mirrored(self, items: list[Item], to_beat: int) -> str:
        """The items with their widest mirror as its half; "" without one."""
        start, end = widest(items)
        if end - start < _LEAST_MIRROR:
            return ""
        half, word = items[start : start + (end - start) // 2], "mirrored"
        if (end - start) % 2:
            word, middle = self._turned_on(items[start + len(half)])
            half.append(middle)
        parts = [f"{word} ({self.shortest(half)})"]
        if len(parts[0]) + _WORTH_A_MIRROR > to_beat:
            return ""
        if start:
            parts.insert(0, self.shortest(items[:start]))
        if end < len(items):
            parts.append(self.shortest(items[end:]))
        return ", ".join(parts)

    def _repeated(self, items: list[Item]) -> str:
        """The items with their repeats, each begun at that thread of its run at which the whole is shortest.

        A run of 1, 2, 1, 2, 1 is twice 1, 2 or twice 2, 1, and what stands before it and behind it may be shorter
        for the one or for the other. Ways are followed from the front, and the shortest to each place is kept; of
        equal ones that with most repeats begun at the first thread or right behind another, then that with fewest
        parts, then with fewest threads before its repeats. A repeat that could begin so and does not must save some
        letters by it.
        """
        letters = {item: chr(0x100 + n) for n, item in enumerate(dict.fromkeys(items))}
        text = "".join(letters[item] for item in items)  # str finds and compares far faster than a loop
        ways: dict[int, _Way] = {0: _Way((0, 0, 0, 0), None, ())}
        places = [0]
        while (place := heappop(places)) < len(items):
            for way, behind in self._next(items, text, place):
                whole = ways[place].behind(way)
                if behind not in ways:
                    heappush(places, behind)
                if behind not in ways or whole.cost < ways[behind].cost:
                    ways[behind] = whole
        written: list[str] = []
        back: int | None = len(items)
        while back is not None:
            written += reversed(ways[back].parts)
            back = ways[back].before
        return ", ".join(reversed(written))

    def _next(self, items: list[Item], text: str, place: int) -> Iterator[tuple[_Way, int]]:
        """From a place to behind the next repeat, at each thread it could begin: each way, and the place behind."""
        at = place
        while at < len(items):
            length, times = _longest_repeat(text, at)
            whole = length * times
            if times > 1 and (once_over := self._once_over(items, at, length, times)):
                for later in range(_cut_short(text, at, length, whole) + 1):
                    once_over = once_over or self._once_over(items, at + later, length, times)
                    begun = at + later
                    if once_over:
                        parts = (self._written(items[place:begun]), once_over) if begun > place else (once_over,)
                        torn = _LOOSE if at == place and later else 0
                        yield _Way.of(place, parts, begun - place, torn), begun + whole
                    once_over = ""
                return
            at += max(whole - length, 1)  # written out: no repeat of it begun elsewhere either
        yield _Way.of(place, (self._written(items[place:]),)), len(items)

    def _once_over(self, items: list[Item], at: int, length: int, times: int) -> str:
        """A repeat in brackets; "" where it is worth none."""
        unit = self.shortest(items[at : at + length])
        once_over = f"{times} times ({unit})"
        torn = _TORN if length >= _UNIT and "-" not in unit else 0
        return once_over if len(once_over) <= len(self._written(items[at : at + length * times])) + torn else ""


@dataclass(frozen=True)
class _Way:
    """How a place is reached. cost: letters, repeats with threads before them, parts, and those threads before.

    before: the last place. parts: what is written between the two.
    """

    cost: tuple[int, int, int, int]
    before: int | None
    parts: tuple[str, ...]

    @classmethod
    def of(cls, place: int, parts: tuple[str, ...], loose: int = 0, torn: int = 0) -> _Way:
        """The way from a place by these parts, with loose threads before the repeat, and letters lost by that."""
        return cls((sum(len(part) + 2 for part in parts) + torn, int(loose > 0), len(parts), loose), place, parts)

    def behind(self, way: _Way) -> _Way:
        """That way, begun where this one ends."""
        letters, repeats, parts, loose = (one + more for one, more in zip(self.cost, way.cost, strict=True))
        return _Way((letters, repeats, parts, loose), way.before, way.parts)


def _cut_short(text: str, at: int, length: int, whole: int) -> int:
    """By how many threads a repeat goes on behind its last whole one, so many as are tried to begin it later."""
    more = 0
    if length > _LONGEST_SHIFTED:
        return 0
    while more < min(length - 1, _MOST_LATER) and text[at + whole + more : at + whole + more + 1] == text[at + more]:
        more += 1
    return more


def _longest_repeat(text: str, at: int) -> tuple[int, int]:
    """(length, times) of the repeat beginning at a place that saves most; (0, 1) without any."""
    best, saved = (0, 1), 0
    next_at = at
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
