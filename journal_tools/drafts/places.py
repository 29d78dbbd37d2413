"""Which threads, in words."""

from __future__ import annotations

from collections.abc import Sequence

LISTED = 8
"""Places that are listed one by one."""

A_RUN = 5
"""Places without a gap that are told by the first and the last."""


def places(word: str, numbers: Sequence[int]) -> str:
    """ "end 3", "ends 1, 2, 4 and 9", "treadles 5 to 10", or "12 ends, from end 1 on": at least one, in order."""
    first, last = numbers[0], numbers[-1]
    if len(numbers) == 1:
        return f"{word} {first}"
    if len(numbers) >= A_RUN and last - first == len(numbers) - 1:
        return f"{word}s {first} to {last}"
    if len(numbers) > LISTED:
        return f"{len(numbers)} {word}s, from {word} {first} on"
    return f"{word}s {', '.join(map(str, numbers[:-1]))} and {last}"
