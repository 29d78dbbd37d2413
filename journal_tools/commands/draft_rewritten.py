"""The record that `draft --to x.md` writes: its own text as it stands, or what a change makes of it."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

import click

from journal_tools.commands.draft_changes import CHANGES
from journal_tools.commands.draft_dents import dents_of
from journal_tools.commands.draft_record import TO_BE_WRITTEN_OUT, OwnText

if TYPE_CHECKING:
    from journal_tools.commands.draft_found import Found
    from journal_tools.drafts.analysis import Analysis

KEPT = ("weave", "tags", "notes_for_everyone")
"""Keys that hold for a draft after a change too, and go with it as they were typed."""

WRITTEN_ANEW = {
    *("title", "shafts", "treadles", "threading", "tie_up", "treadling", "lift_plan", "shed", "warp_colours"),
    *("weft_colours", "warp_order", "weft_order", "ends_in_dents", "floating_selvedges"),
}


def record_of(found: Found, looked: Analysis, changes: Sequence[str], title: str) -> bytes:
    """The record. Colours are told where they came from a file: those of the shelf stand on the shelf.

    Without a change a record stays as it was typed. With one its threads are written out; title, tags, notes, and
    the name of its weave where the change leaves it, go with it; what does not is told.
    """
    from journal_tools.interchange import ReadDraft, record_text

    if found.text is not None and not changes:
        return found.text.whole
    draft = looked.draft
    read = found.read or ReadDraft(draft)
    usual = 0 if _exchanged(changes) else found.usual_dent
    dents = dents_of(draft.warp_spacing, usual)
    bare = dataclasses.replace(draft, warp_spacing=()) if dents is not None else draft
    text = record_text(dataclasses.replace(read, draft=bare, text={**read.text, "Title": title}))
    if dents is not None:
        from journal_tools.notation import print_dents

        text = _with_lines(text, [f"ends_in_dents: {print_dents(dents)}"])
        if not usual:
            said = "ends_in_dents is by the room of each end: set it right if a usual dent holds another number."
            click.secho(said, fg="yellow", err=True)
    if found.text is None:
        return text.encode()
    parts = {key: found.text.part(key) for key in KEPT if key in found.text.keys}
    if not _weave_stays(looked, found.said, changes):
        parts.pop("weave", "")
    for said in _told(found.text, parts):
        click.secho(said, fg="yellow", err=True)
    text = _with_lines(text, list(parts.values()))
    notes = found.text.notes.strip("\r\n")
    return (f"{text}\n{notes}\n" if notes else text).encode()


def _with_lines(text: str, lines: Sequence[str]) -> str:
    """A record with more lines at the end of its header."""
    head, fence, rest = text.partition("\n---\n")
    return "\n".join([head, *lines]) + fence + rest


def _exchanged(changes: Sequence[str]) -> bool:
    return sum(CHANGES[name].exchanges for name in changes) % 2 == 1


def _weave_stays(looked: Analysis, said: str, changes: Sequence[str]) -> bool:
    """Whether what a record calls its weave holds after the changes.

    Where warp and weft are exchanged only a name that is known can be held against the cloth.
    """
    from journal_tools.drafts import named_weave
    from journal_tools.drafts.analysis import analysed

    if named_weave(said) is None:
        return not _exchanged(changes)
    return analysed(looked.draft, said_weave=said).answer not in ("another", "its other side")


def _told(text: OwnText, parts: dict[str, str]) -> Iterator[str]:
    """What of the record is written otherwise, and what is not written."""
    named = [key for key in text.keys if key in TO_BE_WRITTEN_OUT]
    if named:
        yield f"Written out thread by thread: {', '.join(named)}."
    left = [key for key in text.keys if key not in {*WRITTEN_ANEW, *TO_BE_WRITTEN_OUT, *parts}]
    if left:
        yield f"Left out, since it held for the draft before: {', '.join(left)}."
