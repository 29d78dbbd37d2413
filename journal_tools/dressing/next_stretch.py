"""What is done again at the loom before a later stretch is woven."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from journal_tools.dressing.sleyed import Sleyed
from journal_tools.dressing.tied import Tied


@dataclass(frozen=True)
class NextStretch:
    """A stretch after the first.

    name: its own, "" when it has none. number: which stretch it is, the first being 1. ends: those
    with heddles, None where nobody knows. from_the_middle: whether they are the middle ones.
    rethreaded, resleyed, retied: what differs from the stretch before it. unread: the draft or weave that it
    names and that tells no threading, "" where it tells one, or names none but that of the stretch before it.
    """

    name: str
    number: int
    ends: int | None
    from_the_middle: bool
    tied: Tied | None
    sleyed: Sleyed | None
    rethreaded: bool
    resleyed: bool
    retied: bool
    unread: str = ""

    @property
    def called(self) -> str:
        """Its name, or which stretch it is: `bookmarks`, `stretch 3`."""
        return (self.name or f"stretch {self.number}").rstrip(".")

    @property
    def only_woven(self) -> bool:
        """Whether nothing is done at the loom but to weave on."""
        return not (self.rethreaded or self.resleyed or self.retied or self.unread)


@dataclass(frozen=True)
class Dressed:
    """How one stretch is dressed, to be held against the next. named: its draft, or else its weave, "" for none."""

    ends: int | None
    from_the_middle: bool
    tied: Tied | None
    sleyed: Sleyed | None
    named: str = ""

    def then(self, name: str, number: int, after: Dressed) -> NextStretch:
        """What the next one takes. Where it names no threading of its own, that is this one's."""
        threading = (after.tied or self.tied, self.tied)
        differs = tuple(tied.threading if tied else () for tied in threading)
        hitches = tuple(tied.hitch if tied else () for tied in threading)
        return NextStretch(
            name,
            number,
            after.ends,
            after.from_the_middle,
            after.tied,
            after.sleyed,
            differs[0] != differs[1] or after.ends != self.ends,
            _orders(after.sleyed) != _orders(self.sleyed) or after.ends != self.ends,
            hitches[0] != hitches[1],
            after.named if after.tied is None and after.named != self.named else "",
        )


def _orders(sleyed: Sleyed | None) -> list[tuple[Fraction, tuple[int, ...]]]:
    return [(band.reed, band.order) for band in sleyed.bands] if sleyed is not None else []
