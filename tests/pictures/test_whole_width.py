"""The whole width: every end once, from edge to edge, however many there are."""

from __future__ import annotations

import numpy as np
import pytest

from journal_tools.pictures.png import png_size
from journal_tools.pictures.whole_width import HEIGHT, WIDEST, strip_picture, strip_size
from tests.pictures.pixels import over, pixels

BLUE, WHITE = "24406b", "f1e8d4"


def dark(ends: list[int]) -> np.ndarray[tuple[int], np.dtype[np.bool_]]:
    """Which of a hundred parts of the width are dark, of stripes of so many ends: blue, white, blue and so on."""
    warp = [colour for n, number in enumerate(ends) for colour in [(BLUE, WHITE)[n % 2]] * number]
    png = strip_picture(over("plain weave"), warp, [WHITE], 20, 20)
    assert strip_size(len(warp), 20, 20) == png_size(png)
    columns = pixels(png).mean(axis=(0, 2))
    parts = np.array([part.mean() for part in np.array_split(columns, 100)])
    return np.asarray(parts < (parts.max() + parts.min()) / 2)


class TestStrip:
    def test_both_borders(self) -> None:
        """Of 20 blue, 360 white, 20 blue a twentieth at each side is blue, and nothing between."""
        assert [*range(5), *range(95, 100)] == np.flatnonzero(dark([20, 360, 20])).tolist()

    def test_a_wide_cloth(self) -> None:
        """1,400 ends are no wider a picture, and their two broad stripes stand in their places."""
        assert [*range(10, 20), *range(80, 90)] == np.flatnonzero(dark([0, 140, 140, 840, 140, 140])).tolist()

    @pytest.mark.parametrize(("ends", "width"), [(100, 800), (400, 1200), (1400, WIDEST)])
    def test_size(self, ends: int, width: int) -> None:
        """Threads are as large as there is room for."""
        assert (width, HEIGHT) == strip_size(ends, 20, 20)

    def test_too_many(self) -> None:
        """A number of ends that no loom holds is refused rather than drawn."""
        assert strip_size(10_000_000, 20, 20) is None
        with pytest.raises(ValueError, match="too many"):
            strip_picture(over("plain weave"), [BLUE] * 10_000_000, [WHITE], 20, 20)
