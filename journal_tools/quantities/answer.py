"""A yes or a no."""

from __future__ import annotations

from journal_tools.quantities.unreadable import Unreadable

_YES = frozenset(("yes", "y", "true"))
_NO = frozenset(("no", "n", "false"))


def parse_yes_no(text: str) -> bool:
    """Read yes or no. Raises Unreadable."""
    word = text.strip().rstrip(".").lower()
    if word in _YES:
        return True
    if word in _NO:
        return False
    raise Unreadable(text, "Write yes or no.")
