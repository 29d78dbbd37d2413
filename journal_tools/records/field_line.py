"""One line of front matter taken apart: blanks, dashes, key and value."""

from __future__ import annotations

import re
from dataclasses import dataclass

_PARTS = re.compile(
    r"""(?P<indent>[ \t]*)
        (?P<dashes>(?:-[ \t]+)*)
        (?:(?P<key>"[^"]*"|'[^']*'|[^ \t"'\#{\[][^\#]*?)[ \t]*:(?:[ \t]+|\Z))?
        (?P<value>.*)\Z""",
    re.VERBOSE | re.DOTALL,
)
_COMMENT = re.compile(r"[ \t]+#(?:[ \t].*)?\Z", re.DOTALL)


@dataclass(frozen=True)
class FieldLine:
    """A line as a weaver sees it.

    indent: the blanks and tabs before it. dashes: the `- ` of list items. key: as typed, "" where
    the line has none. value: what follows, without the comment. comment: with the blanks before it.
    """

    indent: str
    dashes: str
    key: str
    value: str
    comment: str

    @property
    def column(self) -> int:
        """The column, from 0, at which the key or value begins."""
        return len(self.indent) + len(self.dashes)

    @property
    def is_blank(self) -> bool:
        """Whether nothing but a comment stands on the line."""
        return not (self.dashes or self.key or self.value) or self.value.startswith("#")

    def with_value(self, value: str) -> str:
        """The line with another value."""
        key = f"{self.key}: " if self.key else ""
        return f"{self.indent}{self.dashes}{key}{value}".rstrip() + self.comment


def take_apart(line: str) -> FieldLine:
    """Take a line without its line end apart. Never fails: what is no key is value.

    A lone dash is a list's item with an empty value.
    """
    match = _PARTS.match(line)
    assert match is not None
    value = match["value"]
    comment = _COMMENT.search(value)
    words = value[: comment.start()] if comment else value
    tail = value[comment.start() :] if comment else ""
    return FieldLine(match["indent"], match["dashes"], match["key"] or "", words.rstrip(), tail)
