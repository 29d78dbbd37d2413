"""Values written one a line, set in as the rest of the record is."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

import yaml

from journal_tools.editing.change import Value, squeezed
from journal_tools.records.quoting import as_key, as_value


@dataclass(frozen=True)
class Habit:
    """How far a record sets in what stands below a key: fields, and the dashes of lists."""

    fields: int = 2
    dashes: int = 2


def habit_of(root: yaml.Node | None) -> Habit:
    """What the record does most often; two blanks where it does not say."""
    fields: Counter[int] = Counter()
    dashes: Counter[int] = Counter()
    for key, value in _fields(root):
        if isinstance(value, yaml.CollectionNode) and not value.flow_style:
            found = fields if isinstance(value, yaml.MappingNode) else dashes
            found[value.start_mark.column - key.start_mark.column] += 1
    step = _most(fields, 2)
    return Habit(fields=step, dashes=_most(dashes, step))


def field_lines(key: str, value: Value, column: int, habit: Habit) -> list[str]:
    """The lines of one field; its key begins in `column`."""
    start = " " * column + as_key(squeezed(key)) + ":"
    if isinstance(value, str):
        return [f"{start} {as_value(value)}" if value else start]
    if not value:
        return [f"{start} {'{}' if isinstance(value, Mapping) else '[]'}"]
    return [start, *lines_below(value, column, habit)]


def lines_below(value: Value, column: int, habit: Habit) -> list[str]:
    """The lines of a list or of fields below a key that begins in `column`."""
    if isinstance(value, Mapping):
        deeper = column + habit.fields
        return [line for key, below in value.items() for line in field_lines(key, below, deeper, habit)]
    return [line for item in value for line in item_lines(item, column + habit.dashes, habit)]


def item_lines(item: Value, column: int, habit: Habit) -> list[str]:
    """The lines of one item of a list; its dash stands in `column`."""
    dash = " " * column + "- "
    if isinstance(item, str):
        return [dash + as_value(item)]
    if not item:
        return [dash + ("{}" if isinstance(item, Mapping) else "[]")]
    if isinstance(item, Mapping):
        lines = [line for key, below in item.items() for line in field_lines(key, below, column + 2, habit)]
    else:
        lines = [line for below in item for line in item_lines(below, column + 2, habit)]
    return [dash + lines[0][column + 2 :], *lines[1:]]


def _fields(node: yaml.Node | None) -> Iterator[tuple[yaml.Node, yaml.Node]]:
    """Every key with its value, at any depth."""
    if isinstance(node, yaml.MappingNode):
        for key, value in node.value:
            yield key, value
            yield from _fields(value)
    elif isinstance(node, yaml.SequenceNode):
        for item in node.value:
            yield from _fields(item)


def _most(counts: Counter[int], usual: int) -> int:
    return counts.most_common(1)[0][0] if counts else usual
