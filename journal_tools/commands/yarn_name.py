"""Which yarn of the journal is meant by what was typed."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from journal_tools.records import Journal


def known_yarn(journal: Journal, typed: str) -> tuple[str, str]:
    """The yarn's name, or "" and what to say: the names that are near, else those that there are.

    A yarn is known by its record, or by a warp that has it.
    """
    from journal_tools.problems import nearest
    from journal_tools.records.yarns_used import all_yarns, find_yarn, labelled_yarns

    name, _, record = find_yarn(journal, typed)
    known = dict.fromkeys(yarn.name for warp in journal.warps.values() for yarn in all_yarns(journal, warp))
    if record is not None or name in known:
        return name, ""
    labelled = [yarn.name for yarn in labelled_yarns(journal, typed)]
    if labelled:
        return "", f'Several yarns here are labelled "{typed}"; name one of them: {", ".join(labelled)}.'
    names = sorted({*known, *journal.yarns})
    near = nearest(name, names)
    if near:
        more = f" Did you mean {near}?"
    else:
        more = f" Yarns here: {', '.join(names)}." if names else ""
    return "", f'This journal has no yarn called "{typed}".{more}'
