"""Whether the weft catches the outermost ends of a warp as it is threaded, or misses them as it turns."""

from __future__ import annotations

from dataclasses import replace

from journal_tools.drafts.analysis import analysed
from journal_tools.drafts.selvedge import Selvedge
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
    found = analysed(replace(tied.woven, threading=threaded(tied.woven.threading, repeat + over)))
    return found.selvedge if len(found.hanging.layers) < 2 else None
