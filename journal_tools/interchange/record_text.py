"""A draft that was read as the text of a record, in this journal's notation."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby

from journal_tools.drafts import Draft
from journal_tools.interchange.lines import without_unseen
from journal_tools.interchange.plain_markdown import plain_markdown
from journal_tools.interchange.what_was_read import ReadDraft
from journal_tools.interchange.words import OPEN, TEXT
from journal_tools.notation import is_colour, print_colours, print_lift_plan, print_sets, print_tie_up
from journal_tools.quantities import show_density

MOST_NOTES = 60_000
"""Letters of one part of the notes; a record is a page that is read, and has a largest size."""


def record_text(read: ReadDraft, title: str = "") -> str:
    """The record, front matter and notes; "" where no draft was read. title: where the file has none.

    All that a record has no key for stands in its notes, but what may be somebody's address.
    """
    if read.draft is None:
        return ""
    titles = (_one_line(each) for each in (read.title, title))
    called = next(filter(None, titles), "A draft")
    lines = ["---", f"title: {_quoted(called)}", *_parts(read.draft), "---", ""]
    notes = [plain_markdown(line) for line in read.notes.split("\n")] if read.notes.strip() else []
    for what, part in (
        ("Notes", notes),
        ("What the file says", [f"- {line}" for line in _said(read)]),
        ("Uneven threads", list(_beside(read.draft))),
        ("Colours", list(_colours(read))),
        ("Sections that mean nothing here", list(_kept(read))),
    ):
        if sum(map(len, part)) > MOST_NOTES:
            part = [f"{what}: too long for a record; see the interchange file."]
        lines += [*part, ""] if part else []
    return "\n".join(lines).rstrip("\n") + "\n"


def _said(read: ReadDraft) -> Iterator[str]:
    """What a file says beside its draft, a line each."""
    if author := read.text.get("Author"):
        yield f"Author: {plain_markdown(author)}"
    closed = [key for key in read.text if key not in OPEN]
    if closed:
        known = [key for key in closed if key in TEXT]
        known += [f"{len(closed) - len(known)} more"] if len(known) < len(closed) else []
        yield f"Left out, since it may be private: {', '.join(known)}"
    for what, per_m in (("Ends", read.ends_per_m), ("Picks", read.picks_per_m)):
        if per_m:
            yield f"{what} in its length: {show_density(per_m, 'in')}, that is {show_density(per_m, 'cm')}"
    for what, mm in (("end", read.end_mm), ("pick", read.pick_mm)):
        if mm:
            yield f"Thickness of a usual {what}: {mm:.3g} mm"
    draft = read.draft
    for what, said, used in (
        ("shafts", read.shafts, draft.shafts if draft else 0),
        ("treadles", read.treadles, draft.treadles if draft else 0),
    ):
        if said is not None and said != used:
            yield f"It is made for {said} {what}"
    if read.profile:
        yield "It is a profile draft: its shafts stand for blocks"
    if read.developers:
        yield f"Developers: {plain_markdown(read.developers)}"
    for what, order in (("warp", draft.warp_order if draft else ()), ("weft", draft.weft_order if draft else ())):
        if order and not _is_named(order):
            yield f"Order of the {what}, with names that no order here can hold: {plain_markdown(', '.join(order))}"


def _colours(read: ReadDraft) -> Iterator[str]:
    """The colours that threads have, and the others of the table."""
    used = {*read.draft.warp_colours, *read.draft.weft_colours} if read.draft else set()
    listed = [f"- {plain_markdown(name)}: {hex_}" for name, hex_ in sorted(read.colours.items()) if name in used]
    others = [f"{plain_markdown(name)} {hex_}" for name, hex_ in sorted(read.colours.items()) if name not in used]
    if listed:
        yield from ("Colours of the file:", "", *listed)
    if others:
        yield from ("", f"Colours of its table that no thread has: {', '.join(others)}.")


def _kept(read: ReadDraft) -> Iterator[str]:
    """The sections that mean nothing here, as they stood."""
    for kept in read.kept:
        yield f"The file has a section {plain_markdown(f'[{kept.name}]')}, which means nothing here:"
        yield from ("", *(f"    {line}".rstrip() for line in kept.lines), "")


def _parts(draft: Draft) -> Iterator[str]:
    yield f"shafts: {draft.shafts}"
    yield f"threading: {print_sets(draft.threading)}"
    if draft.tie_up is not None and draft.treadling is not None:
        yield f"treadles: {draft.treadles}"
        yield f"tie_up: {print_tie_up(draft.tie_up)}"
        yield f"treadling: {print_sets(draft.treadling)}"
    else:
        yield f"lift_plan: {print_lift_plan(draft.picks)}"
    if not draft.rising:
        yield "shed: sinking"
    if draft.warp_colours:
        yield f"warp_colours: {print_colours(draft.warp_colours)}"
    if draft.weft_colours:
        yield f"weft_colours: {print_colours(draft.weft_colours)}"
    if _is_named(draft.warp_order):
        yield f"warp_order: {print_colours(draft.warp_order)}"
    if _is_named(draft.weft_order):
        yield f"weft_order: {print_colours(draft.weft_order)}"
    if draft.floating_selvedges:
        yield f"floating_selvedges: {draft.floating_selvedges}"


def _is_named(order: Sequence[str]) -> bool:
    """Whether an order's names can stand in a record's notation."""
    return bool(order) and all(map(is_colour, order))


def _beside(draft: Draft) -> Iterator[str]:
    """What a record has no key for, thread by thread, in words."""
    for what, figures in (
        ("Room of each end beside the usual", draft.warp_spacing),
        ("Room of each pick beside the usual", draft.weft_spacing),
        ("Thickness of each end beside the usual", draft.warp_thickness),
        ("Thickness of each pick beside the usual", draft.weft_thickness),
    ):
        if figures:
            runs = ((figure, len(list(alike))) for figure, alike in groupby(figures))
            yield f"{what}: " + ", ".join(f"{number} of {figure:g}" for figure, number in runs) + "."


def _one_line(text: str) -> str:
    return " ".join(without_unseen(text)[0].split())


def _quoted(line: str) -> str:
    escaped = line.replace("\\", "\\\\").replace('"', '\\"')
    return f'"{escaped}"'
