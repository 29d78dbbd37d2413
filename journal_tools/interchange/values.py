"""Numbers and words of an interchange file, with everything odd about them told."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator

from journal_tools.interchange.lines import Entry, Section
from journal_tools.problems import Problem, Severity

_WHOLE = re.compile(r"[+-]?\d{1,9}(?:[.,]0*)?$")
_TRUE, _FALSE = {"true", "on", "yes", "1"}, {"false", "off", "no", "0"}


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
        key = (field.partition(":")[0], slug or right)
        self._said[key] = self._said.get(key, 0) + 1
        if self._said[key] == 1:
            self.told.append(Problem(self.file, line, field, read[:200], right, severity, slug))

    def counted(self) -> Iterator[Problem]:
        """All of them, with how many more of each there were."""
        for problem in self.told:
            more = self._said[problem.field.partition(":")[0], problem.slug or problem.right] - 1
            right = f"{problem.right} {more} more like it in this section." if more else problem.right
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
        return int(re.split("[.,]", bare)[0]) if _WHOLE.match(bare) else None

    def real(self, section: Section, entry: Entry) -> float | None:
        """A number above zero, with a point or a comma; None, and told, where it is none."""
        try:
            found = float(entry.value.replace(",", "."))
        except ValueError:
            found = math.nan
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
        if word not in _TRUE | _FALSE:
            self.tell(entry.line, f"{section.written}: {entry.key}", entry.value, "true or false is wanted", "truth")
            return None
        return word in _TRUE

    def numbered(self, section: Section, most: int) -> dict[int, Entry]:
        """The entries of a section by their number, of doubled ones the last."""
        found: dict[int, Entry] = {}
        for entry in section.entries:
            where, number = f"{section.written}: {entry.key}", self.number_in(entry.key)
            if number is None or not 1 <= number <= most:
                right = f"threads are counted from 1 to {most:,} here; this line is left out"
                self.tell(entry.line, where, entry.key, right, "no-thread", Severity.FAULT)
                continue
            if number in found:
                self.tell(entry.line, where, entry.value, "it stands here twice; the last one counts", "doubled")
            found[number] = entry
        return found

    def sets(self, section: Section, most: int, highest: int) -> dict[int, frozenset[int]]:
        """Numbered lists of shafts or treadles; 0 and nothing are none at all."""
        found: dict[int, frozenset[int]] = {}
        for number, entry in self.numbered(section, most).items():
            where, some = f"{section.written}: {entry.key}", set()
            for part in entry.value.split(","):
                one = self.number_in(part)
                if one is None and not part.strip():
                    continue
                if one is None or not 0 <= one <= highest:
                    right = f"shafts and treadles are counted from 1 to {highest}; this one is left out"
                    self.tell(entry.line, where, entry.value, right, "out-of-range", Severity.FAULT)
                elif one:
                    some.add(one)
            found[number] = frozenset(some)
        return found
