"""The warp that a fringe takes, where its record says how long it is to be when all is done."""

from __future__ import annotations

from journal_tools.ledger.laid import Laid
from journal_tools.planning.allowances import TWIST_TAKES
from journal_tools.planning.arithmetic import before_loss
from journal_tools.records.hem import Fringe

ENDS = 2
"""A piece has a fringe at both ends, unless its record counts them."""


def fringe_of(laid: Laid) -> tuple[float, str]:
    """Warp for the fringes of one piece in mm, and how that was reckoned, "" for as the record says.

    A fringe that is to be so long when it is done takes, twisted, what the twist takes as well. It is
    taken to be twisted unless its style says that it is not (judgement).
    """
    said: Fringe | None = laid.said("fringe")
    if said is None or said.allowed is not None:
        return laid.fringe_mm, ""
    done = said.finished or said.after_twist
    if done is None:
        return 0.0, ""
    if said.style and "twist" not in said.style.lower() and not (said.twisted or said.after_twist):
        return ENDS * float(done.mm), f"{done.text} at each end"
    takes = f"{TWIST_TAKES * 100:.0f} %"
    how = f"{done.text} twisted at each end: the twist takes {takes} of its warp (common practice, no source)"
    return ENDS * before_loss(float(done.mm), TWIST_TAKES), how
