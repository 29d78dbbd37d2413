"""Counting threads in a colour order, and ends in a sley order. A second reader, on purpose.

The project's own reader of the notation is checked against this one by the demonstration journal.
"""

from __future__ import annotations

import re
from fractions import Fraction

TOKEN = re.compile(r"\s*(\d+\s+times|[(),]|\d+|[a-z][a-z0-9-]*)")


def threads(order: str) -> list[str]:
    """The colours of an order, one a thread: `2 times (4 slate, bone)` is ten of them."""
    tokens = TOKEN.findall(order)
    if "".join(tokens).replace(" ", "") != order.replace(" ", ""):
        raise ValueError(f"no colour order: {order}")
    found, rest = _items(tokens)
    if rest:
        raise ValueError(f"a bracket too many: {order}")
    return found


def _items(tokens: list[str]) -> tuple[list[str], list[str]]:
    found: list[str] = []
    while tokens:
        token, *tokens = tokens
        if token == ")":
            return found, [")", *tokens]
        if token == ",":
            continue
        if token.endswith("times"):
            if tokens[:1] != ["("]:
                raise ValueError(f"no colour order: {token} wants a bracket")
            inside, tokens = _items(tokens[1:])
            found += inside * int(token.split()[0])
            tokens = tokens[1:]
        elif token.isdigit():
            if not tokens or not tokens[0][0].isalpha():
                raise ValueError(f"no colour order: nothing to count after {token}")
            found += [tokens[0]] * int(token)
            tokens = tokens[1:]
        else:
            found.append(token)
    return found, []


def ends_in_a_dent(sley: str) -> Fraction:
    """The mean of a sley order: `1-1-2` is four ends in three dents."""
    dents = [int(part) for part in sley.split("-")]
    return Fraction(sum(dents), len(dents))
