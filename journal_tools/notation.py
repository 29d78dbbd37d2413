"""Temporary door to the notation until it stands in its own layer."""

from journal_tools.drafts.notation import (
    NOTATION,
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
    "parse_colours",
    "parse_lift_plan",
    "parse_threading",
    "parse_tie_up",
    "parse_treadling",
    "print_colours",
    "print_sets",
]
