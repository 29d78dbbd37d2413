"""The list of drafts, and what a draft is found by: shafts, treadles, weave, floats, colours, repeat, tag."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping

from journal_tools.drafts.analysis import Analysis
from journal_tools.pages.archive import Archive
from journal_tools.pages.draft_page import plain_picture
from journal_tools.pages.swatch import CARD, cloth, swatch_of
from journal_tools.pages.view_parts import Card, Cell, Column, Table
from journal_tools.pages.views import Choice, ListView
from journal_tools.records import Draft

LIFT_PLAN = "lift plan"
NEVER = "never crossed"
NONE = "–"
MISSED = 10**6
"""What a float that never ends is sorted as: behind all others."""


def draft_list(archive: Archive) -> ListView:
    """Every draft as a card and, where it can be woven, as a line of a table, with the fields to find it by."""
    cards = tuple(_card(archive, draft) for draft in archive.journal.drafts.values())
    return ListView(
        "Drafts",
        "Each with its cloth, and the warps that used it.",
        cards,
        filters=True,
        choices=tuple(_choices(archive)),
        counted="drafts",
        tables=(_table(archive),),
    )


# Fields of one number: heading of the table's column, name in the address, label, and what is counted.
_NUMBERS = (
    ("shafts", "shafts", "Shafts", "shaft", "any number"),
    ("treadles", "treadles", "Treadles", "treadle", "any, or a lift plan"),
    ("longest float", "float", "Longest float", "thread", "any length"),
    ("repeat, ends", "ends", "Repeat, ends", "end", "any width"),
    ("repeat, picks", "picks", "Repeat, picks", "pick", "any length"),
    ("colours", "colours", "Colours named", "colour", "any number"),
)
_BESIDES = {"treadles": (LIFT_PLAN, "a lift plan, no treadles"), "colours": (NONE, "none")}
"""What a cell says that has no number, and the words of the answer that asks for it."""


def _choices(archive: Archive) -> Iterator[Choice]:
    """The fields that tell drafts apart, each with only the answers that some draft gives."""
    weaves = {name for found in archive.patterns.found for name in _weaves(archive, found)}
    weaves |= {draft.weave for draft in archive.journal.drafts.values() if draft.weave}
    tags = {tag for draft in archive.journal.drafts.values() for tag in draft.tags}
    for column, name, label, one, every in _NUMBERS:
        said = [_FIGURES[column](found) for found in archive.patterns.found.values()]
        if len(set(said)) > 1:
            yield Choice(name, label, every, tuple(_answers(said, one, _BESIDES.get(column))), column)
        if name == "treadles" and weaves:
            yield Choice("weave", "Weave", "every weave", _as_they_are(weaves), "weaves")
    if tags:
        yield Choice("tag", "Tag", "every tag", _as_they_are(tags))


def _answers(said: list[str], one: str, besides: tuple[str, str] | None) -> Iterator[tuple[str, str]]:
    for number in sorted({int(each) for each in said if each.isdecimal()}):
        yield str(number), f"{number} {one if number == 1 else one + 's'} at most"
    if besides is not None and besides[0] in said:
        yield besides


def _as_they_are(words: set[str]) -> tuple[tuple[str, str], ...]:
    return tuple((word, word) for word in sorted(words, key=lambda word: (word.lower(), word)))


def _longest(found: Analysis) -> str:
    """Crossings of the longest float of either system on either side."""
    threads = [one.threads for one in found.floats]
    return NEVER if None in threads else str(max(each or 0 for each in threads))


def _colours(found: Analysis) -> str:
    """How many colours its orders name; a draft without is woven in whatever there is."""
    return str(len({*found.draft.warp_colours, *found.draft.weft_colours}) or NONE)


_FIGURES: Mapping[str, Callable[[Analysis], str]] = {
    "shafts": lambda found: str(found.draft.shafts),
    "treadles": lambda found: str(found.draft.treadles or LIFT_PLAN),
    "longest float": _longest,
    "repeat, ends": lambda found: str(found.repeat[1]),
    "repeat, picks": lambda found: str(found.repeat[0]),
    "colours": _colours,
}
_SORTED_AS = {LIFT_PLAN: "0", NEVER: str(MISSED), NONE: "0"}


def _weaves(archive: Archive, name: str) -> tuple[str, ...]:
    """What a draft was found to weave, where that has a name, and what its record calls it; none twice."""
    found, said = archive.patterns.found[name].name, archive.journal.drafts[name].weave
    return tuple(dict.fromkeys(each for each in (found.text if found.kind != "not named" else "", said) if each))


def _table(archive: Archive) -> Table:
    """Every draft in a line, to be sorted by what one looks for."""
    columns = (
        Column("draft"),
        Column("shafts", True),
        Column("treadles", True),
        Column("weaves"),
        Column("longest float", True),
        Column("repeat, ends", True),
        Column("repeat, picks", True),
        Column("colours", True),
        Column("tags"),
    )
    rows = []
    for name, found in archive.patterns.found.items():
        record, (weave, *called) = archive.journal.drafts[name], _weaves(archive, name) or (NONE,)
        said = {"draft": Cell(record.heading, f"drafts/{name}.html"), "tags": Cell(", ".join(record.tags))}
        said["weaves"] = Cell(weave, small=f"called {called[0]}" if called else "")
        for column, figure in _FIGURES.items():
            said[column] = Cell(figure(found), sort=_SORTED_AS.get(figure(found), ""))
        rows.append(tuple(said[column.text] for column in columns))
    left_out = [draft.heading for name, draft in archive.journal.drafts.items() if name not in archive.patterns.found]
    note = f"Among the pictures only, because they cannot be woven as they are written: {'; '.join(left_out)}."
    return Table("Drafts", columns, tuple(rows), sortable=True, stacked=True, note=note if left_out else "")


def _found_by(archive: Archive, draft: Draft) -> str:
    """The words that a draft is found by, besides those on its card; its figures have fields of their own."""
    found = archive.patterns.found.get(draft.name)
    if found is None:
        return " ".join(draft.tags)
    words = (*draft.tags, *_weaves(archive, draft.name), *found.draft.warp_colours, *found.draft.weft_colours)
    return " ".join(dict.fromkeys(words))


def _in_a_line(archive: Archive, draft: Draft, warps: int) -> tuple[str, ...]:
    """What is sought by: shafts, treadles, longest float, repeat, warps."""
    found = archive.patterns.found.get(draft.name)
    woven = _counted(warps, "warp") if warps else "not woven yet"
    if found is None:
        return _counted(draft.highest_shaft, "shaft"), woven
    picks, ends = found.repeat
    longest = _longest(found)
    return (
        _counted(found.draft.shafts, "shaft"),
        _counted(found.draft.treadles, "treadle") if found.draft.treadles else LIFT_PLAN,
        "a thread never crossed" if longest == NEVER else f"longest float {longest}",
        f"repeat {_counted(ends, 'end')}, {_counted(picks, 'pick')}",
        woven,
    )


def _counted(number: int, one: str) -> str:
    return f"{number} {one if number == 1 else one + 's'}"


def _card(archive: Archive, draft: Draft) -> Card:
    used = archive.patterns.used(draft.name)
    swatch = swatch_of(archive, *used[0]) if used else None
    picture = cloth(archive, swatch, CARD, caption=False) if swatch else plain_picture(archive, draft, CARD)
    return Card(
        draft.heading,
        f"drafts/{draft.name}.html",
        picture,
        draft.weave or "",
        flag="to mend" if any(problem.is_fault for problem in archive.problems_of(draft)) else "",
        weave=draft.weave or "",
        found_by=_found_by(archive, draft),
        line=_in_a_line(archive, draft, len(used)),
        tags=draft.tags,
    )
