"""How a kind of record is described: a frozen dataclass whose fields carry their own reader and words.

The same description reads the record, makes the field guide and says what may be shared, so that
none of the three can say something that the others do not.
"""

from __future__ import annotations

import dataclasses
import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any, TypeVar

from journal_tools.quantities import Unreadable
from journal_tools.records.meant_key import meant, size_astray
from journal_tools.records.spot import Spot

M = TypeVar("M", bound="Model")


@dataclass(frozen=True)
class FieldWords:
    """One key of a record.

    read: turns the spot into a value, or raises Unreadable.
    meaning: one sentence for the field guide. example: what a weaver would type behind the colon; where
    keys or a list stand below, it begins with the end of the line.
    public: whether a shared journal may show it.
    key: the key as typed. numbered: "washed 2" is taken as well as "washed".
    """

    read: Callable[[Spot], Any]
    meaning: str
    example: str
    public: bool
    key: str
    numbered: bool = False


def says(
    read: Callable[[Spot], Any],
    meaning: str,
    example: str,
    *,
    public: bool = False,
    key: str = "",
    default: object = None,
    numbered: bool = False,
) -> Any:
    """A dataclass field with its reader and its words."""
    return dataclasses.field(
        default=default,
        metadata={"words": FieldWords(read, meaning, example, public, key, numbered)},
    )


@dataclass(frozen=True, kw_only=True)
class Model:
    """What every kind has: the line each key was read on."""

    lines: Mapping[str, int] = dataclasses.field(default_factory=dict, compare=False, repr=False)

    def line(self, *keys: str) -> int:
        """The line of the first of these keys that the record has, 0 for none of them."""
        return next((self.lines[key] for key in keys if key in self.lines), 0)


@cache
def _words_of(model: type[Model]) -> Mapping[str, tuple[str, FieldWords]]:
    return {
        (words.key or field.name): (field.name, words)
        for field in dataclasses.fields(model)
        if (words := field.metadata.get("words")) is not None
    }


def words_of(model: type[Model]) -> Mapping[str, tuple[str, FieldWords]]:
    """Every key of a kind, with the attribute it fills and its words, in the order of the guide."""
    return _words_of(model)  # type: ignore[arg-type]  # a class is hashable; its dataclass hash misleads mypy


def read_model(spot: Spot, model: type[M], *, given: Mapping[str, object] | None = None) -> M:
    """Read a mapping into a model; every key that cannot be read is a problem, and the rest stays.

    Raises Unreadable when the spot is no mapping.
    """
    known = words_of(model)
    words_here = {key: words for key, (_, words) in known.items()}
    values: dict[str, Any] = dict(given or {})
    lines: dict[str, int] = {}
    taken = {key for key, _, _ in spot.entries()}
    for key, key_spot, value in spot.entries():
        found = _find(known, key)
        if found is None:
            said = meant(key, value, words_here)
            mended, right = _with_key(known, said.key, key_spot, value), said.right
            if said.key in taken:
                mended, right = "", f"there is no key of this name, and `{said.key}:` can stand here once only."
            taken.add(said.key)
            key_spot.complain(key, right, slug="no-such-key", mended=mended)
            continue
        if key in lines:
            continue  # a key that is written twice has been told of, and its first value stays
        attribute, words, number = found
        lines[key] = key_spot.line
        lines.setdefault(words.key or attribute, key_spot.line)
        reader = words.read if number is None else _numbered(words, number)
        read = value.read(reader, _astray(key, value, words_here))
        if read is None:
            continue
        if words.numbered:
            read = _with_others(values.get(attribute, ()), read, key, value)
        values[attribute] = read
    return model(**values, lines=lines)


def _find(known: Mapping[str, tuple[str, FieldWords]], key: str) -> tuple[str, FieldWords, int | None] | None:
    if key in known:
        attribute, words = known[key]
        return attribute, words, None
    numbered = re.fullmatch(r"(.+) (\d{1,2})", key)
    if numbered and numbered[1] in known and known[numbered[1]][1].numbered:
        attribute, words = known[numbered[1]]
        return attribute, words, int(numbered[2])
    return None


def _with_key(known: Mapping[str, tuple[str, FieldWords]], key: str, key_spot: Spot, value: Spot) -> str:
    """The line with the key that was meant, to paste; "" where none was, or where it could not be read either."""
    if (found := _find(known, key)) is None:
        return ""
    if not value.is_text:
        return key_spot.line_with(key=key)
    _, words, number = found
    return value.line_under(key, words.read if number is None else _numbered(words, number))


def _numbered(words: FieldWords, number: int) -> Callable[[Spot], Any]:
    def read(spot: Spot) -> Any:
        if number < 1:
            raise Unreadable(read=str(number), right="washes are counted from 1, such as `washed 2`.")
        if spot.is_list:
            key = spot.path[-1]
            plain = key.removesuffix(f" {number}")
            raise Unreadable(read=spot.shown(), right=f"`{key}:` is one size; a list stands under `{plain}:`.")
        return tuple(dataclasses.replace(each, wash=number) for each in words.read(spot))

    return read


def _with_others(before: tuple[Any, ...], read: tuple[Any, ...], key: str, spot: Spot) -> tuple[Any, ...]:
    """The sizes after the washes said so far and those of one more key; a wash that is said twice is a fault."""
    known = {each.wash or 1 for each in before}
    twice = sorted({each.wash or 1 for each in read} & known)
    if twice:
        spot.complain(
            key, f"the size after wash {twice[0]} is here twice; keep the one that is right.", slug="said-twice"
        )
    return before + tuple(each for each in read if (each.wash or 1) not in known)


def _astray(key: str, value: Spot, known: Mapping[str, FieldWords]) -> Callable[[Unreadable], Unreadable]:
    """What to say of a value that a key cannot take: that it is a size, where it is one."""
    return lambda unreadable: size_astray(key, value, known) or unreadable
