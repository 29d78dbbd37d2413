"""Finds the repeats in a sequence, so that 396 ends are printed as a weaver would write them."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Sequence
from typing import TypeVar

Item = TypeVar("Item", bound=Hashable)

_MOST_TRIED = 60
"""Repeat lengths tried at one place. More would find little and make a long random order slow."""


def shorthand(items: Sequence[Item], written: Callable[[Sequence[Item]], str]) -> str:
    """The items in notation: what comes again and again stands once, in brackets.

    written: the notation of items that hold no repeat worth brackets. At each place the repeat
    that covers most is taken, the shortest where two cover the same, if brackets are shorter than
    writing it out. What the brackets hold is treated alike.
    """
    letters = {item: chr(0x100 + n) for n, item in enumerate(dict.fromkeys(items))}
    text = "".join(letters[item] for item in items)  # str finds and compares far faster than a loop
    parts: list[str] = []
    begun = at = 0
    while at < len(items):
        length, times = _longest_repeat(text, at)
        if times > 1:
            once = f"{times} times ({shorthand(items[at : at + length], written)})"
            if len(once) < len(written(items[at : at + length * times])):
                parts += [written(items[begun:at])] if at > begun else []
                parts.append(once)
                begun = at = at + length * times
                continue
        at += 1
    parts += [written(items[begun:])] if at > begun else []
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
