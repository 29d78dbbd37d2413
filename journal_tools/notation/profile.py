"""Blocks of a profile draft by their letters: `4 A, 2 B, A`, and blocks found in a long order of threads."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from journal_tools.notation.lists import Sets, print_sets
from journal_tools.notation.manner import Stripes
from journal_tools.notation.mended import offers_what_reads
from journal_tools.notation.sequence import how_many, read_sequence
from journal_tools.notation.shorthand import shorthand

LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
SHORTEST, LONGEST = 2, 16
"""Threads of a block that is found."""

MOST_BLOCKS = 10
WORTH = 10
"""Letters that blocks must save to be worth naming."""

_BLOCK = re.compile(r"(?:([0-9]+)\s+)?([A-Z])(?![\w-])")


@dataclass(frozen=True)
class Blocks:
    """units: the threads of each block, by its letter. order: the blocks in turn."""

    units: Mapping[str, Sets]
    order: tuple[str, ...]

    @property
    def threads(self) -> Sets:
        """All threads, written out."""
        return tuple(thread for letter in self.order for thread in self.units[letter])


@offers_what_reads
def parse_profile(text: str) -> tuple[str, ...]:
    """The blocks in turn; a block is one capital letter. Raises Unreadable."""

    def block(plain: str, column: int) -> tuple[list[str], int] | None:
        found = _BLOCK.match(plain, column)
        if not found:
            return None
        return [found.group(2)] * how_many(text, found.group(1) or "1", column), found.end()

    return read_sequence(text, block, "A block's letter is wanted", "4 A, 2 B, A")


def print_profile(order: Sequence[str]) -> str:
    """The notation of blocks in turn."""
    return shorthand(order, Stripes())


def found_blocks(sets: Sequence[frozenset[int]]) -> Blocks | None:
    """The blocks that say an order of threads in fewest letters, where they say it in fewer than it says itself.

    All of one length, two blocks at least, each of them there twice: what a weaver would call blocks.
    """
    plain = len(print_sets(sets))
    best, least = None, plain - WORTH
    for length in range(SHORTEST, min(LONGEST, len(sets) // 4) + 1):
        if len(sets) % length:
            continue
        units = [tuple(sets[start : start + length]) for start in range(0, len(sets), length)]
        counted = Counter(units)
        if not 2 <= len(counted) <= MOST_BLOCKS or min(counted.values()) < 2:
            continue
        letters = {unit: LETTERS[n] for n, unit in enumerate(counted)}
        order = tuple(letters[unit] for unit in units)
        size = len(print_profile(order)) + sum(len(print_sets(unit)) + 4 for unit in letters)
        if size < least:
            best, least = Blocks({letter: unit for unit, letter in letters.items()}, order), size
    return best
