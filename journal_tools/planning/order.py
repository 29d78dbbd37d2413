"""A colour order that is made longer or shorter by whole repeats."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass

from journal_tools.notation import parse_colours, print_colours
from journal_tools.planning.arithmetic import balance, whole_repeats

_TIMES = re.compile(r"\s*(\d+)\s*times\s*\((.*)\)\s*", re.DOTALL)
_STRIPE = re.compile(r"\s*(\d+)\s+([^\W\d_][\w-]*)\s*")


@dataclass(frozen=True)
class Order:
    """A colour order with one part that may be repeated more or less often.

    before, repeat, after: notation, "" for nothing; the repeat stands without its number.
    balanced_by: ends of the repeat that are set after it so that the edges mirror.
    """

    before: str
    repeat: str
    after: str
    balanced_by: int = 0

    @property
    def repeat_ends(self) -> int:
        """Ends in one repeat."""
        return len(parse_colours(self.repeat))

    @property
    def beside(self) -> int:
        """Ends that stand once, whatever the width."""
        return sum(len(parse_colours(part)) for part in (self.before, self.after) if part) + self.balanced_by

    @property
    def one_colour(self) -> bool:
        """Whether the repeat is a single end, so that it can be any number of them."""
        return self.repeat_ends == 1

    def times_for(self, ends: float) -> int:
        """Repeats that come nearest to so many ends in all."""
        return whole_repeats(ends, self.repeat_ends, self.beside)

    def colours(self, times: int) -> Counter[str]:
        """Ends of each colour."""
        return Counter(self._items(times))

    def mirrored(self, times: int) -> bool:
        """Whether both edges are the same, seen from the middle."""
        items = list(self._items(times))
        return items == items[::-1]

    def written(self, times: int) -> str:
        """The order in notation, as it was typed but for the number of repeats."""
        if self.one_colour:
            middle = f"{times} {self.repeat.strip()}"
        else:
            middle = f"{times} times ({self.repeat.strip()})" if times > 1 else self.repeat.strip()
        extra = print_colours(parse_colours(self.repeat)[: self.balanced_by]) if self.balanced_by else ""
        return ", ".join(part.strip() for part in (self.before, middle, extra, self.after) if part.strip())

    def _items(self, times: int) -> Iterator[str]:
        if self.before:
            yield from parse_colours(self.before)
        repeat = parse_colours(self.repeat)
        for _ in range(times):
            yield from repeat
        yield from repeat[: self.balanced_by]
        if self.after:
            yield from parse_colours(self.after)


def order_of(text: str, wanted_ends: float) -> Order:
    """The order of a text, and which part of it gives way.

    That is the item of most ends: `12 times (4 slate, 24 bone)`, or `880 white` between borders. An
    order of several stripes that is not half as long as the warp is itself the repeat, and is
    balanced by its own first ends. Raises Unreadable for what is no colour order.
    """
    whole = parse_colours(text)
    parts = list(_parts(text))
    if len(parts) > 1 and len(whole) < wanted_ends / 2 and not any(_TIMES.fullmatch(part) for part in parts):
        return Order("", text.strip(), "", balance(whole))
    sizes = [len(parse_colours(part)) for part in parts]
    at = sizes.index(max(sizes))
    before, after = ",".join(parts[:at]).strip(), ",".join(parts[at + 1 :]).strip()
    if (times := _TIMES.fullmatch(parts[at])) is not None:
        return Order(before, times[2], after)
    if (stripe := _STRIPE.fullmatch(parts[at])) is not None:
        return Order(before, stripe[2], after)
    bare = parts[at].strip()
    return Order(before, bare[1:-1] if bare.startswith("(") and bare.endswith(")") else bare, after)


def _parts(text: str) -> Iterator[str]:
    """The items of the outermost list."""
    depth, start = 0, 0
    for at, mark in enumerate(text):
        depth += (mark == "(") - (mark == ")")
        if mark == "," and depth == 0:
            yield text[start:at]
            start = at + 1
    yield text[start:]
