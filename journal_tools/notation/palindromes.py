"""The widest stretch of a sequence that reads the same backwards."""

from __future__ import annotations

from collections.abc import Hashable, Sequence


def widest(items: Sequence[Hashable]) -> tuple[int, int]:
    """Where it begins and ends (the end not in it); the first of equals. O(n), by Manacher's method.

    Stretches of one thread over and over count for nothing: they repeat, and do not turn.
    """
    gaps = 2 * len(items) + 1
    reach = [0] * gaps  # of each place, and of each gap between two: how far it reads alike to both sides
    alike_to = list(range(1, len(items) + 1))  # of each place: where the same thread ends
    for place in range(len(items) - 2, -1, -1):
        if items[place] == items[place + 1]:
            alike_to[place] = alike_to[place + 1]
    centre = right = 0
    best = (0, 0)
    for place in range(gaps):
        far = min(right - place, reach[2 * centre - place]) if place < right else 0
        while place - far > 0 and place + far < gaps - 1 and _alike(items, place - far - 1, place + far + 1):
            far += 1
        reach[place] = far
        if place + far > right:
            centre, right = place, place + far
        start, end = (place - far) // 2, (place + far) // 2
        if end - start > best[1] - best[0] and alike_to[start] < end:
            best = start, end
    return best


def _alike(items: Sequence[Hashable], left: int, right: int) -> bool:
    """Whether two places hold the same thread; gaps between threads are alike."""
    return left % 2 == 0 or items[left // 2] == items[right // 2]
