"""What can be wrong with what a weaver wrote.

One type for all of it: parse faults, figures that do not fit together, limits of the loom.

    Problem
      severity FAULT      the record cannot be read as written; a build stops
      severity QUESTION   it can be read, but is it so? never stops a build,
                          and is asked once: its slug goes under `accepted:`
"""

from __future__ import annotations

import difflib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from enum import StrEnum


class Severity(StrEnum):
    """How much a problem matters."""

    FAULT = "fault"
    QUESTION = "question"


@dataclass(frozen=True, order=True)
class Problem:
    """One thing to mend or to answer, where it stands, and what would be right.

    file: path inside the journal, with forward slashes.
    line: 1-based line in that file, 0 where the whole file is meant.
    field: the key as the weaver typed it, nested keys joined by ": ".
    read: what was read there. right: what would be right, a sentence or two.
    slug: short name of the kind of problem; a question's slug can stand under `accepted:`.
    mended: the line to paste, where it can be known, else "".
    """

    file: str
    line: int
    field: str
    read: str
    right: str
    severity: Severity = Severity.FAULT
    slug: str = ""
    mended: str = ""

    @property
    def is_fault(self) -> bool:
        """Whether this stops a build."""
        return self.severity is Severity.FAULT

    def place(self) -> str:
        """`file:line`, or the file alone."""
        return f"{self.file}:{self.line}" if self.line else self.file

    @property
    def told(self) -> str:
        """What would be right, as a sentence of its own."""
        return self.right[:1].upper() + self.right[1:]

    def sentence(self) -> str:
        """The problem as one line of text, for a terminal or a log."""
        read = f' read "{shorten(self.read)}".' if self.read else ""
        field = f" {self.field}:" if self.field else ":"
        return f"{self.place()}{field}{read} {self.told}"

    def as_json(self) -> Mapping[str, object]:
        """Plain values, for `check --json`."""
        return {
            "file": self.file,
            "line": self.line,
            "field": self.field,
            "read": self.read,
            "right": self.told,
            "severity": str(self.severity),
            "slug": self.slug,
            "mended": self.mended,
        }


def shorten(text: str, longest: int = 80) -> str:
    """The text on one line, cut in the middle of nowhere when it is longer than a message bears."""
    flat = " ".join(text.split())
    return flat if len(flat) <= longest else flat[: longest - 1] + "…"


def nearest(word: str, known: Iterable[str]) -> str | None:
    """The known word that was probably meant, or None when none is near."""
    by_folded = {k.lower(): k for k in sorted(known)}
    found = difflib.get_close_matches(word.lower(), by_folded, n=1, cutoff=0.6)
    return by_folded[found[0]] if found else None
