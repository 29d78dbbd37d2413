"""Reads the pixels of a picture back, for tests that look at what is seen and not at the file."""

from __future__ import annotations

import io

import numpy as np
from numpy.typing import NDArray
from PIL import Image

from journal_tools.drafts import drawdown, named_weave


def pixels(png: bytes) -> NDArray[np.int64]:
    """Red, green and blue of every pixel, shape (height, width, 3)."""
    return np.asarray(Image.open(io.BytesIO(png)).convert("RGB")).astype(np.int64)


def over(weave: str) -> NDArray[np.bool_]:
    """One repeat of a named weave."""
    named = named_weave(weave)
    assert named is not None
    return drawdown(named.draft)
