"""The sleying part of a dressing sheet, with the counts for a raddle."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from fractions import Fraction

from journal_tools.dressing import Dressing, Sleyed, SleyedBand
from journal_tools.dressing.raddle import raddle_of
from journal_tools.dressing.runs import Run, runs_of
from journal_tools.dressing.sleyed import DentRun
from journal_tools.pages.dressing_view import Line, Part, Shown, Ticks
from journal_tools.quantities import show_density, show_length
from journal_tools.quantities.density import PerUnit

CLOSE = Fraction(3)
"""mm by which a width in the reed may differ before it is worth a word: a tape's eighth of an inch."""
LACKS = {
    ("reed",): "no `reed` is named, nor one on the loom that gives the sett",
    ("sley",): "the reed is named, but neither `sley` nor `sett`",
    ("reed", "sley"): "neither `reed` nor `sley` nor `sett` is named",
    (): "the ends are not counted",
}
FEW = 8
"""Dents of the longest order that is written as its numbers."""
RADDLE = {"in": "1/2 in", "cm": "1 cm"}
"""The spaces of a raddle for which it is reckoned."""


def sley_part(made: Dressing, unit: PerUnit) -> Part:
    """How the reed is sleyed and the raddle filled; where nobody knows, that it is missing and what would tell it."""
    sleyed = made.sleyed
    if sleyed is None:
        missing = f"How it is sleyed is missing: in the warp's record {LACKS[made.sley_lacks]}."
        return Part("sleying", "Sleying", (missing,))
    large = [_band(sleyed, band, unit) for band in sleyed.bands]
    large.append(f"{sleyed.dents} dents: {show_length(sleyed.mm, unit)} in the reed")
    large.append(f"Begin {show_length(sleyed.mm / 2, unit)} to one side of the reed's middle")
    raddle = f"Raddle with spaces of {RADDLE[unit]}: {_spaces(raddle_of(sleyed, unit))}"
    lines = tuple(_dents(sleyed.bands[0])) if sleyed.crammed else ()
    return Part("sleying", "Sleying and raddle", (*large, raddle), tuple(_said(sleyed, unit)), lines)


def _spaces(counts: Sequence[int]) -> str:
    """Ends in so many spaces, one after the other: `12 ends in each of 40 spaces, then 6 in the last`."""
    whole, rest = counts[:-1], counts[-1]
    if len(set(counts)) == 1:
        return f"{rest} ends in each of {len(counts)} spaces."
    if len(set(whole)) == 1:
        return f"{whole[0]} ends in each of {len(whole)} spaces, {rest} in the last."
    return f"{', '.join(map(_run, runs_of(counts)))}: {sum(counts)} ends in {len(counts)} spaces."


def _run(run: Run[int]) -> str:
    if run.length < 4:
        return ", ".join(map(str, run.block * run.times))
    return f"{run.times} times ({', '.join(map(str, run.block))})"


def reed_words(reed: Fraction, marked: PerUnit, unit: PerUnit) -> str:
    """A reed as it is marked, and in the warp's own unit where that is another."""
    own = f" ({show_density(reed, unit)})" if unit != marked else ""
    return f"{show_density(reed, marked)}{own}"


def _band(sleyed: Sleyed, band: SleyedBand, unit: PerUnit) -> str:
    named = f"{band.name}: reed" if band.name else "Reed"
    marked = reed_words(band.reed, sleyed.reed.unit, unit)
    if sleyed.crammed:
        order = ", ".join(map(_run_words, band.runs))
        again = ", again and again" if band.ends > sum(band.order) else ""
        return f"{named} {marked}, crammed and spaced: {order}{again}: {band.ends} ends in {band.dents} dents"
    many = len(band.order) > 1
    words = f"{'-'.join(map(str, band.order))} in {'the dents, again and again' if many else 'every dent'}"
    return f"{named} {marked}, {words}: {band.ends} ends in {band.dents} dents"


def _run_words(run: DentRun) -> str:
    """`8 dents of 2`, `2 dents empty`."""
    dents = f"{run.dents} dent{'s' if run.dents > 1 else ''}"
    return f"{dents} of {run.each}" if run.each else f"{dents} empty"


def order_words(band: SleyedBand) -> str:
    """`1-2`, or of a long order its runs: `8 dents of 2, 4 dents of 4`."""
    few = len(band.order) <= FEW
    return "-".join(map(str, band.order)) if few else ", ".join(map(_run_words, band.runs))


def _dents(band: SleyedBand) -> Iterator[Line]:
    """A box for each run of dents with ends, round by round of the order, and what the last round comes to."""
    rounds, over = divmod(band.ends, sum(band.order))
    words = tuple(Shown(_run_words(run)) for run in band.runs)
    number = 0
    rows = []
    for again in range(rounds):
        rows.append(Ticks(tuple(range(number + 1, number + len(words) + 1)), (again + 1) * sum(band.order)))
        number += len(words)
    note = f"{sum(band.order)} ends in {len(band.order)} dents"
    if rows:
        yield Line(f"{rounds} times" if rounds > 1 else "Once", words, tuple(rows), f"{note} each time")
    if over:
        dents = band.dents - rounds * len(band.order)
        left = SleyedBand("", over, band.reed, band.held[-dents:])
        last = tuple(Shown(_run_words(run)) for run in left.runs)
        boxes = Ticks(tuple(range(number + 1, number + len(last) + 1)), band.ends)
        yield Line("Last", last, (boxes,), f"{over} ends in {dents} dents")


def _said(sleyed: Sleyed, unit: PerUnit) -> Iterator[str]:
    if not sleyed.all_held:
        yield f"These do not agree: the bands that tell their ends and sley hold {sleyed.ends} of {sleyed.wanted} ends."
    if sleyed.found:
        yield "The order is worked out from the sett: the record has none."
    if sleyed.by_draft:
        yield "The ends in each dent are the draft's."
    yield from _setts(sleyed, unit)
    if sleyed.said is not None and not sleyed.found and len(sleyed.bands) == 1 and sleyed.said.per_m != sleyed.sett:
        yield f"The record says {show_density(sleyed.said.per_m, unit)}."
    yield from _out_of_step(sleyed)
    for band in sleyed.bands:
        if not band.full:
            of = f" of {band.name}" if band.name else ""
            yield f"The last dent{of} holds {_ends(band.last)}."
    if sleyed.floating:
        each = sleyed.floating // 2
        dents = "a dent of its own" if each == 1 else f"{each} dents of their own"
        yield f"The floating selvedge at each edge has {dents}, counted above."
    if sleyed.said_mm is not None and abs(sleyed.mm - sleyed.said_mm) > CLOSE:
        more = "more" if sleyed.said_mm > sleyed.mm else "less"
        by = show_length(abs(sleyed.said_mm - sleyed.mm), unit)
        yield f"The record says {show_length(sleyed.said_mm, unit)} in the reed, {by} {more} than these dents."


def _setts(sleyed: Sleyed, unit: PerUnit) -> Iterator[str]:
    first = sleyed.bands[0]
    whole = show_density(sleyed.sett, unit)
    if len(sleyed.bands) > 1:
        setts = ", ".join(f"{band.name} {show_density(band.sett, unit)}" for band in sleyed.bands)
        yield f"True setts: {setts}; {whole} on the whole{_in_layers(sleyed, unit)}."
    elif sleyed.crammed:
        usual = Counter(held for held in first.order if held).most_common(1)[0][0]
        filled = sorted({held for held in first.order if held} - {usual})
        others = ", ".join(f"{show_density(held * first.reed, unit)} where {held} share a dent" for held in filled)
        true = show_density(first.ends * 1000 / first.mm, unit)
        empty = ", empty dents among them" if 0 in first.order else ""
        close = f" and {others}" if others else ""
        usually = f"{show_density(usual * first.reed, unit)} at {usual} a dent"
        yield f"True sett {true} on the average{empty}: {usually}{close}."
    else:
        mean = Fraction(sum(first.order), len(first.order))
        yield f"True sett {whole}: {_mean(mean)} a dent{_in_layers(sleyed, unit)}."


def _out_of_step(sleyed: Sleyed) -> Iterator[str]:
    """Where the draft's ends in dents and its threading do not come out together, or the warp sleys otherwise."""
    if not sleyed.keeps_step:
        held = sum(sleyed.bands[0].order)
        yield (
            f"These do not agree: the ends in dents hold {held}, and the threading's repeat has {sleyed.threaded}; "
            "each begins again by itself, so the crammed stripes wander along the threading."
        )
    if sleyed.set_aside:
        own = ", ".join(map(_run_words, SleyedBand("", 1, Fraction(1), sleyed.set_aside).runs))
        yield f"The draft crams and spaces its ends otherwise ({own}): the warp's own sley stands."


def _ends(number: int) -> str:
    return "1 end" if number == 1 else f"{number} ends"


def _in_layers(sleyed: Sleyed, unit: PerUnit) -> str:
    if sleyed.layers < 2:
        return ""
    return f"; {show_density(sleyed.sett / sleyed.layers, unit)} in each of {sleyed.layers} layers"


def _mean(mean: Fraction) -> str:
    """`2 ends`, `1 end`, `1 1/3 ends`."""
    whole, rest = divmod(mean.numerator, mean.denominator)
    if not rest:
        return _ends(whole)
    return f"{whole} {rest}/{mean.denominator} ends" if whole else f"{rest}/{mean.denominator} of an end"
