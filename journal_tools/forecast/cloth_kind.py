"""What kind of cloth a piece is: its weave, yarns, fibres, recipe, closeness of sett and year."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from functools import lru_cache

from journal_tools.checking import woven_draft
from journal_tools.drafts import Draft as Woven
from journal_tools.drafts import named_weave
from journal_tools.forecast.closeness import closeness
from journal_tools.forecast.kind import ClothKind
from journal_tools.ledger.laid import Laid
from journal_tools.quantities import Unreadable
from journal_tools.records import Draft, Journal
from journal_tools.records.cloth import SizeAt
from journal_tools.records.yarn import Yarn
from journal_tools.records.yarns_used import YarnInUse, find_yarn, warp_threads, weft_threads

NOT_GROUND = ("pattern", "pile", "supplementary", "hem", "accent")
"""Wefts that do not make the cloth as wide as it is, where there is another."""


def kind_of(journal: Journal, laid: Laid) -> ClothKind:
    """The kind of a piece, a band or a plan; "" and None where its record does not say."""
    warp = laid.warp
    wound = most_threads(warp_threads(journal, warp))
    wefts = laid.said("weft") or ()
    ground = [weft for weft in wefts if weft.role not in NOT_GROUND] or wefts
    thrown = most_threads(weft_threads(journal, warp, ground))
    weave = weave_of(journal, laid)
    sett = sett_of(laid)
    when = warp.started or warp.finished
    return ClothKind(
        weave,
        wound.name if wound else "",
        thrown.name if thrown else "",
        fibre_of(wound.record) if wound else "",
        fibre_of(thrown.record) if thrown else "",
        recipe_of(laid, 1),
        closeness(sett, wound.record, weave, draft_of(journal, laid)) if sett and wound else None,
        when.year if when else None,
    )


def kind_in(journal: Journal, yarn: str, weave: str = "", weft: str = "", finish: str = "") -> ClothKind:
    """The kind of a cloth that is only thought of: yarns by any of their names; weft: "" for the same yarn."""
    warp_name, _, warp_record = find_yarn(journal, yarn)
    weft_name, _, weft_record = find_yarn(journal, weft) if weft else (warp_name, "", warp_record)
    fibres = fibre_of(warp_record), fibre_of(weft_record)
    return ClothKind(weave_name(weave), warp_name, weft_name, *fibres, finish)


def most_threads(used: Iterable[tuple[YarnInUse, int]]) -> YarnInUse | None:
    """The yarn with the most threads, its colours together; the first of equals, None of none."""
    counted: Counter[str] = Counter()
    first: dict[str, YarnInUse] = {}
    for yarn, number in used:
        counted[yarn.name] += number
        first.setdefault(yarn.name, yarn)
    name = max(counted, key=counted.__getitem__, default="")
    return first[name] if name else None


def fibre_of(yarn: Yarn | None) -> str:
    """The main fibre of a yarn, "" where nobody knows; cotton with linen is cottolin, which is neither."""
    if yarn is None or not yarn.fibre:
        return ""
    return "cottolin" if {"cotton", "linen"} <= set(yarn.fibre) else yarn.main_fibre or ""


def weave_name(text: str) -> str:
    """The name by which a weave is compared: its plain name where it is known, else as typed, folded."""
    named = named_weave(text)
    return named.name if named else " ".join(text.lower().split())


def weave_of(journal: Journal, laid: Laid) -> str:
    """The weave of a piece by its plain name, from its record or its draft's; "" where neither says."""
    said = laid.said("weave")
    if not said and (draft := draft_record(journal, laid)) is not None:
        said = draft.weave
    return weave_name(said) if said else ""


def draft_record(journal: Journal, laid: Laid) -> Draft | None:
    """The record of the draft that a piece was woven by, or the draft in its own record."""
    said = laid.stretch.draft or laid.warp.draft
    return journal.drafts.get(said) if isinstance(said, str) else said


def draft_of(journal: Journal, laid: Laid) -> Woven | None:
    """The draft of a piece, None where there is none or it cannot be drawn."""
    record = draft_record(journal, laid)
    return _woven(_ById(record)) if record is not None and record.threading is not None else None


class _ById:
    """A record that is the same only as itself, so that a draft is read once however many pieces it has."""

    def __init__(self, record: Draft) -> None:
        self.record = record

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _ById) and self.record is other.record

    def __hash__(self) -> int:
        return id(self.record)


@lru_cache(maxsize=256)
def _woven(draft: _ById) -> Woven | None:
    try:
        return woven_draft(draft.record)
    except Unreadable:
        return None  # what is wrong with it is asked where drafts are checked


def sett_of(laid: Laid) -> float | None:
    """Ends to the metre in the reed of one layer of cloth; None where the record does not tell.

    As stated, else the reed's dents times the mean sley, else ends over the width in the reed.
    """
    per_m = _band_sett(laid) or _stated_sett(laid)
    if per_m is None and laid.ends and laid.reed_mm:
        per_m = laid.ends / laid.reed_mm * 1000
    return per_m / (laid.warp.layers.number if laid.warp.layers else 1) if per_m else None


def _stated_sett(laid: Laid) -> float | None:
    stated = laid.warp.sett_of(laid.stretch)
    return float(stated.per_m) if stated is not None else None


def _band_sett(laid: Laid) -> float | None:
    """The sett of a band alone, which stands beside others with setts of their own."""
    band = laid.band
    if band is None:
        return None
    if band.sett is not None:
        return float(band.sett.per_m)
    if band.sley and laid.reed is not None:
        return float(laid.reed.per_m) * sum(band.sley) / len(band.sley)
    return laid.ends / laid.reed_mm * 1000 if laid.ends and laid.reed_mm else None


def recipe_of(laid: Laid, wash: int) -> str:
    """The finishing recipe of a wash; the last one named holds for the washes after it, "" for none."""
    washes: tuple[SizeAt, ...] = laid.said("washed") or ()
    for at in washes:
        if at.finish and (at.wash or 1) == wash:
            return at.finish
    named: tuple[str, ...] = laid.said("finish") or ()
    return named[min(wash, len(named)) - 1] if named else ""
