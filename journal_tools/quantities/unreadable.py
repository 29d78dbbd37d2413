"""What is said when a figure cannot be read."""

from __future__ import annotations

from collections.abc import Iterable


class Unreadable(ValueError):
    """A text that is no such figure, or that could be two of them.

    read: the text as typed. right: what would be right, a sentence or two with an example.
    column: 0-based place in the text where reading stopped, or None where the whole is meant.
    mended: a text to put in its place, where it can be known, else "".
    """

    def __init__(self, read: str, right: str, column: int | None = None, mended: str = "") -> None:
        super().__init__(f'read "{read}". {right}')
        self.read = read
        self.right = right
        self.column = column
        self.mended = mended

    def told_of(self, text: str) -> Unreadable:
        """The same complaint, of the text as it was typed and not as it was tidied for reading."""
        return type(self)(text, self.right, self.column, self.mended)

    def within(self, whole: str, start: int) -> Unreadable:
        """The same complaint, of the longer text in which this one stands at `start`."""
        column = None if self.column is None else self.column + start
        mended = ""
        if self.mended:
            mended = whole[:start] + self.mended + whole[start + len(self.read) :]
        return type(self)(whole, self.right, column, mended)


class Ambiguous(Unreadable):
    """A text that could be several things, all of them named in `right`."""


def did_you_mean(word: str, known: Iterable[str]) -> str:
    """The known word that is nearest to a mistyped one, or "" where none is near."""
    import difflib  # only when something is wrong: it is slow to load

    return next(iter(difflib.get_close_matches(word.lower(), sorted(known), n=1, cutoff=0.75)), "")
