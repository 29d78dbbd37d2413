"""A journal with a canary, a word of its own, in every field that takes words, made by walking the models."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any

import yaml

from journal_tools.quantities import Units
from journal_tools.records import KINDS, Draft, Journal, Piece, Planned, Settings, Stretch, Warp, read_journal
from journal_tools.records.cloth import SizeAt, Weft
from journal_tools.records.draft_parts import AccentEnd, Block
from journal_tools.records.hem import Fringe, Hem
from journal_tools.records.model import FieldWords, Model, words_of
from journal_tools.records.spot import Reading, Spot
from journal_tools.records.warp import Band, BandSizes, WarpYarn, YarnUse

PARTS: dict[str, type[Model]] = {
    "stretches": Stretch,
    "pieces": Piece,
    "plan": Planned,
    "warp": WarpYarn,
    "weft": Weft,
    "hem": Hem,
    "fringe": Fringe,
    **dict.fromkeys(("on_loom", "off_loom", "hemmed", "made_up", "washed"), SizeAt),
}
"""Keys that hold a part with fields of its own."""

CLOTH = (Warp, Stretch, Piece)

LISTS = ("stretches", "pieces", "plan", "washed", "warp", "weft")

FREE = ("alias", "band", "line", "minutes", "photo", "caption")
"""Free words in the place of a key, or beside one, that are nobody else's business."""


def word(kind: type[Model], key: str) -> str:
    """The canary of one field: it may be a name, too."""
    return f"canary-{kind.__name__.lower()}-{key}".replace("_", "-")


def free(what: str) -> str:
    """A canary that stands where a key does."""
    return f"canary-free-{what}"


def takes_words(words: FieldWords, said: str) -> bool:
    """Whether a field reads a word."""
    reading = Reading("", 1, Units())
    node = yaml.compose(said, Loader=yaml.CBaseLoader)
    return Spot(node, reading).read(words.read) is not None and not reading.problems


def filled(kind: type[Model]) -> dict[str, Any]:
    """A record or part of this kind with every field filled: with its canary, else with a part or an example."""
    return {key: value_of(kind, key, words) for key, (_, words) in words_of(kind).items()}


def value_of(kind: type[Model], key: str, words: FieldWords) -> Any:
    """What stands under one key."""
    said = word(kind, key)
    match key:
        case "learn":
            return f"no widths from {said}, {said}"
        case "yarns":
            return {free("alias"): filled(YarnUse)}
        case "where_it_went":
            return {free("line"): "5 in"}
        case "colours":
            return {said: "c9b58b"}
        case "photos":
            return {free("photo"): free("caption"), word(kind, "photos_for_everyone"): said}
        case "across":
            return {free("band"): filled(BandSizes if kind is Piece else Band)}
        case "fulling" if kind in CLOTH:
            return {f"8 min {free('minutes')}": "141 x 203 cm"}
        case "blocks":
            return {"A": filled(Block)}
        case "accents":
            return [filled(AccentEnd)]
        case "upper" | "lower":
            return {"threading": "1, 2", "lift_plan": "1, 2"}
        case "draft" if kind is Stretch:
            return filled(Draft)
    if key in PARTS and kind in (*CLOTH, Planned, BandSizes):
        part = filled(PARTS[key])
        return [part] if key in LISTS else part
    return said if takes_words(words, said) else words.example


def block(value: Any, blanks: str = "") -> Iterator[str]:
    """Keys, lists and values as lines of a record."""
    for key, each in value.items() if isinstance(value, dict) else ():
        if isinstance(each, str):
            yield f"{blanks}{key}: {each}"
            continue
        yield f"{blanks}{key}:"
        for part in each if isinstance(each, list) else [each]:
            lines = list(block(part, blanks + "  " * (2 if isinstance(each, list) else 1)))
            if isinstance(each, list):
                lines[0] = f"{blanks}  - {lines[0].strip()}"
            yield from lines


def full_of_canaries(folder: Path) -> Journal:
    """A journal of one record of every kind, each named as the warp names it, with notes below."""
    files: dict[str, type[Model]] = {
        "journal": Settings,
        "warps/shown": Warp,
        f"yarns/{word(WarpYarn, 'yarn')}": KINDS["yarns"],
        f"drafts/{word(Warp, 'draft')}": KINDS["drafts"],
        f"looms/{word(Warp, 'loom')}": KINDS["looms"],
        f"finishes/{word(Warp, 'finish')}": KINDS["finishes"],
    }
    for name, kind in files.items():
        path = folder / f"{name}.md"
        path.parent.mkdir(parents=True, exist_ok=True)
        lines = "\n".join(block(filled(kind)))
        path.write_text(f"---\n{lines}\n---\n\n{word(kind, 'notes')}\n", encoding="utf-8")
    for kind in (Stretch, Piece, SizeAt):
        (folder / f"finishes/{word(kind, 'finish')}.md").write_text("---\ntitle: Another\n---\n", encoding="utf-8")
    return read_journal(folder)


@cache
def every_word() -> dict[str, bool]:
    """Every canary that a field holds by itself, and whether the field may be shared."""
    kinds = (Settings, *KINDS.values(), Stretch, Piece, Planned, WarpYarn, Weft, YarnUse, SizeAt, Hem, Fringe, Band)
    return {
        word(kind, key): words.public
        for kind in (*kinds, BandSizes, AccentEnd)
        for key, (_, words) in words_of(kind).items()
        if key == "colours" or word(kind, key) in str(value_of(kind, key, words)).split(" ")
    }
