"""Reading goes on past a line that the parser cannot read, so that all bad lines are told at once.

The parser names a place; the guilty line is that one or one above it. When it is found, a line that
reads stands in for it and the parser begins anew.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, replace

import yaml

from journal_tools.problems import Problem
from journal_tools.records.fences import LINE
from journal_tools.records.field_line import take_apart
from journal_tools.records.kinds import keys_at
from journal_tools.records.layout_faults import (
    KeysAt,
    column_fault,
    document_fault,
    missing_colon_fault,
    no_colon_fault,
    notes_begin,
    notes_fault,
    path_to,
    tab_fault,
    too_deep_fault,
)
from journal_tools.records.node_tree import NodeTree, compose
from journal_tools.records.value_faults import LineFault, key_fault, value_fault

MOST = 40
"""How many bad lines of one file are told, and how far above the parser's place one is sought."""

MOST_READ = 1_000_000
"""About how many characters are read again before the rest of a large file is given up."""


@dataclass(frozen=True)
class MendedReading:
    """tree: None where the text could not be read to its end. header: the text that was read."""

    tree: NodeTree | None
    header: str
    problems: tuple[Problem, ...]


def read_with_mending(header: str, file: str, first_line: int) -> MendedReading:
    """Read the header; each line that stops the parser becomes a problem, and reading goes on."""
    try:
        return MendedReading(compose(header), header, ())
    except yaml.YAMLError as error:
        stopped: yaml.YAMLError = error
    lines = [match.group() for match in LINE.finditer(header)]
    words = [line.rstrip("\r\n") for line in lines]
    problems: dict[int, Problem] = {}
    tries: Counter[int] = Counter()
    understood = True
    for _ in range(min(MOST, 3 + MOST_READ // len(header))):
        number, fault = _guilty(words, stopped, lambda column: keys_at(file, column))
        tries[number] += 1
        if tries[number] > 2:
            fault = None
        before = problems.get(number)
        if before is not None and fault is not None:
            # The line was mended and still does not fit: what to paste is the line mended twice.
            problems[number] = replace(before, mended=fault.mended)
        elif before is None and (fault is not None or understood):
            # After the first line that nobody understands, more such lines are most likely its echo.
            problems[number] = _problem(words, number, fault, file, first_line)
        understood = understood and fault is not None
        if fault is not None and fault.ends_fields:
            del lines[number + 1 :], words[number + 1 :]
        stand_in = fault.stand_in if fault else ""
        if stand_in == words[number]:
            break
        lines[number] = stand_in + lines[number][len(words[number]) :]
        words[number] = stand_in
        text = "".join(lines)
        try:
            return MendedReading(compose(text), text, tuple(problems.values()))
        except yaml.YAMLError as error:
            stopped = error
    return MendedReading(None, header, tuple(problems.values()))


def _guilty(words: list[str], stopped: yaml.YAMLError, known: KeysAt) -> tuple[int, LineFault | None]:
    """The number of the line at fault, and what is wrong with it when that can be seen."""
    stop = getattr(stopped, "problem_mark", None)
    at = min(stop.line, len(words) - 1) if stop else 0
    for number, fault in _faults(words, stopped, at, known):
        if fault is not None and fault.stand_in != words[number]:
            return number, fault
    if not words[at].strip():
        at = next((n for n in range(at, -1, -1) if words[n].strip()), at)
    return at, None


def _faults(
    words: list[str], stopped: yaml.YAMLError, at: int, known: KeysAt
) -> Iterator[tuple[int, LineFault | None]]:
    """What may be wrong, the likeliest first. at: the line on which the parser stopped."""
    problem, context = (getattr(stopped, name, None) or "" for name in ("problem", "context"))
    began, stop = (getattr(stopped, name, None) for name in ("context_mark", "problem_mark"))
    above = [n for n in range(at - 1, max(at - MOST, 0) - 1, -1) if not take_apart(words[n]).is_blank]
    yield at, tab_fault(words, at)
    for number in [at, *above[:1]]:
        yield number, document_fault(words, number)
    if began is not None and ("scanning" in context or "flow" in context or "quoted" in context):
        begin = min(began.line, len(words) - 1)
        line = take_apart(words[begin])
        yield begin, value_fault(line) or key_fault(line)
        if "simple key" in context:
            yield begin, missing_colon_fault(words, begin, known)
            notes = notes_begin(words, begin)
            yield notes, notes_fault(words, notes)
            yield begin, no_colon_fault(words, begin)
    line = take_apart(words[at])
    yield at, value_fault(line) or key_fault(line)
    if "mapping values" in problem:
        for number in above[:1]:
            yield number, key_fault(take_apart(words[number])) or missing_colon_fault(words, number, known)
        yield at, too_deep_fault(words, at)
    elif stop is not None and stop.column > len(line.indent):
        # Something stands after a closed text: its quote or bracket may have opened further up.
        for number in above:
            yield number, value_fault(take_apart(words[number]))
    yield at, missing_colon_fault(words, at, known)
    notes = notes_begin(words, at)
    if any(word.strip() for word in words[:notes]):
        yield notes, notes_fault(words, notes)
    yield at, column_fault(words, at)
    yield at, no_colon_fault(words, at)


def _problem(words: list[str], number: int, fault: LineFault | None, file: str, first_line: int) -> Problem:
    if fault is None:
        right = "This line cannot be read. A field is `key: value`, with a blank after the colon."
        fault = LineFault(words[number].strip(), right, "", "")
    return Problem(
        file=file,
        line=first_line + number,
        field=path_to(words, number),
        read=fault.read,
        right=fault.right,
        slug="not-a-field",
        mended=fault.mended,
    )
