"""What `draft --change` does to a draft, and to what stands beside it in a file."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

import click

if TYPE_CHECKING:
    from journal_tools.drafts import Draft

ENDS, PICKS, SHAFTS, TREADLES = "ends", "picks", "shafts", "treadles"


@dataclass(frozen=True)
class Change:
    """One operation on a draft.

    operation: its name in the library. means: in a weaver's words. renumbers: what is counted anew, so that
    what a file says of each by its number is true no longer. exchanges: whether warp becomes weft.
    """

    operation: str
    means: str
    renumbers: frozenset[str]
    exchanges: bool = False

    def unsettles(self, section: str) -> bool:
        """Whether a file's numbered section of this name would now speak of others."""
        words = section.upper().split()
        about = {ENDS} if "WARP" in words else {PICKS} if "WEFT" in words else {ENDS, PICKS, SHAFTS, TREADLES}
        return bool(about & self.renumbers)


CHANGES: Mapping[str, Change] = {
    "turned": Change(
        "turned",
        "by a quarter: warp becomes weft",
        frozenset({ENDS, PICKS, SHAFTS, TREADLES}),
        exchanges=True,
    ),
    "mirrored": Change("mirrored", "left for right", frozenset({ENDS})),
    "picks-reversed": Change("reversed_picks", "the last pick first", frozenset({PICKS})),
    "lift-plan": Change("as_lift_plan", "the same cloth by a lift plan", frozenset({TREADLES})),
    "tie-up": Change("as_tie_up", "the same cloth by treadles, one at a time", frozenset({TREADLES})),
    "two-feet": Change(
        "fewer_treadles", "the same cloth with two treadles at once, on fewer treadles", frozenset({TREADLES})
    ),
    "other-shed": Change(
        "other_shed", "the same cloth on a loom whose shafts move the other way", frozenset({TREADLES})
    ),
    "fewest-shafts": Change("fewest_shafts", "the same cloth, ends that move alike on one shaft", frozenset({SHAFTS})),
}
"""What --change takes. The shed stays as it is, rising or sinking, but where it is what is changed."""


def changes_in_words() -> str:
    """The changes and what they mean, one a line."""
    return "\n".join(f"  {name:<15} {change.means}" for name, change in CHANGES.items())


def changed(draft: Draft, names: Sequence[str]) -> Draft:
    """The draft with some changes made in turn. Ends the command where one cannot be."""
    from journal_tools.drafts import operations
    from journal_tools.quantities import Unreadable

    for name in names:
        change: Callable[[Draft], Draft] = getattr(operations, CHANGES[name].operation)
        try:
            draft = change(draft)
        except Unreadable as unreadable:
            raise click.UsageError(f"--change {name}: {unreadable.right}") from None
    return draft
