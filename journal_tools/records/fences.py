"""Where a record's front matter begins and ends: between two lines that are `---` alone."""

from __future__ import annotations

import re
from dataclasses import dataclass

from journal_tools.problems import Problem

FENCE = "---"
BOM = "\ufeff"
LINE = re.compile(r"[^\r\n]*(?:\r\n|\r|\n)|[^\r\n]+\Z")
"""One line with its end, for every kind of line end. An empty text has no line."""

_NEARLY_A_FENCE = re.compile(r"[ \t]*(?:[-\u2010-\u2015\u2212_]+|\.\.\.)[ \t]*")
_FIELD = re.compile(r"[ \t]*(?:- +)*[^\s:#][^:]*:(?:\s|\Z)")


@dataclass(frozen=True)
class Block:
    """Spans of a record's text, in characters: the header and the notes below it.

    first_line: 1-based line of the file on which the header begins. problems: with the fences.
    """

    start: int
    end: int
    notes_start: int
    first_line: int
    problems: tuple[Problem, ...] = ()


def find_block(text: str, file: str) -> Block | Problem:
    """The front matter's place, or the problem that there is none.

    A block that is not closed is taken to end where its fields seem to end, and a problem says so.
    """
    lines = [match.group() for match in LINE.finditer(text)]
    starts = [match.start() for match in LINE.finditer(text)] + [len(text)]
    words = [line.rstrip() for line in lines]
    if words:
        words[0] = words[0].removeprefix(BOM)
    first = next((number for number, word in enumerate(words) if word.strip()), None)
    if first is None:
        right = "The file is empty. A record begins with `---`, `title: …` and `---`."
        return Problem(file, 0, "", "", right, slug="no-front-matter")
    problems = []
    if words[first] != FENCE:
        if not _NEARLY_A_FENCE.fullmatch(words[first]):
            right = (
                "A record begins with a line `---`, then its fields, then another `---`; "
                "notes follow below. This file begins with something else."
            )
            return Problem(file, first + 1, "", words[first], right, slug="no-front-matter")
        problems.append(_nearly(file, first, words[first], "begins"))
    elif first:
        right = "The `---` that begins the fields must be the first line. Take the blank lines out."
        problems.append(Problem(file, first + 1, "", "", right, slug="fence", mended=FENCE))
    closing = next((n for n in range(first + 1, len(words)) if words[n] == FENCE), None)
    stop = len(words) if closing is None else closing
    nearly = _nearly_closing(words, first + 1, stop)
    if nearly is not None:
        closing = nearly
        problems.append(_nearly(file, closing, words[closing], "ends"))
    elif closing is None:
        end = first + 1 + _probable_end(words[first + 1 :])
        right = "The fields that begin here have no end. Put a line `---` below the last field" + (
            f", probably below line {end}." if end > first + 1 else "."
        )
        problems.append(Problem(file, first + 1, "", words[first], right, slug="fence"))
        return Block(starts[first + 1], starts[end], starts[end], first + 2, tuple(problems))
    return Block(starts[first + 1], starts[closing], starts[closing + 1], first + 2, tuple(problems))


def _nearly_closing(words: list[str], start: int, stop: int) -> int | None:
    """The number of the line that was meant as the closing `---`: nearly one, and no field after it.

    A `- ` list's lone dash is followed by fields or deeper lines, so it is not taken for one.
    """
    below, nearly = "", None
    for number in range(stop - 1, start - 1, -1):
        word = words[number]
        if not word.strip():
            continue
        fields_below = _FIELD.match(below) or below[:1] in (" ", "\t", "-")
        if _NEARLY_A_FENCE.fullmatch(word) and word.strip() != "-" and not fields_below:
            nearly = number
        below = word
    return nearly


def _probable_end(words: list[str]) -> int:
    """How many lines of an unclosed block look like its fields: up to the first gap after them."""
    end = len(words)
    for number in range(len(words) - 1, -1, -1):
        below = words[number]
        gap_above = number > 0 and not words[number - 1].strip()
        if below.strip() and gap_above and not _FIELD.match(below) and below[0] not in "# \t-":
            end = number
    while end and not words[end - 1].strip():
        end -= 1
    return end


def _nearly(file: str, number: int, read: str, does: str) -> Problem:
    right = f"The line that {does} the fields is three hyphens alone, without blanks before them."
    return Problem(file, number + 1, "", read, right, slug="fence", mended=FENCE)


def lines_of(text: str) -> tuple[str, ...]:
    """The lines of a text without their ends, as the parser counts them."""
    return tuple(match.group().rstrip("\r\n") for match in LINE.finditer(text))
