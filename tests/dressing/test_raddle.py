"""Ends in the spaces of a raddle."""

from __future__ import annotations

from pathlib import Path

from hypothesis import given
from hypothesis import strategies as st

from journal_tools.dressing.raddle import raddle_of
from journal_tools.dressing.sleyed import Sleyed, SleyedBand
from journal_tools.quantities import parse_density
from tests.dressing.made import dressed


def sleyed(reed: str, ends: int, order: tuple[int, ...]) -> Sleyed:
    """Ends in a reed."""
    read = parse_density(reed)
    return Sleyed(read, (SleyedBand("", ends, read.per_m, order),), 0, 1, False, None, None)


def test_two_in_a_dent() -> None:
    """Two in every dent of a 12 are 24 to the inch: 12 in each half inch, and 6 left of 486."""
    assert (12,) * 40 + (6,) == raddle_of(sleyed("12/in", 486, (2,)), "in")


def test_centimetres() -> None:
    """5 to the centimetre over 40 ends are eight spaces of 1 cm with 5 in each."""
    assert (5,) * 8 == raddle_of(sleyed("5/cm", 40, (1,)), "cm")


def test_a_space_and_a_half() -> None:
    """15 to the inch are 7 1/2 in a half inch: 8 and 7 by turns, halves up."""
    assert (8, 7, 8, 7) == raddle_of(sleyed("15/in", 30, (1,)), "in")


def test_crammed(tmp_path: Path) -> None:
    """Six dents of a 12 are a half inch: 2 in each are 12 ends, 4 in each 24."""
    stripes = "threading: 1, 2\nends_in_dents: 6 times (2), 6 times (4)\ntie_up: 1, 2\ntreadling: 1, 2\n"
    made = dressed(tmp_path, "title: A\nreed: 12/in\nwarp: {order: 72 bone}\ndraft: point\n", draft=stripes)
    assert made.sleyed is not None

    assert (12, 24, 12, 24) == raddle_of(made.sleyed, "in")


ORDERS = st.lists(st.integers(0, 4), min_size=1, max_size=6).filter(any)


@given(st.integers(1, 300), ORDERS, st.sampled_from(["in", "cm"]))
def test_none_is_lost(ends: int, order: list[int], unit: str) -> None:
    """The spaces of a raddle hold all ends together, whatever the sley."""
    assert ends == sum(raddle_of(sleyed("12/in", ends, tuple(order)), unit))
