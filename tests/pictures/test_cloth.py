"""The cloth picture, by its pixels."""

from __future__ import annotations

import io

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from numpy.typing import NDArray
from PIL import Image

from journal_tools.pictures.cloth import cloth_picture, life_size, repeat_to, thread_pixels
from journal_tools.pictures.png import png_size
from journal_tools.quantities import Unreadable
from tests.pictures.pixels import over, pixels

RED, BLUE = "c03020", "2030c0"


def reddish(png: bytes) -> NDArray[np.bool_]:
    """True for pixels with more red in them than blue."""
    seen = pixels(png)
    return seen[:, :, 0] > seen[:, :, 2]


def brightness(png: bytes) -> NDArray[np.int64]:
    """The sum of red, green and blue of every pixel."""
    total: NDArray[np.int64] = pixels(png).sum(axis=2)
    return total


class TestColours:
    @pytest.mark.parametrize("weave", ["plain weave", "2/2 twill", "huck lace", "5-end satin", "rosepath"])
    def test_every_crossing_has_the_colour_on_top(self, weave: str) -> None:
        """Where warp is over weft a crossing has the warp's colour, elsewhere the weft's; the cloth grows upwards."""
        cloth = over(weave)
        seen = reddish(cloth_picture(cloth, [RED], [BLUE], 20, 20, px_per_thread=6))

        assert np.array_equal(cloth[::-1].repeat(6, axis=0).repeat(6, axis=1), seen)

    def test_the_first_pick_is_at_the_foot(self) -> None:
        """In a picture of any height the lowest pick is the first, whole, as it lies on the loom."""
        cloth = np.array([[True], [False], [False]])
        seen = reddish(cloth_picture(cloth, [RED], [BLUE], 20, 20, px_per_thread=6, width_px=12, height_px=27))

        assert [False] * 3 + [True] * 6 + [False] * 12 + [True] * 6 == seen[:, 5].tolist()

    def test_a_twill_rises(self) -> None:
        """Straight draw, 2/2 tie-up, trodden in order: the lines rise to the right from the first pick."""
        seen = reddish(cloth_picture(over("2/2 twill"), [RED], [BLUE], 20, 20, px_per_thread=4))
        lowest, above = seen[14, 2::4], seen[10, 2::4]

        assert np.roll(lowest, 1).tolist() == above.tolist()

    def test_each_thread_has_its_own(self) -> None:
        """Ends and picks take their colours in order, and begin again when the order ends."""
        cloth = np.ones((2, 5), dtype=bool)
        seen = reddish(cloth_picture(cloth, [RED, BLUE, BLUE], [RED], 20, 20, px_per_thread=4))

        assert [True, False, False, True, False] == seen[4, 2::4].tolist()

    def test_full_light_is_the_yarns_own_colour(self) -> None:
        """Where a thread lies flat on top it has the colour that the yarn's record says."""
        seen = pixels(cloth_picture(np.ones((3, 3), dtype=bool), ["b08040"], [BLUE], 20, 20, px_per_thread=9))
        nearest = np.abs(seen - [0xB0, 0x80, 0x40]).max(axis=2).min()

        assert nearest <= 8

    def test_black_yarn_is_still_seen(self) -> None:
        """Black yarn throws back a little light, so that its threads can be told apart."""
        seen = brightness(cloth_picture(over("2/2 twill"), ["101010"], ["101010"], 20, 20))

        assert seen.max() - seen.min() > 3 * 25

    def test_the_cloth_is_nearly_as_light_as_its_yarn(self) -> None:
        """Shadows take a fifth of the light in plain weave and less in a satin, as in cloth on a table."""
        yarn = sum((0xC9, 0xB5, 0x8B))
        for weave, least, most in (("plain weave", 0.75, 0.85), ("5-end satin", 0.85, 0.95)):
            mean = brightness(cloth_picture(over(weave), ["c9b58b"], ["c9b58b"], 20, 20)).mean()
            assert least < mean / yarn < most

    def test_no_such_colour(self) -> None:
        """A colour that is none is named, not guessed."""
        with pytest.raises(Unreadable, match="six digits"):
            cloth_picture(over("plain weave"), ["bone"], [BLUE], 20, 20)

    def test_more_colours_than_a_palette_holds(self) -> None:
        """Three hundred colours are drawn all the same, each near its own."""
        warp = [f"{red:02x}{red // 2:02x}80" for red in range(256)]
        png = cloth_picture(np.ones((1, 256), dtype=bool), warp, [BLUE], 20, 20, px_per_thread=6)
        reds = pixels(png)[3, 2::6, 0]

        assert "P" == Image.open(io.BytesIO(png)).mode
        assert np.corrcoef(reds, np.arange(256))[0, 1] > 0.99


class TestLight:
    def test_a_thread_is_round(self) -> None:
        """A thread is lighter along its middle than at both its edges."""
        seen = brightness(cloth_picture(np.ones((4, 3), dtype=bool), [RED], [BLUE], 20, 20, px_per_thread=9))[10]

        for thread in (seen[:9], seen[9:18]):
            assert thread[4] > thread[0]
            assert thread[4] > thread[8]

    def test_a_thread_dives(self) -> None:
        """A float is darker at both its ends, where it goes under, than in its middle."""
        seen = brightness(cloth_picture(over("huck lace"), [RED], [BLUE], 20, 20, px_per_thread=8))
        weft_float = seen[-(1 * 8 + 4), 0 : 5 * 8]

        assert weft_float[20] > weft_float[0]
        assert weft_float[20] > weft_float[-1]
        assert weft_float[20] == weft_float[14]

    def test_light_comes_from_above_on_the_left(self) -> None:
        """The left edge of an end is lighter than its right one, the upper edge of a pick than its lower one."""
        warp = brightness(cloth_picture(np.ones((3, 3), dtype=bool), [RED], [BLUE], 20, 20, px_per_thread=8))
        weft = brightness(cloth_picture(np.zeros((3, 3), dtype=bool), [RED], [BLUE], 20, 20, px_per_thread=8))

        assert warp[12, 8] > warp[12, 15]
        assert weft[8, 12] > weft[15, 12]


class TestFacedCloth:
    def test_warp_faced(self) -> None:
        """With far more ends than picks to the inch no weft is seen between the ends."""
        seen = reddish(cloth_picture(over("plain weave"), [RED], [BLUE], 60, 12, width_px=200, height_px=200))

        assert seen.all()

    def test_weft_faced(self) -> None:
        """With far more picks than ends to the inch no warp is seen between the picks."""
        seen = reddish(cloth_picture(over("plain weave"), [BLUE], [RED], 6, 30, width_px=200, height_px=200))

        assert seen.all()

    def test_between(self) -> None:
        """Warp set twice as close as weft crowds it and does not hide it; set alike, half of each is seen."""
        shares = [
            reddish(cloth_picture(over("plain weave"), [RED], [BLUE], epi, 20, width_px=144, height_px=144)).mean()
            for epi in (20, 40, 60)
        ]

        assert 0.5 == shares[0]
        assert 0.6 < shares[1] < 0.95
        assert 1.0 == shares[2]

    def test_a_float_stays_seen(self) -> None:
        """A weft float over more than two ends shows in warp-faced cloth: only its ends are covered."""
        cloth = np.array([[1, 0, 0, 0, 0, 1]] * 2, dtype=bool)
        seen = reddish(cloth_picture(cloth, [RED], [BLUE], 60, 15, px_per_thread=8))
        end_px = thread_pixels(60, 15, 8)[0]

        # The crossings beside the warp are half covered, the two between them not at all.
        covered = [1.0, 0.5, 0.0, 0.0, 0.5, 1.0]
        assert covered == [seen[4, end * end_px : (end + 1) * end_px].mean() for end in range(6)]

    def test_dark_and_light_ends_make_ribs(self) -> None:
        """Dark and light ends by turns in warp-faced cloth: each pick is a rib of one colour."""
        seen = reddish(cloth_picture(over("plain weave"), [RED, BLUE], [BLUE], 60, 12, width_px=120, height_px=120))
        pick_px = thread_pixels(60, 12, 6)[1]

        ribs = [set(seen[-pick * pick_px - pick_px // 2].tolist()) for pick in range(4)]
        assert [{True}, {False}, {True}, {False}] == ribs


class TestSize:
    @given(st.floats(2, 90), st.floats(2, 90), st.integers(4, 16))
    def test_proportions(self, epi: float, ppi: float, px_per_thread: int) -> None:
        """A pick is higher than an end is wide as there are more ends than picks, to the nearest pixel."""
        ratio = min(max(epi / ppi, 1 / 8), 8)
        end_px, pick_px = thread_pixels(epi, ppi, px_per_thread)

        assert abs(pick_px - end_px * ratio) <= 0.5 + ratio / 2
        assert end_px >= 2
        assert pick_px >= 2

    @pytest.mark.parametrize(("epi", "ppi"), [(0, 20), (20, 0), (-4, 20), (float("nan"), 20)])
    def test_no_density(self, epi: float, ppi: float) -> None:
        """Cloth without threads to the inch is refused."""
        with pytest.raises(ValueError, match="above zero"):
            cloth_picture(over("plain weave"), [RED], [BLUE], epi, ppi)

    def test_life_size(self) -> None:
        """At life size 48 ends at 24 to the inch are 2 in wide, and 33 picks at 22 are 1 1/2 in high."""
        png = cloth_picture(np.ones((33, 48), dtype=bool), [RED], [BLUE], 24, 22)

        assert pytest.approx((2, 1.5)) == life_size(png_size(png), 24, 22)

    def test_the_size_asked_for(self) -> None:
        """The picture has the pixels asked for, whatever the repeat."""

        assert (592, 280) == png_size(
            cloth_picture(over("rosepath"), [RED], [BLUE], 24, 20, width_px=592, height_px=280)
        )

    def test_cloth_goes_on(self) -> None:
        """A picture wider than the repeat shows the repeat again, pixel by pixel, and not a seam."""
        seen = pixels(cloth_picture(over("2/2 twill"), [RED], [BLUE], 20, 20, width_px=96, height_px=72))

        assert np.array_equal(seen[:, :72], seen[:, 24:])
        assert np.array_equal(seen[:48], seen[24:])

    def test_far_too_large(self) -> None:
        """A picture larger than any screen is refused before it is made."""
        with pytest.raises(ValueError, match="too many"):
            cloth_picture(over("plain weave"), [RED], [BLUE], 20, 20, width_px=100_000, height_px=100_000)


class TestFile:
    def test_the_same_bytes(self) -> None:
        """The same cloth gives the same file, so that a picture is kept by what it shows."""
        first, second = (cloth_picture(over("huck lace"), [RED], [BLUE], 24, 20) for _ in range(2))

        assert first == second

    def test_a_short_palette(self) -> None:
        """The file holds a palette of at most 256 colours."""

        assert "P" == Image.open(io.BytesIO(cloth_picture(over("huck lace"), [RED], [BLUE], 24, 20))).mode

    def test_bytes_of_a_large_cloth(self) -> None:
        """Four hundred ends and picks in three colours take no more than 40 KB at 4 px a thread."""
        warp = ([RED] * 4 + [BLUE] * 24 + ["c8962e"]) * 14
        png = cloth_picture(repeat_to(over("2/2 twill"), 400, 400), warp, warp, 20, 20, px_per_thread=4)

        assert (1600, 1600) == png_size(png)
        assert len(png) <= 42_000


def test_repeat_to() -> None:
    """A repeat is laid again and again from its first crossing, and cut where it is enough."""

    assert [[1, 0, 1], [0, 1, 0], [1, 0, 1]] == repeat_to(over("plain weave"), 3, 3).astype(int).tolist()
