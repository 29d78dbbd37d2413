"""Every draft of a journal looked through once: what it makes, which warps used it, which are like it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from typing import TYPE_CHECKING

from journal_tools.checking import woven_draft
from journal_tools.drafts import Draft as Woven
from journal_tools.drafts.analysis import HELD, Analysis, analysed
from journal_tools.drafts.likeness import windows
from journal_tools.drafts.nearest import Nearest
from journal_tools.quantities import Unreadable
from journal_tools.records import Stretch, Warp, Yarn

if TYPE_CHECKING:
    from journal_tools.pages.archive import Archive

ALIKE = 0.25
"""The most that two cloths differ in that are shown as like one another: a quarter of their windows (judgement)."""

LIKES = 6
INCH_M = 0.0254


@dataclass
class Patterns:
    """The drafts of an archive, for all of its pages."""

    archive: Archive
    _setts: dict[str, tuple[float, float] | None] = field(default_factory=dict)

    @cached_property
    def woven(self) -> Mapping[str, Woven]:
        """The drafts by name, those that fit together."""
        found = {}
        for name, record in self.archive.journal.drafts.items():
            try:
                found[name] = woven_draft(record)
            except Unreadable:
                continue  # told of on its own page
        return found

    @cached_property
    def found(self) -> Mapping[str, Analysis]:
        """What there is to tell of each, at the sett of the newest warp that used it."""
        return {name: self._look(name, woven) for name, woven in self.woven.items()}

    @cached_property
    def shelf(self) -> Sequence[Yarn]:
        """Yarns of two colours and more, those in most warps first: what drafts are shown in."""
        used = Counter(yarn.name for warp in self.archive.warps for yarn in self.archive.yarns(warp))
        coloured = [yarn for yarn in self.archive.journal.yarns.values() if len(yarn.colours or {}) >= 2]
        return sorted(coloured, key=lambda yarn: (-used[yarn.name], yarn.name))

    def used(self, name: str) -> Sequence[tuple[Warp, Stretch]]:
        """The warps that used a draft, newest first, each with the first of its parts that was woven in it."""
        return self._used.get(name, ())

    @cached_property
    def _used(self) -> Mapping[str, Sequence[tuple[Warp, Stretch]]]:
        found: dict[str, list[tuple[Warp, Stretch]]] = {}
        for warp in self.archive.warps:
            first: dict[str, Stretch] = {}
            for stretch in warp.woven():
                draft = stretch.draft or warp.draft
                if isinstance(draft, str):
                    first.setdefault(draft, stretch)
            for draft, stretch in first.items():
                found.setdefault(draft, []).append((warp, stretch))
        return found

    def sett(self, name: str) -> tuple[float, float] | None:
        """Ends and picks to the inch of the newest warp in a draft that tells both: as finished, else as set.

        Those of layers together.
        """
        from journal_tools.pages.swatch import swatch_of

        if name not in self._setts:
            swatches = (swatch_of(self.archive, warp, stretch) for warp, stretch in self.used(name))
            told = next((one for one in swatches if one is not None and one.told), None)
            self._setts[name] = told.setts if told is not None else None
        return self._setts[name]

    def reed_sett(self, name: str) -> float | None:
        """Ends to the inch in the reed of the newest warp in a draft that tells them."""
        setts = (warp.sett_of(stretch) for warp, stretch in self.used(name))
        return next((float(sett.per_inch) for sett in setts if sett is not None), None)

    def likes(self, name: str) -> list[tuple[str, float]]:
        """Other drafts that weave nearly the same, with the share in which they differ, the nearest first."""
        return self._nearest.to(name, ALIKE)[:LIKES]

    @cached_property
    def _nearest(self) -> Nearest:
        return Nearest({name: windows(found.block) for name, found in self.found.items()})

    def _look(self, name: str, woven: Woven) -> Analysis:
        sett = self.sett(name)
        epi, ppi = sett or (None, None)
        return analysed(
            woven,
            ends_per_m=epi / INCH_M if epi else None,
            picks_per_m=ppi / INCH_M if ppi else None,
            said_weave=self.archive.journal.drafts[name].weave or "",
            bears_mm=HELD if epi else None,
        )
