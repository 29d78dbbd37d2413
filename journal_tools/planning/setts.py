"""How close, and how many picks: as the record says, else as such warps were, else by the yarn."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from journal_tools.drafts import named_weave
from journal_tools.forecast.beat import past_beat
from journal_tools.forecast.closeness import setts
from journal_tools.forecast.cloth_kind import draft_of, kind_of, recipe_of, sett_of, weave_of
from journal_tools.forecast.kind import ClothKind
from journal_tools.ledger.laid import Laid, lay_out
from journal_tools.records import Journal
from journal_tools.records.yarns_used import find_yarn


@dataclass(frozen=True)
class Told:
    """A density and where it is from. per_m: threads to the metre. how: words, "" as the record says."""

    per_m: float
    how: str = ""


def sett_for(journal: Journal, laid: Laid, kind: ClothKind) -> Told | None:
    """Ends to the metre in the reed, of all layers together; None where nothing tells."""
    layers = laid.warp.layers.number if laid.warp.layers else 1
    stated = sett_of(laid)
    if stated is not None:
        return Told(stated * layers)
    for past in _alike(journal, laid, kind):
        if (sett := sett_of(past)) is not None:
            return Told(sett * layers, f"as {past.warp.heading} was set")
    _, _, yarn = find_yarn(journal, kind.warp_yarn) if kind.warp_yarn else ("", "", None)
    guide = setts(yarn, weave_of(journal, laid), draft_of(journal, laid))
    if guide.by_wraps is not None:
        return Told(guide.by_wraps * layers, "by its wraps, as a guide")
    if guide.working is not None:
        return Told(guide.working * layers, "three quarters of the most it takes (Ashenhurst), as a guide")
    return None


def beat_for(journal: Journal, laid: Laid, kind: ClothKind, sett: Told) -> Told:
    """Picks to the metre on the loom, of all layers together."""
    layers = laid.warp.layers.number if laid.warp.layers else 1
    stated = laid.said("beat")
    if stated is not None:
        return Told(float(stated.per_m))
    past = past_beat(journal, kind, laid.warp.name)
    if past is not None:
        warps = f"{len(past.warps)} past warps" if len(past.warps) > 1 else "one past warp"
        return Told(past.at(sett.per_m / layers) * layers, f"as in {warps}")
    named = named_weave(weave_of(journal, laid) or "")
    if named is not None and named.ends_to_picks != 1:
        return Told(sett.per_m / named.ends_to_picks, f"a guess, as {named.name} usually has")
    return Told(sett.per_m, "a guess: balanced, as many picks as ends")


def finish_for(journal: Journal, laid: Laid, kind: ClothKind) -> tuple[str, str]:
    """The recipe of the wash and where it is from, "" as the record says: else the last such warp's, if any."""
    if kind.finish:
        return kind.finish, ""
    for past in _alike(journal, laid, kind):
        if recipe := recipe_of(past, 1):
            record = journal.finishes.get(recipe)
            heading = record.heading if record is not None else recipe.replace("-", " ")
            return recipe, f"{heading}, as {past.warp.heading} was washed"
    return "", ""


def _alike(journal: Journal, laid: Laid, kind: ClothKind) -> Iterator[Laid]:
    """Pieces of other warps in these yarns and this weave, newest warp first."""
    for warp in journal.warps_newest_first():
        if warp.name == laid.warp.name:
            continue
        for past in lay_out(warp):
            its = kind_of(journal, past)
            if (its.warp_yarn, its.weft_yarn, its.weave) == (kind.warp_yarn, kind.weft_yarn, kind.weave):
                yield past

