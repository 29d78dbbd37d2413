"""What a comma or a colon between brackets did that was not meant."""

from __future__ import annotations

import re
from collections.abc import Iterator

import yaml

from journal_tools.records.field_line import FieldLine
from journal_tools.records.flow_form import line_and_below, meant_by
from journal_tools.records.value_faults import LineFault


def flow_fault(node: yaml.CollectionNode, header: str, line: FieldLine) -> LineFault | None:
    """The first misreading in `{…}` or `[…]`, or None. line: the one on which it begins."""
    right = next(_misreadings(node, header), None)
    if right is None:
        return None
    source = header[node.start_mark.index : node.end_mark.index]
    parts = meant_by(source) if line.value == source else None
    known = parts and (line.key or parts[0][0] is not None)
    mended = line_and_below(line, parts) if parts and known else ""
    return LineFault(source, f"{right} Write one value a line, without brackets.", mended, "")


def _misreadings(node: yaml.CollectionNode, header: str) -> Iterator[str]:
    before: yaml.ScalarNode | None = None
    for child in _leaves(node):
        if before is not None and _parts_a_number(before, child, header):
            number = f"{_last_word(before.value)},{child.value.split()[0]}"
            yield f"Between brackets a comma parts values, so {number} was read as two."
        before = child if child.value else before
    if not isinstance(node, yaml.MappingNode):
        return
    for key, value in node.value:
        empty = isinstance(value, yaml.ScalarNode) and not value.value and value.style is None
        if not isinstance(key, yaml.ScalarNode) or not empty:
            continue
        if not header[key.end_mark.index :].lstrip().startswith(":"):
            glued = re.match(r"([^\W\d]\w*):\S", str(key.value)) if key.style is None else None
            yield (
                f"Between brackets a blank must follow the colon in {key.value}."
                if glued
                else f"Between brackets {key.value} was read as a key without a value."
            )


def _leaves(node: yaml.CollectionNode) -> Iterator[yaml.ScalarNode]:
    """The plain texts directly inside, keys and values, in the order of the text."""
    for child in node.value:
        for leaf in child if isinstance(child, tuple) else (child,):
            if isinstance(leaf, yaml.ScalarNode) and leaf.style is None:
                yield leaf


def _parts_a_number(left: yaml.ScalarNode, right: yaml.ScalarNode, header: str) -> bool:
    end, start = left.end_mark.index, right.start_mark.index
    between = header[end:start]
    return between == "," and header[end - 1].isdigit() and header[start : start + 1].isdigit()


def _last_word(text: str) -> str:
    return text.split()[-1]
