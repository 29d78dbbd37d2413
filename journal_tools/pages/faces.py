"""Which threads of a cloth are seen from above, and which from below."""

from __future__ import annotations

from collections.abc import Sequence
from math import lcm
from typing import TYPE_CHECKING, NamedTuple

from journal_tools.drafts.hanging import Part, hanging

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

MOST = 4_000
"""Threads of a repeat with its colours that is looked at."""


class Side(NamedTuple):
    """One side of a cloth. over: (picks, ends), True where the warp is seen. warp, weft: hex of each thread."""

    over: NDArray[np.bool_]
    warp: tuple[str, ...]
    weft: tuple[str, ...]


def face_of(over: NDArray[np.bool_], warp: Sequence[str], weft: Sequence[str]) -> Side:
    """The face: of layers the upper one alone, else all of it."""
    layers = _layers(over)
    if not layers:
        return Side(over, tuple(warp), tuple(weft))
    return _part(over, warp, weft, layers[0])


def back_of(over: NDArray[np.bool_], warp: Sequence[str], weft: Sequence[str]) -> Side:
    """The back, turned over sideways: of layers the lowest one alone."""
    layers = _layers(over)
    side = _part(over, warp, weft, layers[-1]) if layers else _part(over, warp, weft, None)
    return Side(~side.over[:, ::-1], side.warp[::-1], side.weft)


def _layers(over: NDArray[np.bool_]) -> tuple[Part, ...]:
    found = hanging(over)
    return found.layers if found.verdict == "layers" else ()


def _part(over: NDArray[np.bool_], warp: Sequence[str], weft: Sequence[str], part: Part | None) -> Side:
    """Some threads of a cloth with a colour each; all of them for no part."""
    import numpy as np

    picks, ends = (_whole(number, len(order)) for number, order in zip(over.shape, (weft, warp), strict=True))
    kept_picks = [n for n in range(picks) if part is None or n % over.shape[0] in part.picks]
    kept_ends = [n for n in range(ends) if part is None or n % over.shape[1] in part.ends]
    table = over[np.ix_(np.array(kept_picks) % over.shape[0], np.array(kept_ends) % over.shape[1])]
    return Side(table, tuple(warp[n % len(warp)] for n in kept_ends), tuple(weft[n % len(weft)] for n in kept_picks))


def _whole(threads: int, colours: int) -> int:
    """After how many threads both weave and colours begin again; the weave's repeat where that is very many."""
    both = lcm(threads, colours)
    return both if both <= MOST else max(threads, min(MOST, colours // threads * threads or threads))
