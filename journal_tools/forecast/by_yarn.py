"""Lengths that are told by threads: the warp that wove a piece, and the picks thrown in it.

Both stand beside the sizes by the tape as readings of their own, so that take-up is learned only where the
warp was measured or marked, and a count of picks says how long a piece will be. Crimp of a strip that was
unpicked from cloth is another quantity than take-up on the loom, and no reading here.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from journal_tools.drafts import named_weave
from journal_tools.forecast.cloth_kind import sett_of
from journal_tools.forecast.observed import Reading
from journal_tools.ledger.chain import Tape
from journal_tools.ledger.laid import Laid
from journal_tools.ledger.uncertainty import cloth_uncertainty_mm, reading_uncertainty_mm
from journal_tools.quantities import Length
from journal_tools.records.warp import Warp

ABOUT_PICKS = 0.02
"""Standard uncertainty of a pick count that is only "about", as a share (judgement)."""

TABBY_ROLES = ("tabby", "pattern")


def of_piece(laid: Laid, tape: Tape) -> Iterator[Reading]:
    """The warp that one piece took, where that was measured, and its picks, where all of them were counted."""
    used: Length | None = laid.levels[0].warp_used
    if used is not None:
        yield _reading("warp", [used], tape)
    pitch = pick_pitch_mm(laid)
    if laid.picks is not None and laid.picks.number and pitch is not None and _every_pick_counted(laid):
        yield Reading("picks", math.log(laid.picks.number * pitch), ABOUT_PICKS if laid.picks.about else 0.0)


def pick_pitch_mm(laid: Laid) -> float | None:
    """The length on the loom that one pick was meant to take, in mm; None where nobody can tell.

    As beaten, else as far apart as the ends, where neither warp nor weft hides the other and there is one
    weft. Cloth in layers has picks and ends of all its layers in both figures, so that they need no dividing.
    """
    beat = laid.said("beat")
    if beat is not None:
        return 1000 / float(beat.per_m)
    named = named_weave(laid.said("weave") or "")
    sett = sett_of(laid)
    hidden = named is not None and named.ends_to_picks != 1
    if sett is None or hidden or _has_tabby(laid):
        return None
    return 1000 / (sett * (laid.warp.layers.number if laid.warp.layers else 1))


def _every_pick_counted(laid: Laid) -> bool:
    """Whether a count of picks has the tabby in it, as it has where there is no tabby."""
    said = laid.said("tabby")
    return bool(said == "counted") if said is not None else not _has_tabby(laid)


def _has_tabby(laid: Laid) -> bool:
    """Whether a pattern weft floats over a ground of its own: then two picks lie where others have one."""
    if laid.said("tabby") is not None:
        return True
    uses = laid.warp.yarns or {}
    for weft in laid.said("weft") or ():
        called = (*(weft.order.items if weft.order else ()), weft.yarn)
        if {weft.role, *(uses[name].role for name in called if name in uses)} & set(TABBY_ROLES):
            return True
    return False


def of_marks(warp: Warp, tape: Tape) -> tuple[Reading, ...]:
    """Warp between marks and the cloth that it wove under tension, all marks together; empty without marks."""
    wound = [each for each in warp.warp if each.role in (None, "ground")] or list(warp.warp)
    marked = [mark for each in wound for mark in each.marked]
    if not marked:
        return ()
    return (
        _reading("warp", [mark.warp for mark in marked], tape),
        _reading("on_loom", [mark.cloth for mark in marked], tape),
    )


def _reading(moment: str, lengths: Sequence[Length], tape: Tape) -> Reading:
    """Lengths laid end to end, as one; yarn is read as well as the tape's mark, cloth as well as cloth lies."""
    mm = sum(float(each.mm) for each in lengths)
    if moment == "warp":
        u = [reading_uncertainty_mm(tape.mark_mm(each)) for each in lengths]
    else:
        u = [cloth_uncertainty_mm([each], "length", tape.mark_mm(each)) for each in lengths]
    return Reading(moment, math.log(mm), math.hypot(*u) / mm / 2)
