"""All else that a warp's record says: every field that has no place of its own on the page, as typed."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Set
from typing import Any

from journal_tools.pages.draft_part import LINES
from journal_tools.pages.view_parts import Fact, Link
from journal_tools.quantities import When
from journal_tools.records import Draft, Stretch, Warp
from journal_tools.records.cloth import Ends, FullingCheck, SizeAt, Weft
from journal_tools.records.hem import Hem
from journal_tools.records.model import Model, words_of
from journal_tools.records.notated import ColourOrder
from journal_tools.records.warp import BandSizes, Marked, YarnUse

HEAD = {"title", "tags", "notes_for_everyone", "photos", "photos_for_everyone", "share"}
"""At the head of the page, as notes, as photos. Which photos are for everyone, the shared site shows."""
WARP = {"started", "finished", "loom", "temple", "tension", "hours", "cost", "layers", "opens", "where_it_went"}
CLOTH = {"weave", "ends", "reed", "sley", "sett", "finish", "learn", "name", "count"}
"""Facts, headings, and what it taught."""
PIECE = {"name", "count", "learn"}
TABLE = {"weave", "sett", "ends", "beat", "picks", "note", "now", "buyer", "price", "half_kept", "liked"}
"""Columns of the table of pieces."""
BELOW = {"stretches", "pieces", "plan"}
"""What has lines of its own."""


def written(warp: Warp) -> Iterator[Fact]:
    """A line for the warp and for each stretch, plan and piece that says more than is shown elsewhere."""
    alone = len(warp.stretches) < 2
    yield from _line("this warp", warp, (HEAD | WARP | CLOTH | BELOW) - _not_shown(warp), alone)
    for stretch in warp.woven():
        if stretch is not warp:
            shown = CLOTH | BELOW if stretch.reed or warp.reed else (CLOTH | BELOW) - {"sley"}
            yield from _line(stretch.name or "a stretch", stretch, shown, alone)
        for plan in stretch.plan:
            said = "; ".join(f"{_words(key)} {text}" for key, text in _texts(plan) if key != "piece")
            yield Fact(f"plan of {plan.piece}" if plan.piece else "plan", (Link(said),))
        if has_table(stretch):
            for number, piece in enumerate(stretch.pieces, start=1):
                yield from _line(piece.name or f"piece {number}", piece, PIECE | TABLE, alone)
        else:
            for piece in stretch.pieces:
                yield from _line("the piece", piece, PIECE - {"name"}, alone)


def _not_shown(warp: Warp) -> set[str]:
    """What of a warp itself has no place elsewhere: it needs another field there, or the first stretch has its own."""
    found = set()
    if not warp.opens:
        found.add("layers")
    if not any(wound.wound for wound in warp.warp):
        found.add("where_it_went")
    if not warp.reed:
        found.add("sley")
    for stretch in warp.stretches[:1]:
        found |= {key for key in ("weave", "ends", "reed", "sley", "sett") if getattr(stretch, key) is not None}
    return found


def has_table(stretch: Stretch) -> bool:
    """Whether the pieces of a stretch stand in a table: more than one of them, or bands of one."""
    return len(stretch.pieces) > 1 or any(piece.number > 1 or len(piece.across or {}) > 1 for piece in stretch.pieces)


def _line(of: str, model: Model, shown: Set[str], alone: bool) -> Iterator[Fact]:
    """alone: whether the draft of this is drawn on the page, so that its notation is there."""
    said = []
    for key, (attribute, _) in words_of(type(model)).items():
        value = getattr(model, attribute)
        if key in shown or value is None or value in ((), {}):
            continue
        if isinstance(value, Draft):
            value = {_words(part): text for part, text in _texts(value) if not (alone and part in LINES)}
        text = _beside(key, value)
        if text:
            said.append(f"{_words(key)}: {text}")
    if said:
        yield Fact(of, tuple(Link(each) for each in said))


def _beside(key: str, value: Any) -> str:
    """A value in words, but for what a tape, a table or a link shows of it already."""
    if key == "draft" and isinstance(value, str):
        return ""
    if key == "in_reed":
        return value.text if value.length is None or value.fold else ""
    if isinstance(value, SizeAt):
        return _how(value)
    if key == "across" and any(isinstance(each, BandSizes) for each in value.values()):
        told = [fact for band, sizes in value.items() for fact in _line(band, sizes, set(), False)]
        return "; ".join(f"{fact.label} {link.text}" for fact in told for link in fact.values)
    if key == "weft":
        more = [weft for weft in value if weft != Weft(yarn=weft.yarn, colour=weft.colour)]
        return text_of(tuple(more))
    if key == "washed":
        alone = len(value) == 1
        return "; ".join(how if alone else f"{at.wash or 1} {how}" for at in value if (how := _how(at)))
    if key == "fulling":
        return "; ".join(f"{check.minutes} min {how}" for check in value if (how := _how(check.at)))
    return text_of(value)


def _how(at: SizeAt) -> str:
    return ", ".join(text for key, text in _told(at) if key != "size")


def _told(model: Model) -> Iterator[tuple[str, str]]:
    """Every field that says something, with its name before it unless the words need none."""
    for key, text in _texts(model):
        if text in ("yes", "no"):
            yield key, _words(key) if text == "yes" else f"not {_words(key)}"
        else:
            yield key, text if key in ("yarn", "size", "edges", "dry") else f"{_words(key)} {text}"


def _texts(model: Model) -> Iterator[tuple[str, str]]:
    """Every field of a model that says something, with its words."""
    for key, (attribute, _) in words_of(type(model)).items():
        value = getattr(model, attribute)
        if value is not None and value not in ((), {}) and (text := text_of(value)):
            yield key, text


def text_of(value: Any) -> str:
    """Any value of a record in words; what was typed, wherever that was kept."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, When):
        return value.show()
    if isinstance(value, ColourOrder):
        from journal_tools.notation import print_colours

        return value.text or print_colours(value.items)
    if isinstance(value, Ends):
        return f"{value.number}{' from the middle' if value.from_the_middle else ''}"
    if isinstance(value, Marked):
        return f"{value.warp.text} wove {value.cloth.text}"
    if isinstance(value, Hem) and value.edges == "none":
        return "none"
    if isinstance(value, Model):
        return ", ".join(text for _, text in _told(value))
    if isinstance(value, FullingCheck):
        return f"{value.minutes} min {text_of(value.at)}"
    if isinstance(value, Mapping):
        return "; ".join(_named(name, each) for name, each in value.items())
    if isinstance(value, tuple):
        between = "-" if all(isinstance(each, int) for each in value) else "; "
        return between.join(text_of(each) for each in value)
    return str(getattr(value, "text", value))


def _named(name: str, value: Any) -> str:
    return f"{name} is {text_of(value)}" if isinstance(value, YarnUse) else f"{_words(name)} {text_of(value)}"


def _words(key: str) -> str:
    return key.replace("_", " ")
