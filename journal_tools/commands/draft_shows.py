"""A draft as a record would write it, for the terminal and for a text file."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from journal_tools.drafts import Draft

def notation(draft: Draft) -> Iterator[str]:
    """A draft in this journal's notation, a line a part."""
    from journal_tools.notation import (
        found_blocks,
        print_colours,
        print_lift_plan,
        print_profile,
        print_sets,
        print_tie_up,
    )

    yield f"threading: {print_sets(draft.threading)}"
    if (blocks := found_blocks(draft.threading)) is not None:
        units = "; ".join(f"{letter} is {print_sets(unit)}" for letter, unit in blocks.units.items())
        yield f"  in blocks: {print_profile(blocks.order)}, where {units}"
    if draft.tie_up is not None and draft.treadling is not None:
        yield f"tie-up: {print_tie_up(draft.tie_up)}"
        yield f"treadling: {print_sets(draft.treadling)}"
    else:
        yield f"lift plan: {print_lift_plan(draft.picks)}"
    if not draft.rising:
        yield "shed: sinking"
    for name, order in (("warp colours", draft.warp_colours), ("weft colours", draft.weft_colours)):
        if order:
            yield f"{name}: {print_colours(order)}"
    for name, order in (("warp order", draft.warp_order), ("weft order", draft.weft_order)):
        if order:
            yield f"{name}: {print_colours(order)}"
    yield from _sizes(draft)
    if draft.floating_selvedges:
        yield f"floating selvedges: {draft.floating_selvedges}"


def _sizes(draft: Draft) -> Iterator[str]:
    """The room and the thickness of threads, where they are not all alike; of ends in dents, the dents."""
    from journal_tools.commands.draft_dents import dents_of
    from journal_tools.notation import print_dents

    dents = dents_of(draft.warp_spacing)
    if dents is not None:
        yield f"ends in dents: {print_dents(dents)}"
    for name, figures in (
        ("room of each end beside the usual", draft.warp_spacing if dents is None else ()),
        ("room of each pick beside the usual", draft.weft_spacing),
        ("thickness of each end beside the usual", draft.warp_thickness),
        ("thickness of each pick beside the usual", draft.weft_thickness),
    ):
        if len(set(figures)) > 1 or (figures and figures[0] != 1):
            runs = ((figure, len(list(alike))) for figure, alike in groupby(figures))
            yield f"{name}: {', '.join(f'{number} of {figure:g}' for figure, number in runs)}"
