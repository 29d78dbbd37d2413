"""An analysis in a weaver's words, the worst first."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from journal_tools.drafts.analysis import Analysis
from journal_tools.notation import print_sets
from journal_tools.quantities import show_density, show_length
from journal_tools.quantities.density import PerUnit

FEW = 4
"""Places that are listed one by one."""


def sentences(found: Analysis, unit: PerUnit = "in") -> Iterator[str]:
    """What is to be said of a draft. unit: of lengths and setts."""
    yield from warnings(found, unit)
    yield _named(found)
    picks, ends = found.repeat
    yield f"The repeat is {_many(ends, 'end')} by {_many(picks, 'pick')}."
    yield _float_words(found, "warp", unit)
    yield _float_words(found, "weft", unit)
    if found.plain is not None:
        lifts = " and ".join(print_sets([lift]) for lift in found.plain)
        yield f"Plain weave can be woven on this threading: lift {lifts} in turn."
    else:
        yield "Plain weave cannot be woven on this threading."
    yield from _mirrors(found)


def warnings(found: Analysis, unit: PerUnit = "in") -> Iterator[str]:
    """What to look at before it is threaded."""
    yield from _hanging(found)
    slip = found.threading_slip
    if slip is not None:
        yield slip_words(found)
    if found.agrees is False:
        yield f"It is said to be {found.said}, and what it weaves is {found.name.text}."
    marked = int(found.marked.sum())
    if marked and found.bears_mm:
        bears = show_length(found.bears_mm, "mm" if unit == "cm" else unit)
        yield f"Some floats are longer than the {bears} that its use bears; they are marked in the drawing."
    edge = found.selvedge
    if not edge.catches and not found.draft.floating_selvedges:
        missed_at = {"left": edge.missed_left, "right": edge.missed_right}
        sides = [f"{missed} of {edge.turns} at the {side}" for side, missed in missed_at.items() if missed]
        yield (
            f"The weft misses the outermost end at some turns, begun from the {edge.begin}: {' and '.join(sides)}."
            " A floating selvedge catches them all."
        )
    needs = found.needs
    if needs.unused_shafts:
        yield f"{_listed('Shaft', needs.unused_shafts)} moved and no end is on {_it(needs.unused_shafts)}."
    if needs.idle_shafts:
        yield f"{_listed('Shaft', needs.idle_shafts)} threaded and never moved."
    if needs.unused_treadles:
        yield f"{_listed('Treadle', needs.unused_treadles)} tied and never pressed."
    if needs.shafts_that_would_do < found.draft.shafts - len(needs.unused_shafts) - len(needs.idle_shafts):
        yield f"{needs.shafts_that_would_do} shafts would do: ends on different shafts move alike."


def slip_words(found: Analysis) -> str:
    """The question about a slip in the threading."""
    slip = found.threading_slip
    assert slip is not None
    read, right = (None if thread is None else print_sets([thread]) for thread in (slip.read, slip.right))
    said = {
        "wrong": f"end {slip.place + 1} is on {read} where the others have {right}",
        "missing": f"an end on {right} is missing before end {slip.place + 1}",
        "extra": f"end {slip.place + 1}, on {read}, is one too many",
    }[slip.kind]
    return f"The threading repeats after {slip.repeat} ends but once: {said}. A slip?"


def _hanging(found: Analysis) -> Iterator[str]:
    hanging = found.hanging
    if hanging.verdict == "layers":
        yield f"It falls into {len(hanging.layers)} layers, whole cloths that nothing joins but the weft at the edges."
    elif hanging.verdict == "apart":
        sizes = ", ".join(f"{len(part.ends)} ends with {len(part.picks)} picks" for part in hanging.layers)
        yield f"It does not hang together: from the top, {sizes}. That looks like a slip more than like layers."
    elif hanging.verdict == "loose":
        for word, threads in (("end", hanging.loose_ends), ("pick", hanging.loose_picks)):
            if threads:
                yield f"Nothing binds {_places(word, [thread + 1 for thread in threads])}: it would lie loose."


def _named(found: Analysis) -> str:
    name = found.name
    lines = {"S": "falling", "Z": "rising"}.get(name.direction)
    more = f", its lines {lines} to the right as it is drawn" if lines else ""
    if name.kind == "not named":
        return f"The weave has no name here; it is {found.face}."
    step = f" with a step of {name.step}" if name.step else ""
    return f"{name.text[0].upper()}{name.text[1:]}{step}{more}, {found.face}."


def _float_words(found: Analysis, system: str, unit: PerUnit) -> str:
    longest = [one for one in found.floats if one.system == system]
    if any(one.threads is None for one in longest):
        return f"Longest float of the {system}: some are never crossed."
    one = max(longest, key=lambda each: (each.threads or 0, each.side == "face"))
    both = all(each.threads == one.threads for each in longest)
    over = _many(one.threads or 0, "pick" if system == "warp" else "end")
    mm, per_m = found.float_mm(one), found.picks_per_m if system == "warp" else found.ends_per_m
    long = "" if mm is None or per_m is None else f", {_small(mm, unit)} at {show_density(per_m, unit)}"
    side = "on both sides" if both else f"on the {one.side}"
    thread = "end" if system == "warp" else "pick"
    where = sorted({place + 1 for place, _ in one.at})
    places = _places(thread, where) if one.in_threads <= FEW else f"in {one.in_threads} {thread}s"
    return f"Longest float of the {system}: over {over}{long}, {side}, {places}."


def _small(mm: float, unit: PerUnit) -> str:
    return f"{mm / 25.4:.2f} in" if unit == "in" else f"{mm:.1f} mm"


def _mirrors(found: Analysis) -> Iterator[str]:
    symmetry = found.symmetry
    if symmetry.alike_both_sides:
        yield "Both sides are woven alike."
    if symmetry.mirrored_sideways and symmetry.mirrored_upright:
        yield "It is its own mirror image, sideways and upright."
    elif symmetry.mirrored_sideways or symmetry.mirrored_upright:
        yield f"It is its own mirror image {'sideways' if symmetry.mirrored_sideways else 'upright'}."


def _places(word: str, places: Sequence[int]) -> str:
    if len(places) == 1:
        return f"{word} {places[0]}"
    if len(places) > FEW:
        return f"{len(places)} {word}s, from {word} {places[0]} on"
    return f"{word}s {', '.join(map(str, places[:-1]))} and {places[-1]}"


def _listed(word: str, numbers: Sequence[int]) -> str:
    places = _places(word.lower(), numbers)
    return f"{places[0].upper()}{places[1:]} {'is' if len(numbers) == 1 else 'are'}"


def _it(numbers: Sequence[int]) -> str:
    return "it" if len(numbers) == 1 else "them"


def _many(number: int, word: str) -> str:
    return f"{number} {word}{'' if number == 1 else 's'}"
