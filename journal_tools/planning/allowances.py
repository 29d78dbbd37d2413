"""What a plan allows where neither the record nor the past says: every such figure, once, with its reason.

All of them are common practice or judgement, with no source, unless a line says otherwise. Lengths
are in mm, shares are fractions.
"""

from __future__ import annotations

from typing import NamedTuple

from journal_tools.forecast.expected import TOO_WIDE as TOO_WIDE

INCH = 25.4
YARD = 36 * INCH


class Step(NamedTuple):
    """What hands round to, in mm. weave: a length at the loom. wind: a warp. tape: a size of cloth."""

    weave: float
    wind: float
    tape: float


STEPS = {"in": Step(INCH / 4, YARD / 4, INCH / 8), "cm": Step(5.0, 250.0, 5.0), "mm": Step(5.0, 250.0, 5.0)}
"""A ribbon is read to 1/4 in or 5 mm under tension; pegs of a board lie a quarter yard or metre apart."""

WEFT_OVER_REED = 1.05
"""Weft in a pick over the width in the reed: the slant of the pick and the turn at the edge; 1.03 to 1.08."""

SPARE_YARN = 0.05
"""Yarn beyond the reckoning, a share of it: knots, bobbin ends, and a label that is a few per cent out."""

HEADER = 2 * INCH
"""Woven first with waste yarn, until the warp is spread and the beat is even."""

GAP = INCH / 2
"""Between two pieces that are cut apart: room for the scissors and for a row of stitches."""

WASTE = 30 * INCH
"""Front tie-on and thrums where no loom is named: table looms take 14 to 22 in, floor looms 24 to 40."""

RETIE = 9 * INCH
"""What a cut-off and a new knot cost where the loom's record does not say: 8 to 12 in."""

TWIST_TAKES = 0.20
"""A twisted fringe is this much shorter than the warp left for it: 15 to 25 %."""

END_TO_PICKS = 4.0
"""One end is wound, threaded and sleyed in the time of so many picks; for reckoning hours from past hours."""

PAST_PACE = 3
"""Warps with their hours written down before the past's pace is believed."""

RISK_LEAST = 0.75
"""The least share of the usual risk that a told limit is under: a coarse step can fall far below it."""

WORTH_A_SAMPLE = 0.75
"""A sample is spoken of when it leaves less than this share of the doubt."""

SAMPLE = 7 * INCH
"""A sample's woven length: enough for a width in its middle, beyond the odd first inches."""

SAMPLE_FOR_LENGTH = 15 * INCH
"""Below this a sample says nothing of length: 1/8 in at each end is 2 % of 12 in."""

RISK, RISK_MENDED = 1 / 6, 1 / 20
"""The risk of coming up short that is worth a word, and what a little more warp should bring it to."""

SETT_OFF = 0.04
"""A true sett this far from the wanted one is told as being off; nearer than that, hands feel no difference."""

USUAL_REEDS = {"in": (8.0, 10.0, 12.0, 15.0), "cm": (3.0, 4.0, 5.0, 6.0)}
"""Dents to the inch and to the centimetre of reeds that most weavers have, where no loom's reeds are known."""
