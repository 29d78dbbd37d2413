"""A key that is written twice in one group, and the list that was meant where the key takes one."""

from __future__ import annotations

import yaml

from journal_tools.records.field_line import FieldLine
from journal_tools.records.quoting import as_value
from journal_tools.records.value_faults import LineFault

LISTS = {
    "washed": "For a second wash write a list",
    **dict.fromkeys(
        ("weft", "finish", "learn", "accepted", "tags", "was", "reeds", "marked", "photos_for_everyone"),
        "For several write a list",
    ),
}
"""Keys with single values that a list may hold, and what to say of a second one."""

GROUPS = ("pieces", "stretches", "plan", "warp")
"""Keys with lists of groups, one dash each."""


def doubled_fault(key: str, first: yaml.Node, second: yaml.Node, line: FieldLine, first_line: int) -> LineFault:
    """What to say of a key that stands here again.

    first, second: its two values. line: the one it stands on again. first_line: the file's line of the first.
    """
    stands = f"`{key}` stands on line {first_line} and again here."
    items = [*_single(first), *_single(second)]
    if key in LISTS and len(items) > 1 and all(items):
        below = " " * (line.column + 2)
        listed = "\n".join(f"{below}- {as_value(item)}" for item in items)
        right = f"{stands} {LISTS[key]}: put this one here, and take line {first_line} out."
        return LineFault(line.value, right, f"{line.with_value('')}\n{listed}", "")
    if key in GROUPS:
        right = f"{stands} It is one list: each of these stands below those of line {first_line}, behind a dash."
        return LineFault(line.value, right, "", "")
    return LineFault(line.value, f"{stands} Keep one.", "", "")


def _single(node: yaml.Node) -> list[str]:
    """The value, or the values of a list, as texts; "" for what is more than a text."""
    nodes = node.value if isinstance(node, yaml.SequenceNode) else [node]
    return [str(each.value) if isinstance(each, yaml.ScalarNode) else "" for each in nodes]
