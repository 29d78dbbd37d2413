"""Drafts and colour orders as a weaver writes them: 12 times (4 slate, 24 bone), 1-4, 1+3."""

from journal_tools.notation.dents import parse_dents, print_dents
from journal_tools.notation.lists import (
    HIGHEST,
    NOTATION,
    Sets,
    is_colour,
    parse_colours,
    parse_lift_plan,
    parse_threading,
    parse_tie_up,
    parse_treadling,
    print_colours,
    print_lift_plan,
    print_sets,
    print_tie_up,
)
from journal_tools.notation.profile import Blocks, found_blocks, parse_profile, print_profile

__all__ = [
    "HIGHEST",
    "NOTATION",
    "Blocks",
    "Sets",
    "found_blocks",
    "is_colour",
    "parse_colours",
    "parse_dents",
    "parse_lift_plan",
    "parse_profile",
    "parse_threading",
    "parse_tie_up",
    "parse_treadling",
    "print_colours",
    "print_dents",
    "print_lift_plan",
    "print_profile",
    "print_sets",
    "print_tie_up",
]
