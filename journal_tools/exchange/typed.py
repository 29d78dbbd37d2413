"""A record's fields as a weaver would type them: what reads back as the same record.

It is made from the record that was read, and from nothing else. So the fields of a shared record
are those that may be shared, by whatever way they leave.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from fractions import Fraction
from typing import Any

from journal_tools.editing.change import Value
from journal_tools.notation import print_colours
from journal_tools.records.cloth import Ends, FullingCheck, SizeAt, Weft
from journal_tools.records.hem import Fringe, Hem
from journal_tools.records.learn import Learn
from journal_tools.records.model import Model, words_of
from journal_tools.records.notated import ColourOrder
from journal_tools.records.readers import slug
from journal_tools.records.warp import BandSizes, Marked, YarnUse

ALONE: Mapping[type[Model], str] = {
    SizeAt: "size",
    Weft: "yarn",
    YarnUse: "yarn",
    Fringe: "allowed",
    Hem: "depth",
    BandSizes: "washed",
}
"""Parts that can stand as one value where they say no more than this."""

LISTS = ("stretches", "pieces")
"""Keys that hold a list even of one."""

NOT_SHARED = "not-shared"
"""Stands for a recipe that is not among the shared ones, so that the next is still the next wash's."""


def fields_of(model: Model) -> dict[str, Value]:
    """Every key that says something, as typed: the keys in the order of the record, the rest in the guide's."""
    known = words_of(type(model))
    washes = _washes(getattr(model, "washed", ()), model.lines)
    made: dict[str, Value] = {}
    for key in dict.fromkeys([*model.lines, *known, *washes]):
        if key in washes:
            made[key] = washes[key]
        elif key in known and not known[key][1].numbered:
            attribute = known[key][0]
            value = getattr(model, attribute)
            usual = type(model).__dataclass_fields__[attribute].default
            if value is not None and value != () and (value != usual or key in model.lines):
                made[key] = _typed(key, value)
    return made


def part(model: Model) -> Value:
    """A part of a record: one value where that says all, else its fields."""
    fields = fields_of(model)
    if isinstance(model, Hem) and fields == {"edges": "none"}:
        return "none"
    key = ALONE.get(type(model))
    if key is not None and set(fields) == {key} and isinstance(fields[key], str):
        return fields[key]
    return fields


def _typed(key: str, value: Any) -> Value:
    if key in _SPELLED:
        return _SPELLED[key](value)
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, str):
        return value
    if isinstance(value, Model):
        return part(value)
    if isinstance(value, ColourOrder):
        return value.text or print_colours(tuple(short_name(item) for item in value.items))
    if isinstance(value, Mapping):
        return {name: _typed("", each) for name, each in value.items()}
    if isinstance(value, tuple):
        items = [_typed("", each) for each in value]
        return items[0] if len(items) == 1 and key not in LISTS else items
    return str(value.text)


def _washes(sizes: Sequence[SizeAt], lines: Mapping[str, int]) -> dict[str, Value]:
    """The washed sizes under the keys that the record had: `washed`, a list of them, or `washed 2`."""
    named = {int(match[1]): key for key in lines if (match := re.fullmatch(r"washed (\d+)", key))}
    listed = [at for at in sizes if at.wash not in named]
    made: dict[str, Value] = {}
    if listed and [at.wash for at in listed] == list(range(1, len(listed) + 1)):
        made["washed"] = [part(at) for at in listed]
        listed = []
    for at in sizes:
        if at in listed or at.wash in named:
            made[named.get(at.wash or 0, f"washed {at.wash}" if at.wash else "washed")] = part(at)
    return made


def short_name(yarn: str) -> str:
    """A yarn and its colour as one word, which is all that an order of colours can hold."""
    return slug(yarn) if " " in yarn else yarn


def _yarns(used: Mapping[str, YarnUse]) -> Value:
    """The short names of a warp's yarns; shared journals name each by its yarn and colour."""
    return {short_name(alias) if use.yarn == alias else alias: part(use) for alias, use in used.items()}


def _ends(ends: Ends) -> Value:
    return f"{'~' if ends.about else ''}{ends.number}{' from the middle' if ends.from_the_middle else ''}"


def _learn(rules: Sequence[Learn]) -> Value:
    said: list[Value] = [_rule(rule) for rule in rules]
    return said[0] if len(said) == 1 else said


def _rule(rule: Learn) -> str:
    if rule.yes:
        return "yes"
    what = f"{rule.direction}s" if rule.direction else (rule.state or "").replace("_", " ")
    words = " ".join(part for part in ("no", what, f"from {rule.source}" if rule.source else "") if part)
    return f"{words}, {rule.reason}" if rule.reason else words


def _fulling(checks: Sequence[FullingCheck]) -> Value:
    made: dict[str, Value] = {}
    for check in checks:
        words = f" {check.words}" if check.words else ""
        key = f"{check.minutes} min{words}"
        made[key if key not in made else f"{check.minutes} minutes{words}"] = part(check.at)
    return made


def _weight(weighed: Mapping[str, Any]) -> Value:
    made = {state: str(weight.text) for state, weight in weighed.items()}
    return made["washed"] if set(made) == {"washed"} else made


def _fibre(shares: Mapping[str, Fraction | None]) -> Value:
    if not shares:
        return "unknown"
    if len(shares) == 1 and set(shares.values()) == {Fraction(1)}:
        return next(iter(shares))
    said = ((f"{_decimal(share * 100)} % " if share is not None else "", fibre) for fibre, share in shares.items())
    return ", ".join(share + fibre for share, fibre in said)


def _decimal(number: Fraction) -> str:
    """A number that was written with decimals, written so again."""
    whole, rest = divmod(number, 1)
    digits = ""
    while rest and len(digits) < 30:
        digit, rest = divmod(rest * 10, 1)
        digits += str(digit)
    return f"{whole}.{digits}" if digits else str(whole)


def _marked(marks: Sequence[Marked]) -> Value:
    said: list[Value] = [f"{each.warp.text} wove {each.cloth.text}" for each in marks]
    return said[0] if len(said) == 1 else said


def _recipes(names: Sequence[str]) -> Value:
    said = list(names)
    while said and not said[-1]:
        said.pop()
    filled: list[Value] = [name or NOT_SHARED for name in said]
    return filled[0] if len(filled) == 1 else filled


def _finish(value: Any) -> Value:
    return value if isinstance(value, str) else _recipes(value)


_SPELLED: Mapping[str, Callable[[Any], Value]] = {
    "yarns": _yarns,
    "ends": _ends,
    "sley": lambda order: "-".join(map(str, order)),
    "learn": _learn,
    "fulling": lambda value: _typed("", value) if isinstance(value, bool) else _fulling(value),
    "weight": lambda value: value if isinstance(value, str) else _weight(value),
    "heddles": lambda counts: str(counts[0]) if set(counts) == {0} else {str(k): str(n) for k, n in counts.items()},
    "fibre": _fibre,
    "marked": _marked,
    "finish": _finish,
}
"""Keys whose value keeps no text of its own: how each is typed."""
