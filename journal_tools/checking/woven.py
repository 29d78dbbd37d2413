"""From the record of a draft to the draft that is woven, and all that is wrong on the way."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator

from journal_tools.drafts import Draft as Woven
from journal_tools.drafts.double_cloth import double_cloth
from journal_tools.drafts.making import (
    Accent,
    from_blocks,
    refuse_what_is_not_held,
    spacing_in_dents,
    with_accents,
    with_tabby,
)
from journal_tools.drafts.unfitting import Unfitting
from journal_tools.quantities import Unreadable
from journal_tools.records import Draft
from journal_tools.records.draft_parts import AccentEnd
from journal_tools.records.notated import ColourOrder

OF_EACH_LAYER = (
    *("threading", "tie_up", "treadling", "lift_plan", "shed", "warp_colours", "weft_colours", "blocks", "profile"),
    *("profile_treadling", "tabby_between", "warp_order", "weft_order"),
)
"""Keys that each layer of a double cloth has for itself."""

OF_THE_WHOLE = ("ends_in_dents", "floating_selvedges")
"""Keys that a double cloth has, and its layers have not."""

NO_ORDER = "Nothing says in which order the blocks come: `profile: 4 A, 2 B` or `profile_treadling: 4 A, 2 B`."


def woven_draft(draft: Draft) -> Woven:
    """The draft that a record's text describes. Raises Unreadable when its parts do not fit together."""
    for wrong in idle_keys(draft):
        raise wrong
    return _made(draft)


def unfitting(draft: Draft) -> Iterator[Unreadable]:
    """All that keeps a record from being woven: keys that would do nothing, and then the first part that does not fit.

    Where a part does not fit, those that are made of it cannot be told of.
    """
    yield from idle_keys(draft)
    try:
        _made(draft)
    except Unreadable as unreadable:
        yield unreadable


def idle_keys(draft: Draft, *, is_layer: bool = False) -> Iterator[Unfitting]:
    """Keys of a record that would be passed over in silence."""
    if draft.upper is not None and draft.lower is not None:
        for key in filter(draft.line, OF_EACH_LAYER):
            right = "Each layer of a double cloth has its own: write it below `upper:` and below `lower:`."
            yield Unfitting("", right, part=key)
    if is_layer:
        for key in filter(draft.line, OF_THE_WHOLE):
            right = "Both layers share the reed and the edges: write it for the whole, beside `upper:` and `lower:`."
            yield Unfitting("", right, part=key)
    for name, layer in (("upper", draft.upper), ("lower", draft.lower)):
        if layer is not None:
            yield from (wrong.in_layer(name) for wrong in idle_keys(layer, is_layer=True))


def without_order(draft: Draft) -> bool:
    """Whether a record has blocks and nothing that puts them in order."""
    return bool(draft.blocks) and draft.profile is None and draft.profile_treadling is None


def comes_out_even(one: int, other: int) -> bool:
    """Whether two numbers of ends come out even: one goes into the other a whole number of times."""
    return max(one, other) % min(one, other) == 0


def _made(draft: Draft) -> Woven:
    refuse_what_is_not_held((draft.weave or "",))
    refuse_what_is_not_held(_items(draft.warp_order), "warp_order")
    made = _layered(draft) if draft.upper is not None or draft.lower is not None else _single(draft)
    made = _sleyed(made, draft)
    made.refuse_beyond(draft.shafts.number if draft.shafts else None, draft.treadles.number if draft.treadles else None)
    return made


def _layered(draft: Draft) -> Woven:
    if draft.upper is None or draft.lower is None:
        right = "A double cloth wants both its layers, upper and lower."
        raise Unfitting("", right, part="lower" if draft.upper is None else "upper")
    made = double_cloth(_layer(draft.upper, "upper"), _layer(draft.lower, "lower"))
    return dataclasses.replace(made, floating_selvedges=_floating(draft))


def _layer(draft: Draft, name: str) -> Woven:
    try:
        return _made(draft)
    except Unfitting as unfitting:
        raise unfitting.in_layer(name) from unfitting
    except Unreadable as unreadable:
        raise Unfitting(unreadable.read, unreadable.right, part=name) from unreadable


def _single(draft: Draft) -> Woven:
    units = draft.blocks or {}
    for key, profile in (("threading", "profile"), ("treadling", "profile_treadling")):
        if getattr(draft, key) is not None and getattr(draft, profile) is not None:
            raise Unfitting("", f"Write either the {key} thread by thread, or its profile, and not both.", part=profile)
    if draft.threading is None and without_order(draft):
        raise Unfitting("", NO_ORDER, part="blocks")
    threading = draft.threading.items if draft.threading else ()
    if draft.profile is not None:
        ends = {letter: block.threading.items if block.threading else None for letter, block in units.items()}
        threading = from_blocks(ends, draft.profile.items, "threading")
    treadling = draft.treadling.items if draft.treadling else None
    if draft.profile_treadling is not None:
        picks = {letter: block.treadling.items if block.treadling else None for letter, block in units.items()}
        treadling = from_blocks(picks, draft.profile_treadling.items, "treadling")
    lifts, order = draft.lift_plan.items if draft.lift_plan else None, _items(draft.weft_order)
    if draft.tabby_between is not None:
        treadling = None if treadling is None else with_tabby(treadling, draft.tabby_between.items)
        lifts = None if lifts is None else with_tabby(lifts, draft.tabby_between.items)
        order = order or ("pattern", "tabby")
    return Woven(
        threading,
        draft.tie_up.items if draft.tie_up else None,
        treadling,
        lifts,
        draft.shed == "rising",
        _items(draft.warp_colours),
        _items(draft.weft_colours),
        _items(draft.warp_order),
        order,
        floating_selvedges=_floating(draft),
    )


def _sleyed(made: Woven, draft: Draft) -> Woven:
    """With its accents, in its dents. Dents that hold the added ends too are those of the whole."""
    accents = [_accent(each) for each in draft.accents]
    room = spacing_in_dents(draft.ends_in_dents.items) if draft.ends_in_dents else ()
    whole = len(made.threading) + sum(accent.added for accent in accents)
    of_the_whole = bool(room) and comes_out_even(len(room), whole)
    if room and not of_the_whole:
        made = dataclasses.replace(made, warp_spacing=room)
    if accents:
        made = with_accents(made, accents)
    return dataclasses.replace(made, warp_spacing=room) if of_the_whole else made


def _items(order: ColourOrder | None) -> tuple[str, ...]:
    return order.items if order else ()


def _floating(draft: Draft) -> int:
    return draft.floating_selvedges.number if draft.floating_selvedges else 0


def _accent(end: AccentEnd) -> Accent:
    shafts = end.shaft.items[0] if end.shaft else frozenset[int]()
    return Accent(end.end.number if end.end else 0, shafts, end.colour or "", end.way == "added")
