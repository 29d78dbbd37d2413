"""Single pieces of a stretch that are woven otherwise than the rest, on the same threading where that can be."""

from __future__ import annotations

from dataclasses import dataclass

from journal_tools.drafts import named_weave
from journal_tools.dressing.tied import Tied, tied_on
from journal_tools.records import Stretch


@dataclass(frozen=True)
class OtherWeave:
    """A weave beside that of the stretch. pieces: their names, "" for one without. tied: how it is tied on
    the threading of the stretch, None where that does not carry it."""

    weave: str
    pieces: tuple[str, ...]
    tied: Tied | None


def other_weaves(stretch: Stretch, tied: Tied) -> tuple[OtherWeave, ...]:
    """Each weave that a piece names and the stretch does not, with its pieces, in the order woven."""
    pieces: dict[str, list[str]] = {}
    own = named_weave(tied.weave or stretch.weave or "")
    for piece in stretch.pieces:
        named = named_weave(piece.weave or "")
        if named is not None and named.name != (own.name if own is not None else ""):
            pieces.setdefault(named.name, []).append(piece.name or "")
    return tuple(OtherWeave(weave, tuple(names), tied_on(tied, weave)) for weave, names in pieces.items())
