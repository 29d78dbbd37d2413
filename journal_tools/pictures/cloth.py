"""Cloth as it looks: thread on thread, in the yarns' colours and in the true proportions.

Every crossing is one of 32 kinds in one of the yarns' colours. The tiles for these are made once,
as places in a palette, and looked up for the whole cloth at a stroke: fast, and a small file.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from itertools import product
from math import log

import numpy as np
from numpy.typing import NDArray

from journal_tools.pictures.colour import RGB, parse_hex
from journal_tools.pictures.png import palette_png
from journal_tools.pictures.thread_tiles import ABOVE, BELOW, KINDS, LEFT, LIGHT, OVER, RIGHT, shaded_crossings

MOST_PIXELS = 40_000_000
"""The largest picture that is drawn, 8,000 by 5,000 pixels."""

_SHADES = 16
_DARKEST, _BRIGHTEST = 0.34, 1.15  # brightness of the first and of the last shade
_MOST_COLOURS = 64  # of four shades each: 256 is what a palette holds
_SHEEN = 34  # light that even black yarn throws back, of 255

_MOST_UNEVEN = 8.0
_FACED_FROM, _FACED_AT = 1.4, 3.0
"""Ends for each pick at which warp begins to crowd over the weft, and at which it hides it."""


def repeat_to(over: NDArray[np.bool_], picks: int, ends: int) -> NDArray[np.bool_]:
    """So many picks and ends of a cloth of which `over` is one repeat, from its first crossing on."""
    rows, columns = np.arange(picks) % over.shape[0], np.arange(ends) % over.shape[1]
    return over[np.ix_(rows, columns)]


@lru_cache
def thread_pixels(epi: float, ppi: float, px_per_thread: int) -> tuple[int, int]:
    """Whole pixels that an end and a pick take, near px_per_thread, in the proportions of the cloth.

    A closely set thread is a narrow one: with twice as many ends as picks to the inch a pick is
    twice as high as an end is wide. Of the sizes near what was asked for, the pair that keeps the
    proportion best is taken; each is 2 px at least, and proportions over 8 to 1 are drawn as 8 to 1.
    Raises ValueError unless both densities are above zero.
    """
    if not (epi > 0 and ppi > 0):
        raise ValueError(f"Threads to the inch are above zero, not {epi} and {ppi}.")
    ratio = min(max(epi / ppi, 1 / _MOST_UNEVEN), _MOST_UNEVEN)
    wanted = px_per_thread * ratio**-0.5, px_per_thread * ratio**0.5

    def misfit(pair: tuple[int, int]) -> float:
        proportion = abs(log(pair[1] / pair[0] / ratio))
        size = max(abs(log(got / want)) for got, want in zip(pair, wanted, strict=True))
        return 2 * proportion + size  # a wrong proportion is seen sooner than a size

    ends, picks = (range(max(2, int(want * 0.7)), max(2, int(want * 1.4) + 1) + 1) for want in wanted)
    return min(product(ends, picks), key=misfit)


def life_size(picture_px: tuple[int, int], epi: float, ppi: float, px_per_thread: int = 6) -> tuple[float, float]:
    """Width and height, in inches, at which a picture's threads are as wide as those of the cloth.

    picture_px: the width and height of a `cloth_picture`. epi, ppi, px_per_thread: as it was given
    them, here threads to the inch. Exact, also where whole pixels could not keep the proportion.
    """
    end_px, pick_px = thread_pixels(epi, ppi, px_per_thread)
    return picture_px[0] / end_px / epi, picture_px[1] / pick_px / ppi


def cloth_picture(
    over: NDArray[np.bool_],
    warp: Sequence[str],
    weft: Sequence[str],
    epi: float,
    ppi: float,
    *,
    width_px: int | None = None,
    height_px: int | None = None,
    px_per_thread: int = 6,
) -> bytes:
    """A palette PNG of the cloth as it lies on the loom, first pick at the foot and first end at the left.

    over: shape (picks, ends), True where the warp is over the weft. warp, weft: the colour of each
    end and pick as hex; a shorter list begins again. epi, ppi: threads to the inch (or to any other
    length), for the proportions; where one is set far closer than the other, it covers the other.
    width_px, height_px: the picture is repeated or cut to this size; without them it shows `over`
    once. Raises Unreadable for a colour that is none, ValueError for a picture over MOST_PIXELS.
    """
    return palette_png(
        *cloth_pixels(over, warp, weft, epi, ppi, width_px=width_px, height_px=height_px, px_per_thread=px_per_thread)
    )


def cloth_pixels(
    over: NDArray[np.bool_],
    warp: Sequence[str],
    weft: Sequence[str],
    epi: float,
    ppi: float,
    *,
    width_px: int | None = None,
    height_px: int | None = None,
    px_per_thread: int = 6,
) -> tuple[NDArray[np.uint8], list[RGB]]:
    """The same as places in a palette (height × width), and the palette."""
    end_px, pick_px = thread_pixels(epi, ppi, px_per_thread)
    width = width_px or over.shape[1] * end_px
    height = height_px or over.shape[0] * pick_px
    if width * height > MOST_PIXELS:
        raise ValueError(f"{width} by {height} pixels are too many: {MOST_PIXELS:,} at most.")
    # One thread more all round, which is cut off again: no thread of the picture stands at an edge.
    number = -(-height // pick_px)
    picks = np.arange(number, -2, -1)  # woven upwards
    ends = np.arange(-1, -(-width // end_px) + 1)
    crossings = over[np.ix_(picks % over.shape[0], ends % over.shape[1])]
    colours, numbers = _colours(warp, weft)
    shades = min(_SHADES, 256 // len(colours))
    warp_numbers = numbers[: len(warp)][ends % len(warp)]
    weft_numbers = numbers[len(warp) :][picks % len(weft)]
    covers = _covering(epi / ppi)
    if covers < 0:
        # Weft-faced cloth is warp-faced cloth turned by a quarter: the same work, the other way.
        light = (LIGHT[1], LIGHT[0], LIGHT[2])
        table = _Tiles(pick_px, end_px, round(-covers * pick_px), len(colours), shades, light)
        pixels = table.lay(~crossings.T, weft_numbers, warp_numbers).T
    else:
        table = _Tiles(end_px, pick_px, round(covers * end_px), len(colours), shades, LIGHT)
        pixels = table.lay(crossings, warp_numbers, weft_numbers)
    foot = (number + 1) * pick_px
    pixels = pixels[foot - height : foot, end_px : end_px + width]
    return pixels, _palette(colours, shades)


class _Tiles:
    """Every kind of crossing in every colour, as places in the palette, ready to be laid."""

    def __init__(
        self, width: int, height: int, reach: int, colours: int, shades: int, light: tuple[float, float, float]
    ) -> None:
        brightness = shaded_crossings(width, height, reach, light)
        place = (brightness - _DARKEST) / (_BRIGHTEST - _DARKEST) * (shades - 1)
        shade = np.clip(np.rint(place), 0, shades - 1).astype(np.uint8)
        first = np.arange(colours, dtype=np.uint8) * np.uint8(shades)
        table = (shade[:, None] + first[None, :, None, None]).reshape(KINDS * colours, height, -1)
        self.width, self.height, self.reach, self.colours = width, height, reach, colours
        self.own = np.ascontiguousarray(table[:, :, reach : reach + width])
        # What stands in the left and the right part of a crossing: its own thread, or the warp beside it.
        self.left = np.concatenate([self.own[:, :, :reach], table[:, :, reach + width :]])
        # In the middle of an odd width the two would meet: the left one has it.
        self.reach_left = min(reach, width - reach)
        before = reach - self.reach_left
        self.right = np.concatenate([self.own[:, :, width - self.reach_left :], table[:, :, before:reach]])

    def lay(self, over: NDArray[np.bool_], warp: NDArray[np.intp], weft: NDArray[np.intp]) -> NDArray[np.uint8]:
        """The pixels of a cloth. warp, weft: the number of each thread's colour."""
        picks, ends = over.shape
        codes = _kinds(over) * self.colours + np.where(over, warp[None, :], weft[:, None])
        pixels = np.empty((picks, self.height, ends, self.width), dtype=np.uint8)
        for row in range(self.height):
            np.take(self.own[:, row], codes, axis=0, out=pixels[:, row], mode="clip")
        if self.reach:
            beside = len(self.own)
            left, right = codes.copy(), codes.copy()
            spread = ~over[:, 1:] & over[:, :-1]
            left[:, 1:][spread] = codes[:, :-1][spread] + beside
            spread = ~over[:, :-1] & over[:, 1:]
            right[:, :-1][spread] = codes[:, 1:][spread] + beside
            for row in range(self.height):
                pixels[:, row, :, : self.reach] = self.left[left, row]
                pixels[:, row, :, self.width - self.reach_left :] = self.right[right, row]
        return pixels.reshape(picks * self.height, ends * self.width)


def _kinds(over: NDArray[np.bool_]) -> NDArray[np.intp]:
    """The kind of every crossing; at the edges every thread runs on."""
    kinds = over.astype(np.intp) * OVER
    kinds += ABOVE * over[[0, *range(len(over) - 1)]]
    kinds += BELOW * over[[*range(1, len(over)), -1]]
    columns = over.shape[1]
    kinds += LEFT * over[:, [0, *range(columns - 1)]]
    kinds += RIGHT * over[:, [*range(1, columns), -1]]
    return kinds


def _covering(ratio: float) -> float:
    """How far threads set closer spread over the others: 0 to 0.5 for warp, 0 to -0.5 for weft.

    ratio: ends for each pick in the same length. At 0.5 the others are not seen any more.
    """
    closeness = np.log(max(ratio, 1 / ratio) / _FACED_FROM) / np.log(_FACED_AT / _FACED_FROM)
    spread = 0.5 * float(np.clip(closeness, 0, 1))
    return spread if ratio >= 1 else -spread


def _colours(warp: Sequence[str], weft: Sequence[str]) -> tuple[list[RGB], NDArray[np.intp]]:
    """The different colours, and for each end and then each pick the number of its own."""
    if not warp or not weft:
        raise ValueError("Warp and weft want a colour each at least.")
    known = {text: parse_hex(text) for text in dict.fromkeys([*warp, *weft])}
    bits = 8
    # More colours than a palette bears in their shades: the nearest alike are drawn as one.
    while len({_coarse(colour, bits) for colour in known.values()}) > _MOST_COLOURS:
        bits -= 1
    colours = list(dict.fromkeys(_coarse(colour, bits) for colour in known.values()))
    number = {text: colours.index(_coarse(colour, bits)) for text, colour in known.items()}
    return colours, np.array([number[text] for text in (*warp, *weft)], dtype=np.intp)


def _coarse(colour: RGB, bits: int) -> RGB:
    """A colour to so many bits a part, in the middle of what these leave open."""
    step = 1 << (8 - bits)
    red, green, blue = (part // step * step + step // 2 for part in colour)
    return red, green, blue


def _palette(colours: Sequence[RGB], shades: int) -> list[RGB]:
    """Every colour in every shade, dark to bright."""
    return [
        _lit(colour, _DARKEST + (_BRIGHTEST - _DARKEST) * shade / (shades - 1))
        for colour in colours
        for shade in range(shades)
    ]


def _lit(colour: RGB, brightness: float) -> RGB:
    """A colour in some light: towards black in the shade, towards white beyond full light."""
    sheen = _SHEEN * max(0.0, brightness - 0.7)
    red, green, blue = (
        min(
            255, round(part * min(1.0, brightness) + (255 - part) * max(0.0, brightness - 1) + sheen * (1 - part / 255))
        )
        for part in colour
    )
    return red, green, blue
