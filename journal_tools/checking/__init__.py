"""Every problem of a journal in one list: of reading, of drafts, and what the ledgers ask."""

from journal_tools.checking.journal_check import check
from journal_tools.checking.woven import woven_draft

__all__ = ["check", "woven_draft"]
