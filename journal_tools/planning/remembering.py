"""What the journal remembers when one of its own warps is asked about: the others, and what this one has shown."""

from __future__ import annotations

import dataclasses
from collections.abc import Mapping, Sequence

from journal_tools.forecast.learned import observed_of
from journal_tools.forecast.memory import Memory
from journal_tools.forecast.observed import Observed
from journal_tools.ledger import Ledger
from journal_tools.records import Journal
from journal_tools.records.warp import Warp

Seen = Mapping[str, Sequence[Observed]]


def remembered(journal: Journal, warp: Warp, ledgers: Mapping[str, Ledger] | None = None) -> tuple[Memory, Seen]:
    """The memory of all other warps, and the pieces of this one that were measured, by direction.

    ledgers: of warps, by name, where they are at hand.

    So its own cloth counts once, as its own, and what it rests on are other warps.
    """
    others = {name: each for name, each in journal.warps.items() if name != warp.name}
    own = observed_of(dataclasses.replace(journal, warps={warp.name: warp}), ledgers)
    memory = Memory.of(dataclasses.replace(journal, warps=others), ledgers)
    return memory, own
