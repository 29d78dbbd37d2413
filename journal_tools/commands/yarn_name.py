"""Which yarn of the journal is meant by what was typed."""

from __future__ import annotations

from journal_tools.records import Journal


def labelled(journal: Journal, typed: str) -> list[str]:
    """The names of the yarns whose label says this, such as 8/2 cotton."""
    from journal_tools.records.readers import slug

    return [name for name, yarn in journal.yarns.items() if yarn.number and slug(yarn.number) == slug(typed)]


def known_yarn(journal: Journal, typed: str) -> tuple[str, str]:
    """The yarn's name, or "" and what to say: the names that are near, else those that there are.

    A yarn is known by its record, or by a warp that has it.
    """
    from journal_tools.problems import nearest
    from journal_tools.records.yarns_used import all_yarns, find_yarn

    name, _, record = find_yarn(journal, typed)
    if record is not None:
        return name, ""
    known = dict.fromkeys(yarn.name for warp in journal.warps.values() for yarn in all_yarns(journal, warp))
    if name in known:
        return name, ""
    called = labelled(journal, typed)
    if len(called) == 1:
        return called[0], ""
    if called:
        return "", f'Several yarns here are labelled "{typed}"; name one of them: {", ".join(called)}.'
    names = sorted({*known, *journal.yarns})
    near = nearest(name, names)
    if near:
        more = f" Did you mean {near}?"
    else:
        more = f" Yarns here: {', '.join(names)}." if names else ""
    return "", f'This journal has no yarn called "{typed}".{more}'
