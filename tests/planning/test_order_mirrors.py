"""Colour orders that mirror, made longer by whole repeats."""

from __future__ import annotations

import pytest

from journal_tools.notation import parse_colours
from journal_tools.planning.order import order_of


@pytest.mark.parametrize(
    "text", ["mirrored (4 slate, 24 bone)", "2 gold, pointed (20 slate, 3 bone)", "(4 slate, 2 bone)"]
)
def test_a_mirror_is_repeated_whole(text: str) -> None:
    """A part that mirrors is the repeat, and what is written for two of it reads back as both."""
    order = order_of(text, 40)
    once, twice = (len(parse_colours(order.written(times))) for times in (1, 2))

    assert once + order.repeat_ends == twice
    assert sum(order.colours(2).values()) == twice
