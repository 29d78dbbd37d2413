"""Numbers and words of an interchange file, with everything odd about them told."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator

from journal_tools.interchange.lines import Entry, Section
from journal_tools.problems import Problem, Severity

_WHOLE = re.compile(r"([+-]?[0-9]{1,9})(?:[.,]0*)?$")
_REAL = re.compile(r"[+-]?(?:[0-9]{1,30}(?:[.,][0-9]{0,30})?|[.,][0-9]{1,30})(?:[eE][+-]?[0-9]{1,3})?$")
TRUE, FALSE = {"true", "on", "yes", "1"}, {"false", "off", "no", "0"}

LONGEST = 200
"""Letters of a file that are told back."""


class Values:
    """Reads values of one file and collects what is to be told of them."""

    def __init__(self, file: str) -> None:
        self.file = file
        self.told: list[Problem] = []
        self._said: dict[tuple[str, str], int] = {}

    def tell(
        self, line: int, field: str, read: str, right: str, slug: str = "", severity: Severity = Severity.QUESTION
    ) -> None:
        """Keep a problem; of many alike in one section the first is told and the others are counted."""
        field = field[:LONGEST]
        key = (field.partition(":")[0], slug or right)
        self._said[key] = self._said.get(key, 0) + 1
        if self._said[key] == 1:
            self.told.append(Problem(self.file, line, field, read[:LONGEST], right, severity, slug))

    def counted(self) -> Iterator[Problem]:
        """All of them, with how many more of each there were."""
        for problem in self.told:
            more = self._said[problem.field.partition(":")[0], problem.slug or problem.right] - 1
            right = f"{problem.right.rstrip('.')}; {more:,} more like it in this section" if more else problem.right
            yield Problem(
                problem.file, problem.line, problem.field, problem.read, right, problem.severity, problem.slug
            )

    def whole(self, section: Section, key: str) -> int | None:
        """A whole number of a section, None where it is missing or none."""
        entry = section.last(key)
        if entry is None or not entry.value:
            return None
        found = self.number_in(entry.value)
        if found is None:
            self.tell(entry.line, f"{section.written}: {entry.key}", entry.value, "a whole number is wanted", "number")
        return found

    @staticmethod
    def number_in(text: str) -> int | None:
        """`12`, also as `12.0`; None for anything else."""
        bare = text.strip()
        if len(bare) < 10 and bare.isascii() and bare.isdigit():  # nearly all of them, and there may be a million
            return int(bare)
        return int(whole.group(1)) if (whole := _WHOLE.match(bare)) else None

    def real(self, section: Section, entry: Entry) -> float | None:
        """A number above zero, with a point or a comma; None, and told, where it is none."""
        found = float(entry.value.replace(",", ".")) if _REAL.match(entry.value) else math.nan
        if not 0 < found < 1e6:
            where = f"{section.written}: {entry.key}"
            self.tell(entry.line, where, entry.value, "a number above 0 is wanted; it is left out", "number")
            return None
        if "," in entry.value:
            where = f"{section.written}: {entry.key}"
            self.tell(entry.line, where, entry.value, "the comma was read as a decimal point", "decimal-comma")
        return found

    def truth(self, section: Section, key: str) -> bool | None:
        """Yes or no, None where it is missing or neither."""
        entry = section.last(key)
        if entry is None or not entry.value:
            return None
        word = entry.value.lower()
        if word not in TRUE | FALSE:
            self.tell(entry.line, f"{section.written}: {entry.key}", entry.value, "true or false is wanted", "truth")
            return None
        return word in TRUE

    def numbered(self, section: Section, most: int, what: str) -> dict[int, Entry]:
        """The entries of a section by their number, of doubled ones the last. what: that which is counted."""
        found: dict[int, Entry] = {}
        for entry in section.entries:
            where, number = f"{section.written}: {entry.key}", self.number_in(entry.key)
            if number is None or not 1 <= number <= most:
                right = f"{what} are counted from 1 to {most:,} here; this line is left out"
                self.tell(entry.line, where, f"{entry.key}={entry.value}", right, "no-thread", Severity.FAULT)
                continue
            if number in found:
                self.tell(entry.line, where, entry.value, "it stands here twice; the last one counts", "doubled")
            found[number] = entry
        return found

    def sets(self, section: Section, most: int, what: str, listed: str, highest: int) -> dict[int, frozenset[int]]:
        """Numbered lists, such as the shafts (listed) of each pick (what); 0 and nothing are none at all."""
        found: dict[int, frozenset[int]] = {}
        for number, entry in self.numbered(section, most, what).items():
            where, some = f"{section.written}: {entry.key}", set()
            for part in entry.value.split(","):
                one = self.number_in(part)
                if one is None and not part.strip():
                    continue
                if one is None or not 0 <= one <= highest:
                    right = f"{listed} are counted from 1 to {highest}; this one is left out"
                    self.tell(entry.line, where, entry.value, right, "out-of-range", Severity.FAULT)
                elif one:
                    some.add(one)
            found[number] = frozenset(some)
        return found

    def figures(self, section: Section, key: str, most: int, highest: float) -> tuple[float, ...]:
        """A list of numbers above 0 on one line; () and told where it is none."""
        entry = section.last(key)
        if entry is None or not entry.value:
            return ()
        parts = [part.strip() for part in entry.value.split(",")[: most + 1]]
        found = tuple(float(part) for part in parts if _REAL.match(part))
        if len(found) < len(parts) or len(found) > most or not all(0 < figure <= highest for figure in found):
            right = f"numbers above 0 and to {highest:g} are wanted, {most:,} at most; the line is left out"
            self.tell(entry.line, f"{section.written}: {entry.key}", entry.value, right, f"figures {key}")
            return ()
        return found
