"""The record of a draft as `draft` needs it: read from a file anywhere, its own problems told, its text at hand."""

from __future__ import annotations

import dataclasses
import re
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from journal_tools.problems import Problem
    from journal_tools.quantities import Units
    from journal_tools.records import Draft as Record
    from journal_tools.records import Journal

SAID_BY_THE_DRAFT = {"threading-slip", "woven-otherwise"}
"""Questions of a check that what is told of the draft itself asks already."""

TO_BE_WRITTEN_OUT = ("blocks", "profile", "profile_treadling", "tabby_between", "accents", "upper", "lower")
"""Keys of a record that a draft which has been changed is no longer written with."""


@dataclass(frozen=True)
class OwnText:
    """A record's file as it was typed. header: between its two `---`. notes: below them."""

    whole: bytes
    header: str
    notes: str

    def part(self, key: str) -> str:
        """A key of the header with all that stands below it, as typed; "" where there is none."""
        found = re.search(rf"^{re.escape(key)}[ \t]*:.*(?:\n(?:[ \t-].*)?)*", self.header, re.MULTILINE)
        return found.group().rstrip() if found else ""

    @property
    def keys(self) -> tuple[str, ...]:
        """The keys of the header, in their order."""
        return tuple(re.findall(r"^([a-z_]+)[ \t]*:", self.header, re.MULTILINE))


def own_text(path: Path) -> OwnText:
    """The text of a record's file."""
    from journal_tools.records.front_matter import read_file

    front = read_file(path, path.name)
    return OwnText(path.read_bytes(), front.header.replace("\r\n", "\n"), front.notes)


def read_outside(path: Path, units: Units) -> tuple[Record, tuple[Problem, ...]]:
    """A record that is not in the journal, and what is wrong with it as a text. Never raises."""
    from journal_tools.records import Draft
    from journal_tools.records.fences import lines_of
    from journal_tools.records.front_matter import read_file
    from journal_tools.records.model import read_model
    from journal_tools.records.spot import Reading, Spot

    front = read_file(path, str(path))
    record, problems = None, front.problems
    if front.node is not None:
        reading = Reading(front.file, front.first_line, units, lines_of(front.header))
        record = Spot(front.node, reading).read(lambda at: read_model(at, Draft))
        problems += tuple(reading.problems)
    named = dataclasses.replace(record or Draft(), name=path.stem, notes=front.notes, file=front.file)
    return named, problems


def problems_of(record: Record, journal: Journal) -> tuple[Problem, ...]:
    """All that is wrong with one record of a draft, and what is asked of it that the draft's own words do not say."""
    from journal_tools.checking import check

    alone = dataclasses.replace(
        journal, warps={}, drafts={record.name: record}, problems=journal.problems_of(record.file)
    )
    return tuple(problem for problem in check(alone) if problem.slug not in SAID_BY_THE_DRAFT)


def own_words(record: Record) -> Iterator[str]:
    """All that a record says of its draft, as it was typed."""
    from journal_tools.pages.draft_part import notation_of

    if record.weave:
        yield f"weave: {record.weave}"
    yield from (f"{line.label}: {line.text}" for line in notation_of(record))
    for layer, whose in ((record, ""), (record.upper, "upper layer, "), (record.lower, "lower layer, ")):
        if layer is not None and layer.shed != "rising":
            yield f"{whose}shed: {layer.shed}"
    if record.floating_selvedges is not None:
        yield f"floating selvedges: {record.floating_selvedges.text}"
    if record.tags:
        yield f"tags: {', '.join(record.tags)}"


def usual_dent(record: Record) -> int:
    """Ends of the dents that most are like; 0 where a record has no dents."""
    dents = record.ends_in_dents.items if record.ends_in_dents else ()
    return max(Counter(number for dent in dents for number in dent).most_common(1), default=(0, 0))[0]
