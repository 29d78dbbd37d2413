"""Drafts: what is threaded and treadled, which thread lies on top, and weaves by name.

The notation that drafts are written in is given here too, for whoever works with drafts.
"""

from journal_tools.drafts.draft import Draft
from journal_tools.drafts.floats import LongestFloats, longest_floats
from journal_tools.drafts.interlacement import drawdown
from journal_tools.drafts.weaves import Face, NamedWeave, named_weave, weave_names
from journal_tools.notation import (
    NOTATION,
    Sets,
    parse_colours,
    parse_lift_plan,
    parse_threading,
    parse_tie_up,
    parse_treadling,
    print_colours,
    print_sets,
)

__all__ = [
    "NOTATION",
    "Draft",
    "Face",
    "LongestFloats",
    "NamedWeave",
    "Sets",
    "drawdown",
    "longest_floats",
    "named_weave",
    "parse_colours",
    "parse_lift_plan",
    "parse_threading",
    "parse_tie_up",
    "parse_treadling",
    "print_colours",
    "print_sets",
    "weave_names",
]
