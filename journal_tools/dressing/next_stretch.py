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
    rethreaded, resleyed, retied: what differs from the stretch before it.
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

    @property
    def only_woven(self) -> bool:
        """Whether nothing is done at the loom but to weave on."""
        return not (self.rethreaded or self.resleyed or self.retied)


@dataclass(frozen=True)
class Dressed:
    """How one stretch is dressed, to be held against the next."""

    ends: int | None
    from_the_middle: bool
    tied: Tied | None
    sleyed: Sleyed | None

    def then(self, name: str, number: int, after: Dressed) -> NextStretch:
        """What the next one takes. Where its threading is not known, it counts as this one's."""
        threading = (after.tied or self.tied, self.tied)
        differs = tuple(tied.threading if tied else () for tied in threading)
        treadles = tuple((tied.treadles, tied.rising) if tied else () for tied in threading)
        return NextStretch(
            name,
            number,
            after.ends,
            after.from_the_middle,
            after.tied,
            after.sleyed,
            differs[0] != differs[1] or after.ends != self.ends,
            _orders(after.sleyed) != _orders(self.sleyed) or after.ends != self.ends,
            treadles[0] != treadles[1],
        )


def _orders(sleyed: Sleyed | None) -> list[tuple[Fraction, tuple[int, ...]]]:
    return [(band.reed, band.order) for band in sleyed.bands] if sleyed is not None else []
