"""How `draft` shows a draft on a terminal."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from journal_tools.drafts import Draft

MOST_SHOWN = 64
"""Threads that a terminal shows either way."""


def notation(draft: Draft) -> Iterator[str]:
    """A draft in this journal's notation, a line a part."""
    from journal_tools.notation import found_blocks, print_colours, print_profile, print_sets

    yield f"threading: {print_sets(draft.threading)}"
    if (blocks := found_blocks(draft.threading)) is not None:
        units = "; ".join(f"{letter} is {print_sets(unit)}" for letter, unit in blocks.units.items())
        yield f"  in blocks: {print_profile(blocks.order)}, where {units}"
    if draft.tie_up is not None and draft.treadling is not None:
        yield f"tie-up: {print_sets(draft.tie_up)}"
        yield f"treadling: {print_sets(draft.treadling)}"
    else:
        yield f"lift plan: {print_sets(draft.picks)}"
    if not draft.rising:
        yield "shed: sinking"
    for name, order in (("warp colours", draft.warp_colours), ("weft colours", draft.weft_colours)):
        if order:
            yield f"{name}: {print_colours(order)}"


def drawn(draft: Draft) -> Iterator[str]:
    """The drawdown in characters: two rows of picks to a line, filled where the warp is over."""
    from journal_tools.drafts import drawdown

    over = drawdown(draft)[:MOST_SHOWN, :MOST_SHOWN]
    marks = {(True, True): "█", (True, False): "▀", (False, True): "▄", (False, False): " "}
    for pick in range(0, len(over), 2):
        below = over[pick + 1] if pick + 1 < len(over) else [False] * len(over[pick])
        yield "".join(marks[bool(top), bool(low)] for top, low in zip(over[pick], below, strict=True)).rstrip()
    ends, picks = len(draft.threading), len(draft.picks)
    if ends > MOST_SHOWN or picks > MOST_SHOWN:
        yield f"(the first {min(ends, MOST_SHOWN)} of {ends} ends and {min(picks, MOST_SHOWN)} of {picks} picks)"
