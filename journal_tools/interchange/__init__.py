"""Drafts in the open interchange file of 1997 (WIF 1.1): read with everything that was odd told, and written."""

from journal_tools.interchange.reading import read_wif
from journal_tools.interchange.record_text import record_text
from journal_tools.interchange.what_was_read import ReadDraft
from journal_tools.interchange.writing import Extras, write_wif

__all__ = ["Extras", "ReadDraft", "read_wif", "record_text", "write_wif"]
