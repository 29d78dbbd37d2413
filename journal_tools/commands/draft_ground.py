"""What a cloth weaves without its supplementary warp, whose floats hide the ground where both are taken as one."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from journal_tools.drafts import Draft

SUPPLEMENTARY = "supplementary"


def ground_of(draft: Draft) -> Draft | None:
    """The draft without its supplementary ends; None where it has none, or no others."""
    order, threading = draft.warp_order, draft.threading
    if len(order) > len(threading) and len(order) % len(threading) == 0:
        threading *= len(order) // len(threading)
    ends = len(threading)
    kept = [end for end in range(ends) if order and SUPPLEMENTARY not in order[end % len(order)]]
    if not kept or len(kept) == ends:
        return None

    def of_kept(each: tuple[str, ...]) -> tuple[str, ...]:
        return tuple(each[end % len(each)] for end in kept) if each else ()

    return replace(
        draft,
        threading=tuple(threading[end] for end in kept),
        warp_colours=of_kept(draft.warp_colours),
        warp_order=of_kept(order),
        warp_spacing=(),
        warp_thickness=(),
    )


def ground_weave(draft: Draft) -> str | None:
    """The name of what the ground weaves, in words; None where the draft has no ground of its own."""
    from journal_tools.drafts.analysis import analysed
    from journal_tools.drafts.naming import NOT_NAMED

    ground = ground_of(draft)
    if ground is None:
        return None
    looked = analysed(ground)
    if not looked.hanging.together and not looked.layers:
        return "a cloth that does not hang together"
    return "a weave without a name here" if looked.name.kind == NOT_NAMED else looked.name.text


def ground_sentence(draft: Draft) -> Iterator[str]:
    """What is said of it beside the whole."""
    if (weave := ground_weave(draft)) is not None:
        yield f"Without its supplementary ends: {weave}."
