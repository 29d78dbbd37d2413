"""An analysis in a weaver's words, the worst first."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from journal_tools.drafts.analysis import HELD, Analysis
from journal_tools.drafts.floats import Float
from journal_tools.drafts.layer import in_layers, turn_at_the_fold
from journal_tools.drafts.naming import NOT_NAMED, Name
from journal_tools.drafts.places import places
from journal_tools.drafts.slip_words import slip_words
from journal_tools.notation import print_sets
from journal_tools.quantities import show_density, show_length
from journal_tools.quantities.density import PerUnit

FEW = 4
"""Places that are listed one by one."""

AS_WOVEN = "as it is woven, first end at the left"
CAUGHT = "A floating selvedge catches them all."
FACES = {"more warp": "more of its warp seen than of its weft", "more weft": "more of its weft seen than of its warp"}


def sentences(found: Analysis, unit: PerUnit = "in") -> Iterator[str]:
    """What is to be said of a draft. unit: of lengths and setts."""
    yield from warnings(found, unit)
    yield from _named(found)
    if found.answer == "its other side":
        yield f"It is said to be {found.said}, and that is its other side: on the loom this one is up."
    picks, ends = found.repeat
    yield f"The repeat is {_many(ends, 'end')} by {_many(picks, 'pick')}."
    for layer in range(len(found.layers)) if found.layers else (None,):
        yield _float_words(found, "warp", layer, unit)
        yield _float_words(found, "weft", layer, unit)
    if found.plain is not None and found.name.kind != "plain":
        lifts = " and ".join(print_sets([lift]) for lift in found.plain)
        yield f"Plain weave can be woven on this threading: lift {lifts} in turn."
    elif found.plain is None and found.name.kind != "plain":
        yield "Plain weave cannot be woven on this threading."
    edge = found.selvedge
    if edge.catches and edge.missed_otherwise and not found.draft.floating_selvedges:
        yield f"Begin with the shuttle at the {edge.begin}: then the weft catches the outermost end at every turn."
    yield from _mirrors(found)


def warnings(found: Analysis, unit: PerUnit = "in") -> Iterator[str]:
    """What to look at before it is threaded."""
    yield from _hanging(found)
    if found.slips:
        yield slip_words(*found.slips)
    if found.answer == "another":
        yield f"It is said to be {found.said}, and what it weaves is {found.name.text}."
    if found.bears_mm and found.marked.any():
        bears = show_length(found.bears_mm, "mm" if unit == "cm" else unit)
        whose = "cloth which is handled" if found.bears_mm == HELD else "its use"
        yield f"Some floats are longer than the {bears} that {whose} bears; they are marked in the drawing."
    yield from _edges(found)
    needs = found.needs
    if needs.unused_shafts:
        yield f"{_listed('Shaft', needs.unused_shafts)} moved and no end is on {_it(needs.unused_shafts)}."
    if needs.idle_shafts:
        yield f"{_listed('Shaft', needs.idle_shafts)} threaded and never moved."
    if needs.unused_treadles:
        yield f"{_listed('Treadle', needs.unused_treadles)} tied and never pressed."
    if needs.shafts_that_would_do < needs.shafts_that_move:
        yield f"{_many(needs.shafts_that_would_do, 'shaft')} would do: ends on different shafts move alike."


def _edges(found: Analysis) -> Iterator[str]:
    edge = found.selvedge
    if edge.catches or found.draft.floating_selvedges:
        return
    missed_at = {"left": edge.missed_left, "right": edge.missed_right}
    some = "" if edge.turns in missed_at.values() else " at some turns"
    sides = " and ".join(
        f"{'every turn' if missed == edge.turns else f'{missed} of {edge.turns}'} at the {side}"
        for side, missed in missed_at.items()
        if missed
    )
    yield f"Begun from the {edge.begin}, the weft misses the outermost end{some}: {sides}. {CAUGHT}"


def _hanging(found: Analysis) -> Iterator[str]:
    hanging = found.hanging
    if found.binders is not None:
        binding = [
            places(word, [thread + 1 for thread in threads])
            for word, threads in (("end", found.binders.ends), ("pick", found.binders.picks))
            if threads
        ]
        one = len(found.binders.ends) + len(found.binders.picks) == 1
        joined = " and ".join(binding)
        yield f"{_number(found.binders.layers)} layers but for {joined}, which {'binds' if one else 'bind'} them."
    if hanging.verdict == "layers" and not in_layers(found.said):
        yield f"It falls into {len(hanging.layers)} layers, whole cloths that nothing joins but the weft at the edges."
    elif hanging.verdict == "apart":
        sizes = ", ".join(f"{len(part.ends)} ends with {len(part.picks)} picks" for part in hanging.layers)
        yield f"It does not hang together: from the top, {sizes}. That looks like a slip more than like layers."
    elif hanging.verdict == "loose":
        for word, threads in (("end", hanging.loose_ends), ("pick", hanging.loose_picks)):
            if threads:
                would = "it would" if len(threads) == 1 else "they would"
                yield f"Nothing binds {places(word, [thread + 1 for thread in threads])}: {would} lie loose."


def _named(found: Analysis) -> Iterator[str]:
    if found.layers:
        yield from _layered(found)
        return
    name, seen = found.name, FACES.get(found.face, "")
    if found.face == "balanced" and not (found.ends_per_m and found.picks_per_m):
        has = is_ = ""  # the weave alone does not tell
    else:
        has, is_ = (f"; it has {seen}", f", with {seen}") if seen else (f"; it is {found.face}", f", {found.face}")
    if name.kind == NOT_NAMED:
        yield f"The weave has no name here{has}."
        return
    step = f" with a step of {name.step}" if name.step else ""
    more = f"{_ways(name)} {AS_WOVEN}" if name.direction else ""
    yield f"{name.text[0].upper()}{name.text[1:]}{step}{_doubled(found)}{more}{is_}."
    if name.direction:
        yield _in_the_drawing([name])


def _doubled(found: Analysis) -> str:
    """Where plain weave is doubled, if that is in few places."""
    if "doubled" not in found.name.text or found.name.kind != "rib":
        return ""
    told = []
    for word, table in (("end", found.block.T), ("pick", found.block)):
        again = [place + 1 for place in range(len(table)) if (table[place] == table[place - 1]).all()]
        if 0 < len(again) <= FEW:
            told.append(places(word, again))
    return f" ({' and '.join(told)})" if told else ""


def _layered(found: Analysis) -> Iterator[str]:
    layers, number = found.layers, _number(len(found.layers))
    if in_layers(found.said):
        yield f"{number} layers, joined by the weft alone at the edges, as a double cloth is meant to be."
    said = [f"{_called(layer.name)}{_ways(layer.name)}" for layer in layers]
    woven = f", {AS_WOVEN}" if any(layer.name.direction for layer in layers) else ""
    told = f"each {said[0]}" if len(set(said)) == 1 else f"from the top: {'; '.join(said)}"
    yield f"{number} layers, {told}{woven}."
    if any(layer.name.direction for layer in layers):
        yield _in_the_drawing([layer.name for layer in layers])
    if turn_at_the_fold(layers):
        yield "Seen from above the lines of both layers run the same way: opened out, they turn at the fold."


def _called(name: Name) -> str:
    return "a weave without a name here" if name.kind == NOT_NAMED else name.text


def _ways(name: Name) -> str:
    """Which way a twill's lines go; "" for what has none."""
    way = {"S": "falling", "Z": "rising"}.get(name.direction)
    return f", its lines {way} to the right" if way else ""


def _in_the_drawing(names: Sequence[Name]) -> str:
    ways = {name.direction for name in names if name.direction}
    do = "go the other way" if len(ways) > 1 else "fall" if ways == {"Z"} else "rise"
    return f"In the drawing, which has its first pick at the top, they {do}."


def _float_words(found: Analysis, system: str, layer: int | None, unit: PerUnit) -> str:
    longest = [one for one in found.floats if (one.system, one.layer) == (system, layer)]
    whose = f"{system}" if layer is None else f"{system} in the {_ordinal(layer, len(found.layers))} layer"
    if any(one.threads is None for one in longest):
        return f"Longest float of the {whose}: some are never crossed."
    one = max(longest, key=lambda each: (each.threads or 0, each.side == "face"))
    over = _many(one.threads or 0, "pick" if system == "warp" else "end")
    mm, per_m = found.float_mm(one), found.picks_per_m if system == "warp" else found.ends_per_m
    long = "" if mm is None or per_m is None else f", {_small(mm, unit)} at {show_density(per_m, unit)}"
    as_long = [each for each in longest if each.threads == one.threads]
    if len({(each.in_threads, _threads(each)) for each in as_long}) < len(as_long):
        sides = f"on both sides, {_floating(one)}"
    elif len(as_long) == 1:
        sides = f"on the {one.side}, {_floating(one)}"
    else:
        sides = ", ".join(f"on the {each.side} {_within(_floating(each))}" for each in as_long)
    return f"Longest float of the {whose}: over {over}{long}, {sides}."


def _threads(one: Float) -> tuple[int, ...]:
    """The threads that have such a float, counted from 1."""
    return tuple(sorted({thread + 1 for thread, _ in one.at}))


def _floating(one: Float) -> str:
    thread = "end" if one.system == "warp" else "pick"
    return places(thread, _threads(one)) if one.in_threads <= FEW else f"in {one.in_threads} {thread}s"


def _within(where: str) -> str:
    return where if where.startswith("in ") else f"in {where}"


def _ordinal(layer: int, layers: int) -> str:
    names = {2: ("upper", "lower"), 3: ("upper", "middle", "lower")}.get(layers)
    return names[layer] if names else f"{layer + 1}. (from the top)"


def _number(number: int) -> str:
    return {2: "Two", 3: "Three", 4: "Four"}.get(number, str(number))


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


def _listed(word: str, numbers: Sequence[int]) -> str:
    listed = places(word.lower(), numbers)
    listed += "," if listed.endswith(" on") else ""
    return f"{listed[0].upper()}{listed[1:]} {'is' if len(numbers) == 1 else 'are'}"


def _it(numbers: Sequence[int]) -> str:
    return "it" if len(numbers) == 1 else "them"


def _many(number: int, word: str) -> str:
    return f"{number} {word}{'' if number == 1 else 's'}"
