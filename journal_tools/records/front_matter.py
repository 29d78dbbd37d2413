"""The `---` block above a record's notes: found, bounded and read into a tree of nodes.

Nothing here raises for bad input. What cannot be read becomes a Problem, and `node` is None only
where at least one problem says why.
"""

from __future__ import annotations

import stat
from dataclasses import dataclass, replace
from pathlib import Path

import yaml

from journal_tools.problems import Problem
from journal_tools.records.characters import bad_characters, hide_bad_characters
from journal_tools.records.fences import find_block
from journal_tools.records.mending import read_with_mending
from journal_tools.records.node_check import MOST, check_tree

LARGEST = 256 * 1024
"""Bytes of a record file that are read."""


@dataclass(frozen=True)
class FrontMatter:
    """A record file taken apart; `text[header_start : header_start + len(header)]` is `header`.

    file: path inside the journal. text: the whole file as read, byte order mark and line ends kept.
    header: the lines between the two `---`, with their line ends. header_start: its place in text.
    first_line: 1-based line of the file that is header's first. notes: all text below the block.
    node: the tree; every scalar is the text that was typed; marks count from header's start. An
    empty block is an empty mapping. Where a problem says that a line could not be read, the tree is
    that of the mended lines: its lines hold, its columns may not.
    problems: everything that is wrong with the file as a file, in the order of its lines,
    two hundred at most.
    """

    file: str
    text: str
    header: str
    header_start: int
    first_line: int
    node: yaml.MappingNode | None
    notes: str
    problems: tuple[Problem, ...]


def line_of(fm: FrontMatter, node: yaml.Node) -> int:
    """The 1-based line of the file on which the node begins."""
    return fm.first_line + int(node.start_mark.line)


def read_file(path: Path, file: str) -> FrontMatter:
    """Read a record file. Never raises: a file that cannot be read is a Problem."""
    try:
        if not stat.S_ISREG(path.stat().st_mode):
            return _unread(file, "", "This is a folder or a device, not a file.", "unreadable")
        with path.open("rb") as stream:
            data = stream.read(LARGEST + 1)
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        return _unread(file, "", f"The file cannot be read: {reason}.", "unreadable")
    if len(data) > LARGEST:
        return _too_large(file, "")
    if data.startswith((b"\xff\xfe", b"\xfe\xff")):
        right = "The file is saved as UTF-16. Save it as UTF-8, which every editor offers."
        return _unread(file, "", right, "encoding")
    try:
        return read_front_matter(data.decode("utf-8"), file)
    except UnicodeDecodeError as error:
        problem = _not_utf8(data, error.start, file)
    fm = read_front_matter(data.decode("utf-8", "replace"), file)
    return replace(fm, problems=(problem, *fm.problems))


def read_front_matter(text: str, file: str) -> FrontMatter:
    """Take the text of a record file apart. Never raises.

    The first line is `---` (a byte order mark may stand before it) and the block ends at the next
    line that is `---` alone.
    """
    if len(text) > LARGEST or len(text.encode("utf-8", "surrogatepass")) > LARGEST:
        return _too_large(file, text)
    block = find_block(text, file)
    if isinstance(block, Problem):
        return FrontMatter(file, text, "", 0, 1, None, text, (block,))
    header = text[block.start : block.end]
    problems = [*block.problems, *bad_characters(header, file, block.first_line)]
    read = read_with_mending(hide_bad_characters(header), file, block.first_line)
    told = {problem.line for problem in problems}
    problems += (problem for problem in read.problems if problem.line not in told)
    node = None
    if read.tree is not None:
        problems += check_tree(read.tree, read.header, file, block.first_line)
        node = _top_mapping(read.tree.root)
    return FrontMatter(
        file=file,
        text=text,
        header=header,
        header_start=block.start,
        first_line=block.first_line,
        node=node,
        notes=text[block.notes_start :],
        problems=tuple(sorted(problems, key=lambda problem: problem.line)[:MOST]),
    )


def _top_mapping(root: yaml.Node | None) -> yaml.MappingNode | None:
    """The top mapping; an empty one for an empty block; None where the top is something else."""
    if root is None:
        start = yaml.Mark("", 0, 0, 0, None, 0)
        return yaml.MappingNode("", [], start, start, flow_style=False)
    return root if isinstance(root, yaml.MappingNode) else None


def _unread(file: str, text: str, right: str, slug: str) -> FrontMatter:
    problem = Problem(file, 0, "", "", right, slug=slug)
    return FrontMatter(file, text, "", 0, 1, None, "", (problem,))


def _too_large(file: str, text: str) -> FrontMatter:
    right = f"The file is larger than {LARGEST // 1024} KB; a record is a few KB of text."
    return _unread(file, text, right, "too-large")


def _not_utf8(data: bytes, place: int, file: str) -> Problem:
    """The first byte that is no UTF-8, with the letter that was probably meant."""
    start = max(data.rfind(b"\n", 0, place), data.rfind(b"\r", 0, place)) + 1
    line = data.count(b"\n", 0, place) + 1
    shown = data[start:].splitlines()[0].decode("cp1252", "replace")
    right = "The file is not saved as UTF-8. Save it as UTF-8, which every editor offers."
    return Problem(file, line, "", shown, right, slug="encoding")
