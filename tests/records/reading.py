"""Front matter read, shown and mended, for the tests of what is read."""

from __future__ import annotations

import yaml

from journal_tools.problems import Problem
from journal_tools.records.front_matter import FrontMatter, read_front_matter

Shown = str | list["Shown"] | dict[str, "Shown"]


def record(fields: str) -> str:
    """A record's text with these fields."""
    return f"---\n{fields}\n---\nNotes.\n"


def read(fields: str) -> FrontMatter:
    """A record with these fields, read."""
    return read_front_matter(record(fields), "warps/a.md")


def shown(node: yaml.Node | None) -> Shown:
    """The nodes as texts, lists and dicts."""
    if isinstance(node, yaml.MappingNode):
        return {str(key.value): shown(value) for key, value in node.value}
    if isinstance(node, yaml.SequenceNode):
        return [shown(item) for item in node.value]
    assert isinstance(node, yaml.ScalarNode)
    return str(node.value)


def pasted(fields: str, problems: tuple[Problem, ...]) -> str:
    """The fields once each problem's mended line is pasted over the line that it names."""
    lines = fields.split("\n")
    for problem in problems:
        lines[problem.line - 2] = problem.mended
    return "\n".join(lines)
