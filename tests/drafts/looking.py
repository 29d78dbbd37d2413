"""Drafts in notation, looked through."""

from __future__ import annotations

from journal_tools.drafts import Draft, parse_threading, parse_tie_up, parse_treadling
from journal_tools.drafts.analysis import Analysis, analysed

TWILL = "1+2, 2+3, 3+4, 4+1"
INCH = 0.0254


def draft(threading: str, tie_up: str = TWILL, treadling: str = "1-4") -> Draft:
    """A draft in notation."""
    return Draft(parse_threading(threading), parse_tie_up(tie_up), parse_treadling(treadling))


def look(threading: str, tie_up: str = TWILL, treadling: str = "1-4", said: str = "") -> Analysis:
    """Its analysis at 20 ends and 20 picks to the inch."""
    return analysed(draft(threading, tie_up, treadling), ends_per_m=20 / INCH, picks_per_m=20 / INCH, said_weave=said)
