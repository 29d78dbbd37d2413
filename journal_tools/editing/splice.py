"""A few values written into a weaver's record; every other byte stays as it is.

The change is made in the text at the nodes' places, then the new text is read and its whole tree is
compared with the one that is wanted. On any difference nothing is written.
"""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

from journal_tools.editing.change import Change, Unfit, Value, changed, tree_of
from journal_tools.editing.edit import edited, find, smaller
from journal_tools.editing.safe_write import replace_bytes
from journal_tools.problems import Problem
from journal_tools.records.front_matter import FrontMatter, line_of, read_file, read_front_matter

__all__ = ["Change", "SpliceRefused", "Value", "splice", "splice_file"]


class SpliceRefused(Exception):
    """A change that was not made; `problem` says where and why. The record is as it was."""

    def __init__(self, problem: Problem) -> None:
        super().__init__(problem.sentence())
        self.problem = problem


def splice(text: str, changes: Iterable[Change], file: str) -> str:
    """The record's text with the changes made, in their order. Raises SpliceRefused.

    file: the record's path inside the journal, for messages.
    """
    for change in changes:
        text = _with_change(text, change, file)
    return text


def splice_file(path: Path, changes: Iterable[Change], file: str = "") -> None:
    """Make the changes in a record's file, all or none. Raises SpliceRefused.

    file: the record's path inside the journal, for messages; the file's name when it is not given.
    A link is followed only to a file in the same folder or below it.
    """
    file = file or path.name
    changes = list(changes)
    try:
        real = path.resolve(strict=True)
        if not real.is_relative_to(path.parent.resolve()):
            raise _refused(file, "The record is a link to a file elsewhere, which is not written to.")
        fm = read_file(real, file)
        text = splice(_sound(fm).text, changes, file)
        if text != fm.text:
            replace_bytes(real, fm.text.encode(), text.encode())
    except (OSError, RuntimeError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        raise _refused(file, f"The file cannot be written: {reason}. It is as it was.") from error


def _with_change(text: str, change: Change, file: str) -> str:
    fm = _sound(read_front_matter(text, file))
    try:
        wanted = changed(tree_of(fm.node), change)
        new_text = _edited(fm, change, file)
    except Unfit as unfit:
        raise _refused_at(fm, change, str(unfit)) from None
    new = read_front_matter(new_text, file)
    faults = [problem for problem in new.problems if problem.is_fault]
    if faults or tree_of(new.node) != wanted or new.notes != fm.notes:
        right = "This cannot be written here so that it reads back as it should. Write it by hand."
        raise _refused_at(fm, change, right)
    return new_text


def _edited(fm: FrontMatter, change: Change, file: str) -> str:
    """The text with the change made, value by value."""
    assert fm.node is not None
    parts = smaller(fm.node, change)
    if parts is not None:
        text = fm.text
        for part in parts:
            text = _edited(_sound(read_front_matter(text, file)), part, file)
        return text
    start, end = fm.header_start, fm.header_start + len(fm.header)
    header = edited(fm.header, fm.node, change, _line_end(fm.text[:start]))
    return fm.text[:start] + header + fm.text[end:]


def _sound(fm: FrontMatter) -> FrontMatter:
    """The front matter, when it can be read without a fault."""
    fault = next((problem for problem in fm.problems if problem.is_fault), None)
    if fault is not None:
        raise SpliceRefused(fault)
    return fm


def _line_end(before: str) -> str:
    """The line end of the line that opens the block."""
    return "\r\n" if before.endswith("\r\n") else before[-1:]


def _refused(file: str, right: str) -> SpliceRefused:
    return SpliceRefused(Problem(file, 0, "", "", right, slug="not-written"))


def _refused_at(fm: FrontMatter, change: Change, right: str) -> SpliceRefused:
    assert fm.node is not None
    place, _ = find(fm.node, change.path)
    words = (str(key + 1) if isinstance(key, int) else key for key in change.path)
    line = line_of(fm, place.key or place.node)
    return SpliceRefused(Problem(fm.file, line, ": ".join(words), str(change.value), right, slug="not-written"))
