"""One change made in the text of a header, at the places of its nodes."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass

import yaml

from journal_tools.editing.block_form import Habit, field_lines, habit_of, item_lines, lines_below
from journal_tools.editing.change import Change, Path, Unfit, Value, squeezed, tree_of
from journal_tools.records.quoting import as_value, quoted

_FLOW_SAFE = re.compile(r"[^\W_][^,\[\]{}:#\"'\n\r]*(?<!\s)")


@dataclass(frozen=True)
class Place:
    """A node with the one it stands in and, in a mapping, the node of its key."""

    node: yaml.Node
    key: yaml.Node | None = None
    inside: yaml.CollectionNode | None = None

    @property
    def is_empty(self) -> bool:
        """Whether nothing is written here."""
        node = self.node
        return isinstance(node, yaml.ScalarNode) and not node.value and node.style is None

    @property
    def in_brackets(self) -> bool:
        """Whether it stands inside `{…}` or `[…]`."""
        return self.inside is not None and bool(self.inside.flow_style)


def smaller(root: yaml.MappingNode, change: Change) -> list[Change] | None:
    """The change as several that each touch one value, or None when it is one already."""
    place, rest = find(root, change.path)
    node, value = place.node, change.value
    if rest or isinstance(value, str) or change.append:
        return None
    if isinstance(value, Mapping):
        if isinstance(node, yaml.SequenceNode):
            return [Change(change.path, value, append=True)]
        if isinstance(node, yaml.MappingNode):
            return [Change((*change.path, key), below) for key, below in value.items()]
    elif isinstance(node, yaml.SequenceNode):
        return [Change((*change.path, number), item) for number, item in enumerate(value)]
    return None


def edited(header: str, root: yaml.MappingNode, change: Change, line_end: str) -> str:
    """The header with the change made. Raises Unfit where it cannot be made safely."""
    habit = habit_of(root)
    place, rest = find(root, change.path)
    value = change.value
    append = change.append
    if append and not rest and not isinstance(place.node, yaml.SequenceNode):
        value = [value] if place.is_empty else [tree_of(place.node), value]
        append = False
    elif append and rest:
        value = [value]
        append = False
    if append and isinstance(place.node, yaml.SequenceNode):
        return _with_item(header, place.node, value, habit, line_end)
    if not rest:
        return _with_value(header, place, value, habit, line_end)
    wrapped = _wrapped(rest[1:], value)
    if isinstance(place.node, yaml.MappingNode) and isinstance(rest[0], str):
        return _with_field(header, place, rest[0], wrapped, habit, line_end)
    if isinstance(place.node, yaml.SequenceNode) and rest[0] == len(place.node.value):
        return _with_item(header, place.node, wrapped, habit, line_end)
    return _with_value(header, place, _wrapped(rest, value), habit, line_end)


def find(root: yaml.Node, path: Path) -> tuple[Place, Path]:
    """The deepest place on the path that is there, and what is left of the path."""
    place = Place(root)
    for depth, key in enumerate(path):
        node = place.node
        below = None
        if isinstance(node, yaml.MappingNode) and isinstance(key, str):
            fields = (Place(v, k, node) for k, v in node.value if squeezed(k.value) == squeezed(key))
            below = next(fields, None)
        elif isinstance(node, yaml.SequenceNode) and isinstance(key, int) and 0 <= key < len(node.value):
            below = Place(node.value[key], None, node)
        if below is None:
            return place, path[depth:]
        place = below
    return place, ()


def _wrapped(path: Path, value: Value) -> Value:
    """The value with the keys and lists that are missing above it."""
    for key in reversed(path):
        value = [value] if isinstance(key, int) else {key: value}
    return value


def _with_value(header: str, place: Place, value: Value, habit: Habit, line_end: str) -> str:
    """Another value in the place of a single one."""
    node = place.node
    if not isinstance(node, yaml.ScalarNode):
        raise Unfit("Here stand several values; say which of them is to be set.")
    start, end = node.start_mark.index, node.end_mark.index
    if isinstance(value, str):
        if value == node.value:
            return header
        text = _in_brackets(value) if place.in_brackets else as_value(value)
        blank = " " if place.is_empty and header[start - 1 : start] in (":", "-") else ""
        tail = _tail_of_block_text(header[start:end]) if node.style in ("|", ">") else ""
        return header[:start] + blank + text + tail + header[end:]
    if place.in_brackets:
        raise Unfit("Values between brackets cannot be added to safely. Write them one a line.")
    if place.key is None:
        raise Unfit("An item of a list is to become several values. Write it by hand.")
    if node.style in ("|", ">") or node.start_mark.line != node.end_mark.line:
        raise Unfit("A text of several lines stands here. Write it by hand.")
    if not value:
        return header[:start] + (" {}" if isinstance(value, Mapping) else " []") + header[end:]
    cut = len(header[:start].rstrip(" \t")) if not place.is_empty else start
    below = _end_of_line(header, end)
    lines = lines_below(value, place.key.start_mark.column, habit)
    if not place.is_empty and not isinstance(value, Mapping) and value[0] == node.value:
        dash = lines[0].index("- ") + 2
        lines[0] = lines[0][:dash] + header[start:end]
    return header[:cut] + header[end:below] + _joined(lines, line_end) + header[below:]


def _with_field(header: str, place: Place, key: str, value: Value, habit: Habit, line_end: str) -> str:
    """A new field at the end of a mapping; at the end of the header for the top one."""
    node = place.node
    assert isinstance(node, yaml.MappingNode)
    if node.flow_style:
        return _into_brackets(header, node, f"{_key_in_brackets(key)}: ", value)
    column = node.start_mark.column
    at = len(header) if place.inside is None else _end_of_line(header, _end_of(node))
    return _inserted(header, at, field_lines(key, value, column, habit), line_end)


def _with_item(header: str, node: yaml.SequenceNode, item: Value, habit: Habit, line_end: str) -> str:
    """A new item at the end of a list."""
    if node.flow_style:
        return _into_brackets(header, node, "", item)
    at = _end_of_line(header, _end_of(node))
    return _inserted(header, at, item_lines(item, node.start_mark.column, habit), line_end)


def _into_brackets(header: str, node: yaml.CollectionNode, start: str, value: Value) -> str:
    if not isinstance(value, str) or node.start_mark.line != node.end_mark.line:
        raise Unfit("Values between brackets cannot be added to safely. Write them one a line.")
    end = node.end_mark.index - 1
    inner = header[node.start_mark.index + 1 : end]
    cut = node.start_mark.index + 1 + len(inner.rstrip())
    comma = ", " if inner.strip() else ""
    return header[:cut] + comma + start + _in_brackets(value) + header[cut:]


def _in_brackets(text: str) -> str:
    return text if _FLOW_SAFE.fullmatch(text) else quoted(text)


def _key_in_brackets(key: str) -> str:
    return _in_brackets(squeezed(key))


def _end_of(node: yaml.Node) -> int:
    """Where the last thing written in the node ends; a block's own end lies beyond its comments."""
    while isinstance(node, yaml.CollectionNode) and not node.flow_style and node.value:
        last = node.value[-1]
        node = last[1] if isinstance(last, tuple) else last
    return int(node.end_mark.index)


def _end_of_line(header: str, at: int) -> int:
    """The place after the line's end; `at` itself at the start of a line, where a text block ends."""
    if at and header[at - 1] in "\r\n":
        return at
    found = re.compile(r"\r\n|\r|\n").search(header, at)
    return found.end() if found else len(header)


def _inserted(header: str, at: int, lines: list[str], line_end: str) -> str:
    return header[:at] + _joined(lines, line_end) + header[at:]


def _joined(lines: list[str], line_end: str) -> str:
    return "".join(line + line_end for line in lines)


def _tail_of_block_text(source: str) -> str:
    """What of a text block stays when its text is replaced: its heading's comment, its last line end."""
    heading = re.match(r"[^\r\n]*?([ \t]+#[^\r\n]*)?(?=[\r\n]|\Z)", source)
    comment = heading.group(1) or "" if heading else ""
    return comment + source[len(source.rstrip()) :]
