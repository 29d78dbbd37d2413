"""Cloth whose threads are not all alike: thick and thin ones, crammed and spaced ones."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import cycle, islice
from math import ceil

import numpy as np
from numpy.typing import NDArray

from journal_tools.pictures.cloth import MOST_PIXELS, cloth_pixels, thread_pixels
from journal_tools.pictures.png import palette_png
from journal_tools.pictures.unevenness import Unevenness

LEAST_PX = 2
WIDEST = 4.0
"""A thread is drawn no more than four times the usual one."""

GAP_FROM = 1.5
"""Room from which on a gap is seen beside a thread, in which only the other system runs."""


def uneven_picture(
    over: NDArray[np.bool_],
    warp: Sequence[str],
    weft: Sequence[str],
    epi: float,
    ppi: float,
    uneven: Unevenness,
    *,
    width_px: int,
    height_px: int,
    px_per_thread: int = 6,
) -> bytes:
    """A palette PNG as `cloth_picture` draws it, each thread as thick as it is and with the room that it has."""
    end_px, pick_px = thread_pixels(epi, ppi, px_per_thread)
    if width_px * height_px > MOST_PIXELS:
        raise ValueError(f"{width_px} by {height_px} pixels are too many: {MOST_PIXELS:,} at most.")
    ends = _System(uneven.warp_thickness, uneven.warp_room, end_px, width_px)
    picks = _System(uneven.weft_thickness, uneven.weft_room, pick_px, height_px)
    crossings = over[np.ix_(picks.thread % over.shape[0], ends.thread % over.shape[1])]
    crossings = np.where(ends.gap[None, :], False, crossings)  # in a gap between ends only weft is seen
    crossings = np.where(picks.gap[:, None] & ~ends.gap[None, :], True, crossings)  # and between picks only warp
    pixels, palette = cloth_pixels(
        crossings,
        [warp[end] for end in (ends.thread % len(warp)).tolist()],
        [weft[pick] for pick in (picks.thread % len(weft)).tolist()],
        epi,
        ppi,
        px_per_thread=px_per_thread,
    )
    rows = len(pixels) - 1 - picks.sources[:height_px]  # the first pick is at the foot
    return palette_png(pixels[np.ix_(rows[::-1], ends.sources[:width_px])], palette)


class _System:
    """One system laid out: which thread each drawn one is, which of them are gaps, and the pixel each pixel is from."""

    def __init__(self, thickness: Sequence[float], room: Sequence[float], px: int, pixels: int) -> None:
        number = max(ceil(pixels / LEAST_PX) + 1, 1)
        thick = list(islice(cycle(thickness or (1.0,)), number))
        rooms = list(islice(cycle(room or (1.0,)), number))
        threads: list[int] = []
        gaps: list[bool] = []
        widths: list[int] = []
        drawn = 0
        for place, (fat, wide) in enumerate(zip(thick, rooms, strict=True)):
            if drawn >= pixels:
                break
            gap = round((wide - 1) * px) if wide >= GAP_FROM else 0
            if gap:
                threads.append(place)
                gaps.append(True)
                widths.append(max(LEAST_PX, gap))
                drawn += widths[-1]
            threads.append(place)
            gaps.append(False)
            widths.append(max(LEAST_PX, round(px * min(WIDEST, fat) * (wide if wide < GAP_FROM else 1))))
            drawn += widths[-1]
        self.thread = np.array(threads)
        self.gap = np.array(gaps)
        self.sources = np.concatenate(
            [place * px + np.arange(width) * px // width for place, width in enumerate(widths)]
        )
