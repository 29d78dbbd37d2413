"""What the journal expects in a weaver's words: what it rests on first, then what hands can do."""

from __future__ import annotations

import difflib
import math
from collections.abc import Iterator, Mapping
from fractions import Fraction
from typing import TYPE_CHECKING

from journal_tools.drafts import named_weave, weave_names
from journal_tools.forecast.beat import PastBeats, past_beat
from journal_tools.forecast.expected import Expected, Figure, usual_size_mm
from journal_tools.forecast.fulled_words import fulling_json
from journal_tools.forecast.hand_words import HANDS, ROUND, rounded_up, signed, title_words
from journal_tools.quantities import INCH, show_density, show_length
from journal_tools.records import Journal

if TYPE_CHECKING:
    from journal_tools.forecast.memory import Memory
    from journal_tools.forecast.rests_on import RestsOn

MOVES = 0.01
"""How far one warp must move an answer before that is worth a word: a point."""

BETTER = {
    "warp": "Take-up is too little known to plan by: tie a thread to the edge every yard as you wind, and write"
    " down what lies between two of them in the cloth.",
    "picks": "What picks become is too little known to plan by: count those of one piece.",
}
"""What to do about a range of no use, by the moment that it starts from; a sample helps the others."""




def heading(journal: Journal, expected: Expected) -> str:
    """`Cottolin 22/2 in plain weave, 20/in, machine-40-line-pressed`: the cloth that is meant."""
    kind = expected.kind
    warp, weft = (yarn_words(journal, name) for name in (kind.warp_yarn, kind.weft_yarn))
    parts = [warp if warp == weft else f"{warp} with {weft} as weft"]
    parts[0] += f" in {kind.weave}" if kind.weave else ""
    if expected.sett_per_m is not None:
        parts.append(show_density(Fraction(expected.sett_per_m), journal.settings.units.density))
    if kind.finish:
        recipe = journal.finishes.get(kind.finish)
        parts.append(recipe.heading if recipe else kind.finish.replace("-", " "))
    return ", ".join(parts)


def as_usual(expected: Expected) -> str:
    """What of it nobody asked for: `Weave, sett and finish are as they mostly were.`; "" for nothing."""
    said = list(expected.usual)
    if not said:
        return ""
    listed = said[0] if len(said) == 1 else f"{', '.join(said[:-1])} and {said[-1]}"
    are, were = ("is", "it mostly was") if len(said) == 1 else ("are", "they mostly were")
    return f"{listed[0].upper()}{listed[1:]} {are} as {were}."


def yarn_words(journal: Journal, name: str) -> str:
    """A yarn by its title."""
    record = journal.yarns.get(name)
    return record.heading if record else name.replace("-", " ")


def rests_words(journal: Journal, expected: Expected) -> str:
    """What the answer rests on, said before any figure."""
    kind, first = expected.kind, expected.figures[0]
    on = first.rests_on
    number, both = len(on.yarn_warps), len(on.both)
    if not number:
        yarns = " or ".join(dict.fromkeys(yarn_words(journal, each) for each in (kind.warp_yarn, kind.weft_yarn)))
        return f"A guess: nothing of yours in {yarns}. {_instead(journal, on, kind.warp_fibre)}"
    first_of = title_words(journal, (on.both or on.yarn_warps)[0])
    said = [f"Rests on {_warps(number)}, {'mostly ' if number > 1 else ''}{first_of}."]
    said += [f"None in {yarn_words(journal, yarn)}." for yarn in expected.new]
    if kind.weave and not both:
        said.append(f"None in {kind.weave}: {_carried(journal, on, kind.weave)}")
    elif kind.weave and both < number:
        said.append(f"{_number(both)} in {kind.weave}.")
    if abs(on.moves) >= MOVES and number > 1:
        more = "less" if on.moves < 0 else "more"
        without = title_words(journal, on.heaviest)
        said.append(f"Without {without} the {first.direction} would lose {_points(on.moves)} {more}.")
    lengths = next((len(each.rests_on.yarn_warps) for each in expected.figures if each.direction == "length"), number)
    if lengths != number:
        said.append(f"Length rests on {_warps(lengths)}." if lengths else "Length is a guess.")
    return " ".join(said)


def _instead(journal: Journal, on: RestsOn, fibre: str) -> str:
    """What stands in for warps in the yarn."""
    if on.fibre_warps:
        mostly = f", mostly {title_words(journal, on.fibre_warps[0])}" if len(on.fibre_warps) > 1 else ""
        return f"It goes by {_warps(len(on.fibre_warps))} in {fibre or 'such yarn'}{mostly}."
    if on.weave_warps:
        return "It goes by common practice, and by how you weave this weave."
    return "It goes by common practice."


def _carried(journal: Journal, on: RestsOn, weave: str) -> str:
    """What tells of a weave that the yarn was never woven in; for a name that nobody knows, the one that is near."""
    many = len(on.weave_warps)
    if many:
        named = f"{'mostly ' if many > 1 else ''}{title_words(journal, on.weave_warps[0])}"
        return f"what the weave does goes by {_warps(many)} in other yarns, {named}. A sample of it would show."
    if named_weave(weave):
        return "what the weave does goes by common practice, so sample first."
    near = difflib.get_close_matches(weave, weave_names(), n=1, cutoff=0.6)
    meant = f" Did you mean {near[0]}?" if near else ""
    return f"no weave of that name is known here, so what it does is a guess.{meant}"


def _warps(number: int) -> str:
    return f"{number} of your warps" if number > 1 else "one of your warps"


def _number(number: int) -> str:
    return {0: "None", 1: "One"}.get(number, str(number))


def _points(log_ratio: float) -> str:
    value = f"{abs(log_ratio) * 100:.1f}".removesuffix(".0")
    return f"{value} point{'' if value == '1' else 's'}"


def told(expected: Expected) -> tuple[Figure, ...]:
    """The figures worth a line: picks alone are none where nobody counted them."""
    return tuple(each for each in expected.figures if each.first != "picks" or each.rests_on.yarn_warps)


def range_words(figure: Figure) -> str:
    """`8 to 14 %`; where the range is of no use, that it is."""
    if figure.useless:
        return "too unsure"
    least, most = (round(each * 100) for each in figure.range)
    return f"{signed(least)} to {signed(most)} %"


def undone(figure: Figure) -> str:
    """What a wanted size is divided by: `.89` for a loss of 11 %."""
    share = 1 - round(figure.loss * 100) / 100
    return f"{share:.2f}".removeprefix("0")


def sentences(
    journal: Journal, memory: Memory, expected: Expected, beats: PastBeats | None = None
) -> Iterator[str]:
    """What hands can do with it: a width to sley and a length to weave, or that a sample comes first.

    beats: of all past cloths, where they are at hand; else those of this one are looked up here.
    """
    unit = "in" if journal.settings.length == "in" else "cm"
    step, wide, long = ROUND[unit]
    after = "scoured" if expected.figures[0].label.endswith("scoured") else "washed"
    width = expected.figure("width", "in_reed", "washed 1")
    length = expected.figure("length", "on_loom", "washed 1")
    wanted = {
        "width": usual_size_mm(memory.observed["width"], expected.kind, step, wide),
        "length": usual_size_mm(memory.observed["length"], expected.kind, step, long),
    }
    for figure, do, done in ((width, "sley", ""), (length, "weave", ", tension on")):
        size = wanted[figure.direction]
        if figure.useless:
            yield f"Sample first: what the {figure.direction} will do is too little known to plan by."
            continue
        woven = rounded_up(size * math.exp(-figure.belief.quantile(0.5)), HANDS[unit])
        low, high = (woven * math.exp(each) for each in figure.belief.range(0.9))
        or_picks = _picks(journal, expected, woven, beats) if figure is length else ""
        between = f"{show_length(low, unit).removesuffix(' ' + unit)} to {show_length(high, unit)}"
        sizes = f"For {show_length(size, unit)} {after}, {do} {show_length(woven, unit)}{done}{or_picks}"
        yield f"{sizes}; nine times in ten it comes out {between}."


def better_words(expected: Expected) -> Iterator[str]:
    """What would help where a figure that is told is too unsure to plan by."""
    for first in dict.fromkeys(each.first for each in told(expected) if each.useless):
        if first in BETTER:
            yield BETTER[first]


def _picks(journal: Journal, expected: Expected, woven_mm: float, beats: PastBeats | None) -> str:
    """`, or 640 picks at 20 an inch, as in 3 past warps`; "" where no such cloth has told its beat."""
    kind = expected.kind
    cloth = kind.warp_yarn, kind.weft_yarn, kind.weave
    beat = past_beat(journal, kind) if beats is None else beats.get(cloth)
    if beat is None:
        return ""
    per_m = beat.at(expected.sett_per_m)
    length = journal.settings.length
    an = "an inch" if length == "in" else "a centimetre"
    many = per_m * (float(INCH) / 1000 if length == "in" else 0.01)
    shown = f"{many:.1f}".removesuffix(".0") if many < 10 else f"{many:.0f}"
    past = f"{len(beat.warps)} past warps" if len(beat.warps) > 1 else "one past warp"
    return f", or {round(woven_mm * per_m / 1000)} picks at {shown} {an}, as in {past}"


def growth_words(expected: Expected) -> str:
    """What a minus is, where there is one; else ""."""
    shown = [(each.loss, *(() if each.useless else each.range)) for each in told(expected)]
    return "A minus is growth." if any(round(loss * 100) < 0 for losses in shown for loss in losses) else ""


def as_json(expected: Expected) -> Mapping[str, object]:
    """Plain values, for programs; see the command's help."""
    kind, on = expected.kind, expected.figures[0].rests_on
    fulling = expected.fulling
    return {
        "warp_yarn": kind.warp_yarn,
        "weft_yarn": kind.weft_yarn,
        "weave": kind.weave or None,
        "sett_per_m": None if expected.sett_per_m is None else round(expected.sett_per_m, 1),
        "closeness": None if kind.closeness is None else round(kind.closeness, 3),
        "finish": kind.finish or None,
        "usual": list(expected.usual),
        "new": list(expected.new),
        "rests_on": {
            "basis": on.basis,
            "yarn_warps": list(on.yarn_warps),
            "weave_warps": list(on.weave_warps),
            "both": list(on.both),
            "fibre_warps": list(on.fibre_warps),
            "heaviest": on.heaviest,
            "moves": round(on.moves, 5),
        },
        "figures": [
            {
                "figure": each.label,
                "direction": each.direction,
                "from": each.first,
                "to": each.last,
                "loss": round(each.loss, 4),
                "least": round(each.range[0], 4),
                "most": round(each.range[1], 4),
                "sample_first": each.useless,
                "warps": len(each.rests_on.yarn_warps),
            }
            for each in expected.figures
        ],
        "fulling": None if fulling is None else fulling_json(fulling),
    }
