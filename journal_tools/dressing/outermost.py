"""Whether the weft catches the outermost ends of a warp as it is threaded, or misses them as it turns."""

from __future__ import annotations

from dataclasses import replace

from journal_tools.drafts import drawdown
from journal_tools.drafts.hanging import hanging
from journal_tools.drafts.repeat import true_repeat
from journal_tools.drafts.selvedge import UNTOLD, Selvedge, selvedge, shuttles
from journal_tools.dressing.sections import threaded
from journal_tools.dressing.tied import Tied
from journal_tools.records import Warp


def outermost(warp: Warp, tied: Tied, ends: int) -> Selvedge | None:
    """The turns at both edges; None for cloth of several layers, whose edges are looked at layer by layer.

    The last end is that of the warp, which may stand in the middle of a repeat.
    """
    if tied.woven is None or (warp.layers is not None and warp.layers.number > 1):
        return None
    repeat = len(tied.woven.threading)
    over = ends % repeat if ends > repeat else 0
    cloth = drawdown(replace(tied.woven, threading=threaded(tied.woven.threading, repeat + over)))
    if hanging(cloth).verdict == "layers":
        return None
    once = true_repeat(cloth)
    return UNTOLD if shuttles(tied.woven) > 1 else selvedge(cloth[: len(once)])
