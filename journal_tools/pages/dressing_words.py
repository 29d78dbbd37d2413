"""What a dressing sheet says of draft, reed, heddles and later stretches: short sentences."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import Literal

from journal_tools.dressing import Dressing, NextStretch, OnShaft, Sleyed, SleyedBand
from journal_tools.dressing.tied import Tied
from journal_tools.pages.archive import Archive
from journal_tools.quantities import show_density, show_length

PerUnit = Literal["in", "cm"]
CLOSE = Fraction(3)
"""mm by which a width in the reed may differ before it is worth a word: a tape's eighth of an inch."""


def draft_words(archive: Archive, made: Dressing) -> str:
    """What the threading comes from: `Huck lace, small squares`, or the weave's name where there is no draft."""
    return _threaded_by(archive, made.tied) if made.tied is not None else ""


def _threaded_by(archive: Archive, tied: Tied) -> str:
    if tied.weave:
        spread = f", drawn straight over {tied.shafts} shafts so that none is crowded" if tied.spread else ""
        return f"no draft is named: threaded as {tied.weave}, from the weave's name{spread}"
    if tied.draft:
        return f"draft: {archive.link('drafts', tied.draft).text}"
    return "draft: its own"


def short_words(made: Dressing) -> Iterator[str]:
    """What the loom has not got, and what the record does not tell."""
    loom = made.loom.heading if made.loom is not None else ""
    if made.shafts_short and made.tied is not None:
        own = made.tied.shafts - made.shafts_short
        yield f"The draft takes {made.tied.shafts} shafts, and {_lower(loom)} has {own}."
    if made.treadles_short and made.tied is not None:
        own = len(made.tied.treadles) - made.treadles_short
        yield f"The tie-up takes {len(made.tied.treadles)} treadles, and {_lower(loom)} has {own}."
    if short := [each.shaft for each in made.shafts if each.short]:
        yield f"Short of heddles on shaft{'s' if len(short) > 1 else ''} {' and '.join(map(str, short))}: see below."
    if made.tied is None and made.sleyed is not None and made.sleyed.layers > 1:
        yield "There is no threading: cloth of several layers wants a draft, and there is none that can be read."
    elif made.tied is None:
        yield "There is no threading: the record names no draft that can be read, nor a weave that can be drawn."
    elif not made.sections:
        yield "There is no threading: nobody wrote down how many ends there are."


def _lower(heading: str) -> str:
    return heading[:1].lower() + heading[1:] if heading.startswith("The ") else heading


def heddle_words(made: Dressing, public: bool) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The heddles of each shaft, large; and against what they are held, small.

    public: whether the sheet is for others, who are not told what a loom has.
    """
    used = [each for each in made.shafts if each.needed]
    large = tuple(f"Shaft {each.shaft}: {each.needed}{_has(each)}" for each in used)
    if made.loom is None or all(each.has is None for each in used):
        return large, () if public else ("How many heddles the loom has is not written down.",)
    if not made.moves:
        return large, ("The loom has enough on every shaft.",)
    return large, tuple(_moves(made))


def _moves(made: Dressing) -> Iterator[str]:
    for move in made.moves:
        if move.source is None:
            yield f"Add {move.heddles} heddles to shaft {move.shaft}."
        else:
            yield f"Move {move.heddles} heddles to shaft {move.shaft} from shaft {move.source}."
    if made.instead is not None:
        shafts, most = made.instead
        odd, even = ("+".join(map(str, range(first, shafts + 1, 2))) for first in (1, 2))
        yield f"Or thread straight over {shafts} shafts, {most} heddles each at most; tie {odd} for 1, {even} for 2."


def _has(each: OnShaft) -> str:
    if each.has is None:
        return ""
    return f" of {each.has}, {each.short} short" if each.short else f" of {each.has}"


def sley_words(made: Dressing, unit: str) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The sley order, large; the sett and width that it gives, small."""
    sleyed = made.sleyed
    if sleyed is None:
        return (), ()
    large = [_band(band, sleyed.reed.unit) for band in sleyed.bands]
    large.append(f"{sleyed.dents} dents: {_length(sleyed.mm, unit)} in the reed")
    large.append(f"Begin {_length(sleyed.mm / 2, unit)} to one side of the reed's middle")
    return tuple(large), tuple(_sley_said(made, sleyed, unit))


def _band(band: SleyedBand, unit: PerUnit) -> str:
    order = "-".join(map(str, band.order))
    many = len(band.order) > 1
    words = f"{order} in the dents, again and again" if many else f"{order} in every dent"
    named = f"{band.name}: reed" if band.name else "Reed"
    return f"{named} {show_density(band.reed, unit)}, {words}: {band.ends} ends in {band.dents} dents"


def _sley_said(made: Dressing, sleyed: Sleyed, unit: str) -> Iterator[str]:
    per: PerUnit = "in" if unit == "in" else "cm"
    if sleyed.found:
        yield "The order is worked out from the sett: the record has none."
    if len(sleyed.bands) == 1:
        mean = Fraction(sum(sleyed.bands[0].order), len(sleyed.bands[0].order))
        reed, sett = show_density(sleyed.reed.per_m, sleyed.reed.unit), show_density(sleyed.sett, sleyed.reed.unit)
        yield f"True sett {sett}: reed {reed} times {_mean(mean)} ends a dent{_in_layers(sleyed)}."
    else:
        setts = ", ".join(f"{band.name} {show_density(band.sett, per)}" for band in sleyed.bands)
        yield f"True setts: {setts}; {show_density(sleyed.sett, per)} on the whole{_in_layers(sleyed)}."
    if sleyed.said is not None and not sleyed.found and len(sleyed.bands) == 1 and sleyed.said.per_m != sleyed.sett:
        yield f"The record says {show_density(sleyed.said.per_m, sleyed.said.unit)}."
    for band in sleyed.bands:
        if not band.full:
            ends = "1 end" if band.last == 1 else f"{band.last} ends"
            of = f" of {band.name}" if band.name else ""
            yield f"The last dent{of} holds {ends}."
    if sleyed.floating:
        each = sleyed.floating // 2
        dents = "a dent of its own" if each == 1 else f"{each} dents of their own"
        yield f"The floating selvedge at each edge has {dents}, counted above."
    if sleyed.said_mm is not None and abs(sleyed.mm - sleyed.said_mm) > CLOSE:
        more = "more" if sleyed.said_mm > sleyed.mm else "less"
        by = _length(abs(sleyed.said_mm - sleyed.mm), unit)
        yield f"The record says {_length(sleyed.said_mm, unit)} in the reed, {by} {more} than these dents."


def _in_layers(sleyed: Sleyed) -> str:
    if sleyed.layers < 2:
        return ""
    return f"; {show_density(sleyed.sett / sleyed.layers, sleyed.reed.unit)} in each of {sleyed.layers} layers"


def _mean(mean: Fraction) -> str:
    whole, rest = divmod(mean.numerator, mean.denominator)
    if not rest:
        return str(whole)
    return f"{whole} {rest}/{mean.denominator}" if whole else f"{rest}/{mean.denominator}"


def _length(mm: Fraction, unit: str) -> str:
    return show_length(mm, unit)


def later_words(archive: Archive, made: Dressing, unit: str) -> Iterator[str]:
    """What is done again at the loom before each later stretch."""
    for stretch in made.later:
        name = (stretch.name or f"Stretch {stretch.number}").rstrip(".")
        name = name[:1].upper() + name[1:]
        if stretch.only_woven:
            yield f"{name}: nothing is threaded or tied anew."
            continue
        yield f"{name}: {'; '.join(_again(archive, stretch, unit))}."


def _again(archive: Archive, stretch: NextStretch, unit: str) -> Iterator[str]:
    ends = f"{stretch.ends} ends" if stretch.ends else "the ends"
    which = f"{ends} from the middle" if stretch.from_the_middle else ends
    if stretch.rethreaded:
        by = f", {_threaded_by(archive, stretch.tied)}" if stretch.tied is not None else ""
        yield f"thread {which} anew{by}"
    if stretch.resleyed and stretch.sleyed is not None:
        orders = " and ".join(dict.fromkeys("-".join(map(str, band.order)) for band in stretch.sleyed.bands))
        reed = show_density(stretch.sleyed.reed.per_m, stretch.sleyed.reed.unit)
        yield f"sley {orders} in reed {reed}, {_length(stretch.sleyed.mm, unit)} wide"
    if stretch.retied and stretch.tied is not None:
        treadles = stretch.tied.treadles
        tied = ", ".join("+".join(map(str, sorted(shafts))) or "none" for shafts in treadles)
        yield f"tie the treadles anew: {tied}" if treadles else "woven by a lift plan"
