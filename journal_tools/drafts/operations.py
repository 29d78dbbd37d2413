"""What can be done to a draft: each operation gives another draft, and says what becomes of the cloth."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import cycle, islice
from typing import TypeVar

from journal_tools.drafts.draft import Draft
from journal_tools.drafts.shared_treadles import shared
from journal_tools.notation import Sets, print_sets
from journal_tools.notation.lists import HIGHEST
from journal_tools.quantities import Unreadable

T = TypeVar("T")

MOST_SHEDS = 1_000
"""Different sheds among which those that others make are looked for, which takes about a second."""


def mirrored(draft: Draft) -> Draft:
    """Left for right. Twice, it weaves the same cloth, though a short colour order comes back written out."""
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
    """The last pick first. Twice, it weaves the same cloth, though a short colour order comes back written out."""
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
    """Warp and weft exchanged: what was weft is warp, and lies as it lay. Twice turned it weaves the same cloth again.

    Ends take a shaft for each different shed; what was warp is thrown by a lift plan. The shed stays as it is,
    and so do floating selvedges, which now stand beside other threads.
    Raises Unreadable for more than HIGHEST different sheds.
    """
    sheds = list(dict.fromkeys(draft.picks))
    _refuse_more_than_are_counted(len(sheds), "shafts")
    shaft = {shed: number for number, shed in enumerate(sheds, 1)}
    # Where an end was moved the warp lay on the side that moved ends lie on; now the weft does, so the others move.
    moved = {end: frozenset(shaft[shed] for shed in sheds if not shed & end) for end in set(draft.threading)}
    return Draft(
        tuple(frozenset({shaft[pick]}) for pick in draft.picks),
        lift_plan=tuple(moved[end] for end in draft.threading),
        rising=draft.rising,
        warp_colours=draft.weft_colours,
        weft_colours=draft.warp_colours,
        warp_order=draft.weft_order,
        weft_order=draft.warp_order,
        warp_thickness=draft.weft_thickness,
        weft_thickness=draft.warp_thickness,
        warp_spacing=draft.weft_spacing,
        weft_spacing=draft.warp_spacing,
        floating_selvedges=draft.floating_selvedges,
    )


def as_lift_plan(draft: Draft) -> Draft:
    """The same cloth by a lift plan. Its inverse is `as_tie_up`."""
    return replace(draft, tie_up=None, treadling=None, lift_plan=draft.picks)


def as_tie_up(draft: Draft) -> Draft:
    """The same cloth by treadles pressed one at a time: one for each different shed, which is the fewest there are.

    Raises Unreadable for more than HIGHEST of them.
    """
    sheds = list(dict.fromkeys(draft.picks))
    _refuse_more_than_are_counted(len(sheds), "treadles")
    number = {shed: place for place, shed in enumerate(sheds, 1)}
    treadling = tuple(frozenset({number[pick]}) for pick in draft.picks)
    return replace(draft, lift_plan=None, tie_up=tuple(sheds), treadling=treadling)


def fewer_treadles(draft: Draft, at_once: int = 2) -> Draft:
    """The same cloth with several treadles pressed at once, so that a loom with few can weave it.

    A shed that others make together needs no treadle of its own; where it saves more, shafts are tied one
    to a treadle. The fewest that this finds: a search of all ways would take too long.
    Raises Unreadable for more than MOST_SHEDS different sheds, and where more than HIGHEST treadles are left.
    """
    sheds = list(dict.fromkeys(draft.picks))
    if len(sheds) > MOST_SHEDS:
        right = f"It has {len(sheds):,} different sheds; which of them others make is looked for among {MOST_SHEDS:,}."
        raise Unreadable(f"{len(sheds):,} different sheds", right)
    parts = shared(sheds, at_once)
    own = [shed for shed in sheds if parts[shed] == (shed,)]
    moved = sorted(frozenset[int]().union(*sheds))
    if len(moved) < len(own) and all(len(shed) <= at_once for shed in sheds):
        own = [frozenset({shaft}) for shaft in moved]
        parts = {shed: tuple(frozenset({shaft}) for shaft in sorted(shed)) for shed in sheds}
    _refuse_more_than_are_counted(len(own), "treadles")
    number = {shed: place for place, shed in enumerate(own, 1)}
    treadling = tuple(frozenset(number[part] for part in parts[pick]) for pick in draft.picks)
    made = replace(draft, lift_plan=None, tie_up=tuple(own) or (frozenset(),), treadling=treadling)
    if made.picks != draft.picks:  # a cloth that is not the same must never leave here
        raise Unreadable("", "The treadles that were found do not weave the same cloth; keep the draft as it is.")
    return made


def _refuse_more_than_are_counted(number: int, what: str) -> None:
    """Raise Unreadable for more shafts or treadles than any draft is read with."""
    if number > HIGHEST:
        raise Unreadable(f"{number:,} {what}", f"{number:,} {what} would be wanted, and {HIGHEST} are the most.")


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
    """The same cloth with one shaft for all ends that move alike, in the order in which they come.

    The shed and the treadling stay; an end that never moves is left without a heddle.
    Raises Unreadable for more than HIGHEST ends that move differently.
    """
    when = {end: frozenset(n for n, pick in enumerate(draft.picks) if pick & end) for end in set(draft.threading)}
    first = {when[end]: end for end in reversed(draft.threading) if when[end]}
    moves = list(dict.fromkeys(when[end] for end in draft.threading if when[end]))
    _refuse_more_than_are_counted(len(moves), "shafts")
    shaft = {moved: number for number, moved in enumerate(moves, 1)}

    def moving(shafts: frozenset[int]) -> frozenset[int]:
        """The new shafts of a treadle or a lift: those whose first end it moves."""
        return frozenset(shaft[moved] for moved in moves if first[moved] & shafts)

    return replace(
        draft,
        threading=tuple(frozenset({shaft[when[end]]}) if when[end] else frozenset[int]() for end in draft.threading),
        tie_up=None if draft.tie_up is None else tuple(map(moving, draft.tie_up)),
        lift_plan=None if draft.lift_plan is None else tuple(map(moving, draft.lift_plan)),
    )


def backwards(order: Sequence[T], number: int) -> tuple[T, ...]:
    """An order of so many threads from its end: written out where it is shorter, whole where it is longer."""
    written = islice(cycle(order), max(number, len(order))) if len(set(order)) > 1 else order
    return tuple(written)[::-1]


def shifted(sets: Sets, by: int) -> Sets:
    """The same with every number so much higher."""
    return tuple(frozenset(each + by for each in some) for some in sets)
