"""A colour order as what a hand keeps together: stripes of one colour, and two colours by turns."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import groupby

BY_TURNS = 5
"""Single ends in a row from which on two colours are by turns, and are kept in pairs."""


@dataclass(frozen=True)
class Stripe:
    """Ends of one colour, or of two by turns, which then are whole pairs.

    colours: one or two. ends: in all. first: the number of its first end, counted from 1.
    """

    colours: tuple[str, ...]
    ends: int
    first: int = 1

    @property
    def last(self) -> int:
        """The number of its last end."""
        return self.first + self.ends - 1


def stripes_along(items: Sequence[str]) -> tuple[Stripe, ...]:
    """The order in stripes, first end to last.

    Ends by turns take one from a wider stripe beside them where that makes whole pairs: `7 midnight,
    15 times (copper, midnight), copper` is `6 midnight, 16 times (midnight, copper)`.
    """
    left = [Stripe((colour,), len(list(same))) for colour, same in groupby(items)]
    found: list[Stripe] = []
    while left:
        many = _by_turns(left)
        if many < BY_TURNS:
            found.append(left.pop(0))
            continue
        singles, left = left[:many], left[many:]
        before = many % 2 == 1 and _lends(found[-1:], singles[1])
        after = many % 2 == 1 and _lends(left[:1], singles[1])
        if before and after:  # of two that can, the one that is left with an even number
            before = found[-1].ends % 2 == 1 or left[0].ends % 2 == 0
        if before:
            found[-1] = replace(found[-1], ends=found[-1].ends - 1)
            singles.insert(0, singles[1])
        elif after:
            left[0] = replace(left[0], ends=left[0].ends - 1)
            singles.append(singles[1])
        elif many % 2:
            left.insert(0, singles.pop())  # nobody lends: the last one stands alone
        found.append(Stripe(singles[0].colours + singles[1].colours, len(singles)))
    return tuple(_numbered(found))


def _by_turns(stripes: Sequence[Stripe]) -> int:
    """How many of the stripes, from the first on, are of one end each and of two colours by turns."""
    for at, stripe in enumerate(stripes):
        if stripe.ends > 1 or (at > 1 and stripe.colours != stripes[at - 2].colours):
            return at
    return len(stripes)


def _lends(neighbour: Sequence[Stripe], wanted: Stripe) -> bool:
    return bool(neighbour) and neighbour[0].colours == wanted.colours and neighbour[0].ends > 1


def _numbered(stripes: Sequence[Stripe]) -> Iterator[Stripe]:
    first = 1
    for stripe in stripes:
        yield replace(stripe, first=first)
        first = first + stripe.ends
