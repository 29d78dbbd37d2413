"""Front matter in block style, one value a line, as the project's own tools write it."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import TypeAlias

Value: TypeAlias = "str | list[Value] | dict[str, Value]"

NEVER_FIRST = "\"'*@%`[]{}>|&!#,?:-"
"""Characters that a plain value may not begin with."""


def block(fields: Mapping[str, Value]) -> str:
    """The lines of a mapping, each with its line end."""
    return "".join(f"{line}\n" for key, value in fields.items() for line in _entry(key, value))


def _entry(key: str, value: Value) -> list[str]:
    if isinstance(value, str):
        if "\n" in value:
            return [f"{key}: |", *(f"  {line}".rstrip() for line in value.split("\n"))]
        return [f"{key}: {_plain(value)}"]
    return [f"{key}:", *_deeper(value)]


def _deeper(value: Value) -> list[str]:
    if isinstance(value, dict):
        return [f"  {line}" for key, inner in value.items() for line in _entry(key, inner)]
    lines: list[str] = []
    for item in value:
        inner = [_plain(item)] if isinstance(item, str) else [line[2:] for line in _deeper(item)]
        lines += [f"  - {inner[0]}", *(f"    {line}" for line in inner[1:])]
    return lines


def _plain(value: str) -> str:
    """The value, or a complaint when it could not stand on a line without quotes."""
    if not value or value[0] in NEVER_FIRST or re.search(r": |:$| #|^\s|\s$", value):
        raise ValueError(f"this value wants other words: {value!r}")
    return value
