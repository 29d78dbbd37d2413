"""What the journal expects in a weaver's words: what it rests on first, then what hands can do."""

from __future__ import annotations

import difflib
import math
from collections.abc import Iterator, Mapping
from fractions import Fraction
from typing import TYPE_CHECKING

from journal_tools.drafts import named_weave, weave_names
from journal_tools.forecast.expected import Expected, Figure, usual_size_mm
from journal_tools.forecast.fulling import Fulling
from journal_tools.quantities import INCH, show_density, show_length
from journal_tools.records import Journal

if TYPE_CHECKING:
    from journal_tools.forecast.memory import Memory
    from journal_tools.forecast.rests_on import RestsOn

MOVES = 0.01
"""How far one warp must move an answer before that is worth a word: a point."""

BETTER = {"warp": "mark a warp", "picks": "count picks"}
"""What to do about a range of no use, by the moment that it starts from; a sample helps the others."""

ROUND = {"in": (float(INCH), 18 * float(INCH), 30 * float(INCH)), "cm": (50.0, 450.0, 750.0)}
"""By unit, in mm: what a size to plan by is rounded to, and a width and a length where the past has none."""

HANDS = {"in": float(INCH) / 4, "cm": 5.0}
"""What is sleyed and woven to, in mm."""

NARROWER = (0.05, 0.10, 0.15, 0.20, 0.25)
"""Losses of width by fulling that the minutes are told for."""


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
    said = [f"Rests on {_warps(number)}"]
    said[0] += (
        f", mostly {_title(journal, on.yarn_warps[0])}." if number > 1 else f", {_title(journal, on.yarn_warps[0])}."
    )
    said += [f"None in {yarn_words(journal, yarn)}." for yarn in expected.new]
    if kind.weave and both < number:
        said.append(f"{_number(both)} in {kind.weave}.{_near_weave(on, kind.weave)}")
    if abs(on.moves) >= MOVES and number > 1:
        more = "less" if on.moves < 0 else "more"
        less_it = f"Without {_title(journal, on.heaviest)} the {first.direction} would lose {_points(on.moves)} {more}."
        said.append(less_it)
    lengths = next((len(each.rests_on.yarn_warps) for each in expected.figures if each.direction == "length"), number)
    if lengths != number:
        said.append(f"Length rests on {_warps(lengths)}." if lengths else "Length is a guess.")
    return " ".join(said)


def _instead(journal: Journal, on: RestsOn, fibre: str) -> str:
    """What stands in for warps in the yarn."""
    if on.fibre_warps:
        mostly = f", mostly {_title(journal, on.fibre_warps[0])}" if len(on.fibre_warps) > 1 else ""
        return f"It goes by {_warps(len(on.fibre_warps))} in {fibre or 'such yarn'}{mostly}."
    if on.weave_warps:
        return "It goes by common practice, and by how you weave this weave."
    return "It goes by common practice."


def _near_weave(on: RestsOn, weave: str) -> str:
    """The weave that was probably meant, for a name that neither the journal nor the trade knows."""
    known = {name.lower(): name for name in weave_names()}
    if on.weave_warps or weave in known:
        return ""
    near = difflib.get_close_matches(weave, known, n=1, cutoff=0.6)
    return f" Did you mean {known[near[0]]}?" if near else ""


def _warps(number: int) -> str:
    return f"{number} of your warps" if number > 1 else "one of your warps"


def _number(number: int) -> str:
    return {0: "None", 1: "One"}.get(number, str(number))


def _title(journal: Journal, warp: str) -> str:
    record = journal.warps.get(warp)
    heading = record.heading if record else warp
    return f'"{heading}"' if "," in heading else heading


def _points(log_ratio: float) -> str:
    value = f"{abs(log_ratio) * 100:.1f}".removesuffix(".0")
    return f"{value} point{'' if value == '1' else 's'}"


def per_cent(fraction: float) -> str:
    """`11 %`, `−1 %` for growth: whole per cent, as much as cloth bears."""
    return f"{_signed(round(fraction * 100))} %"


def told(expected: Expected) -> tuple[Figure, ...]:
    """The figures worth a line: picks alone are none where nobody counted them."""
    return tuple(each for each in expected.figures if each.first != "picks" or each.rests_on.yarn_warps)


def range_words(figure: Figure) -> str:
    """`8 to 14 %`; what would help where the range is of no use: `sample first`."""
    if figure.useless:
        return BETTER.get(figure.first, "sample first")
    least, most = (round(each * 100) for each in figure.range)
    return f"{_signed(least)} to {_signed(most)} %"


def _signed(value: int) -> str:
    return f"−{-value}" if value < 0 else str(value)


def undone(figure: Figure) -> str:
    """What a wanted size is divided by: `.89` for a loss of 11 %."""
    share = 1 - round(figure.loss * 100) / 100
    return f"{share:.2f}".removeprefix("0")


def sentences(journal: Journal, memory: Memory, expected: Expected) -> Iterator[str]:
    """What hands can do with it: a width to sley and a length to weave, or that a sample comes first."""
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
        woven = _up(size * math.exp(-figure.belief.quantile(0.5)), HANDS[unit])
        low, high = (woven * math.exp(each) for each in figure.belief.range(0.9))
        picks = _picks(memory, expected, size) if figure is length else None
        or_picks = f", or {picks} picks beaten as the ends are set" if picks else ""
        between = f"{show_length(low, unit).removesuffix(' ' + unit)} to {show_length(high, unit)}"
        sizes = f"For {show_length(size, unit)} {after}, {do} {show_length(woven, unit)}{done}{or_picks}"
        yield f"{sizes}; nine times in ten it comes out {between}."


def _picks(memory: Memory, expected: Expected, washed_mm: float) -> int | None:
    """Picks for a washed length, where the past has counted them; None where it has not, or warp or weft hides."""
    counted = next((each for each in expected.figures if each.first == "picks"), None)
    named = named_weave(expected.kind.weave)
    if counted is None or counted.useless or not counted.rests_on.yarn_warps or expected.sett_per_m is None:
        return None
    if named is None or named.ends_to_picks != 1:
        return None
    to_washed = memory.belief("length", expected.kind, "picks", "washed 1")
    return round(washed_mm * math.exp(-to_washed.quantile(0.5)) * expected.sett_per_m / 1000)


def _up(mm: float, step: float) -> float:
    return math.ceil(mm / step - 1e-6) * step


def fulling_words(journal: Journal, fulling: Fulling) -> Iterator[str]:
    """How long fulling takes, and what it rests on; honest where a blanket or two are all there is."""
    warps = list(dict.fromkeys(cloth.warp for cloth in fulling.cloths))
    if not warps:
        yield "Fulled cloth is stopped at its size. None of yours was fulled with a watch, so the minutes are a guess."
    else:
        named = (
            " and ".join(_title(journal, warp) for warp in warps) if len(warps) < 3 else f"{len(warps)} of your warps"
        )
        whose = {"yarn": "", "fibre": ", in another yarn of the same fibre", "other": ", in another yarn"}[
            fulling.basis
        ]
        only = ", which is all there is" if len(warps) == 1 else ""
        yield f"Fulled cloth is stopped at its size, so look at the minutes: they rest on {named}{whose}{only}."
    for narrower in NARROWER:
        minutes = fulling.minutes("width", -math.log(1 - narrower))
        long = fulling.length_for(-math.log(1 - narrower))
        shorter = [round((1 - math.exp(-each)) * 100) for each in (long.likely, long.least, long.most)]
        beyond = " (longer than you ever fulled)" if fulling.longest and minutes.likely > fulling.longest else ""
        time = f"about {minutes.likely:.0f} minutes, {minutes.least:.0f} to {minutes.most:.0f}"
        long_words = f"shorter by about {shorter[0]} %, {shorter[1]} to {shorter[2]}"
        yield f"{per_cent(narrower)} narrower than scoured: {time}; {long_words}{beyond}"


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
        "fulling": None if fulling is None else _fulling_json(fulling),
    }


def _fulling_json(fulling: Fulling) -> Mapping[str, object]:
    found = []
    for narrower in NARROWER:
        minutes, long = fulling.minutes("width", -math.log(1 - narrower)), fulling.length_for(-math.log(1 - narrower))
        found.append(
            {
                "width_loss": narrower,
                "minutes": round(minutes.likely, 1),
                "least": round(minutes.least, 1),
                "most": round(minutes.most, 1),
                "length_loss": round(1 - math.exp(-long.likely), 4),
                "length_least": round(1 - math.exp(-long.least), 4),
                "length_most": round(1 - math.exp(-long.most), 4),
            }
        )
    warps = list(dict.fromkeys(cloth.warp for cloth in fulling.cloths))
    return {"basis": fulling.basis, "warps": warps, "longest": fulling.longest, "from_scoured": found}
