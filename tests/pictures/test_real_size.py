"""Cloth that prints in its real size."""

from __future__ import annotations

import io

import pytest
from PIL import Image

from journal_tools.pictures.real_size import real_size_picture
from tests.pictures.pixels import over


@pytest.mark.parametrize(("epi", "ppi"), [(20.0, 20.0), (24.0, 18.5), (11.0, 60.0)])
def test_as_large_as_the_cloth(epi: float, ppi: float) -> None:
    """Printed by its own measure a picture of 4 by 3 in is that, also where ends and picks are set unlike."""
    png = real_size_picture(over("2/2 twill"), ["c02020"], ["2020c0"], epi, ppi, (4, 3))
    with Image.open(io.BytesIO(png)) as image:
        image.load()
        across, down = (side / dots for side, dots in zip(image.size, image.info["dpi"], strict=True))

    assert (pytest.approx(4, abs=0.01), pytest.approx(3, abs=0.01)) == (across, down)
