"""The colours along the threading."""

from __future__ import annotations

from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from journal_tools.dressing.along import begins_of, coloured_sections
from journal_tools.dressing.colour_words import colour_words
from journal_tools.dressing.sections import sections_of, threaded
from journal_tools.dressing.stripes import stripes_along
from journal_tools.notation import parse_colours, parse_threading, print_sets

TIDELINE = "2 flax, 11 times (20 flax, 6 indigo, 4 flax, 2 rust, 4 flax, 6 indigo), 22 flax"


def test_groups_end_where_colours_do() -> None:
    """Plain weave under a repeat of 42 ends is told eleven times by 42, its groups cut at the colours."""
    once, repeat, last = coloured_sections(parse_threading("1, 2"), parse_colours(TIDELINE))

    assert ["6 flax", "6 flax", "10 flax"] == [colour_words(each) for each in once.colours]
    assert (11, 42) == (repeat.times, repeat.repeat_ends)
    assert ["6 indigo, 4 flax", "2 rust, 4 flax", "6 indigo", "10 flax", "10 flax"] == [
        colour_words(each) for each in repeat.colours
    ]
    assert ["5 times (1, 2)", "3 times (1, 2)"] == [print_sets(group) for group in repeat.groups[:2]]
    assert ["2 flax"] == [colour_words(each) for each in last.colours]


def test_another_count() -> None:
    """24 ends of threading and 28 of colours come out together after 168, too long to be told in one."""
    herringbone = parse_threading("3 times (1-4), 3 times (2, 1, 4, 3)")

    assert () == coloured_sections(herringbone, parse_colours("20 times (12 peat, 2 bracken, 12 peat, 2 heather)"))


def test_where_each_begins() -> None:
    """In boxes of six, `8 red, 10 blue, 6 red` begins at box 1, at the third end of box 2, and at box 4."""
    found = begins_of(sections_of(parse_threading("1-4, 3-2"), 24), parse_colours("8 red, 10 blue, 6 red"))

    assert [(1, 1), (2, 3), (4, 1)] == [(each.box, each.end) for each in found]
    assert [8, 10, 6] == [each.stripe.ends for each in found]


ORDERS = st.lists(st.tuples(st.sampled_from(["bone", "slate", "rust"]), st.integers(1, 12)), min_size=2, max_size=5)


@given(ORDERS, st.integers(1, 12), st.sampled_from(["1, 2", "1-4", "1-4, 3-2", "1, 3, 1, 4, 2, 3"]))
def test_nothing_is_lost(stripes: list[tuple[str, int]], times: int, threading: str) -> None:
    """Whatever repeats, the groups are the threading end by end, and their colours the order."""
    order = tuple(colour for colour, ends in stripes for _ in range(ends)) * times
    sections = coloured_sections(parse_threading(threading), order)
    shafts = [end for each in sections for group in each.groups * each.times for end in group]
    colours = [colour for each in sections for group in each.colours * each.times for colour in group]

    assert not sections or list(threaded(parse_threading(threading), len(order))) == shafts
    assert not sections or list(order) == colours


@given(st.lists(st.sampled_from("ab c"), min_size=1, max_size=60))
def test_stripes_are_the_order(order: list[str]) -> None:
    """The stripes, pairs among them, are the order, and run on from one to the next."""
    stripes = stripes_along(order)

    assert order == [colour for each in stripes for colour in (each.colours * each.ends)[: each.ends]]
    assert [each.last + 1 for each in stripes[:-1]] == [each.first for each in stripes[1:]]
    assert all(each.ends % len(each.colours) == 0 for each in stripes)
    assert all(before.colours != after.colours or len(after.colours) > 1 for before, after in pairwise(stripes))
