"""The looms of a journal: which one a name means, and which of them a warp goes on."""

from __future__ import annotations

from journal_tools.records import Journal
from journal_tools.records.loom import Loom
from journal_tools.records.readers import slug


def find_loom(journal: Journal, typed: str) -> Loom | None:
    """The loom of a name, an old name or a title, in capitals or not; None where none is called so."""
    named = {old: loom for loom in journal.looms.values() for old in loom.was}
    named |= {slug(loom.title): loom for loom in journal.looms.values() if loom.title}
    named |= dict(journal.looms)
    return named.get(slug(typed))


def listed(journal: Journal) -> str:
    """The looms there are, `The big loom (big-loom)`; "" for none."""
    called = [
        loom.heading if slug(loom.heading) == name else f"{loom.heading} ({name})"
        for name, loom in sorted(journal.looms.items())
    ]
    return ", ".join(called)


def that_take(journal: Journal, but: Loom, wide_mm: float, shafts: int) -> list[str]:
    """What the other looms are called that are known to have the width and the shafts."""
    return [
        loom.heading
        for _, loom in sorted(journal.looms.items())
        if loom.name != but.name
        and loom.width is not None
        and float(loom.width.mm) + 0.001 >= wide_mm
        and (loom.shafts is None or loom.shafts.number >= shafts)
    ]
