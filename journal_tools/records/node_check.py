"""What the parser reads without complaint, and reads otherwise than it was meant."""

from __future__ import annotations

import yaml

from journal_tools.problems import Problem
from journal_tools.records.node_tree import NodeTree


def check_tree(tree: NodeTree, header: str, file: str, first_line: int) -> list[Problem]:
    """Everything in the tree that was read otherwise than a weaver means it."""
    if tree.root is not None and not isinstance(tree.root, yaml.MappingNode):
        right = "The front matter must be fields, each a line `key: value`."
        return [Problem(file, first_line + tree.root.start_mark.line, "", "", right, slug="not-fields")]
    return []
