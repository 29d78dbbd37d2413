"""Everything that dressing a loom with one warp takes, in figures."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from journal_tools.drafts.selvedge import Selvedge
from journal_tools.dressing.along import Begins, begins_of, coloured_sections
from journal_tools.dressing.heddles import Move, OnShaft, heddles_of, moves, straight_instead
from journal_tools.dressing.next_stretch import Dressed, NextStretch
from journal_tools.dressing.other_weaves import OtherWeave, other_weaves
from journal_tools.dressing.outermost import outermost
from journal_tools.dressing.runs import root_of
from journal_tools.dressing.sections import Section, sections_of, threaded
from journal_tools.dressing.sleyed import Sleyed, sley_lacks, sleyed_of
from journal_tools.dressing.stripes import stripes_along
from journal_tools.dressing.tied import Tied, tied_of
from journal_tools.dressing.winding import Winding, windings_of
from journal_tools.ledger.ends import Miscounted, floating_ends, heddled_ends, miscounted
from journal_tools.notation import Sets
from journal_tools.planning.arithmetic import dents_in, ends_in
from journal_tools.planning.looms import find_loom
from journal_tools.records import Journal, Stretch, Warp
from journal_tools.records.loom import Loom


@dataclass(frozen=True)
class Dressing:
    """How a warp is dressed for its first stretch, and what is done again for the later ones.

    ends: those with heddles, None where nobody knows. reckoned: whether they were reckoned from sett
    and width in the reed. floating: ends without heddles, of both edges together.
    threading: the shafts of every end, first to last. doubled: ends at each edge that share a shaft,
    where no others do. moves: how short shafts come by their heddles. instead: (shafts, heddles on
    the fullest) of a straight draw that would do where two shafts are short; None else.
    sley_lacks: what the record must say before the sleying can be told; none where it is told.
    begins: where each stripe of colour begins along the threading, where its groups do not tell.
    turns: of the weft round the outermost ends, None where floating selvedges catch it, or where nobody knows.
    also: the weaves of single pieces, where they are others than that of the stretch.
    miscounted: orders that have not as many ends as the record says.
    """

    ends: int | None
    reckoned: bool
    floating: int
    windings: tuple[Winding, ...]
    sleyed: Sleyed | None
    tied: Tied | None
    threading: Sets
    sections: tuple[Section, ...]
    doubled: int
    shafts: tuple[OnShaft, ...]
    moves: tuple[Move, ...]
    instead: tuple[int, int] | None
    loom: Loom | None
    later: tuple[NextStretch, ...]
    sley_lacks: tuple[str, ...] = ()
    begins: tuple[Begins, ...] = ()
    turns: Selvedge | None = None
    also: tuple[OtherWeave, ...] = ()
    miscounted: tuple[Miscounted, ...] = ()

    @property
    def worth_a_page(self) -> bool:
        """Whether there is a threading or an order to dress by."""
        return bool(self.sections or self.windings)

    @property
    def shafts_short(self) -> int:
        """Shafts that the threading takes beyond those of the loom; 0 where nobody knows."""
        own = self.loom.shafts.number if self.loom is not None and self.loom.shafts is not None else None
        return max(0, self.tied.shafts - own) if self.tied is not None and own is not None else 0

    @property
    def treadles_short(self) -> int:
        """Treadles that the tie-up takes beyond those of the loom; 0 where nobody knows."""
        own = self.loom.treadles.number if self.loom is not None and self.loom.treadles is not None else None
        return max(0, len(self.tied.treadles) - own) if self.tied is not None and own is not None else 0


def dressing_of(journal: Journal, warp: Warp) -> Dressing:
    """How a warp is dressed; whatever its record does not tell is left out."""
    loom = find_loom(journal, warp.loom) if warp.loom else None
    first, *later = warp.woven()
    tied = tied_of(journal, warp, first, loom)
    floating = floating_ends(journal, warp, first)
    dents = tied.dents if tied is not None else ()
    ends, reckoned = _ends(warp, first, floating, dents)
    sleyed = _sleyed(warp, first, ends, floating, tied, loom)
    threading = threaded(tied.threading, ends) if tied is not None and ends else ()
    sett = sleyed.sett if sleyed is not None else said.per_m if (said := warp.sett_of(first)) is not None else None
    wound, _ = _ends(warp, warp, floating, dents) if warp.stretches else (ends, False)
    unit = len(root_of(tied.threading)) if tied is not None else 1
    windings = windings_of(journal, warp, wound or ends or 0, floating, sett, tied.colours if tied else (), unit)
    colours = windings[0].order if len(windings) == 1 and windings[0].ends == ends else ()
    sections: tuple[Section, ...] = ()
    if tied is not None and ends:
        sections = coloured_sections(tied.threading, colours) if len(set(colours)) > 1 else ()
        edges = {stripe.first - 1 for stripe in stripes_along(colours)}
        sections = sections or sections_of(tied.threading, ends, edges)
    shafts = heddles_of(threading, loom) if threading else ()
    wanting = moves(shafts)
    return Dressing(
        ends,
        reckoned,
        floating,
        windings,
        sleyed,
        tied,
        threading,
        sections,
        _doubled(threading),
        shafts,
        wanting,
        straight_instead(threading, loom) if wanting else None,
        loom,
        _later(journal, warp, Dressed(ends, False, tied, sleyed, _named(warp, first)), later, loom),
        sley_lacks(warp, first, dents) if sleyed is None else (),
        begins_of(sections, colours) if len(set(colours)) > 1 and not any(each.colours for each in sections) else (),
        outermost(warp, tied, ends) if tied is not None and ends and not floating else None,
        other_weaves(first, tied) if tied is not None else (),
        tuple(miscounted(warp, floating)),
    )


def _sleyed(
    warp: Warp, stretch: Stretch, ends: int | None, floating: int, tied: Tied | None, loom: Loom | None
) -> Sleyed | None:
    dents, threaded = (tied.dents, len(tied.threading)) if tied is not None else ((), 0)
    return sleyed_of(warp, stretch, ends or 0, floating, loom, dents, threaded)


def _ends(warp: Warp, stretch: Stretch, floating: int, dents: tuple[int, ...]) -> tuple[int | None, bool]:
    """Ends with heddles, and whether they had to be reckoned.

    Where nobody counted them, from sett and width in the reed.
    dents: the ends in each dent that the draft says, reckoned with where the warp has no sley of its own.
    """
    counted = heddled_ends(warp, stretch, floating)
    if counted is not None or (stretch.ends or warp.ends) is not None:
        return counted, False
    sett, width = warp.sett_of(stretch), stretch.in_reed or warp.in_reed
    reed = stretch.reed or warp.reed
    if dents and any(dents) and not (stretch.sley or warp.sley) and reed is not None and width is not None:
        mm = float(width.length.mm) if width.length is not None else 0.0
        across = width.dents.number if width.dents is not None else dents_in(mm, float(reed.per_m))
        return ends_in(max(0, across - floating), dents) or None, True
    if sett is None or width is None or width.length is None:
        return None, False
    opened = warp.layers.number if width.fold == "opened" and warp.layers else 1
    return max(0, round(Fraction(sett.per_m) * width.length.mm / 1000 / opened) - floating) or None, True


def _doubled(threading: Sets) -> int:
    """Ends at each edge that share a shaft with the outermost, where others lie inside and do not; 0 for none.

    Ends without a heddle share no shaft.
    """
    alike = [a == b and bool(a) for a, b in pairwise(threading)]
    left = next((n for n, same in enumerate(alike) if not same), len(alike))
    right = next((n for n, same in enumerate(reversed(alike)) if not same), len(alike))
    inside = alike[left : len(alike) - right]
    lies_inside = len(threading) > left + right + 2
    return left + 1 if left and left == right and lies_inside and not any(inside) else 0


def _named(warp: Warp, stretch: Stretch) -> str:
    """The draft of a stretch, or else its weave, as a weaver would name it; "" for neither."""
    draft = stretch.draft or warp.draft
    if draft is not None:
        return f"the draft `{draft}`" if isinstance(draft, str) else "its own draft"
    return stretch.weave or warp.weave or ""


def _later(
    journal: Journal, warp: Warp, before: Dressed, later: list[Stretch], loom: Loom | None
) -> tuple[NextStretch, ...]:
    found = []
    for number, stretch in enumerate(later, 2):
        tied = tied_of(journal, warp, stretch, loom)
        floating = floating_ends(journal, warp, stretch)
        ends, _ = _ends(warp, stretch, floating, tied.dents if tied is not None else ())
        middle = stretch.ends is not None and stretch.ends.from_the_middle
        sleyed = _sleyed(warp, stretch, ends, 0 if middle else floating, tied, loom)
        after = Dressed(ends, middle, tied, sleyed, _named(warp, stretch))
        found.append(before.then(stretch.name or "", number, after))
        before = after
    return tuple(found)
