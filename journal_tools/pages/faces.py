"""Which threads of a cloth are seen from above, and which from below."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from math import lcm
from typing import TYPE_CHECKING, NamedTuple

from journal_tools.drafts.hanging import Part, hanging
from journal_tools.pictures.unevenness import EVEN, Unevenness

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

MOST = 4_000
"""Threads of a repeat with its colours that is looked at."""


class Side(NamedTuple):
    """One side of a cloth. over: (picks, ends), True where the warp is seen. warp, weft: hex of each thread.

    share: of the cloth's ends and of its picks that lie in this side, less than 1 of a layer.
    """

    over: NDArray[np.bool_]
    warp: tuple[str, ...]
    weft: tuple[str, ...]
    uneven: Unevenness
    share: tuple[float, float] = (1.0, 1.0)


def face_of(over: NDArray[np.bool_], warp: Sequence[str], weft: Sequence[str], uneven: Unevenness = EVEN) -> Side:
    """The face: of layers the upper one alone, else all of it. uneven: how its threads differ, all of them."""
    layers = _layers(over)
    if not layers:
        return Side(over, tuple(warp), tuple(weft), uneven)
    return _part(over, warp, weft, uneven, layers[0])


def back_of(over: NDArray[np.bool_], warp: Sequence[str], weft: Sequence[str], uneven: Unevenness = EVEN) -> Side:
    """The back, turned over sideways: of layers the lowest one alone."""
    layers = _layers(over)
    side = _part(over, warp, weft, uneven, layers[-1] if layers else None)
    turned = replace(
        side.uneven, warp_thickness=side.uneven.warp_thickness[::-1], warp_room=side.uneven.warp_room[::-1]
    )
    return Side(~side.over[:, ::-1], side.warp[::-1], side.weft, turned, side.share)


def _layers(over: NDArray[np.bool_]) -> tuple[Part, ...]:
    found = hanging(over)
    return found.layers if found.verdict == "layers" else ()


def _part(
    over: NDArray[np.bool_], warp: Sequence[str], weft: Sequence[str], uneven: Unevenness, part: Part | None
) -> Side:
    """Some threads of a cloth with a colour each; all of them for no part."""
    import numpy as np

    picks = _whole(over.shape[0], len(weft), len(uneven.weft_thickness), len(uneven.weft_room))
    ends = _whole(over.shape[1], len(warp), len(uneven.warp_thickness), len(uneven.warp_room))
    kept_picks = [n for n in range(picks) if part is None or n % over.shape[0] in part.picks]
    kept_ends = [n for n in range(ends) if part is None or n % over.shape[1] in part.ends]
    table = over[np.ix_(np.array(kept_picks) % over.shape[0], np.array(kept_ends) % over.shape[1])]
    kept = Unevenness(
        _of(uneven.warp_thickness, kept_ends),
        _of(uneven.weft_thickness, kept_picks),
        _of(uneven.warp_room, kept_ends),
        _of(uneven.weft_room, kept_picks),
    )
    warp_kept, weft_kept = (
        tuple(order[n % len(order)] for n in places) for order, places in ((warp, kept_ends), (weft, kept_picks))
    )
    return Side(table, warp_kept, weft_kept, kept, (len(kept_ends) / ends, len(kept_picks) / picks))


def _of(figures: Sequence[float], kept: Sequence[int]) -> tuple[float, ...]:
    return tuple(figures[n % len(figures)] for n in kept) if figures else ()


def _whole(threads: int, *orders: int) -> int:
    """After how many threads weave and orders begin again; where that is very many, the weave's repeat or nearly."""
    both = lcm(threads, *(order or 1 for order in orders))
    return both if both <= MOST else max(threads, min(MOST, max(orders) // threads * threads or threads))
