"""Reading an interchange file: what it says becomes a draft, and all that is odd is told.

The rules are the standard's as the trade remembers them (from memory, but for the head of the standard,
which was read); docs/interchange.md has them.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from journal_tools.drafts import Draft, Sets
from journal_tools.interchange.contents import joined, kept_of, tell_of_head, tell_of_lines
from journal_tools.interchange.lines import Section, lines_of
from journal_tools.interchange.threads import Threads, threads_of
from journal_tools.interchange.values import Values
from journal_tools.interchange.what_was_read import ReadDraft
from journal_tools.interchange.words import Words, words_of
from journal_tools.notation.lists import HIGHEST
from journal_tools.notation.sequence import MOST_THREADS
from journal_tools.problems import Severity
from journal_tools.quantities import Unreadable

MOST_PARTS = 1_000_000
"""Commas that are read, but those in words: twenty-odd shafts in each of 20,000 picks and more."""

MOST_LIFTED = 8_000_000
"""Shafts that are lifted on all picks together, with the treadling written out."""

_NOTHING = frozenset[int]()


@dataclass(frozen=True)
class Shedding:
    """What a file says of its sheds: treadle by treadle, and pick by pick."""

    tie_up: Mapping[int, frozenset[int]]
    treadling: Mapping[int, frozenset[int]]
    lifts: Mapping[int, frozenset[int]]

    @property
    def by_treadles(self) -> bool:
        """Whether tie-up and treadling count: where both are there, unless they lift nothing and a lift plan does."""
        if not self.tie_up or not self.treadling:
            return False
        presses = any(self.tie_up.get(treadle) for pressed in self.treadling.values() for treadle in pressed)
        return presses or not any(self.lifts.values())

    @property
    def lifted(self) -> int:
        """Shafts that the treadling names, treadle by treadle."""
        tied = {treadle: len(shafts) for treadle, shafts in self.tie_up.items()}
        return sum(tied.get(treadle, 0) for pressed in self.treadling.values() for treadle in pressed)

    def by_treadle(self, pick: int) -> frozenset[int]:
        """The shafts of a pick by its treadles."""
        return _NOTHING.union(*(self.tie_up.get(treadle, _NOTHING) for treadle in self.treadling.get(pick, _NOTHING)))


def read_wif(data: bytes, file: str) -> ReadDraft:
    """What a file says. file: its name, for messages. Never raises, whatever the bytes."""
    values = Values(file)
    lines = lines_of(data)
    if lines.refused:
        return _refused(values, lines.refused)
    tell_of_lines(values, lines)
    sections = joined(values, lines)
    if "WIF" not in sections and "WEAVING" not in sections:
        return _refused(values, "This is no interchange file: it has neither a [WIF] nor a [WEAVING] section.")
    listed = [section for name, section in sections.items() if name not in ("TEXT", "NOTES", "CONTENTS")]
    parts = sum(entry.value.count(",") for section in listed for entry in section.entries)
    if parts > MOST_PARTS:
        return _refused(values, f"The file has {parts:,} commas; {MOST_PARTS:,} are read at most.")
    tell_of_head(values, sections, lines)
    kept = tuple(kept_of(values, lines))
    words = words_of(values, sections)
    warp, weft = (threads_of(values, sections, system, words.colours) for system in ("WARP", "WEFT"))
    draft = _draft(values, sections, words, warp, weft)
    weaving = sections.get("WEAVING", Section("WEAVING", "WEAVING", 0))
    shafts, treadles = (
        _size(values, weaving, key, used)
        for key, used in (("Shafts", draft.shafts if draft else 0), ("Treadles", draft.treadles if draft else 0))
    )
    profile = values.truth(weaving, "Profile") is True
    return ReadDraft(
        draft, words.text, words.notes, words.colours.hexes, warp.per_m, weft.per_m, profile, words.developers, kept,
        tuple(values.counted()), warp.mm, weft.mm, shafts, treadles,
    )  # fmt: skip


def _refused(values: Values, why: str) -> ReadDraft:
    values.tell(0, "", "", why, "refused", Severity.FAULT)
    return ReadDraft(None, told=tuple(values.counted()))


def _draft(values: Values, sections: Mapping[str, Section], words: Words, warp: Threads, weft: Threads) -> Draft | None:
    empty = Section("", "", 0)
    rising = _rising(values, sections)
    threading = values.sets(sections.get("THREADING", empty), MOST_THREADS, "ends", "shafts", HIGHEST)
    sheds = Shedding(
        values.sets(sections.get("TIEUP", empty), HIGHEST, "treadles", "shafts", HIGHEST),
        values.sets(sections.get("TREADLING", empty), MOST_THREADS, "picks", "treadles", HIGHEST),
        values.sets(sections.get("LIFTPLAN", empty), MOST_THREADS, "picks", "shafts", HIGHEST),
    )
    by_treadles = sheds.by_treadles
    ends = _number(values, warp, threading, "THREADING", sections)
    plan, name = (sheds.treadling, "TREADLING") if by_treadles else (sheds.lifts, "LIFTPLAN")
    picks = _number(values, weft, plan, name, sections)
    if not ends or not picks:
        missing = "a threading" if not ends else "a treadling with its tie-up, or a lift plan"
        values.tell(0, "", "", f"There is no draft in it: {missing} is wanted.", "no-draft", Severity.FAULT)
        return None
    if sheds.lifted > MOST_LIFTED:
        right = f"The treadling lifts {sheds.lifted:,} shafts; {MOST_LIFTED:,} are read at most."
        values.tell(sections["TREADLING"].line, "TREADLING", "", right, "no-draft", Severity.FAULT)
        return None
    _tell_of_sheds(values, sections, sheds, rising, picks)
    warp.tell_of(values, ends)
    weft.tell_of(values, picks)
    treadles = max([*sheds.tie_up, *(max(each, default=0) for each in sheds.treadling.values())], default=0)
    try:
        return Draft(
            _listed(threading, ends),
            _listed(sheds.tie_up, treadles) if by_treadles else None,
            _listed(sheds.treadling, picks) if by_treadles else None,
            None if by_treadles else _listed(sheds.lifts, picks),
            rising,
            warp.colours(ends), weft.colours(picks),
            words.warp_order, words.weft_order,
            warp.thickness(ends), weft.thickness(picks),
            warp.spacing(ends), weft.spacing(picks),
            words.floating,
        )  # fmt: skip
    except Unreadable as unreadable:
        values.tell(0, "", unreadable.read, unreadable.right, "no-draft", Severity.FAULT)
        return None


def _rising(values: Values, sections: Mapping[str, Section]) -> bool:
    weaving = sections.get("WEAVING")
    rising = values.truth(weaving, "Rising Shed") if weaving else None
    if rising is None:
        line = weaving.line if weaving else 0
        values.tell(line, "WEAVING: Rising Shed", "", "it is missing; a rising shed was taken", "shed")
    return rising is not False


def _number(
    values: Values, threads: Threads, found: Mapping[int, frozenset[int]], name: str, sections: Mapping[str, Section]
) -> int:
    """How many ends or picks there are: as said, or as many as are listed where that is more."""
    listed, said = max(found, default=0), threads.number
    if not listed:
        return 0
    field, read = f"{threads.name}: Threads", str(said or "")
    if said is None or said > MOST_THREADS:
        right = f"{listed:,} are listed under {name}; so many were taken"
        values.tell(threads.line, field, read, right, "threads")
        return listed
    if said < listed:
        values.tell(threads.line, field, read, f"{listed:,} are listed under {name}; all of them were taken", "threads")
    elif said > listed:
        right = f"{field} says {said:,}; the last {said - listed:,} were taken as empty"
        values.tell(sections[name].line, name, str(listed), right, "threads")
    return max(said, listed)


def _listed(found: Mapping[int, frozenset[int]], number: int) -> Sets:
    return tuple(found.get(place, _NOTHING) for place in range(1, number + 1))


def _tell_of_sheds(
    values: Values, sections: Mapping[str, Section], sheds: Shedding, rising: bool, picks: int
) -> None:
    """Where there are a lift plan and treadles, which of them counts; and that a lift plan may sink."""
    plan = sections.get("LIFTPLAN")
    if sheds.by_treadles and sheds.lifts and plan is not None:
        unlike = (pick for pick in range(1, max(picks, *sheds.lifts) + 1) if _unlike(sheds, pick))
        pick = next(unlike, 0)
        right = f"tie-up and treadling are there too, and differ from the lift plan at pick {pick}; they were taken"
        right = right if pick else "it says the same as tie-up and treadling, which were taken"
        values.tell(plan.line, plan.written, "", f"{right}; the lift plan is left out", "both")
    if sheds.by_treadles or plan is None:
        return
    for name, found in (("TIEUP", sheds.tie_up), ("TREADLING", sheds.treadling)):
        if found:
            lack = "lift nothing" if sheds.tie_up and sheds.treadling else "are not both there"
            right = f"tie-up and treadling {lack}; the lift plan was taken, and this is left out"
            values.tell(sections[name].line, sections[name].written, "", right, "half")
    if not rising:
        right = "the shed sinks, so the lift plan was read as shafts that go down; look whether the cloth is as meant"
        values.tell(plan.line, "LIFTPLAN", "", right, "sinking-lifts")


def _unlike(sheds: Shedding, pick: int) -> bool:
    return sheds.by_treadle(pick) != sheds.lifts.get(pick, _NOTHING)


def _size(values: Values, weaving: Section, key: str, used: int) -> int | None:
    """How many shafts or treadles the file says; None where it says none, or fewer than are used."""
    said = values.whole(weaving, key)
    if said is not None and said < used:
        values.tell(weaving.line, f"WEAVING: {key}", str(said), f"{used} are used; so many were taken", "sizes")
        return None
    if said is not None and said > HIGHEST:
        right = f"{HIGHEST} are read at most; {used} are used, and so many were taken"
        values.tell(weaving.line, f"WEAVING: {key}", str(said), right, "sizes")
        return None
    return said if said else None
