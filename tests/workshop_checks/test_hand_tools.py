"""Counting, reading and writing of the invented workshop, in cases worked by hand."""

from __future__ import annotations

from fractions import Fraction

import pytest

from journal_tools.drafts import parse_colours
from tests.workshop import tape
from tests.workshop.block_yaml import block
from tests.workshop.orders import ends_in_a_dent, threads
from tests.workshop.warps import WARPS


def test_a_colour_order_is_counted() -> None:
    """20 bone, 12 times (4 slate, 24 bone), 4 slate, 20 bone are 380 ends, 52 of them slate."""
    counted = threads("20 bone, 12 times (4 slate, 24 bone), 4 slate, 20 bone")

    assert 380 == len(counted)
    assert 52 == counted.count("slate")


def test_orders_may_lie_inside_orders() -> None:
    """2 times (a, 2 times (b, 2 c), 3 a) is a b c c b c c a a a, twice."""
    assert list("abccbccaaa" * 2) == threads("2 times (a, 2 times (b, 2 c), 3 a)")


@pytest.mark.parametrize("order", ["12 times 4 slate)", "4 slate; 2 bone", "a))"])
def test_a_broken_order_is_refused(order: str) -> None:
    """A bracket too many, or a sign that no order has, is no colour order."""
    with pytest.raises(ValueError, match=r"colour order|bracket"):
        threads(order)


def test_both_readers_agree_on_every_order_of_the_journal() -> None:
    """The project's reader and this one, written apart, count the same threads in every warp and weft."""
    orders = [value for design in WARPS for value in _orders(design.head)]
    orders += [value for design in WARPS for stretch in design.stretches for value in _orders(stretch.keys)]

    assert len(orders) > 40
    assert [tuple(threads(order)) for order in orders] == [tuple(parse_colours(order)) for order in orders]


def _orders(fields: object) -> list[str]:
    if not isinstance(fields, dict):
        return []
    found = [fields["order"]] if isinstance(fields.get("order"), str) else []
    return found + [order for value in fields.values() for order in _orders(value)]


def test_ends_in_a_dent() -> None:
    """1-1-2 is four ends in three dents; 2 is two in each."""
    assert Fraction(4, 3) == ends_in_a_dent("1-1-2")
    assert Fraction(2) == ends_in_a_dent("2")


@pytest.mark.parametrize(
    ("size", "mark", "read"),
    [(17.9, Fraction(1, 8), "17 7/8"), (17.99, Fraction(1, 8), "18"), (0.49, Fraction(1, 4), "1/2")],
)
def test_the_tape_is_read_to_its_nearest_mark(size: float, mark: Fraction, read: str) -> None:
    """17.9 in is 17 7/8 on a tape of eighths, and .49 in is 1/2 on one of quarters."""
    assert read == tape.show(tape.read(size, mark), "in")


def test_a_metric_tape_writes_halves() -> None:
    """46.3 cm is 46.5 on a tape of half centimetres, and 47 has no idle .0."""
    assert "46.5 x 47" == tape.size(tape.read(46.3, Fraction(1, 2)), tape.read(47.1, Fraction(1, 2)), "cm")


def test_front_matter_is_one_value_a_line() -> None:
    """Lists and mappings go deeper by two blanks, and text of several lines stands under a stroke."""
    written = block({"title": "A", "plan": [{"piece": "towel", "count": "4"}], "weft": {"yarn": "b"}, "n": "x\ny"})

    assert "title: A\nplan:\n  - piece: towel\n    count: 4\nweft:\n  yarn: b\nn: |\n  x\n  y\n" == written


@pytest.mark.parametrize("value", ["- a", "a: b", "a #b", "[a]", "", "a:"])
def test_a_value_that_wants_quotes_is_refused(value: str) -> None:
    """What YAML would read otherwise than a weaver means never gets into the journal."""
    with pytest.raises(ValueError, match="other words"):
        block({"title": value})
