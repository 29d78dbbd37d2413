"""Where bouts are cut."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from journal_tools.dressing.bouts import COLOURS, INSIDE, REPEAT, UNIT, WITHIN, bouts_of
from journal_tools.dressing.colour_words import colour_words
from journal_tools.dressing.stripes import stripes_along
from journal_tools.notation import parse_colours

SLIPWAY = (
    "24 midnight, 6 times (16 times (midnight, copper), 8 saffron, 4 midnight, 16 times (midnight, ivory), "
    "4 midnight, 8 saffron, 16 times (copper, midnight), 6 midnight), 18 midnight"
)


def test_whole_repeats_to_the_end() -> None:
    """Repeats of 42 with wider edges are bouts of 64, nine times 42, and 44: no bout begins inside a repeat."""
    tideline = "2 flax, 11 times (20 flax, 6 indigo, 4 flax, 2 rust, 4 flax, 6 indigo), 22 flax"
    bouts = bouts_of(parse_colours(tideline), 48)

    assert [64, *[42] * 9, 44] == [bout.ends for bout in bouts]
    assert {REPEAT} == {bout.cut for bout in bouts[:-1]}


def test_no_pair_is_cut() -> None:
    """Two colours by turns are wound in pairs: 6 midnight, then 16 times (midnight, copper), never 7 and 15."""
    bouts = bouts_of(parse_colours(SLIPWAY), 96, 2)
    words = [colour_words(bout.order) for bout in bouts]

    assert "24 midnight, 16 times (midnight, copper), 8 saffron, 4 midnight" == words[0]
    assert all("15 times" not in each and "7 midnight" not in each for each in words)


def test_the_threadings_unit() -> None:
    """Inside a wide stripe the cuts are at whole repeats of a threading of ten ends."""
    bouts = bouts_of(parse_colours("10 rose, 20 white, 10 rose, 880 white, 10 rose, 20 white, 10 rose"), 48, 10)

    assert [True] * len(bouts) == [bout.last % 10 == 0 for bout in bouts]
    assert 3 * 48 > max(bout.ends for bout in bouts)


def test_between_colours_before_inside() -> None:
    """Of an order without repeats the cuts are between colours, and only in a wide stripe inside."""
    bouts = bouts_of(parse_colours("30 red, 45 blue, 100 bone, 38 green"), 40, 4)

    assert [COLOURS, COLOURS, UNIT, COLOURS, ""] == [bout.cut for bout in bouts]
    assert [30, 45, 49, 51, 38] == [bout.ends for bout in bouts]


@given(
    st.lists(st.tuples(st.sampled_from(["bone", "slate", "rust"]), st.integers(1, 90)), min_size=1, max_size=12),
    st.integers(4, 100),
    st.sampled_from([1, 2, 4, 10]),
)
def test_it_is_said_truly(order: list[tuple[str, int]], aimed: int, unit: int) -> None:
    """What is said of a cut is so: between two colours, at the threading's repeat, or inside a wide stripe."""
    items = [colour for colour, ends in order for _ in range(ends)]
    edges = {stripe.first - 1 for stripe in stripes_along(items)}
    for bout in bouts_of(items, aimed, unit)[:-1]:
        between = bout.last in edges
        assert between == (bout.cut in (REPEAT, COLOURS, WITHIN))
        assert between or (bout.cut == UNIT) == (bout.last % unit == 0)
        assert bout.cut in (REPEAT, COLOURS, WITHIN, UNIT, INSIDE)
