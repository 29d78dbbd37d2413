"""One text in a record that lost words, or took in lines that were meant as others."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

import yaml

from journal_tools.records.characters import ODD_BLANKS
from journal_tools.records.field_line import FieldLine, take_apart
from journal_tools.records.layout_faults import PROSE
from journal_tools.records.meant_key import without_colon
from journal_tools.records.model import FieldWords
from journal_tools.records.quoting import as_value, quoted
from journal_tools.records.value_faults import LineFault, key_fault

Found = tuple[int, LineFault, str, bool]
"""The header's line, what is wrong, its slug, and whether it is sure."""

_LOST = re.compile(r"[ \t]*(#[^\s#=\-!][^\r\n]*)")
_LOST_SURELY = re.compile(r"#(?:\d|(?:[0-9A-Fa-f]{6}|[0-9A-Fa-f]{3})(?:\W|\Z))")
_COMMENT = re.compile(r"[ \t]+(?:#(?:[ \t].*)?)?\Z")
_HEX = re.compile(r"#([0-9A-Fa-f]{3}(?:[0-9A-Fa-f]{3})?)\Z")
_GLUED = re.compile(r"[^\W\d]\w*:(?!//)\S")
_ODD_BLANK = re.compile(rf"(?:-|[^\W\d]\w*:)[{ODD_BLANKS}]")
_FIGURES = re.compile(r"[~?\d]")
_SIZE = re.compile(r"[~?\d].* [x×] ")
_FIELD = re.compile(r"[ \t]*(?:- )?[a-z_][\w ]*:(?:\s|\Z)")


def text_faults(
    node: yaml.Node, key: yaml.Node | None, header: str, lines: list[str], known: Mapping[str, FieldWords]
) -> Iterator[Found]:
    """What is wrong with a text.

    key: the key it stands under, None for a list's item or a key. known: the keys that may stand beside it.
    """
    if not isinstance(node, yaml.ScalarNode) or node.style in ("|", ">"):
        return
    yield from _lost(node, header, lines, is_key=header.startswith(":", node.end_mark.index))
    first, last = node.start_mark.line, node.end_mark.line
    own_line = key is not None and key.start_mark.line < first
    if node.style is None and ((own_line and _GLUED.match(node.value)) or _ODD_BLANK.match(node.value)):
        for number in range(first, last + 1):
            fault = key_fault(take_apart(lines[number].rstrip("\r\n")))
            if fault is not None:
                yield number, fault, "key", True
        return
    if node.style is None and last > first:
        fields = list(_fields_taken_in(node, key, lines, known))
        yield from fields or _taken_in(node, key, lines)
    if node.style in ("'", '"') and last > first and key is not None:
        yield from _ran_on(node, key, lines)
    if node.style == '"' and re.search("[\x00-\x08\x0b-\x1f\x7f]", node.value):
        right = "A backslash in double quotes made a character that cannot be shown. Use single quotes."
        yield first, LineFault(take_apart(lines[first].rstrip()).value, right, "", ""), "characters", True


def _lost(node: yaml.ScalarNode, header: str, lines: list[str], is_key: bool) -> Iterator[Found]:
    """Words after a `#`. A comment has a blank after its `#`."""
    end = node.end_mark.index
    lost = _LOST.match(header, end + 1 if header.startswith(":", end) else end)
    if lost is None:
        return
    number = node.end_mark.line
    line = take_apart(lines[number].rstrip("\r\n"))
    sure = bool(_LOST_SURELY.match(lost.group(1)))
    colour = _HEX.match(line.value)
    if colour:
        fault = LineFault(
            line.value,
            "What follows # is taken for a comment. A colour is written without it.",
            line.with_value(colour.group(1)),
            "",
        )
    else:
        words = _COMMENT.sub("", lost.group(1))
        right = f"What follows # is taken for a comment, and {words} is lost. Put the value in quotes"
        right += "." if sure else ", or a blank after the # of a comment."
        whole = line.value.endswith(words) and node.style is None and not is_key
        fault = LineFault(line.value, right, line.with_value(quoted(line.value)) if whole else "", "")
    yield number, fault, "lost-after-hash", sure


def _fields_taken_in(
    node: yaml.ScalarNode, key: yaml.Node | None, lines: list[str], known: Mapping[str, FieldWords]
) -> Iterator[Found]:
    """Lines that were taken for more of the text above, and begin with a key that stands beside its own.

    It is a question below a text that may well be longer than a line.
    """
    if not isinstance(key, yaml.ScalarNode):
        return
    name = str(key.value)
    for number in range(node.start_mark.line + 1, node.end_mark.line + 1):
        line = take_apart(lines[number].rstrip("\r\n"))
        found = without_colon(line.value, known) if not (line.key or line.dashes) else None
        if found is None:
            continue
        right = (
            f"This line was read as more of `{name}`. If `{found[0]}` is a key, a colon is missing after it;"
            f" else put the whole text of `{name}` in quotes."
        )
        mended = f"{' ' * key.start_mark.column}{found[0]}: {as_value(found[1])}{line.comment}"
        yield number, LineFault(line.value, right, mended, ""), "not-a-field", name in known and name not in PROSE


def _taken_in(node: yaml.ScalarNode, key: yaml.Node | None, lines: list[str]) -> Iterator[Found]:
    """Lines that were taken for more of the text above and look like items, fields or sizes."""
    first = take_apart(lines[node.start_mark.line].rstrip("\r\n"))
    numbers = range(node.start_mark.line + 1, node.end_mark.line + 1)
    if key is not None and not _FIGURES.match(node.value):
        return
    for number in numbers:
        line = take_apart(lines[number].rstrip("\r\n"))
        dash = f"{first.indent}{first.dashes[:-1].rstrip()[:-1]}- " if first.dashes else ""
        if line.dashes or (line.value.startswith("-") and key_fault(line)):
            right = "This was read as more of the text above. A list's dashes stand in one column, each with a blank."
            item = line.value if line.dashes else line.value[1:]
            mended = f"{dash}{item}{line.comment}" if dash and not line.key else ""
            yield number, LineFault(line.dashes + line.value, right, mended, ""), "list", True
            return
        glued = key_fault(line) if _GLUED.match(line.value) else None
        if glued is not None:
            yield number, glued, "not-a-field", True
            return
    written = [node.start_mark.line, *numbers]
    texts = [take_apart(lines[number].rstrip("\r\n")) for number in written]
    if all(_SIZE.match(text.value) for text in texts):
        right = "Several lines were read as one text. A list's items each begin with a dash and a blank."
        mended = "\n".join(f"{text.indent}- {text.value}{text.comment}" for text in texts)
        sure_lines = mended if not any(text.key for text in texts) else ""
        yield written[0], LineFault(node.value, right, sure_lines, ""), "list", True


def _ran_on(node: yaml.ScalarNode, key: yaml.Node, lines: list[str]) -> Iterator[Found]:
    """A quoted text that took in the fields below it."""
    first = node.start_mark.line
    for number in range(first + 1, node.end_mark.line + 1):
        line = lines[number]
        indent = len(line) - len(line.lstrip(" "))
        if indent <= key.start_mark.column and _FIELD.match(line):
            own = take_apart(lines[first].rstrip("\r\n"))
            right = "The quoted text that begins here runs on over the fields below. Close it on its line."
            mended = own.with_value(quoted(own.value[1:])) if _opens_once(own) else ""
            yield first, LineFault(own.value, right, mended, ""), "not-a-field", True
            return


def _opens_once(line: FieldLine) -> bool:
    return line.value[:1] in ("'", '"') and line.value.count(line.value[0]) == 1
