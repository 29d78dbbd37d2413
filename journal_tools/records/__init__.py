"""Records: what a weaver wrote, read from text, with every problem found on the way."""

from journal_tools.records.draft import Draft
from journal_tools.records.finish import Finish
from journal_tools.records.journal import Journal, read_journal
from journal_tools.records.kinds import KINDS
from journal_tools.records.loom import Loom
from journal_tools.records.public import public
from journal_tools.records.record import Record
from journal_tools.records.settings import Settings
from journal_tools.records.warp import Piece, Planned, Stretch, Warp
from journal_tools.records.yarn import Yarn

__all__ = [
    "KINDS",
    "Draft",
    "Finish",
    "Journal",
    "Loom",
    "Piece",
    "Planned",
    "Record",
    "Settings",
    "Stretch",
    "Warp",
    "Yarn",
    "public",
    "read_journal",
]
