"""The cloth on a card: the part that shows most, at the scale that shows most."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal_tools.drafts import parse_colours
from journal_tools.pictures.card import CARD, card_picture, most_colourful, repeat_length
from journal_tools.pictures.png import png_size
from tests.pictures.pixels import over, pixels

HEX = {"bone": "f1e8d4", "slate": "24406b", "gold": "c8962e", "ink": "1e1e22"}


def colours(order: str) -> list[str]:
    """A colour order as hex."""
    return [HEX[name] for name in parse_colours(order)]


def columns_of(weave: str, warp: str, colour: str, weft: str = "bone") -> int:
    """How many stripes of a colour, darker than its surroundings, a card of that cloth shows."""
    png = card_picture(over(weave), colours(warp), colours(weft), 20, 20)
    shade = pixels(png).mean(axis=(0, 2))
    smooth = np.convolve(shade, np.ones(16) / 16, mode="valid")
    dark = smooth < (smooth.max() + smooth.min()) / 2
    return int(dark[0]) + int((dark[1:] & ~dark[:-1]).sum())


class TestRepeat:
    @pytest.mark.parametrize(
        ("order", "expected"),
        [
            ("bone", 1),
            ("40 bone", 1),
            ("20 bone, 12 times (4 slate, 24 bone), 4 slate, 20 bone", 28),
            ("4 times (slate, bone)", 2),
            ("2 times (8 slate, 8 bone, 2 gold, 8 bone)", 26),
            ("10 bone, 3 slate, 7 gold, 40 bone", 60),
            ("bone, slate", 2),
        ],
    )
    def test_length(self, order: str, expected: int) -> None:
        """A colour order repeats when the same stripes come again; the borders at its sides do not count."""

        assert expected == repeat_length(parse_colours(order))

    @given(st.lists(st.sampled_from("abc"), min_size=1, max_size=8), st.integers(4, 9))
    def test_a_written_repeat(self, repeat: list[str], times: int) -> None:
        """An order made by repeating some threads repeats after a part of those threads."""

        assert len(repeat) % repeat_length(repeat * times) == 0


class TestPart:
    def test_all_of_a_short_order(self) -> None:
        """An order that is all seen is begun at its first thread."""

        assert (0, (2, 1)) == most_colourful(parse_colours("4 bone, 4 slate"), 10)

    def test_the_stripe_in_the_middle(self) -> None:
        """A stripe far from the edge is brought to the middle of what is seen."""
        start, seen = most_colourful(parse_colours("200 bone, 4 slate, 200 bone"), 50)

        assert (2, 2) == seen
        assert abs((start + 25) - 202) <= 2

    @given(st.lists(st.sampled_from("abcd"), min_size=1, max_size=40), st.integers(1, 40))
    def test_nothing_shows_more(self, order: list[str], threads: int) -> None:
        """No other place shows more colours, or as many with more stripes."""

        def worth(start: int) -> tuple[int, int]:
            part = order[start : start + threads]
            return len(set(part)), sum(a != b for a, b in pairwise(part))

        start, seen = most_colourful(order, threads)
        assert worth(start) == seen
        assert max(worth(other) for other in range(max(1, len(order) - threads + 1))) == seen


class TestPicture:
    def test_size(self) -> None:
        """A card's picture is 296 by 140 on the page at two pixels each."""

        assert (592, 280) == CARD == png_size(card_picture(over("waffle"), ["f1e8d4"], ["f1e8d4"], 20, 20))

    def test_stripes_are_seen(self) -> None:
        """A napkin warp with a stripe every 28 ends shows at least two of its stripes."""
        order = "20 bone, 12 times (4 slate, 24 bone), 4 slate, 20 bone"

        assert columns_of("plain weave", order, "slate") >= 2

    def test_a_border_far_from_the_edge_is_seen(self) -> None:
        """A towel with one stripe near each side shows one of them."""

        assert 1 == columns_of("plain weave", "60 bone, 9 slate, 260 bone, 9 slate, 60 bone", "slate")

    def test_a_plaid_shows_its_repeat(self) -> None:
        """A plaid of 42 threads each way shows all its colours, and each stripe of a repeat."""
        order = colours("9 times (16 slate, 12 bone, 2 gold, 12 bone)")
        seen = pixels(card_picture(over("2/2 twill"), order, order, 14, 14))
        golden = (seen[:, :, 0] - seen[:, :, 2] > 90).mean(axis=1)

        assert golden.max() > 0.3
        assert (golden > 0.3).sum() >= 8

    @pytest.mark.parametrize("weave", ["plain weave", "2/2 twill", "huck lace", "waffle", "herringbone", "5-end satin"])
    @pytest.mark.parametrize("order", ["bone", "4 ink, 4 bone", "8 slate, 8 bone, 2 gold, 8 bone"])
    def test_a_card_is_small(self, weave: str, order: str) -> None:
        """A card's picture takes no more than 18 KB, so that 24 of them load at once."""
        png = card_picture(over(weave), colours(order), colours(order), 24, 20)

        assert len(png) <= 18_000

    def test_colours_and_weave_stay_together(self) -> None:
        """A part from the middle keeps each end on its shaft: log cabin from end 200 on is log cabin."""
        order = colours("200 bone, 40 times (ink, bone), 200 bone")
        seen = pixels(card_picture(over("plain weave"), order, colours("ink, bone"), 20, 20)).mean(axis=2)
        rows = seen[:, 296 - 20 : 296 + 20].mean(axis=1) < 128
        across = seen[:, 296 - 20 : 296 + 20].std(axis=1).mean()

        # Dark picks over dark ends and light over light: lines across, each of one colour.
        assert 0.4 < rows.mean() < 0.6
        assert across < 30
