"""Why one field's value cannot be read, said of the line alone, and the line as it should be."""

from __future__ import annotations

import re
from dataclasses import dataclass

import yaml

from journal_tools.records.characters import ODD_BLANKS, name, odd_blank, plain_blanks, show_unseen
from journal_tools.records.field_line import FieldLine
from journal_tools.records.flow_form import line_and_below, meant_by, one_line
from journal_tools.records.node_tree import compose
from journal_tools.records.quoting import quoted

_MISSING_BLANK = re.compile(rf"([^\W\d][\w ]*?)(?::|[ ]*\uff1a[ ]*)(?!//)([^\s{ODD_BLANKS}].*)\Z", re.DOTALL)
_INCHES = re.compile(r'"[~?\d][^"]*\d[ ]?".*[^" ]')
_ODD_BLANK_AFTER = re.compile(rf"(-|[^\W\d][\w ]*?:)[{ODD_BLANKS}][ {ODD_BLANKS}]*(.*)\Z", re.DOTALL)
_EQUALS = re.compile(r"([^\W\d][\w ]*?)[ ]*=[ ]*(\S.*)\Z", re.DOTALL)


@dataclass(frozen=True)
class LineFault:
    """What is wrong with one line.

    read: the part of the line that is meant. right: what would be right. mended: the line, or
    several, to paste, "" where it cannot be known. stand_in: a line that reads, in its place.
    ends_fields: whether the fields end above this line, and notes begin.
    """

    read: str
    right: str
    mended: str
    stand_in: str
    ends_fields: bool = False


def value_fault(line: FieldLine) -> LineFault | None:
    """What is wrong with the value of a line, or None when it reads well by itself."""
    value = line.value
    if not value or not (line.key or line.dashes) or _reads(value):
        return None
    if value[0] in "[{":
        return _bracket(line)
    if value[0] in "\"'":
        return _quoted(line, "A value that begins with a quotation mark must be one quoted text. ")
    if re.match(r"-(?:\s|\Z)", value):
        return _dash(line)
    if re.search(r":(?:\s|\Z)", value) and value[0] not in "@%`*&!|>":
        right = "A colon and a blank begin a new field. Put the value in quotes."
        return _whole_in_quotes(line, right)
    if value[0] in "@%`*&!|>,]}":
        return _whole_in_quotes(line, f"A value cannot begin with {value[0]} here. Put it in quotes.")
    return None


def key_fault(line: FieldLine) -> LineFault | None:
    """What is wrong with a line's key, or with words that have none where a key can be seen."""
    if odd_blank(line.key):
        mended = plain_blanks(f"{line.indent}{line.dashes}{line.key}") + f": {line.value}{line.comment}"
        right = f"{name(odd_blank(line.key))} stands in the key or before it. Type the blank anew."
        return LineFault(show_unseen(line.key), right, mended, mended)
    if line.key or not line.value:
        return None
    start = line.indent + line.dashes
    odd = _ODD_BLANK_AFTER.match(line.value)
    if odd:
        mended = f"{start}{odd.group(1)} {odd.group(2)}{line.comment}"
        right = f"{name(odd_blank(line.value))} stands where a plain blank must. Type the blank anew."
        return LineFault(show_unseen(line.value), right, mended, mended)
    for pattern, right in (
        (_MISSING_BLANK, "A blank must follow the colon."),
        (_EQUALS, "Between a key and its value stand a colon and a blank."),
    ):
        match = pattern.match(line.value)
        if match:
            mended = f"{start}{match.group(1)}: {match.group(2)}{line.comment}"
            return LineFault(line.value, right, mended, mended)
    glued = not line.dashes and re.match(r"-(?=[^\s-])", line.value)
    if glued:
        mended = f"{start}- {line.value[1:]}{line.comment}"
        return LineFault(line.value, "A blank must follow the dash of a list's item.", mended, mended)
    return None


def _reads(value: str) -> bool:
    """Whether the value is well formed by itself; a block of text begins with `|` or `>` alone."""
    try:
        tree = compose(f"k: {value}\n")
    except (yaml.YAMLError, UnicodeEncodeError):
        return False
    root = tree.root
    return isinstance(root, yaml.MappingNode) and len(root.value) == 1


def _whole_in_quotes(line: FieldLine, right: str) -> LineFault:
    mended = line.with_value(quoted(line.value))
    return LineFault(line.value, right, mended, mended)


def _quoted(line: FieldLine, why: str) -> LineFault:
    value, mark = line.value, line.value[0]
    inner = value[1:]
    if _INCHES.match(value) and _reads(inner):
        mended = line.with_value(inner)
        right = "An inch mark stands after a figure; no quotation mark is wanted before it."
        return LineFault(value, right, mended, mended)
    if value.count(mark) == 1:
        right = f"{why}The closing {mark} is missing."
        text = inner
    elif value.endswith(mark) and not re.search(rf"\d\s*{mark}\Z", value):
        right = f"{why}Inside {mark} the same mark cannot stand alone; use the other kind outside."
        text = inner[:-1]
    else:
        right = f"{why}Put other quotes round the whole."
        text = value
    if "\\" in text and value.count(mark) == 2 and value.endswith(mark):
        right, text = "A backslash has a meaning inside double quotes. Use single ones.", inner[:-1]
    mended = line.with_value(quoted(text))
    return LineFault(value, right, mended, mended)


def _bracket(line: FieldLine) -> LineFault:
    value, opening = line.value, line.value[0]
    closing = "]" if opening == "[" else "}"
    if closing not in value:
        right = f"{opening} is not closed on its line. Write one value a line, without brackets."
        return LineFault(value, right, "", line.with_value(""))
    parts = meant_by(value)
    if parts and (line.key or parts[0][0] is not None):
        lost = "what stands after a # is lost" if " #" in value else "a colon or a comma is misread"
        right = f"Between {opening} and {closing} {lost}. Write one value a line, without brackets."
        return LineFault(value, right, line_and_below(line, parts), line.with_value(one_line(parts)))
    if value.endswith(closing):
        right = f"What stands between {opening} and {closing} cannot be read. Write one value a line."
        return LineFault(value, right, "", line.with_value(""))
    right = f"A value that begins with {opening} must end with {closing}. Put text in quotes."
    return _whole_in_quotes(line, right)


def _dash(line: FieldLine) -> LineFault:
    item = line.value[1:].strip()
    if not item:
        right = "A lone dash is no value. Leave the line out until the value is known."
        return LineFault(line.value, right, "", line.with_value(""))
    right = "A list begins on the line below its key, each item with its own dash."
    deeper = " " * (line.column + 2)
    mended = f"{line.with_value('')}\n{deeper}- {item}"
    return LineFault(line.value, right, mended, line.with_value(quoted(item)))
