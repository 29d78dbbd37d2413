"""A draft that was read as the text of a record, in this journal's notation."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from itertools import groupby

from journal_tools.drafts import Draft
from journal_tools.interchange.what_was_read import ReadDraft
from journal_tools.notation import print_colours, print_sets


def record_text(read: ReadDraft, title: str = "") -> str:
    """The record, front matter and notes; "" where no draft was read. title: where the file has none."""
    if read.draft is None:
        return ""
    lines = ["---", f"title: {_quoted(read.title or title or 'A draft')}", *_parts(read.draft), "---", ""]
    notes = [line.rstrip() for line in read.notes.split("\n")] if read.notes else []
    notes = [f"\\{line}" if line.startswith("---") else line for line in notes]
    hexes = [f"- {name}: {hex_}" for name, hex_ in sorted(read.colours.items())]
    said = [f"{key}: {value}" for key, value in read.text.items() if key != "Title"]
    told = ["Colours of the file:", "", *hexes] if hexes else []
    for part in (notes, said, list(_beside(read.draft)), told):
        lines += [*part, ""] if part else []
    return "\n".join(lines).rstrip("\n") + "\n"


def _parts(draft: Draft) -> Iterator[str]:
    yield f"shafts: {draft.shafts}"
    yield f"threading: {print_sets(draft.threading)}"
    if draft.tie_up is not None and draft.treadling is not None:
        yield f"treadles: {draft.treadles}"
        yield f"tie_up: {print_sets(draft.tie_up)}"
        yield f"treadling: {print_sets(draft.treadling)}"
    else:
        yield f"lift_plan: {print_sets(draft.picks)}"
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
    return bool(order) and all(re.fullmatch(r"[^\W\d_][\w-]*", name) for name in order)


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


def _quoted(text: str) -> str:
    escaped = text.replace("\\", "\\\\").replace('"', '\\"')
    return f'"{escaped}"'
