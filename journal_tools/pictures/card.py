"""The cloth picture of a card: the part and the scale that show most of a cloth in a small space."""

from __future__ import annotations

from collections.abc import Hashable, Sequence
from itertools import groupby

import numpy as np
from numpy.typing import NDArray

from journal_tools.pictures.cloth import cloth_picture, thread_pixels

CARD = (592, 280)
"""Pixels of a card's picture: 296 by 140 on the page, sharp on a screen of twice as many."""

_PX_PER_THREAD = (8, 7, 6, 5, 4)
"""From threads that are seen one by one to the smallest that still look like threads."""


def card_picture(
    over: NDArray[np.bool_],
    warp: Sequence[str],
    weft: Sequence[str],
    epi: float,
    ppi: float,
    *,
    width_px: int = CARD[0],
    height_px: int = CARD[1],
) -> bytes:
    """A palette PNG of the cloth, repeated or cut to fill a card.

    The arguments are those of `cloth_picture`. Threads are drawn as large as may be while one
    repeat of the colour orders and of the weave is seen. Where a repeat is too long for a card, it
    is as many of the colours and stripes as the smallest threads would show.
    """
    weave_ends = repeat_length([column.tobytes() for column in over.T])
    weave_picks = repeat_length([row.tobytes() for row in over])
    smallest = thread_pixels(epi, ppi, _PX_PER_THREAD[-1])
    warp_part = _Part(warp, weave_ends, -(-width_px // smallest[0]))
    weft_part = _Part(weft, weave_picks, -(-height_px // smallest[1]))
    for px_per_thread in _PX_PER_THREAD:
        end_px, pick_px = thread_pixels(epi, ppi, px_per_thread)
        ends, picks = -(-width_px // end_px), -(-height_px // pick_px)
        if warp_part.is_shown_by(ends) and weft_part.is_shown_by(picks):
            break
    end_places = most_colourful(warp, ends)[0] + np.arange(ends)
    pick_places = most_colourful(weft, picks)[0] + np.arange(picks)
    return cloth_picture(
        over[np.ix_(pick_places % over.shape[0], end_places % over.shape[1])],
        [warp[end] for end in (end_places % len(warp)).tolist()],
        [weft[pick] for pick in (pick_places % len(weft)).tolist()],
        epi,
        ppi,
        width_px=width_px,
        height_px=height_px,
        px_per_thread=px_per_thread,
    )


class _Part:
    """What of one thread system should be seen: a repeat, or as much as `most_threads` can show."""

    def __init__(self, order: Sequence[Hashable], weave_repeat: int, most_threads: int) -> None:
        self.order = order
        self.repeat = max(repeat_length(order), weave_repeat)
        self.fits = self.repeat <= most_threads
        self.most = most_colourful(order, most_threads)[1]

    def is_shown_by(self, threads: int) -> bool:
        """Whether so many threads are enough."""
        if self.fits:
            return threads >= self.repeat
        return most_colourful(self.order, threads)[1] >= self.most


def repeat_length(order: Sequence[Hashable]) -> int:
    """How many threads an order runs before it comes again, borders at its two ends apart.

    20 bone, 12 times (4 slate, 24 bone), 4 slate, 20 bone repeats after 28; one colour after 1;
    an order without a repeat after its whole length.
    """
    runs = [(thread, len(list(same))) for thread, same in groupby(order)]
    if len(runs) == 1:
        return 1
    threads, inner = [thread for thread, _ in runs], runs[1:-1]
    for length in range(2, len(runs) // 2 + 1):
        if threads[length:] == threads[:-length] and inner[length:] == inner[:-length]:
            return sum(count for _, count in runs[1 : 1 + length])
    return len(order)


def most_colourful(order: Sequence[Hashable], threads: int) -> tuple[int, tuple[int, int]]:
    """Where to begin, to see most colours and then most stripes in so many threads of an order.

    Gives the thread to begin at and (colours, changes of colour) seen from there. Of neighbouring
    places that are as good the middle one is taken, so that stripes do not stand at the edge.
    """
    numbers = {thread: number for number, thread in enumerate(dict.fromkeys(order))}
    places = np.array([numbers[thread] for thread in order])
    changes = np.concatenate([[0], np.cumsum(places[1:] != places[:-1])])
    if len(order) <= threads:
        return 0, (len(numbers), int(changes[-1]))
    starts = len(order) - threads + 1
    colours = np.zeros(starts, dtype=np.int64)
    for number in range(len(numbers)):
        so_far = np.concatenate([[0], np.cumsum(places == number)])
        colours += so_far[threads:] > so_far[:starts]
    stripes = changes[threads - 1 :] - changes[:starts]
    worth = colours * len(order) + stripes
    best = np.flatnonzero(worth == worth.max())
    stretch = best[np.cumprod(np.diff(best, prepend=best[0]) <= 1).astype(bool)]
    start = int(stretch[len(stretch) // 2])
    return start, (int(colours[start]), int(stripes[start]))
