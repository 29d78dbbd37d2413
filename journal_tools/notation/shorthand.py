"""Finds repeats and mirrors in a sequence, so that 396 ends are printed as a weaver would write them."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Hashable, Iterator, Sequence
from dataclasses import dataclass
from typing import Generic, TypeVar

from journal_tools.notation.manner import NEVER, Manner
from journal_tools.notation.palindromes import widest
from journal_tools.notation.periods import periods

Item = TypeVar("Item", bound=Hashable)

_PART = 2
"""Letters between two parts: a comma and a blank."""

_TORN = 4
"""Letters that must be saved by a repeat of one run that tears an end of it from a longer one."""

_FEWER = 2
"""Letters that must be saved by a repeat that stands once less than it could."""

_LOOSE = 4
"""Letters that must be saved by a repeat of several runs that could begin with the first thread and does not."""

_UNIT, _WHOLE, _STRAIGHT = 4, 11, 8
"""Parts of a unit that stands in brackets rather than written out, and the letters this may cost; those of one run."""

_AGAIN = 7
"""Letters that a repeat of a short unit may cost where the same unit stands in brackets beside it."""

_LONG_UNIT, _TWICE = 6, 8
"""Parts of a unit that must save more letters where it is there twice only, and these letters."""

_WORTH_A_MIRROR = 12
"""Letters that a mirror must save: repeats are what a weaver sees first, and mirrors only where they tell more."""

_TURNED = 10
"""Letters that it must save for each repeat in it: what is turned must be told backwards at the loom."""

_BESIDE, _SPLIT_OFF, _FEW = 12, 40, 4
"""Letters that it must save for what is left at one side of it, and for fewer threads than so many."""

_CUT = 40
"""Letters that it must save where it turns in the middle of a repeat, which has then to be counted on both sides."""

_LEAST_MIRROR = 8
"""Threads that a mirror covers at least."""

_MOST_DEEP = 12
"""Mirrors within and beside one another: a weaver loses count sooner, and a long order would take for ever."""

_SHORT, _LONG, _MOST_BEGUN, _FEW_BEGUN, _MOST_LOOKED = 16, 100, 4, 2, 200
"""Threads of a unit that is tried from each of them on, and of one that is tried from few; how often others are."""

_TRIED, _AND = 3, 10_000
"""Threads that are gone through in all, for each thread and besides, before fewer ways are tried: an order may
repeat itself at every length at once, and nobody waits a minute for it.
"""


def shorthand(items: Sequence[Item], manner: Manner[Item]) -> str:
    """The items in notation: what comes again and again stands once, in brackets; what turns, half.

    What is printed is the way of least cost. A cost is letters, and some more for what is hard to follow at the
    loom: a repeat that begins within a run, a run torn by a repeat, a unit written out. A repeat may begin and
    end at any thread of its stretch, and that is chosen for all of them at once. A stretch that reads the same
    backwards is written as its first half, in `pointed (…)` where it turns on one thread and in `mirrored (…)`
    where on two, if that saves a dozen letters, more where it turns within a repeat and where there are repeats
    in it or something beside it. What the brackets hold is treated alike.
    """
    return _Printer(manner, items).best(list(items)).text


@dataclass(frozen=True)
class _Printed:
    """cost: in letters. repeats: the stretches that stand in brackets."""

    text: str
    cost: float
    repeats: tuple[tuple[int, int], ...] = ()


@dataclass(frozen=True)
class _Step(Generic[Item]):
    """From one place to another: what is written for it, and its unit where it is a repeat."""

    end: int
    text: str
    cost: float
    unit: tuple[Item, ...] = ()


class _Printer(Generic[Item]):
    """Prints parts of one sequence, each different one once."""

    def __init__(self, manner: Manner[Item], whole: Sequence[Item]) -> None:
        self._manner = manner
        self._first = list(whole[:1])
        self._left = _TRIED * len(whole) + _AND
        self._known: dict[tuple[Item, ...], _Printed] = {}
        self._begin: dict[tuple[Item, ...], int] = {}
        self._deep = 0

    def best(self, items: list[Item]) -> _Printed:
        key = tuple(items)
        if key not in self._known:
            found = self._repeated(items)
            if len(found.text) > 2 * _WORTH_A_MIRROR and self._deep < _MOST_DEEP and self._left > 0:
                self._deep += 1
                found = self._mirrored(items, found) or found
                self._deep -= 1
            self._known[key] = found
        return self._known[key]

    def _mirrored(self, items: list[Item], plain: _Printed) -> _Printed | None:
        """The items with their widest mirror as its half; None where that tells less than it costs."""
        start, end = widest(items)
        if end - start < _LEAST_MIRROR:
            return None
        sides = [part for part in (items[:start], items[end:]) if part]
        worth = _WORTH_A_MIRROR + sum(_SPLIT_OFF if len(part) < _FEW else _BESIDE for part in sides)
        worth += _CUT * any(2 * one < start + end < 2 * other for one, other in plain.repeats)
        whole = self._repeated(items[start:end]) if sides else plain
        if len(whole.text) < 2 * worth:
            return None
        half = items[start : start + (end - start + 1) // 2]
        inside = self.best(half)
        text = f"{'pointed' if (end - start) % 2 else 'mirrored'} ({inside.text})"
        worth += _TURNED * len(inside.repeats)
        if len(text) + worth > len(whole.text):
            return None
        parts = [_Printed(text, len(text) - len(inside.text) + inside.cost, ((start, end),))]
        if start:
            parts.insert(0, self.best(items[:start]))
        if end < len(items):
            parts.append(self.best(items[end:]))
        text = ", ".join(part.text for part in parts)
        if len(text) + worth > len(plain.text):
            return None
        cost = sum(part.cost for part in parts) + _PART * (len(parts) - 1)
        return _Printed(text, cost, tuple(each for part in parts for each in part.repeats))

    def _repeated(self, items: list[Item]) -> _Printed:
        """The items with their repeats; what is bracketed somewhere is bracketed everywhere."""
        ends = self._manner.ends(items)
        repeats = self._repeats(items, ends)
        ways = self._ways(items, ends, repeats, set())
        short = ((place, step) for place, step in ways if 0 < len(step.unit) < _UNIT)
        again = {step.unit for place, step in short if step.end - place > 2 * len(step.unit)}
        if again and len(ways) > 1:
            ways = self._ways(items, ends, repeats, again)
        bracketed = tuple((place, step.end) for place, step in ways if step.unit)
        text = ", ".join(step.text for _, step in ways)
        self._left -= len(items)
        return _Printed(text, sum(step.cost + _PART for _, step in ways) - _PART, bracketed)

    def _ways(
        self, items: list[Item], ends: list[int], repeats: dict[int, list[_Step[Item]]], again: set[tuple[Item, ...]]
    ) -> list[tuple[int, _Step[Item]]]:
        """Steps from the front to the end, each with its place: the best to each place is kept.

        again: the short units that are known to stand in brackets somewhere.
        """
        begun = sorted(repeats)
        far = [0.0] + [float("inf")] * len(items)
        back: list[tuple[int, _Step[Item]]] = [(0, _Step(0, "", 0.0))] * (len(items) + 1)
        for place in range(len(items)):
            for step in (*self._written_out(items, ends, begun, place), *repeats.get(place, ())):
                cost = far[place] + step.cost + _PART - (_AGAIN if step.unit in again else 0)
                if cost < far[step.end]:
                    far[step.end], back[step.end] = cost, (place, step)
        ways: list[tuple[int, _Step[Item]]] = []
        end = len(items)
        while end:
            ways.append(back[end])
            end = back[end][0]
        return ways[::-1]

    def _written_out(self, items: list[Item], ends: list[int], begun: list[int], place: int) -> Iterator[_Step[Item]]:
        """A thread by itself; its run, whole or up to where a repeat begins."""
        text = self._manner.one(items[place])
        yield _Step(place + 1, text, len(text))
        if ends[place] < place + 2:
            return
        cut = begun[bisect_right(begun, place + 1) : bisect_right(begun, ends[place] - 1)]
        for end in (*cut, ends[place]):
            if self._manner.is_run(items, ends, place, end):
                text = self._manner.run(items[place:end])
                yield _Step(end, text, len(text))

    def _repeats(self, items: list[Item], ends: list[int]) -> dict[int, list[_Step[Item]]]:
        """By their first place, the stretches that may stand in brackets."""
        letters = {item: chr(n) for n, item in enumerate(dict.fromkeys(items))}
        found: dict[int, list[_Step[Item]]] = {}
        for start, end, length in periods("".join(letters[item] for item in items)):
            if length == 1 and (ends[start] > start + 1 or end - start < _UNIT):
                continue
            for begin in self._begun(items, start, end, length):
                most = (end - begin) // length
                unit = tuple(items[begin : begin + length])
                for times in (most, most - 1):
                    if times > 1 and length * times >= _UNIT:
                        text = f"{times} times ({self.best(list(unit)).text})"
                        cost = self._cost(items, ends, (start, begin, end), unit, times)
                        found.setdefault(begin, []).append(_Step(begin + length * times, text, cost, unit))
        return found

    def _begun(self, items: list[Item], start: int, end: int, length: int) -> list[int]:
        """The places at which a repeat of this stretch may begin: any, with a long unit those that are natural."""
        last = min(start + 2 * length - 1, end - 2 * length)
        whole = length <= _SHORT
        most = 1 if self._left < 0 else _MOST_BEGUN if length < _LONG else _FEW_BEGUN
        places: list[int] = []
        for place in range(start, (last if whole else min(last, start + length, start + _MOST_LOOKED)) + 1):
            if not whole and len(places) == most:
                break
            astray = self._astray(tuple(items[place : place + length]))
            if not astray or (astray < NEVER and (whole or place == start)):
                places.append(place)
        return places

    def _cost(
        self, items: list[Item], ends: list[int], stretch: tuple[int, int, int], unit: tuple[Item, ...], times: int
    ) -> float:
        """What a repeat costs. stretch: where it could begin, where it does, and to where it could go on."""
        start, begin, end = stretch
        length, stop = len(unit), begin + len(unit) * times
        inside = self.best(list(unit))
        cost = len(f"{times} times ()") + inside.cost
        parts, straight = self._manner.parts(unit), length > 2 and ends[begin] >= begin + length
        if straight:
            cost -= _STRAIGHT
            cost += _TORN * ((ends[stop - length] > stop) + (begin > 0 and ends[begin - 1] > begin + 1))
        elif times == 2 and parts > _LONG_UNIT:
            cost += _TWICE
        elif parts >= _UNIT:
            cost -= _WHOLE
        if begin:
            cost += self._astray(unit) if unit[0] != self._first[0] else min(1, self._astray(unit))
            cost += _LOOSE * (start == 0 and not straight)
        cost += _FEWER * (stop + length <= end)
        return cost + (begin - start) / (2 * length) / 2  # of equal ones the one that begins sooner

    def _astray(self, unit: tuple[Item, ...]) -> int:
        if unit not in self._begin:
            self._begin[unit] = self._manner.astray(unit)
        return self._begin[unit]
