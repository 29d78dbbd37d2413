"""Drafts: the notation, what is threaded and treadled, and which thread lies on top."""

from journal_tools.drafts.draft import Draft
from journal_tools.drafts.floats import LongestFloats, longest_floats
from journal_tools.drafts.interlacement import drawdown
from journal_tools.drafts.notation import (
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
from journal_tools.drafts.weaves import Face, NamedWeave, named_weave, weave_names

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
