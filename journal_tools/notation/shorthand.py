"""Finds repeats and mirrors in a sequence, so that 396 ends are printed as a weaver would write them."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Sequence
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
        letters = {item: chr(0x100 + n) for n, item in enumerate(dict.fromkeys(items))}
        text = "".join(letters[item] for item in items)  # str finds and compares far faster than a loop
        parts: list[str] = []
        begun = at = 0
        while at < len(items):
            length, times = _longest_repeat(text, at)
            if times > 1:
                unit = self.shortest(items[at : at + length])
                once_over = f"{times} times ({unit})"
                torn = _TORN if length >= _UNIT and "-" not in unit else 0
                if len(once_over) <= len(self._written(items[at : at + length * times])) + torn:
                    parts += [self._written(items[begun:at])] if at > begun else []
                    parts.append(once_over)
                    begun = at = at + length * times
                    continue
                at += length * (times - 1)  # written out: no repeat of it begun elsewhere either
                continue
            at += 1
        parts += [self._written(items[begun:])] if at > begun else []
        return ", ".join(parts)


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
