"""Figures as weavers write them, read exactly and shown again.

Every one keeps the text that was typed. What cannot be read, or could mean two things, raises
`Unreadable`, which says what would be right.
"""

from journal_tools.quantities.answer import parse_yes_no
from journal_tools.quantities.count import CountOf, parse_count
from journal_tools.quantities.density import Density, parse_density, parse_wraps, show_density
from journal_tools.quantities.duration import Duration, parse_hours, parse_minutes, show_minutes
from journal_tools.quantities.length import (
    FOOT,
    INCH,
    YARD,
    Length,
    TimesLength,
    parse_length,
    parse_times_length,
    show_length,
)
from journal_tools.quantities.money import Money, parse_money
from journal_tools.quantities.percent import Percent, parse_percent
from journal_tools.quantities.size import Fold, Size, parse_size, show_size
from journal_tools.quantities.units import USUAL, Units
from journal_tools.quantities.unreadable import Ambiguous, Unreadable
from journal_tools.quantities.weight import OUNCE, POUND, Weight, parse_weight, show_weight
from journal_tools.quantities.when import MONTHS, SEASONS, When, parse_when
from journal_tools.quantities.yarn_number import YarnNumber, parse_yarn_number
from journal_tools.quantities.yarn_systems import SYSTEMS, System, show_grist

__all__ = [
    "FOOT",
    "INCH",
    "MONTHS",
    "OUNCE",
    "POUND",
    "SEASONS",
    "SYSTEMS",
    "USUAL",
    "YARD",
    "Ambiguous",
    "CountOf",
    "Density",
    "Duration",
    "Fold",
    "Length",
    "Money",
    "Percent",
    "Size",
    "System",
    "TimesLength",
    "Units",
    "Unreadable",
    "Weight",
    "When",
    "YarnNumber",
    "parse_count",
    "parse_density",
    "parse_hours",
    "parse_length",
    "parse_minutes",
    "parse_money",
    "parse_percent",
    "parse_size",
    "parse_times_length",
    "parse_weight",
    "parse_when",
    "parse_wraps",
    "parse_yarn_number",
    "parse_yes_no",
    "show_density",
    "show_grist",
    "show_length",
    "show_minutes",
    "show_size",
    "show_weight",
]
