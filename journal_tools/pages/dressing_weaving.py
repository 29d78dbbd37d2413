"""What is woven with: the weft and the beat of each stretch, and of a piece that has others."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from journal_tools.dressing.colour_words import colour_words
from journal_tools.pages.archive import Archive
from journal_tools.pages.dressing_view import Part
from journal_tools.quantities import Density, show_density
from journal_tools.quantities.density import PerUnit
from journal_tools.records import Warp
from journal_tools.records.cloth import Weft
from journal_tools.records.yarns_used import yarn_in_use


def weaving_part(archive: Archive, warp: Warp, unit: PerUnit) -> Part | None:
    """Wefts and beats; None where the record tells of neither."""
    large = tuple(_stretches(archive, warp, unit))
    return Part("weaving", "Weft and beat", large) if large else None


def _stretches(archive: Archive, warp: Warp, unit: PerUnit) -> Iterator[str]:
    before = ""
    several = len(warp.woven()) > 1
    for number, stretch in enumerate(warp.woven(), 1):
        common = _both(archive, warp, stretch.weft or warp.weft, stretch.beat or warp.beat, unit)
        called = stretch.name or f"stretch {number}"
        if common and common != before:
            words = f"{called}: {common}" if several else common
            yield f"{words[0].upper()}{words[1:]}."
        before = common
        for each, piece in enumerate(stretch.pieces, 1):
            if own := _both(archive, warp, piece.weft, piece.beat, unit):
                yield f"{piece.name or f'Piece {each}'}: {own}."


def _both(archive: Archive, warp: Warp, wefts: Sequence[Weft], beat: Density | None, unit: PerUnit) -> str:
    said = [_weft(archive, warp, weft) for weft in wefts if weft.yarn or weft.order]
    thrown = f"weft {'; '.join(said)}" if said else ""
    return ", ".join(word for word in (thrown, f"beat {show_density(beat.per_m, unit)}" if beat else "") if word)


def _weft(archive: Archive, warp: Warp, weft: Weft) -> str:
    """`slate`, `pattern: slate`, or the colours as thrown."""
    role = f"{weft.role}: " if weft.role else ""
    if weft.order is not None:
        names = {each: _name(archive, warp, each, None) for each in weft.order.counts}
        return role + colour_words([names[each] for each in weft.order.items])
    return role + _name(archive, warp, weft.yarn or "", weft.colour)


def _name(archive: Archive, warp: Warp, typed: str, colour: str | None) -> str:
    yarn = yarn_in_use(archive.journal, warp, typed, colour)
    return yarn.colour or yarn.plain_heading
