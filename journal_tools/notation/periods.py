"""Every stretch of a text in which a unit follows itself at once: where it begins and ends, and the unit's length."""

from __future__ import annotations


def periods(text: str) -> list[tuple[int, int, int]]:
    """(start, end, length) of each widest stretch that goes on as it did a unit's length before, two units at least.

    The unit is the shortest of its stretch. In order of their starts. About O(n log n), for every such
    stretch has a unit that begins with one of the longest Lyndon words, in one order of the letters or in
    the other (H. Bannai and others, The "Runs" Theorem, SIAM Journal on Computing 46, 2017; from memory).
    """
    backwards = text[::-1]
    whole = len(text)
    found: set[tuple[int, int, int]] = set()
    for upwards in (True, False):
        lower = [whole] * whole  # of each place: the next one from which on the text comes earlier in the alphabet
        widest: dict[int, tuple[int, int]] = {}  # of each length: the stretch found last
        for start in range(whole - 1, -1, -1):
            behind = start + 1
            while behind < whole and (alike := _alike(text, start, behind)) + behind < whole:
                if (text[start + alike] < text[behind + alike]) != upwards:
                    break
                behind = lower[behind]
            lower[start] = behind
            length = behind - start
            begin, end = widest.get(length, (0, 0))
            if begin <= start and behind <= end:
                continue
            begin = start - _alike(backwards, whole - behind, whole - start)
            end = behind + _alike(text, start, behind)
            if end - begin >= 2 * length:
                found.add((begin, end, length))
                widest[length] = begin, end
    return sorted(found)


def _alike(text: str, one: int, other: int) -> int:
    """How many letters are alike from two places on, the later of which is `other`."""
    length, step, whole = 0, 1, len(text)
    while (
        other + length + step <= whole
        and text[one + length : one + length + step] == text[other + length : other + length + step]
    ):
        length, step = length + step, step * 2
    while step := step // 2:
        if (
            other + length + step <= whole
            and text[one + length : one + length + step] == text[other + length : other + length + step]
        ):
            length += step
    return length
