"""Reading goes on past a line that the parser cannot read, so that all bad lines are told at once."""

from __future__ import annotations

from dataclasses import dataclass

import yaml

from journal_tools.problems import Problem
from journal_tools.records.node_tree import NodeTree, compose


@dataclass(frozen=True)
class MendedReading:
    """tree: None where the text could not be read to its end. header: the text that was read."""

    tree: NodeTree | None
    header: str
    problems: tuple[Problem, ...]


def read_with_mending(header: str, file: str, first_line: int) -> MendedReading:
    """Read the header; each line that stops the parser becomes a problem, and reading goes on."""
    try:
        return MendedReading(compose(header), header, ())
    except yaml.YAMLError as error:
        mark = getattr(error, "problem_mark", None)
        line = first_line + (mark.line if mark else 0)
        right = "This line cannot be read. A field is `key: value`, with a blank after the colon."
        return MendedReading(None, header, (Problem(file, line, "", "", right, slug="unreadable"),))
