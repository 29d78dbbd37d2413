"""Whatever is typed, a reader either reads it or says in words why not."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from journal_tools.quantities import (
    Units,
    parse_count,
    parse_density,
    parse_hours,
    parse_length,
    parse_minutes,
    parse_money,
    parse_percent,
    parse_size,
    parse_times_length,
    parse_weight,
    parse_when,
    parse_wraps,
    parse_yarn_number,
    parse_yes_no,
)
from tests.quantities.refusals import refusal_of, refusal_or_none

Reader = Callable[[str, Units], object]
READERS: dict[str, Reader] = {
    "count": parse_count,
    "density": parse_density,
    "hours": parse_hours,
    "length": parse_length,
    "minutes": parse_minutes,
    "money": parse_money,
    "percent": parse_percent,
    "size": parse_size,
    "times_length": parse_times_length,
    "weight": parse_weight,
    "when": lambda text, units: parse_when(text),
    "wraps": parse_wraps,
    "yarn_number": lambda text, units: parse_yarn_number(text, None, units),
    "yarn_number of silk": lambda text, units: parse_yarn_number(text, "silk", units),
    "yes_no": lambda text, units: parse_yes_no(text),
}
PIECES = (
    "0 1 2 18 1/4 17/8 1/0 40's 40s-2 46,5 1,200 1.2 2024 04 999999999999 / x × ? ~ about ca - + = % . , ; ' \" ( ) "
    "½ ⅞ ² ٣ ſ K İ é € $ EUR in cm mm yd ft m g kg oz lb per epi ypp folded opened each end of by min h "
    "tex dtex den R Ne Nm lea worsted run cut skein cotton linen silk spun wool plies ply unequal weighs "
    "April spring yes"
).split()
TYPED = st.one_of(
    st.text(max_size=30),
    st.lists(st.sampled_from([*PIECES, " ", "\t", "\n", "\u00a0", "\x00", "\ud800"]), max_size=8).map("".join),
    st.lists(st.sampled_from(PIECES), max_size=7).map(" ".join),
)
UNITS = st.builds(
    Units,
    length=st.sampled_from(["in", "cm", "mm"]),
    weight=st.sampled_from(["g", "oz"]),
    density=st.sampled_from(["in", "cm"]),
    comma=st.sampled_from([None, "decimal", "thousands"]),
)


@pytest.mark.parametrize("name", sorted(READERS))
@given(TYPED, UNITS)
@example("", Units())
@example("1" * 5000, Units())
@example("1/" * 90, Units())
@example("x" * 199, Units())
def test_read_or_refused_in_words(name: str, text: str, units: Units) -> None:
    """Any text is read, or refused with what was read, what would be right, and a place inside it."""
    refusal = refusal_or_none(READERS[name], text, units)
    if refusal is None:
        assert text == getattr(READERS[name](text, units), "text", text)
        return

    assert text[:200] == refusal.read[:200]
    assert refusal.right.strip().endswith((".", "?"))
    assert refusal.column is None or 0 <= refusal.column <= len(text)


@pytest.mark.parametrize(
    ("name", "text", "mended"),
    [
        ("length", "5/4 yd", "1 1/4 yd"),
        ("length", "about 5/4 yd", "about 1 1/4 yd"),
        ("size", "19 in x 5/4 yd", "19 in x 1 1/4 yd"),
        ("size", "27 x 5 yd", "27 in x 5 yd"),
        ("density", "50/10", "50/10 cm"),
        ("weight", "5/4 oz", "1 1/4 oz"),
        ("times_length", "5 of 4/3 in", "5 of 1 1/3 in"),
        ("yarn_number", "8/2 cotten", "8/2 cotton"),
        ("yarn_number", "8-2 cotton", "8/2 cotton"),
    ],
)
def test_what_is_offered_to_paste_is_read(name: str, text: str, mended: str) -> None:
    """A text that is offered in the place of a wrong one is read when it is pasted."""
    assert mended == refusal_of(READERS[name], text, Units()).mended
    assert refusal_or_none(READERS[name], mended, Units()) is None
