"""Fields and lists on one line, `{a: 1, b: 2}` and `[1, 2]`, taken as a weaver means them.

In this form a comma parts and a `#` after a blank ends the line, so `{reed: 46,5 cm}` is read as
two fields. Here it is one, and can be written one value a line, where nothing is misread.
"""

from __future__ import annotations

import re

from journal_tools.records.field_line import FieldLine
from journal_tools.records.quoting import as_key, as_value, quoted

LONGEST = 2000
"""Characters of a line that are taken apart."""

Parts = list[tuple[str | None, str]]
"""Keys (None in a list) and their values, as text without quotes."""

_TIGHT_COLON = re.compile(r"([^\W\d]\w*):(?!//)(\S.*)\Z", re.DOTALL)
_FIELD = re.compile(r"([^:]+?)\s*:(?:\s+(.*))?\Z", re.DOTALL)
_HEX = re.compile(r"#([0-9A-Fa-f]{3}(?:[0-9A-Fa-f]{3})?)\Z")


def meant_by(text: str) -> Parts | None:
    """What `{…}` or `[…]` was meant to say; None where that is not sure.

    A comma between two digits, without a blank, is taken as part of the number, as in `46,5 cm`.
    """
    words = _words(text) if len(text) <= LONGEST else None
    if words is None:
        return None
    parts: Parts = []
    for word in words:
        field = None
        if text.startswith("{"):
            field = _TIGHT_COLON.match(word) or _FIELD.match(word)
            if field is None:
                return None
        key = _bare(field.group(1)) if field else None
        value = _bare((field.group(2) or "") if field else word)
        if value is None or (field is not None and key is None):
            return None
        parts.append((key, value))
    return parts


def line_and_below(line: FieldLine, parts: Parts) -> str:
    """The line with its parts below its key or after its dash, one value a line."""
    column = " " * (line.column + (2 if line.key else 0))
    lines = [line.with_value("")] if line.key else []
    for key, value in parts:
        start = "- " if key is None else f"{as_key(key)}: "
        lines.append(column + f"{start}{as_value(value) if value else ''}".rstrip())
    if not line.key:
        lines[0] = line.indent + line.dashes + lines[0].lstrip() + line.comment
    return "\n".join(lines)


def one_line(parts: Parts) -> str:
    """The parts between brackets again, so quoted that they read as meant."""
    if parts and parts[0][0] is None:
        return "[" + ", ".join(quoted(value) for _, value in parts) + "]"
    return "{" + ", ".join(f"{quoted(key or '')}: {quoted(value)}" for key, value in parts) + "}"


def _words(text: str) -> list[str] | None:
    """The text between the brackets, cut at the commas that part; None where brackets stand in it."""
    closing = {"{": "}", "[": "]"}.get(text[:1])
    if closing is None or not text.endswith(closing) or len(text) < 2:
        return None
    inner = text[1:-1]
    if re.search(r"[\[\]{}\n\r]", inner):
        return None
    words: list[str] = []
    start, quote = 0, ""
    for place, character in enumerate(inner):
        if quote:
            quote = "" if character == quote else quote
        elif character in "\"'":
            before = inner[start:place].rstrip()
            quote = character if not before or before.endswith(":") else ""
        elif character == "," and not re.match(r"\d,\d", inner[max(place - 1, 0) : place + 2]):
            words.append(inner[start:place].strip())
            start = place + 1
    words.append(inner[start:].strip())
    if words[-1] == "":
        words.pop()
    return words if all(words) and not quote else None


def _bare(text: str) -> str | None:
    """The text of a part without its quotes, a colour without its `#`; None where not sure."""
    if text[:1] in ("'", '"'):
        inner = text[1:-1]
        whole = len(text) > 1 and text[-1] == text[0]
        return inner if whole and not set(inner) & {"\\", text[0]} else None
    colour = _HEX.match(text)
    if colour:
        return colour.group(1)
    return None if text.startswith(("#", "&", "*", "!")) or " #" in text else text
