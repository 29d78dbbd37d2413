"""A place in a record: one node, with the words that lead to it and where problems go."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field, replace
from typing import TypeVar

import yaml

from journal_tools.problems import Problem, Severity
from journal_tools.quantities import Units, Unreadable
from journal_tools.records.field_line import take_apart
from journal_tools.records.quoting import as_value

T = TypeVar("T")


class Elsewhere(Unreadable):
    """A value that stands under the wrong key. key: the one that it belongs under."""

    def __init__(self, read: str, right: str, *, key: str, mended: str) -> None:
        super().__init__(read, right, mended=mended)
        self.key = key


class Shortened(Unreadable):
    """A value too long to be shown whole. read: the part at fault. mended: the whole value."""


@dataclass
class Reading:
    """One record while it is read: its file, its units, and the problems found so far.

    first_line: the file's line that the header's first line stands on. lines: the header's, as typed,
    without their ends.
    """

    file: str
    first_line: int
    units: Units
    lines: tuple[str, ...] = ()
    problems: list[Problem] = field(default_factory=list)


@dataclass(frozen=True)
class Spot:
    """One value in a record. Every scalar is the text that was typed."""

    node: yaml.Node
    reading: Reading
    path: tuple[str, ...] = ()

    @property
    def line(self) -> int:
        """The file's line, 1-based."""
        return int(self.node.start_mark.line) + self.reading.first_line

    @property
    def units(self) -> Units:
        """What a bare number means here."""
        return self.reading.units

    @property
    def is_text(self) -> bool:
        """Whether this is a single value."""
        return isinstance(self.node, yaml.ScalarNode)

    @property
    def is_list(self) -> bool:
        """Whether this is a list."""
        return isinstance(self.node, yaml.SequenceNode)

    @property
    def is_mapping(self) -> bool:
        """Whether this holds keys and values."""
        return isinstance(self.node, yaml.MappingNode)

    @property
    def is_empty(self) -> bool:
        """Whether nothing was written here."""
        node = self.node
        return isinstance(node, yaml.ScalarNode) and not str(node.value).strip() and node.style is None

    def text(self) -> str:
        """The text as typed. Raises Unreadable for a list or a mapping."""
        if not self.is_text:
            raise Unreadable(read=self.shown(), right="one value is wanted here, on the same line as its key.")
        return str(self.node.value).strip()

    def shown(self) -> str:
        """What stands here, for a message."""
        if self.is_text:
            return str(self.node.value)
        if self.is_list:
            return f"a list of {len(self.node.value)}"
        return "several keys: " + ", ".join(key for key, _, _ in self.entries())

    def items(self) -> list[Spot]:
        """The items of a list; a single value is a list of one."""
        if not self.is_list:
            return [self]
        return [
            Spot(node, self.reading, (*self.path, str(number))) for number, node in enumerate(self.node.value, start=1)
        ]

    def entries(self) -> Iterator[tuple[str, Spot, Spot]]:
        """Key, the key's own spot, and the value's spot, of each entry in a mapping.

        Raises Unreadable when this is no mapping.
        """
        if not self.is_mapping:
            raise Unreadable(read=self.shown(), right="keys with values are wanted here, one on each line.")
        for key_node, value_node in self.node.value:
            key = " ".join(str(key_node.value).split()) if isinstance(key_node, yaml.ScalarNode) else "?"
            path = (*self.path, key)
            yield key, Spot(key_node, self.reading, path), Spot(value_node, self.reading, path)

    def named(self, word: str) -> Spot:
        """The same place under a better word than its number, for messages."""
        return Spot(self.node, self.reading, (*self.path[:-1], word))

    def complain(self, read: str, right: str, *, slug: str = "unreadable", mended: str = "") -> None:
        """Note a fault at this place."""
        self.reading.problems.append(
            Problem(self.reading.file, self.line, ": ".join(self.path), read, right, Severity.FAULT, slug, mended)
        )

    def line_with(self, *, key: str = "", value: str = "") -> str:
        """The whole line that this stands on, with another key or value, to paste.

        "" where the line holds more than this key and a value of one line.
        """
        number = self.node.start_mark.line
        typed = self.reading.lines[number] if number < len(self.reading.lines) else ""
        line = take_apart(typed)
        if key:
            if " ".join(line.key.split()) != self.path[-1]:
                return ""
            line = replace(line, key=key)
        if value:
            if not self.is_text or line.value not in _ways_to_type(self.node):
                return ""
            line = replace(line, value=as_value(value))
        return line.with_value(line.value) if typed else ""

    def read(self, reader: Callable[[Spot], T], explain: Callable[[Unreadable], Unreadable] | None = None) -> T | None:
        """What the reader makes of this place; None, with a problem noted, when it cannot read it.

        explain: what to say instead, where more is known than the reader knows.
        """
        if self.is_empty:
            return None
        try:
            return reader(self)
        except Unreadable as unreadable:
            told = explain(unreadable) if explain else unreadable
            self.complain(told.read, told.right, mended=self._mended(told, reader))
            return None

    def _mended(self, told: Unreadable, reader: Callable[[Spot], object], key: str = "") -> str:
        """The line to paste for a value that could not be read; "" where it could not be read either."""
        if not told.mended or not self.is_text:
            return ""
        whole, read = self.text(), told.read.strip()
        if isinstance(told, Elsewhere):
            return self.line_with(key=told.key, value=told.mended)
        if read == whole or isinstance(told, Shortened):
            value = told.mended
        else:
            value = whole.replace(read, told.mended) if whole.count(read) == 1 else ""
        return self.line_with(key=key, value=value) if value and self._reads(value, reader) else ""

    def line_under(self, key: str, reader: Callable[[Spot], object]) -> str:
        """The line with another key, to paste, its value mended where that cannot be read; "" where it cannot be."""
        if not self.is_text or self.is_empty or self._reads(self.text(), reader):
            return self.line_with(key=key)
        try:
            reader(self._aside(self.text()))
        except Unreadable as told:
            return "" if isinstance(told, Elsewhere) else self._mended(told, reader, key)
        return ""

    def _reads(self, value: str, reader: Callable[[Spot], object]) -> bool:
        """Whether a reader takes this value here without a word."""
        aside = self._aside(value)
        try:
            reader(aside)
        except Unreadable:
            return False
        return not aside.reading.problems

    def _aside(self, value: str) -> Spot:
        """Another value in this place, whose problems go nowhere."""
        node = yaml.ScalarNode("", value, self.node.start_mark, self.node.end_mark)
        return Spot(node, Reading(self.reading.file, self.reading.first_line, self.reading.units), self.path)


def _ways_to_type(node: yaml.Node) -> tuple[str, ...]:
    """A text as it can stand on its line: plain, or in quotes that hold nothing unusual."""
    text = str(node.value)
    return (text,) if getattr(node, "style", None) is None else (f'"{text}"', f"'{text}'")
