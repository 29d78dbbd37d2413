"""What a colour's name looks like in this journal: the yarn that has it tells."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping

from journal_tools.records.journal import Journal
from journal_tools.records.yarns_used import all_yarns


def hexes_named(journal: Journal) -> Mapping[str, str]:
    """The six digits of each colour that a yarn names; of several yarns, that of the one in most warps."""
    used = Counter(yarn.name for warp in journal.warps.values() for yarn in all_yarns(journal, warp))
    found: dict[str, str] = {}
    for yarn in sorted(journal.yarns.values(), key=lambda yarn: (-used[yarn.name], yarn.name)):
        for name, digits in (yarn.colours or {}).items():
            found.setdefault(name, digits)
    return found
