"""What can be done to a draft: each operation gives another draft, and says what becomes of the cloth."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import cycle, islice
from typing import TypeVar

from journal_tools.drafts.draft import Draft
from journal_tools.notation import Sets, print_sets
from journal_tools.quantities import Unreadable

T = TypeVar("T")


def mirrored(draft: Draft) -> Draft:
    """Left for right. Its inverse is itself."""
    ends = len(draft.threading)
    return replace(
        draft,
        threading=draft.threading[::-1],
        warp_colours=backwards(draft.warp_colours, ends),
        warp_order=backwards(draft.warp_order, ends),
        warp_thickness=backwards(draft.warp_thickness, ends),
        warp_spacing=backwards(draft.warp_spacing, ends),
    )


def reversed_picks(draft: Draft) -> Draft:
    """The last pick first. Its inverse is itself."""
    picks = len(draft.picks)
    return replace(
        draft,
        treadling=None if draft.treadling is None else draft.treadling[::-1],
        lift_plan=None if draft.lift_plan is None else draft.lift_plan[::-1],
        weft_colours=backwards(draft.weft_colours, picks),
        weft_order=backwards(draft.weft_order, picks),
        weft_thickness=backwards(draft.weft_thickness, picks),
        weft_spacing=backwards(draft.weft_spacing, picks),
    )


def turned(draft: Draft) -> Draft:
    """By a quarter: what was weft is warp, and lies as the weft lay. Twice turned it weaves the same cloth again.

    Ends take a shaft for each different shed; what was warp is thrown by a lift plan.
    """
    sheds = list(dict.fromkeys(draft.picks))
    shaft = {shed: number for number, shed in enumerate(sheds, 1)}
    up = {
        end: frozenset(shaft[shed] for shed in sheds if bool(shed & end) != draft.rising)
        for end in set(draft.threading)
    }
    return Draft(
        tuple(frozenset({shaft[pick]}) for pick in draft.picks),
        lift_plan=tuple(up[end] for end in draft.threading),
        warp_colours=draft.weft_colours,
        weft_colours=draft.warp_colours,
        warp_order=draft.weft_order,
        weft_order=draft.warp_order,
        warp_thickness=draft.weft_thickness,
        weft_thickness=draft.warp_thickness,
        warp_spacing=draft.weft_spacing,
        weft_spacing=draft.warp_spacing,
    )


def as_lift_plan(draft: Draft) -> Draft:
    """The same cloth by a lift plan. Its inverse is `as_tie_up`."""
    return replace(draft, tie_up=None, treadling=None, lift_plan=draft.picks)


def as_tie_up(draft: Draft) -> Draft:
    """The same cloth by treadles pressed one at a time: one for each different shed, which is the fewest there are."""
    sheds = list(dict.fromkeys(draft.picks))
    number = {shed: place for place, shed in enumerate(sheds, 1)}
    treadling = tuple(frozenset({number[pick]}) for pick in draft.picks)
    return replace(draft, lift_plan=None, tie_up=tuple(sheds), treadling=treadling)


def fewer_treadles(draft: Draft, at_once: int = 2) -> Draft:
    """The same cloth with several treadles pressed at once, so that a loom with few can weave it.

    A shed that others make together needs no treadle of its own; where it saves more, shafts are tied one
    to a treadle. The fewest that this finds: a search of all ways would take too long.
    """
    sheds = list(dict.fromkeys(draft.picks))
    own, pressed = _own_and_pressed(sheds, at_once)
    moved = sorted(frozenset[int]().union(*sheds))
    if len(moved) < len(own) and all(len(shed) <= at_once for shed in sheds):
        own = [frozenset({shaft}) for shaft in moved]
        pressed = {shed: frozenset(moved.index(shaft) + 1 for shaft in shed) for shed in sheds}
    treadling = tuple(pressed[pick] for pick in draft.picks)
    return replace(draft, lift_plan=None, tie_up=tuple(own) or (frozenset(),), treadling=treadling)


def _own_and_pressed(
    sheds: Sequence[frozenset[int]], at_once: int
) -> tuple[list[frozenset[int]], dict[frozenset[int], frozenset[int]]]:
    """The sheds that have a treadle of their own, and for each shed the treadles that make it."""
    own = [shed for shed in sheds if shed]
    for shed in sorted(own, key=len, reverse=True):
        others = [other for other in own if other != shed and other < shed]
        if _together(shed, others, at_once):
            own.remove(shed)
    number = {shed: place for place, shed in enumerate(own, 1)}
    pressed = {}
    for shed in sheds:
        parts = [shed] if shed in number else _together(shed, [other for other in own if other < shed], at_once)
        pressed[shed] = frozenset(number[part] for part in parts) if shed else frozenset[int]()
    return own, pressed


def _together(shed: frozenset[int], others: Sequence[frozenset[int]], at_once: int) -> list[frozenset[int]]:
    """Others that make a shed, at most so many; [] where none do."""
    if at_once < 1:
        return []
    for other in others:
        rest = shed - other
        if not rest:
            return [other]
        more = (
            _together(rest, [each for each in others if each <= shed and each & rest], at_once - 1)
            or [each for each in others if at_once > 1 and rest <= each][:1]
        )
        if more and len(more) < at_once:
            return [other, *more]
    return []


def other_shed(draft: Draft) -> Draft:
    """The same cloth on a loom whose shafts move the other way: what rose stays, what stayed sinks.

    Raises Unreadable where an end is on no shaft or on several, which such a change does not keep.
    """
    for number, end in enumerate(draft.threading, 1):
        if len(end) != 1:
            right = (
                f"End {number} is on {'no shaft' if not end else 'several shafts'}; the shed cannot be changed for it."
            )
            raise Unreadable(print_sets([end]), right)
    every = frozenset(range(1, draft.shafts + 1))
    one_at_a_time = draft.treadling is not None and all(len(pressed) == 1 for pressed in draft.treadling)
    if draft.tie_up is not None and one_at_a_time:
        return replace(draft, rising=not draft.rising, tie_up=tuple(every - tied for tied in draft.tie_up))
    lifts = tuple(every - pick for pick in draft.picks)
    return replace(draft, rising=not draft.rising, tie_up=None, treadling=None, lift_plan=lifts)


def fewest_shafts(draft: Draft) -> Draft:
    """The same cloth with one shaft for all ends that move alike, in the order in which they come."""
    up = {
        end: frozenset(n for n, pick in enumerate(draft.picks) if bool(pick & end) == draft.rising)
        for end in set(draft.threading)
    }
    moves = {moved: n for n, moved in enumerate(dict.fromkeys(up[end] for end in draft.threading if up[end]), 1)}
    threading = tuple(frozenset({moves[up[end]]}) if up[end] else frozenset[int]() for end in draft.threading)
    lifts = tuple(frozenset(n for moved, n in moves.items() if pick in moved) for pick in range(len(draft.picks)))
    plain = replace(draft, threading=threading, tie_up=None, treadling=None, lift_plan=lifts, rising=True)
    return plain if draft.lift_plan is not None else as_tie_up(plain)


def backwards(order: Sequence[T], number: int) -> tuple[T, ...]:
    """An order of so many threads from its end; one that repeats throughout may begin elsewhere then."""
    return tuple(islice(cycle(order), number))[::-1] if len(set(order)) > 1 else tuple(order)


def shifted(sets: Sets, by: int) -> Sets:
    """The same with every number so much higher."""
    return tuple(frozenset(each + by for each in some) for some in sets)
