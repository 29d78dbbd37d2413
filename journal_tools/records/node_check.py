"""What the parser reads without complaint, and reads otherwise than it was meant.

Each check looks at the nodes' places in the text, so a message names the line and, where it can be
known, the line to paste. Well-formed fields, one value a line, pass all of them.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field

import yaml

from journal_tools.problems import Problem, Severity
from journal_tools.records.characters import odd_blank
from journal_tools.records.doubled_key import doubled_fault
from journal_tools.records.fences import LINE
from journal_tools.records.field_line import FieldLine, take_apart
from journal_tools.records.flow_check import flow_fault
from journal_tools.records.kinds import keys_at
from journal_tools.records.layout_faults import missing_colon_fault, notes_fault
from journal_tools.records.node_tree import DEEPEST, NodeTree, Oddity
from journal_tools.records.quoting import quoted
from journal_tools.records.text_check import text_faults
from journal_tools.records.value_faults import LineFault, key_fault

Path = tuple[str, ...]

MOST = 200
"""How many problems of one file are told; nobody reads more."""

_GLUED_KEY = re.compile(r"[^\W\d]\w*:(?!//|\\)\S")


def check_tree(tree: NodeTree, header: str, file: str, first_line: int) -> list[Problem]:
    """Everything in the tree that was read otherwise than a weaver means it, in walking order."""
    check = _Check(header, file, first_line, [match.group() for match in LINE.finditer(header)])
    if isinstance(tree.root, yaml.MappingNode):
        check.mapping(tree.root, ())
    elif tree.root is not None:
        check.not_fields(tree.root)
    for oddity in tree.oddities[: max(MOST - len(check.problems), 0)]:
        check.oddity(oddity)
    return check.problems


@dataclass
class _Check:
    header: str
    file: str
    first_line: int
    lines: list[str]
    problems: list[Problem] = field(default_factory=list)
    paths: dict[int, Path] = field(default_factory=dict)

    def line(self, number: int) -> FieldLine:
        """The header's line, taken apart."""
        return take_apart(self.lines[number].rstrip("\r\n") if number < len(self.lines) else "")

    def tell(self, number: int, path: Path, fault: LineFault, slug: str, sure: bool = True) -> None:
        """Note a problem on the header's line `number`."""
        severity = Severity.FAULT if sure else Severity.QUESTION
        place = self.first_line + max(min(number, len(self.lines) - 1), 0)
        self.problems.append(
            Problem(self.file, place, ": ".join(path), fault.read, fault.right, severity, slug, fault.mended)
        )

    def mapping(self, node: yaml.MappingNode, path: Path) -> None:
        """Check a mapping's keys, then what stands under each."""
        seen: dict[str, tuple[int, yaml.Node]] = {}
        if node.flow_style:
            self.flow(node, path)
        for key, value in node.value:
            if len(self.problems) >= MOST:
                return
            number = key.start_mark.line
            if not isinstance(key, yaml.ScalarNode):
                right = "A key is words, not brackets. Put it in quotes."
                self.tell(number, path, LineFault(self._source(key), right, "", ""), "key")
                continue
            word = " ".join(str(key.value).split())
            below = (*path, word)
            self.paths[id(key)] = below
            self.key(key, value, word, below, seen)
            if key.style is None and odd_blank(key.value):
                fault = key_fault(self.line(number))
                if fault is not None:
                    self.tell(number, below, fault, "characters")
            if key.style is None and _GLUED_KEY.match(word) and not (node.flow_style and not value.value):
                right = "A blank must follow the colon that ends a key. Put a key that holds a colon in quotes."
                self.tell(number, below, LineFault(word, right, "", ""), "key")
            if not (isinstance(value, yaml.ScalarNode) and value.start_mark.line == number):
                self.text(key, None, below)
            self.value(value, key, below)

    def key(
        self, key: yaml.ScalarNode, value: yaml.Node, word: str, path: Path, seen: dict[str, tuple[int, yaml.Node]]
    ) -> None:
        """Check that a key is written once and is no merge."""
        number = key.start_mark.line
        if word in seen:
            before, first = seen[word]
            fault = doubled_fault(word, first, value, self.line(number), self.first_line + before)
            self.tell(number, path, fault, "doubled-key")
        seen.setdefault(word, (number, value))
        notes = notes_fault(self.lines, number) if len(path) == 1 and " " in word else None
        if notes is not None:
            self.tell(number, (), notes, "fence")
        if key.style is None and word == "<<":
            fault = LineFault(word, "Records have no merged fields. Write the fields out.", "", "")
            self.tell(number, path, fault, "anchor")

    def value(self, node: yaml.Node, key: yaml.Node | None, path: Path) -> None:
        """Check what stands under a key or in a list."""
        self.paths[id(node)] = path
        if isinstance(node, yaml.MappingNode):
            self.mapping(node, path)
        elif isinstance(node, yaml.SequenceNode):
            self.sequence(node, path)
        else:
            self.text(node, key, path)

    def sequence(self, node: yaml.SequenceNode, path: Path) -> None:
        """Check a list's items; they are named by their number from 1."""
        if node.flow_style:
            self.flow(node, path)
        fields_beside = any(isinstance(item, yaml.MappingNode) for item in node.value)
        for number, item in enumerate(node.value, start=1):
            if len(self.problems) >= MOST:
                return
            below = (*path, str(number))
            line = item.start_mark.line
            if isinstance(item, yaml.SequenceNode) and not item.flow_style and not node.flow_style:
                right = "An item begins with one dash and a blank. Take the other dash out."
                own = self.line(line)
                alone = own.value.strip("- ") and item.value[-1].end_mark.line == line
                mended = own.indent + own.dashes[:-2] + own.with_value(own.value).strip()[len(own.dashes) :]
                self.tell(line, below, LineFault(self._source(item), right, mended if alone else "", ""), "list")
            glued = key_fault(self.line(line)) if fields_beside and self._is_glued(item) else None
            if glued is not None:
                self.tell(line, below, glued, "key")
                continue
            self.value(item, None, below)

    def flow(self, node: yaml.CollectionNode, path: Path) -> None:
        """Check a mapping or list between brackets."""
        found = flow_fault(node, self.header, self.line(node.start_mark.line))
        if found is not None:
            self.tell(node.start_mark.line, path, found, "brackets")

    def text(self, node: yaml.Node, key: yaml.Node | None, path: Path) -> None:
        """Check one text and what the line holds after it."""
        known = keys_at(self.file, key.start_mark.column) if key is not None else {}
        for number, fault, slug, sure in text_faults(node, key, self.header, self.lines, known):
            self.tell(number, path, fault, slug, sure)

    def not_fields(self, root: yaml.Node) -> None:
        """Tell of a text that holds no field at all."""
        told = False
        for number in range(len(self.lines)):
            fault = self.bare_field(number) if isinstance(root, yaml.ScalarNode) else None
            if fault is not None:
                self.tell(number, (), fault, "not-a-field")
                told = True
        if not told:
            right = "Between the two `---` stand fields, each a line `key: value`."
            fault = LineFault(self._source(root), right, "", "")
            self.tell(root.start_mark.line, (), fault, "not-a-field")

    def bare_field(self, number: int) -> LineFault | None:
        """What is wrong with the key of a line where no field was read at all."""
        words = [line.rstrip("\r\n") for line in self.lines]
        return key_fault(self.line(number)) or missing_colon_fault(
            words, number, lambda column: keys_at(self.file, column)
        )

    def oddity(self, oddity: Oddity) -> None:
        """Tell of an anchor, alias or tag, or of fields nested too deep."""
        number = oddity.node.start_mark.line
        if any(p.slug == "anchor" and p.line == self.first_line + number for p in self.problems):
            return
        path = self.paths.get(id(oddity.node), ())
        if oddity.what == "depth":
            right = f"Fields stand inside one another more than {DEEPEST} deep; a record needs five or six."
            self.tell(number, path, LineFault(self._source(oddity.node), right, "", ""), "too-deep")
            return
        line = self.line(number)
        mark = self.header[oddity.node.start_mark.index]
        right = f"A value that begins with {mark} is not read as text. Put it in quotes."
        whole = line.value.startswith(mark)
        mended = line.with_value(quoted(line.value)) if whole else ""
        if whole and isinstance(oddity.node, yaml.CollectionNode):
            right = f"Records have no names or kinds marked with {mark}. Take {line.value} out."
            mended = line.with_value("") if line.value.split() == [line.value] else ""
        self.tell(number, path, LineFault(line.value, right, mended, ""), "anchor")

    def _source(self, node: yaml.Node) -> str:
        start = node.start_mark.index
        return self.header[start : min(node.end_mark.index, start + 200)].strip()

    def _is_glued(self, node: yaml.Node) -> bool:
        plain = isinstance(node, yaml.ScalarNode) and node.style is None
        return plain and bool(_GLUED_KEY.match(node.value))
