"""What to expect of the next warp in a yarn: the cloth that is meant, and a figure for each loss of it."""

from __future__ import annotations

import math
import statistics
from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from journal_tools.forecast.closeness import closeness, setts
from journal_tools.forecast.cloth_kind import kind_in, weave_name
from journal_tools.forecast.fulling import Fulling, fulled_cloths
from journal_tools.forecast.kind import ClothKind
from journal_tools.forecast.observed import Observed
from journal_tools.records import Journal
from journal_tools.records.yarns_used import find_yarn

if TYPE_CHECKING:  # the fit is slow to load, and what is asked of it is not
    from journal_tools.forecast.belief import Belief
    from journal_tools.forecast.memory import Memory
    from journal_tools.forecast.rests_on import RestsOn

TOO_WIDE = 0.06
"""Half a nine-in-ten range over the size it is of: beyond it a range is of no use. About 1 in on 17 in (judgement)."""

SPANS = (
    ("width, reed to washed", "width", "in_reed", "washed 1"),
    ("width, reed to settled", "width", "in_reed", "settled"),
    ("length, loom to washed", "length", "on_loom", "washed 1"),
    ("length, loom to settled", "length", "on_loom", "settled"),
    ("take-up, warp to loom", "length", "warp", "on_loom"),
    ("picks, as beaten to loom", "length", "picks", "on_loom"),
)
"""What is told: a name with both ends, direction, and the two moments."""

FULLED_SPANS = (
    ("width, reed to scoured", "width", "in_reed", "washed 1"),
    ("length, loom to scoured", "length", "on_loom", "washed 1"),
    *SPANS[4:5],
)
"""The same for cloth that is fulled: what comes after the scouring is told by time."""


@dataclass(frozen=True)
class Asked:
    """What a weaver asks about: yarns by any of their names, "" and None for as she mostly has it.

    sett_per_m: ends to the metre in the reed, of one layer.
    """

    yarn: str
    weave: str = ""
    weft: str = ""
    sett_per_m: float | None = None
    finish: str = ""


@dataclass(frozen=True)
class Figure:
    """One loss of the cloth that is meant. label: with both of its ends. belief: of ln(last / first)."""

    label: str
    direction: str
    first: str
    last: str
    belief: Belief
    rests_on: RestsOn

    @property
    def loss(self) -> float:
        """The middle one, a fraction; below 0 where the cloth grows."""
        return self.belief.loss()

    @property
    def range(self) -> tuple[float, float]:
        """The least and the most of a piece, nine times in ten."""
        return self.belief.loss_range(0.9)

    @property
    def useless(self) -> bool:
        """Whether the range is too wide to plan by, so that a sample comes first."""
        least, most = self.range
        return (most - least) / 2 > TOO_WIDE * (1 - self.loss)


@dataclass(frozen=True)
class Expected:
    """The answer. kind: the cloth it is of. sett_per_m: its sett in the reed, None where nobody knows.

    usual: which of "weave", "weft", "warp", "sett" and "finish" were not asked for and are as they mostly
    were. new: those of its yarns that no warp has measured yet. fulling: of the yarn where cloth of it was
    fulled, or is to be; else None.
    """

    kind: ClothKind
    sett_per_m: float | None
    usual: tuple[str, ...]
    new: tuple[str, ...]
    figures: tuple[Figure, ...]
    fulling: Fulling | None

    def figure(self, direction: str, first: str, last: str) -> Figure:
        """One of the figures. Raises StopIteration for one that is not told."""
        return next(
            each for each in self.figures if (each.direction, each.first, each.last) == (direction, first, last)
        )


def expected_of(journal: Journal, memory: Memory, asked: Asked) -> Expected:
    """What the journal leads one to expect."""
    woven = kinds_of(memory.observed["width"] + memory.observed["length"])
    kind, sett, usual = meant(journal, woven, asked)
    recipe = journal.finishes.get(kind.finish)
    to_be_fulled = recipe is not None and bool(recipe.fulling)
    fulling = Fulling.of(journal, kind.warp_yarn, fulled_cloths(journal))
    figures = tuple(
        Figure(*span, memory.belief(span[1], kind, *span[2:]), memory.rests_on(span[1], kind, *span[2:]))
        for span in (FULLED_SPANS if to_be_fulled else SPANS)
    )
    return Expected(
        kind, sett, usual, new_yarns(woven, kind), figures, fulling if to_be_fulled or fulling.basis == "yarn" else None
    )


def kinds_of(observed: Iterable[Observed]) -> tuple[tuple[str, ClothKind], ...]:
    """Each kind of cloth once for each warp that has it, in the order they come, with the warp's name."""
    return tuple(dict.fromkeys((piece.warp, piece.kind) for piece in observed))


def new_yarns(woven: Iterable[tuple[str, ClothKind]], kind: ClothKind) -> tuple[str, ...]:
    """Those of its yarns that none of the warps has had."""
    had = {yarn for _, each in woven for yarn in (each.warp_yarn, each.weft_yarn)}
    return tuple(yarn for yarn in dict.fromkeys((kind.warp_yarn, kind.weft_yarn)) if yarn not in had)


def meant(
    journal: Journal, woven: Sequence[tuple[str, ClothKind]], asked: Asked
) -> tuple[ClothKind, float | None, tuple[str, ...]]:
    """The cloth that is meant, its sett, and what of it is as it mostly was and was not asked for.

    A yarn that was only ever weft is weft, with the warp that it mostly had.
    """
    name, _, _ = find_yarn(journal, asked.yarn)
    weft, _, _ = find_yarn(journal, asked.weft) if asked.weft else ("", "", None)
    found = [kind for _, kind in woven if kind.warp_yarn == name]
    only_weft = not found and not weft
    if only_weft:
        found = [kind for _, kind in woven if kind.weft_yarn == name]
    usual: list[str] = []
    weave = weave_name(asked.weave) if asked.weave else _mostly(kind.weave for kind in found)
    usual += ["weave"] if weave and not asked.weave else []
    found = [kind for kind in found if kind.weave == weave] or found
    if only_weft and found:
        warp, weft = _mostly(kind.warp_yarn for kind in found) or name, name
        usual += ["warp"] if warp != name else []
    else:
        warp, weft = name, weft or _mostly(kind.weft_yarn for kind in found) or name
        usual += ["weft"] if weft != name and not asked.weft else []
    found = [kind for kind in found if (kind.warp_yarn, kind.weft_yarn) == (warp, weft)] or found
    finish = asked.finish or _mostly(kind.finish for kind in found)
    usual += ["finish"] if finish and not asked.finish else []
    kind = kind_in(journal, warp, weave, weft, finish)
    record = journal.yarns.get(warp)
    if asked.sett_per_m is not None:
        return replace(kind, closeness=closeness(asked.sett_per_m, record, weave)), asked.sett_per_m, tuple(usual)
    known = [each.closeness for each in found if each.closeness is not None and each.weave == weave]
    usually = statistics.median(known) if known else None
    greatest = setts(record, weave).greatest
    usual += ["sett"] if usually is not None and greatest is not None else []
    sett = usually * greatest if usually is not None and greatest is not None else None
    return replace(kind, closeness=usually), sett, tuple(usual)


def _mostly(said: Iterable[str]) -> str:
    """The one said most often, the last of equals; "" where nothing is said."""
    counted = Counter(each for each in reversed([*said]) if each)
    return max(counted, key=counted.__getitem__, default="")


def usual_size_mm(observed: Iterable[Observed], kind: ClothKind, step_mm: float, other_mm: float) -> float:
    """What pieces of this yarn mostly are once washed, to a round figure; `other_mm` where there are none."""
    sizes = [
        math.exp(reading.log)
        for piece in observed
        for reading in piece.readings
        if piece.kind.warp_yarn == kind.warp_yarn and (reading.moment, reading.yardstick) == ("washed 1", "cloth")
    ]
    return max(round(statistics.median(sizes) / step_mm) * step_mm, step_mm) if sizes else other_mm
