"""What is said when the parts of a draft do not fit together."""

from __future__ import annotations

from journal_tools.quantities import Unreadable


class Unfitting(Unreadable):
    """A part of a draft that does not fit the others.

    part: the key that it stands under, after the layer that it is in: ("upper", "threading"); () where it
    is the whole draft.
    """

    def __init__(self, read: str, right: str, column: int | None = None, mended: str = "", *, part: str = "") -> None:
        super().__init__(read, right, column, mended)
        self.part: tuple[str, ...] = (part,) if part else ()

    def in_layer(self, name: str) -> Unfitting:
        """The same complaint, of a draft in which this one is the layer of that name."""
        found = Unfitting(self.read, self.right, self.column, self.mended)
        found.part = (name, *self.part)
        return found
