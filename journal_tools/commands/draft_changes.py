"""What `draft --change` does to a draft, and to what stands beside it in a file."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

import click

if TYPE_CHECKING:
    from journal_tools.drafts import Draft

MOST_TREADLES = 14
"""Treadles of a large loom (common practice, no source)."""

ENDS, PICKS, SHAFTS, TREADLES = "ends", "picks", "shafts", "treadles"


@dataclass(frozen=True)
class Change:
    """One operation on a draft.

    operation: its name in the library. means: in a weaver's words. titled: what the title says of it. renumbers:
    what is counted anew, so that what a file says of each by its number is true no longer. exchanges: whether
    warp becomes weft.
    """

    operation: str
    means: str
    titled: str
    renumbers: frozenset[str]
    exchanges: bool = False

    def unsettles(self, section: str) -> bool:
        """Whether a file's numbered section of this name would now speak of others."""
        words = section.upper().split()
        about = {ENDS} if "WARP" in words else {PICKS} if "WEFT" in words else {ENDS, PICKS, SHAFTS, TREADLES}
        return bool(about & self.renumbers)


CHANGES: Mapping[str, Change] = {
    "turned": Change(
        "turned", "warp and weft exchanged", "turned", frozenset({ENDS, PICKS, SHAFTS, TREADLES}), exchanges=True
    ),
    "mirrored": Change("mirrored", "left for right", "mirrored", frozenset({ENDS})),
    "picks-reversed": Change("reversed_picks", "the last pick first", "trodden backwards", frozenset({PICKS})),
    "lift-plan": Change("as_lift_plan", "the same cloth by a lift plan", "by a lift plan", frozenset({TREADLES})),
    "tie-up": Change(
        "as_tie_up", "the same cloth by treadles, one at a time", "by treadles, one at a time", frozenset({TREADLES})
    ),
    "two-feet": Change(
        "fewer_treadles",
        "the same cloth with two treadles at once, on fewer treadles",
        "for two feet",
        frozenset({TREADLES}),
    ),
    "other-shed": Change(
        "other_shed",
        "the same cloth on a loom whose shafts move the other way",
        "for a {shed} shed",
        frozenset({TREADLES}),
    ),
    "fewest-shafts": Change(
        "fewest_shafts",
        "the same cloth, ends that move alike on one shaft",
        "on the fewest shafts",
        frozenset({SHAFTS}),
    ),
}
"""What --change takes. The shed stays as it is, rising or sinking, but where it is what is changed."""


def changes_in_words() -> str:
    """The changes and what they mean, one a line."""
    return "\n".join(f"  {name:<15} {change.means}" for name, change in CHANGES.items())


@dataclass(frozen=True)
class Changed:
    """A draft with changes made in turn. titled: what each of them adds to the title."""

    draft: Draft
    titled: tuple[str, ...] = ()


def changed(draft: Draft, names: Sequence[str]) -> Changed:
    """The draft with some changes made in turn. Ends the command where one cannot be."""
    from journal_tools.drafts import operations
    from journal_tools.quantities import Unreadable

    titled = []
    for name in names:
        change: Callable[[Draft], Draft] = getattr(operations, CHANGES[name].operation)
        treadled = draft.tie_up is not None
        try:
            draft = change(draft)
        except Unreadable as unreadable:
            raise click.UsageError(f"--change {name}: {unreadable.right}") from None
        if name == "turned" and treadled:
            draft = treadled_again(draft)
        titled.append(CHANGES[name].titled.format(shed="rising" if draft.rising else "sinking"))
    return Changed(draft, tuple(titled))


def treadled_again(draft: Draft) -> Draft:
    """A draft that has come to a lift plan for one who has treadles: tied up where a loom has as many.

    Pattern treadles come as they are first pressed, and two that weave plain together come last.
    """
    from dataclasses import replace

    from journal_tools.drafts.fewest import plain_weave_on
    from journal_tools.drafts.operations import as_tie_up

    if len(set(draft.picks)) > MOST_TREADLES:
        return draft
    made = as_tie_up(draft)
    sheds, tabby = made.tie_up or (), plain_weave_on(draft) or ()
    if not all(lift in sheds for lift in tabby):
        return made
    order = [*(shed for shed in sheds if shed not in tabby), *(shed for shed in sheds if shed in tabby)]
    number = {shed: place for place, shed in enumerate(order, 1)}
    treadling = tuple(frozenset({number[pick]}) for pick in draft.picks)
    return replace(made, tie_up=tuple(order), treadling=treadling)
