"""The front matter's text as a tree of nodes, each with the place where it stands.

Built from the C parser's events without recursion, so that depth is bounded and anchors, aliases
and tags are seen (a composed tree has already followed them). Every scalar stays the text that was
typed: `yes`, `010`, `2:1` and dates are text.

A standing `?` is taken as text: `washed: ? x 30 1/8` says that the width was not measured, and the
parser would take it for the mark of a complex key. It is hidden behind a stand-in character of the
same length while the parser reads, and put back in every value.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import Any

import yaml

DEEPEST = 20
"""How many mappings and lists may stand inside one another."""

STANDING_QUESTION_MARK = re.compile(r"(?<![^\s\[{,])\?(?=[\s,\]}]|\Z)")


@dataclass(frozen=True)
class Oddity:
    """Something that YAML reads its own way and a record never needs.

    what: "anchor", "alias", "tag" or "depth". node: where it stands.
    """

    what: str
    node: yaml.Node


@dataclass
class NodeTree:
    """root: the top node, None for a text without any. oddities: in the order of the text."""

    root: yaml.Node | None = None
    oddities: list[Oddity] = field(default_factory=list)


def compose(header: str) -> NodeTree:
    """Read `header` into a tree. Raises yaml.YAMLError where the parser stops.

    Node marks count characters and lines of `header` from 0. Plain scalars have style None.
    """
    stand_in = _stand_in(header)
    hidden = header if stand_in == "?" else STANDING_QUESTION_MARK.sub(stand_in, header)
    tree = NodeTree()
    open_nodes: list[yaml.CollectionNode] = []
    waiting_keys: list[yaml.Node | None] = []
    for event in yaml.parse(hidden, yaml.CBaseLoader):
        if not isinstance(event, yaml.NodeEvent):
            if isinstance(event, yaml.CollectionEndEvent):
                end: Any = event.end_mark
                open_nodes.pop().end_mark = end
                waiting_keys.pop()
            elif isinstance(event, yaml.DocumentStartEvent) and tree.root is not None:
                mark: Any = event.start_mark
                raise yaml.MarkedYAMLError(problem="a second document begins", problem_mark=mark)
            continue
        node = _node(event, stand_in)
        if event.anchor or getattr(event, "tag", None):
            tree.oddities.append(Oddity(_what(event), node))
        if not open_nodes:
            tree.root = node
        elif isinstance(open_nodes[-1], yaml.SequenceNode):
            open_nodes[-1].value.append(node)
        elif waiting_keys[-1] is None:
            waiting_keys[-1] = node
        else:
            open_nodes[-1].value.append((waiting_keys[-1], node))
            waiting_keys[-1] = None
        if isinstance(node, yaml.CollectionNode):
            open_nodes.append(node)
            waiting_keys.append(None)
            if len(open_nodes) > DEEPEST:
                tree.oddities.append(Oddity("depth", node))
                return tree
    return tree


def _stand_in(header: str) -> str:
    """A private-use character that the text does not hold; the `?` itself where there is none to hide."""
    if "?" not in header:
        return "?"
    return next((c for c in map(chr, range(0xE000, 0xF8FF)) if c not in header), "?")


def _node(event: yaml.NodeEvent, stand_in: str) -> yaml.Node:
    start: Any = event.start_mark
    end: Any = event.end_mark
    if isinstance(event, yaml.ScalarEvent):
        value = event.value.replace(stand_in, "?")
        return yaml.ScalarNode("", value, start, end, style=event.style or None)
    if isinstance(event, yaml.SequenceStartEvent):
        return yaml.SequenceNode("", [], start, end, flow_style=event.flow_style)
    if isinstance(event, yaml.MappingStartEvent):
        return yaml.MappingNode("", [], start, end, flow_style=event.flow_style)
    return yaml.ScalarNode("", f"*{event.anchor}", start, end)


def _what(event: yaml.NodeEvent) -> str:
    if isinstance(event, yaml.AliasEvent):
        return "alias"
    return "anchor" if event.anchor else "tag"
