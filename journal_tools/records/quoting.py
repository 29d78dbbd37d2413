"""Text written so that it reads back as the same text, with quotes only where they are needed."""

from __future__ import annotations

import re

import yaml

from journal_tools.records.characters import ODD_BLANKS, odd_blank
from journal_tools.records.node_tree import compose

_UNWRITABLE = re.compile("[\x00-\x1f\x7f-\x9f\u2028\u2029\ufeff\ufffe\uffff\ud800-\udfff]")
_LOOKS_LIKE_A_FIELD = re.compile(rf"[^\W\d]\w*:(?!//)\S|(?:-|\w+:)[{ODD_BLANKS}]")


def as_value(text: str) -> str:
    """The text as a field's value or a list's item on one line.

    Quoted where it would not read back as typed, or where a reader could take it for a field.
    """
    if text and not _LOOKS_LIKE_A_FIELD.match(text) and _reads_back(text):
        return text
    return quoted(text)


def as_key(text: str) -> str:
    """The text as a field's key; quoted where it would not read back as typed."""
    if text and text != "<<" and ":" not in text and not odd_blank(text) and _pairs(f"{text}: v\n") == [(text, "v")]:
        return text
    return quoted(text)


def quoted(text: str) -> str:
    """The text in quotes: double ones, or single ones where they spare a backslash."""
    if _UNWRITABLE.search(text):
        escaped = text.replace("\\", "\\\\").replace('"', '\\"').replace("\n", "\\n")
        return '"' + _UNWRITABLE.sub(lambda m: f"\\u{ord(m.group()):04x}", escaped) + '"'
    if '"' in text or "\\" in text:
        return "'" + text.replace("'", "''") + "'"
    return f'"{text}"'


def _reads_back(text: str) -> bool:
    return _pairs(f"k: {text}\n") == [("k", text)] and _pairs(f"k:\n  - {text}\n") == [("k", [text])]


def _pairs(line: str) -> list[tuple[object, object]]:
    """What the text reads as, when it is a mapping of plain scalars and lists of them."""
    try:
        tree = compose(line)
    except (yaml.YAMLError, UnicodeEncodeError):
        return []
    if tree.oddities or not isinstance(tree.root, yaml.MappingNode):
        return []
    return [(_plain_text(key), _plain_text(value)) for key, value in tree.root.value]


def _plain_text(node: yaml.Node) -> object:
    if isinstance(node, yaml.SequenceNode):
        return [_plain_text(item) for item in node.value]
    return node.value if isinstance(node, yaml.ScalarNode) and node.style is None else None
