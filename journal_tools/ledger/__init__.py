"""The ledger: losses, with both ends named and their uncertainty, and where the warp went."""

from journal_tools.ledger.account import Account
from journal_tools.ledger.ledger import Ledger, PieceLedger, SizeLine, ledger_of
from journal_tools.ledger.questions import questions
from journal_tools.ledger.row import Row

__all__ = ["Account", "Ledger", "PieceLedger", "Row", "SizeLine", "ledger_of", "questions"]
