"""What the page that plans a warp is told of the shelf: yarns, weaves, looms, finishes, and what is usual."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from functools import cache
from typing import Any

from journal_tools.drafts import named_weave
from journal_tools.forecast.beat import past_beats
from journal_tools.forecast.closeness import interlacing, setts
from journal_tools.forecast.cloth_kind import fibre_of, kind_of, recipe_of, sett_of
from journal_tools.forecast.kind import ClothKind
from journal_tools.ledger.laid import Laid, lay_out
from journal_tools.planning.arithmetic import balance
from journal_tools.planning.warp_length import loom_waste
from journal_tools.quantities import Density
from journal_tools.records import Journal, Loom, Warp
from journal_tools.records.yarns_used import find_yarn

OFFERED = ("plain weave", "2/2 twill")
"""Weaves that can be planned in a journal that has woven neither."""


@dataclass(frozen=True)
class Woven:
    """One stretch as it was woven: its kind, and its ends to the metre in the reed, where known."""

    warp: Warp
    kind: ClothKind
    sett: float | None


class Shelf:
    """Everything that can be chosen for a plan. Lengths in mm, densities to the metre, yarn in tex."""

    def __init__(self, journal: Journal, warps: Iterable[Warp]) -> None:
        """warps: the newest first."""
        self._journal = journal
        self.beats = past_beats(journal)
        self._woven: dict[str, list[Woven]] = defaultdict(list)
        self._thrown: dict[str, list[Woven]] = defaultdict(list)
        self._usual: dict[str, dict[str, dict[str, dict[str, Any]]]] = {}
        for warp in warps:
            last = None
            for laid in lay_out(warp):
                woven = Woven(warp, kind_of(journal, laid), sett_of(laid))
                self._used_to(woven, laid)
                if laid.stretch is not last:
                    last = laid.stretch
                    self._woven[woven.kind.warp_yarn].append(woven)
                    self._thrown[woven.kind.weft_yarn].append(woven)

    @property
    def yarns(self) -> dict[str, str]:
        """Name and title of every yarn that has a record or was a warp, the most used first, then by name."""
        names = {*self._journal.yarns, *(name for name in self._woven if name)}
        used = sorted(names, key=lambda name: (-self._warps(name), self._heading(name)))
        return {name: self._heading(name) for name in used}

    def woven(self, yarn: str) -> list[Woven]:
        """What was woven on a warp of the yarn, newest first; of one that only was weft, what it was woven into."""
        return self._woven.get(yarn) or self._thrown.get(yarn, [])

    @property
    def most_woven(self) -> ClothKind:
        """The kind of cloth that there is most of; the newest of as many."""
        counted = Counter((each.kind.warp_yarn, each.kind.weave) for all_ in self._woven.values() for each in all_)
        if not counted:
            return ClothKind()
        yarn, weave = max(counted, key=counted.__getitem__)
        kind = next(each.kind for each in self._woven[yarn] if each.kind.weave == weave)
        return replace(kind, closeness=None, year=None)

    @property
    def weaves(self) -> list[str]:
        """Every weave of the journal by its plain name, the most woven first, and the two that everybody weaves."""
        counted = Counter(each.kind.weave for all_ in self._woven.values() for each in all_ if each.kind.weave)
        found = sorted(counted, key=lambda weave: (-counted[weave], weave))
        return found + [weave for weave in OFFERED if weave not in counted]

    @property
    def looms(self) -> dict[str, Loom]:
        """Every loom, the most used first."""
        used = Counter(warp.loom for warp in self._journal.warps.values())
        return dict(sorted(self._journal.looms.items(), key=lambda pair: (-used[pair[0]], pair[0])))

    def as_data(self) -> dict[str, Any]:
        """All of it, for the page's script."""
        journal = self._journal
        return {
            "yarns": {name: self._yarn(name) for name in self.yarns},
            "weaves": {weave: woven_as(weave) for weave in self.weaves},
            "looms": {
                name: filled(
                    title=loom.heading,
                    width=loom.width and tidy(loom.width.mm),
                    shafts=loom.shafts and loom.shafts.number,
                    treadles=loom.treadles and loom.treadles.number,
                    reeds=[reed_of(reed) for reed in loom.reeds],
                    waste=tidy(loom_waste(journal, Warp(), loom).each_mm),
                    heddles=dict(loom.heddles or {}),
                    retie=loom.retie and tidy(loom.retie.mm),
                )
                for name, loom in self.looms.items()
            },
            "finishes": {
                name: filled(title=finish.heading, cautions=finish.cautions, fulling=finish.fulling)
                for name, finish in journal.finishes.items()
            },
        }

    def _warps(self, yarn: str) -> int:
        return len({each.warp.name for each in self._woven.get(yarn, ())})

    def _heading(self, name: str) -> str:
        record = self._journal.yarns.get(name)
        return record.heading if record else name.replace("-", " ")

    def _yarn(self, name: str) -> Mapping[str, Any]:
        """A yarn, and what it is usually set and beaten to, by weave and weft.

        room: threads that lie side by side in a metre, by Ashenhurst; wraps: as wrapped by hand.
        """
        _, _, record = find_yarn(self._journal, name)
        greatest, share = setts(record, OFFERED[0]).greatest, room(OFFERED[0]) or 1
        return filled(
            title=self._heading(name),
            fibre=fibre_of(record),
            tex=record and record.tex and tidy(record.tex),
            room=greatest and tidy(greatest / share),
            wraps=record and record.wraps and tidy(record.wraps.per_m),
            colours=list(record.colours or ()) if record else [],
            usual=self._usual.get(name),
        )

    def _used_to(self, woven: Woven, laid: Laid) -> None:
        """Note what the newest warp in these yarns and this weave tells: sett, beat and wash, as a plan takes them."""
        kind, warp = woven.kind, woven.warp
        told = self._usual.setdefault(kind.warp_yarn, {}).setdefault(kind.weave, {}).setdefault(kind.weft_yarn, {})
        if woven.sett is not None and "sett" not in told:
            told |= {"sett": tidy(woven.sett), "as": warp.heading}
        past = self.beats.get((kind.warp_yarn, kind.weft_yarn, kind.weave)) if "beat" not in told else None
        if past is not None:
            told |= filled(beat=tidy(past.per_m), beaten=len(past.warps), ratio=past.ratio and round(past.ratio, 5))
        if (recipe := recipe_of(laid, 1)) in self._journal.finishes:
            told.setdefault("finish", recipe)


def reed_of(reed: Density) -> dict[str, Any]:
    """A reed, and the words for it."""
    per = "in" if reed.unit == "in" else "cm"
    return {"per_m": tidy(reed.per_m), "unit": per, "text": reed.text.strip()}


@cache
def room(weave: str) -> float | None:
    """w/(w + i) of a weave: the share of a yarn's diameters that its ends can take."""
    share = interlacing(weave)
    return round(share, 4) if share else None


@cache
def woven_as(weave: str) -> Mapping[str, Any]:
    """What a weave by name takes: shafts, ends in a repeat and those that balance it, ends for each pick."""
    named = named_weave(weave)
    if named is None:
        return filled(room=room(weave))
    repeat = len(named.draft.threading)
    return filled(
        room=room(weave),
        shafts=named.draft.shafts,
        treadles=named.draft.treadles or None,
        threading=[sorted(end) for end in named.draft.threading],
        repeat=repeat,
        balance=balance(named.draft.threading) if repeat > 2 else 0,
        ends_to_picks=named.ends_to_picks if named.ends_to_picks != 1 else None,
    )


def tidy(number: Any) -> float:
    """A figure with no more places than a tape could tell."""
    return round(float(number), 3)


def filled(**told: Any) -> Mapping[str, Any]:
    """What is known, without what is not."""
    return {key: value for key, value in told.items() if value not in (None, "", [], {}, False)}
