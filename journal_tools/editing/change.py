"""One change to a record, and what the record's tree must be once it is made."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import TypeAlias

import yaml

Value: TypeAlias = "str | Sequence[Value] | Mapping[str, Value]"
"""A text as it is to be read back, a list, or keys with values."""

Key: TypeAlias = str | int
Path: TypeAlias = tuple[Key, ...]


@dataclass(frozen=True)
class Change:
    """Set a value, or add one to a list; nothing that stands in the record is ever taken out.

    path: keys, and places in lists from 0, from the top down: ("pieces", 1, "washed"). What is
    missing on the way is made. A list's length is the place after its last item.
    value: a text is set. Keys are set one by one beside those that are there. A list is written
    item by item over the list that is there, or takes the place of a single value; it may not be
    shorter. Keys set where a list stands become its next item.
    append: the value becomes the list's next item; a single value becomes the list's first item.
    """

    path: Path
    value: Value
    append: bool = False


class Unfit(ValueError):
    """A change that cannot be made, as a sentence that says why."""


def tree_of(node: yaml.Node | None) -> Value:
    """The nodes as texts, lists and dicts. Keys' blanks count once, as they do when they are read."""
    if isinstance(node, yaml.MappingNode):
        return {squeezed(str(key.value)): tree_of(value) for key, value in node.value}
    if isinstance(node, yaml.SequenceNode):
        return [tree_of(item) for item in node.value]
    return str(node.value) if node is not None else ""


def squeezed(key: str) -> str:
    """The key with single blanks."""
    return " ".join(key.split())


def changed(tree: Value, change: Change) -> Value:
    """The tree once the change is made; the one given stays as it is. Raises Unfit."""
    return _set(tree, change.path, change.value, change.append)


def _set(tree: Value, path: Path, value: Value, append: bool) -> Value:
    if not path:
        return _appended(tree, value) if append else _replaced(tree, value)
    key, rest = path[0], path[1:]
    if isinstance(key, int):
        items = [] if tree == "" else tree
        if isinstance(items, str) or not isinstance(items, Sequence):
            raise Unfit(f"There is no list here, so no item {key + 1} in it.")
        if not 0 <= key <= len(items):
            raise Unfit(f"The list has {len(items)} items, so its next is {len(items) + 1}, not {key + 1}.")
        below = items[key] if key < len(items) else ""
        return [*items[:key], _set(below, rest, value, append), *items[key + 1 :]]
    fields = {} if tree == "" else tree
    if not isinstance(fields, Mapping):
        what = "a single value" if isinstance(fields, str) else "a list"
        raise Unfit(f"Here stands {what}, so the field {key} cannot stand below it.")
    key = _named(key)
    return {**fields, key: _set(fields.get(key, ""), rest, value, append)}


def _named(key: str) -> str:
    if not squeezed(key):
        raise Unfit("A field needs a key.")
    return squeezed(key)


def _appended(tree: Value, item: Value) -> Value:
    if isinstance(tree, Mapping):
        raise Unfit("Here stand fields, not a list. Begin each with a dash to make it a list.")
    if isinstance(tree, str):
        return [tree, item] if tree else [item]
    return [*tree, item]


def _replaced(tree: Value, value: Value) -> Value:
    if isinstance(value, str):
        if not isinstance(tree, str):
            raise Unfit("Here stand several values; say which of them is to be set.")
        return value
    if isinstance(value, Mapping):
        if isinstance(tree, str):
            if tree:
                raise Unfit("Here stands a single value, so no fields can stand below it.")
            return {_named(key): _replaced("", below) for key, below in value.items()}
        if isinstance(tree, Mapping):
            below = {_named(key): item for key, item in value.items()}
            return {**tree, **{key: _replaced(tree.get(key, ""), item) for key, item in below.items()}}
        return [*tree, value]
    if isinstance(tree, Mapping):
        raise Unfit("Here stand fields, not a list.")
    if isinstance(tree, str):
        return list(value)
    if len(value) < len(tree):
        raise Unfit(f"The list has {len(tree)} items and would lose some.")
    return [
        *(_replaced(old, new) for old, new in zip(tree, value, strict=False)),
        *value[len(tree) :],
    ]
