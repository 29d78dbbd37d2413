"""Lines that read well by themselves and stand in the wrong column, and the column they should have."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping

from journal_tools.records.field_line import FieldLine, take_apart
from journal_tools.records.meant_key import without_colon
from journal_tools.records.model import FieldWords
from journal_tools.records.quoting import as_value
from journal_tools.records.value_faults import LineFault

KeysAt = Callable[[int], Mapping[str, FieldWords]]
"""The keys that may begin a line in a column."""

PROSE = frozenset("notes_for_everyone note done care cautions water agitation drying pressing".split())
"""Keys whose text may well be longer than a line."""

_PROSE = re.compile(r"[^\W\d_a-z]\w*( \S+){3}")
_ONE_WORD = re.compile(r"[a-z][a-z_]*(?: \d+)?\Z")


def path_to(words: list[str], number: int) -> str:
    """The field of a line, with the keys and numbers of items it stands under, joined by ": "."""
    line = take_apart(words[number])
    path = [line.key] if line.key else []
    column, item = len(line.indent), 0
    if line.dashes:
        item, column = 1, column + 1
    for above in reversed(words[:number]):
        if column == 0:
            break
        line = take_apart(above)
        if line.is_blank or len(line.indent) >= column:
            continue
        if line.dashes and len(line.indent) == column - 1 and item:
            item += 1
        elif line.dashes and not item:
            path[:0] = [line.key] if line.key and line.column < column else []
            item, column = 1, len(line.indent) + 1
        elif line.key:
            path[:0] = [line.key, str(item)] if item else [line.key]
            item, column = 0, len(line.indent)
    return ": ".join(path)


def tab_fault(words: list[str], number: int) -> LineFault | None:
    """A line set in with tabs."""
    line = words[number]
    stripped = line.lstrip(" \t")
    indent = line[: len(line) - len(stripped)]
    if "\t" not in indent:
        return None
    blanks = [len(w) - len(w.lstrip(" ")) for w in words if w.strip() and w.startswith(" ")]
    width = min((n for n in blanks if n > 1), default=2)
    mended = indent.replace("\t", " " * width) + stripped
    right = "This line is set in with a tab. Set it in with blanks."
    return LineFault(stripped.rstrip(), right, mended, mended)


def document_fault(words: list[str], number: int) -> LineFault | None:
    """A line that would end the fields here and begin new ones."""
    line = words[number]
    if not re.match(r"(?:---|\.\.\.)(?:\s|\Z)|%", line):
        return None
    right = "This line would end the fields here. Fields end with a line `---` alone."
    return LineFault(line.strip(), right, "", "")


def too_deep_fault(words: list[str], number: int) -> LineFault | None:
    """A field under a line that already has a value."""
    line = take_apart(words[number])
    above = _field_above(words, number)
    if above is None or not line.key or len(line.indent) < above.column:
        return None
    if not above.key:
        right = "The item above is a single value, so no field can stand under it. Give it a key too."
        return LineFault(_shown(line), right, "", "")
    if not _ONE_WORD.match(line.key):
        right = (
            "This line goes on with the text above and holds a colon, which would begin a field. "
            "Put the whole text in quotes."
        )
        return LineFault(_shown(line), right, "", re.sub(r":(?=\s|\Z)", ",", words[number]))
    right = "This line is set in deeper than the one above, which already has a value. Take blanks out."
    mended = " " * above.column + words[number].lstrip()
    return LineFault(_shown(line), right, mended, mended)


def column_fault(words: list[str], number: int) -> LineFault | None:
    """A line in a column where nothing above it stands."""
    line = take_apart(words[number])
    if not (line.key or line.dashes):
        return None
    keys, dashes = _open_columns(words[:number])
    here = len(line.indent)
    columns = dashes if line.dashes and dashes else keys
    near = sorted((column for column in columns if column != here), key=lambda c: (abs(c - here), c))
    if not near:
        return None
    mended = " " * near[0] + words[number].lstrip()
    sure = len(near) == 1 or abs(near[0] - here) < abs(near[1] - here)
    right = (
        f"This line is set in by {here}, where no line above it begins. "
        f"Lines of one group begin in one column: {_or(sorted(columns))}."
    )
    return LineFault(_shown(line), right, mended if sure else "", mended)


def notes_begin(words: list[str], number: int) -> int:
    """The line after the nearest gap above, where notes may begin; `number` where there is no gap."""
    gap = next((n for n in range(number - 1, -1, -1) if not words[n].strip()), number - 1)
    return gap + 1


def notes_fault(words: list[str], number: int) -> LineFault | None:
    """Notes that begin after a gap without a `---` above them."""
    line = take_apart(words[number].rstrip("\r\n"))
    key_like = line.key and not _PROSE.match(line.key)
    if number == 0 or words[number - 1].strip() or line.indent or line.dashes or key_like:
        return None
    right = "Notes seem to begin here. The fields end with a line `---` above them."
    whole = words[number].rstrip("\r\n")
    return LineFault(whole, right, f"---\n{whole}", "", ends_fields=True)


def no_colon_fault(words: list[str], number: int) -> LineFault | None:
    """Words between fields, without a key."""
    line = take_apart(words[number])
    above = _field_above(words, number)
    if line.key or line.dashes or above is None or not above.value or line.value[:1] in ":?":
        return None
    if above.value[0] in "|>":
        first = next(w for w in words if take_apart(w) == above)
        text = words[words.index(first) + 1]
        mended = text[: len(text) - len(text.lstrip())] + words[number].lstrip()
        right = f"Text below {above.value} is set in as deep as its first line, or deeper."
        return LineFault(line.value, right, mended, mended)
    right = "This line has no `key: `. If it goes on with the text above, set it in deeper."
    deeper = " " * (above.column + 2) + words[number].lstrip()
    if above.key in PROSE:
        return LineFault(line.value, right, deeper, deeper)
    if not above.key:
        return LineFault(line.value, right, "", deeper)
    right = "This line has no `key: `. What is no field stands in the notes, below the second `---`."
    return LineFault(line.value, right, "", "")


def missing_colon_fault(words: list[str], number: int, keys_at: KeysAt) -> LineFault | None:
    """A line that begins with a key, and has no colon after it."""
    line = take_apart(words[number])
    above = words[number - 1].strip() if number else ""
    if line.key or not line.value or (number and not above and not line.value[0].islower()):
        return None
    found = without_colon(line.value, keys_at(line.column), loosely=bool(above) or not number)
    if found is None:
        return None
    key, value = found
    mended = f"{line.indent}{line.dashes}{key}: {as_value(value) if value else ''}".rstrip() + line.comment
    return LineFault(line.dashes + line.value, f"A colon and a blank must follow the key `{key}`.", mended, mended)


def _field_above(words: list[str], number: int) -> FieldLine | None:
    """The nearest line above with a key or a dash."""
    lines = (take_apart(above) for above in reversed(words[:number]))
    return next((line for line in lines if (line.key or line.dashes) and not line.is_blank), None)


def _open_columns(words: list[str]) -> tuple[list[int], list[int]]:
    """The columns of keys and of dashes in which a next line may begin."""
    keys: list[int] = []
    dashes: list[int] = []
    for word in words:
        line = take_apart(word)
        if line.is_blank or not (line.key or line.dashes):
            continue
        keys = [column for column in keys if column <= len(line.indent)]
        dashes = [column for column in dashes if column <= len(line.indent)]
        dashes += [len(line.indent) + m.start() for m in re.finditer("-", line.dashes)]
        if line.key:
            keys.append(line.column)
    return sorted(set(keys)), sorted(set(dashes))


def _or(columns: list[int]) -> str:
    return " or ".join(str(column) for column in columns)


def _shown(line: FieldLine) -> str:
    return f"{line.dashes}{line.key}: {line.value}".strip() if line.key else line.dashes + line.value
