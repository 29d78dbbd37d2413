"""The key that a weaver meant: by its spelling, by the trade's word for it, and by what stands behind it."""

from __future__ import annotations

import difflib
import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING

import yaml

from journal_tools.problems import nearest
from journal_tools.quantities import USUAL, Unreadable, parse_size
from journal_tools.records import readers
from journal_tools.records.spot import Elsewhere, Reading, Spot
from journal_tools.records.trade_words import TOLD_ELSEWHERE, TRADE

if TYPE_CHECKING:
    from journal_tools.records.model import FieldWords

SIZES = ("on_loom", "off_loom", "hemmed", "washed", "made_up", "size")
"""The keys that hold a size."""

NEARLY = 0.08
"""How much less alike a key may be than the nearest one, where it takes the value and that one does not (judgement)."""

MUCH_ALIKE = 0.8
"""How like a key the first word of a line without a colon must be (judgement)."""

_FIGURE = re.compile(r"[~?]?\s*\d|\?")
_SIZE = re.compile(r"[~?]?.*\d.*[x×].*[\d?]", re.DOTALL)
_NUMBERED = re.compile(r"(.+?)[ _]?(\d{1,2})")


@dataclass(frozen=True)
class Meant:
    """What to say of a key that is none. key: the one that was meant, "" where it cannot be known."""

    right: str
    key: str = ""


def meant(typed: str, value: Spot, known: Mapping[str, FieldWords]) -> Meant:
    """The key that was meant by one that is none, and a sentence that says so."""
    tidied = _tidied(typed)
    words = tidied.replace("_", " ")
    said = "" if tidied in known else _of_the_trade(words, value, known)
    if said and not fits(known[said], value):
        return Meant(f"there is no key of this name; {known[said].meaning[:-1].lower()} stands under `{said}:`.")
    if not said and words in TOLD_ELSEWHERE and "weave" in known:
        return Meant(TOLD_ELSEWHERE[words])
    key = said or (tidied if tidied in known else _spelt_like(tidied, value, known))
    if key and not fits(known[key], value):
        key = _size_key(key, value, known) or key
    if not key:
        return Meant("there is no key of this name here; a remark can stand in the notes below the second `---`.")
    numbered = _NUMBERED.fullmatch(tidied)
    if numbered and known[key].numbered:
        key = f"{key} {int(numbered[2])}"
    return Meant(f"there is no key of this name; `{key}:` is one that stands here.", key)


def size_astray(key: str, value: Spot, known: Mapping[str, FieldWords]) -> Unreadable | None:
    """What to say of a size under a key that takes none, where a key for it is near by its name."""
    found = _size_key(key, value, known)
    if not found:
        return None
    right = f"this is a size, width x length, and `{key}:` takes none; a size can stand under `{found}:`."
    return Elsewhere(value.text(), right, key=found, mended=value.text())


def without_colon(text: str, known: Mapping[str, FieldWords], *, loosely: bool = False) -> tuple[str, str] | None:
    """Key and value of a line whose colon is missing, such as `weave plain weave`; None where it has no key.

    loosely: a misspelt key, one of the trade's words or a key alone will do as well.
    """
    words = text.split()
    for many in range(min(3, len(words)), 0, -1):
        head, rest = _tidied(" ".join(words[:many])), " ".join(words[many:])
        value = _spot(head, rest)
        numbered = _NUMBERED.fullmatch(head)
        wash = known.get(numbered[1]) if numbered else None
        if rest and numbered and wash is not None and wash.numbered and fits(wash, value):
            return f"{numbered[1]} {int(numbered[2])}", rest
        key = head if head in known else ""
        if loosely and rest and not key:
            key = _of_the_trade(head.replace("_", " "), value, known)
            key = key or (_that_takes(value, head, known, MUCH_ALIKE) if many == 1 else "")
        if key and (fits(known[key], value) if rest else loosely):
            return key, rest
    return None


def fits(words: FieldWords, value: Spot) -> bool:
    """Whether a key's reader can read what stands here, without a problem."""
    scratch = Reading(value.reading.file, value.reading.first_line, value.reading.units)
    try:
        words.read(Spot(value.node, scratch, value.path))
    except Unreadable:
        return False
    return not scratch.problems


def _of_the_trade(words: str, value: Spot, known: Mapping[str, FieldWords]) -> str:
    here = [key for key in TRADE.get(words, ()) if key in known]
    return next((key for key in here if fits(known[key], value)), here[0] if here else "")


def _spelt_like(tidied: str, value: Spot, known: Mapping[str, FieldWords]) -> str:
    """The nearest key that takes the value; where none of those is near, the nearest of all."""
    numbered = _NUMBERED.fullmatch(tidied)
    name = numbered[1] if numbered else tidied
    near = nearest(tidied, known) or nearest(name, known) or ""
    plain = value.is_text or (value.is_list and all(item.is_text for item in value.items()))
    if near and plain and not value.is_empty and not fits(known[near], value):
        alike = difflib.SequenceMatcher(None, near, name).ratio()
        return _that_takes(value, name, known, max(alike - NEARLY, 0.5)) or near
    return near


def _that_takes(value: Spot, name: str, known: Mapping[str, FieldWords], alike: float) -> str:
    """The key most like this name among those that take the value; free text takes no figures here."""
    figure = value.is_text and _FIGURE.match(value.text())
    likely = [key for key, words in known.items() if not (figure and words.read is readers.text) and fits(words, value)]
    return next(iter(difflib.get_close_matches(name, sorted(likely), n=1, cutoff=alike)), "")


def _size_key(key: str, value: Spot, known: Mapping[str, FieldWords]) -> str:
    """The key for a size that is meant by a key that takes none; "" where none is near."""
    sizes = [each for each in SIZES if each in known]
    if key.split(" ")[0] in sizes or not value.is_text or not _SIZE.fullmatch(value.text()):
        return ""
    try:
        parse_size(value.text(), value.units)
    except Unreadable:
        return ""
    of_the_trade = [each for each in TRADE.get(key, ()) if each in sizes]
    alike = [each for each in sizes if key in each.split("_")]
    return next(iter([*of_the_trade, *alike]), "") or nearest(key, sizes) or ""


def _tidied(key: str) -> str:
    return re.sub(r"[\s.-]+", "_", key.strip().lower()).strip("_")


def _spot(key: str, text: str) -> Spot:
    start = yaml.Mark("", 0, 0, 0, None, 0)
    return Spot(yaml.ScalarNode("", text, start, start), Reading("", 0, USUAL), (key,))
