"""Dressing the loom: from a warp's record to what is wound, sleyed, threaded and tied, to be read at the loom."""

from journal_tools.dressing.along import Begins
from journal_tools.dressing.bouts import Bout
from journal_tools.dressing.dressing import Dressing, dressing_of
from journal_tools.dressing.heddles import Move, OnShaft
from journal_tools.dressing.next_stretch import NextStretch
from journal_tools.dressing.other_weaves import OtherWeave
from journal_tools.dressing.sections import Section
from journal_tools.dressing.sleyed import Sleyed, SleyedBand
from journal_tools.dressing.tied import Tied
from journal_tools.dressing.winding import Spools, Strand, Winding

__all__ = [
    "Begins",
    "Bout",
    "Dressing",
    "Move",
    "NextStretch",
    "OnShaft",
    "OtherWeave",
    "Section",
    "Sleyed",
    "SleyedBand",
    "Spools",
    "Strand",
    "Tied",
    "Winding",
    "dressing_of",
]
