"""What to expect of a yarn the next time, in a weaver's words: what it rests on first, then what hands do."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import TYPE_CHECKING
from urllib.parse import urlencode

from journal_tools.forecast.cloth_kind import kind_in
from journal_tools.forecast.kind import ClothKind
from journal_tools.ledger.words import per_cent
from journal_tools.pages.archive import Archive
from journal_tools.pages.plan_shelf import Woven
from journal_tools.pages.views import Cell, Column, Expect, Link, Table
from journal_tools.pictures.scatter import LossBand
from journal_tools.planning.allowances import STEPS, TOO_WIDE
from journal_tools.quantities import show_density, show_length
from journal_tools.records import Yarn

if TYPE_CHECKING:
    from journal_tools.forecast.fulling import Fulling, Range
    from journal_tools.pages.plan_pocket import Answer

WHOLE = {"width": ("width", "in_reed", "washed 1"), "length": ("length", "on_loom", "washed 1")}
LOW, HIGH = 0.05, 0.95
WANTED = {"in": (18 * 25.4, 28 * 25.4), "cm": (450.0, 700.0), "mm": (450.0, 700.0)}
"""A washed width and length to speak of: a towel's."""
BAND_STEP = 0.0025
"""Bands of the chart are drawn to a quarter of a point: a warp in another yarn need not draw them anew."""
MOST = 4
"""Weaves that the table has a row for."""
FULLED_BY = (0.9, 0.8)
"""What is left of a scoured width, as far as the table of fulling goes."""


def expect_part(archive: Archive, yarn: Yarn) -> Expect:
    """What a yarn will do the next time, in the weaves that it was woven in."""
    kinds = kinds_of(archive, yarn)
    kind = kinds[0]
    guess, rests = rests_words(archive, yarn, kind)
    answers = {direction: archive.pocket.answer(kind, asked) for direction, asked in WHOLE.items()}
    unit = archive.journal.settings.length
    useless = any(_doubt(answer) > TOO_WIDE for answer in answers.values())
    return Expect(
        rests,
        guess,
        tuple(_said(archive, kind, answers)),
        _small(answers),
        useless,
        _table(archive, yarn, kinds, unit),
        tuple(fulling_words(archive, yarn)),
        Link("Plan a warp in it", "plan.html#" + urlencode({"warp": yarn.name, "weave": kind.weave})),
    )


def kinds_of(archive: Archive, yarn: Yarn) -> list[ClothKind]:
    """One kind of cloth for each weave of a yarn, as it was woven last, the most woven first."""
    by_weave: dict[str, list[Woven]] = {}
    for each in archive.shelf.woven(yarn.name):
        by_weave.setdefault(each.kind.weave, []).append(each)
    if not by_weave:
        return [kind_in(archive.journal, yarn.name, "plain weave")]
    warps = {weave: len({each.warp.name for each in found}) for weave, found in by_weave.items()}
    most = sorted(by_weave, key=lambda weave: (weave == "", -warps[weave]))
    return [replace(_washed(archive, by_weave[weave]), year=None) for weave in most[:MOST]]


def _washed(archive: Archive, woven: Sequence[Woven]) -> ClothKind:
    """The newest of them that was only washed; without its recipe where all were fulled."""
    for each in woven:
        recipe = archive.journal.finishes.get(each.kind.finish)
        if recipe is None or not recipe.fulling:
            return each.kind
    return replace(woven[0].kind, finish="")


def rests_words(archive: Archive, yarn: Yarn, kind: ClothKind) -> tuple[bool, str]:
    """Whether it is a guess, and what it rests on."""
    rests = archive.rests_on(kind)
    yours = "" if archive.public else " of your"
    warps = archive.journal.warps
    own = [name for name in rests.yarn_warps if name in warps]
    if not own:
        fibre = len(rests.fibre_warps)
        nothing = f"{'Nothing here' if archive.public else 'Nothing of yours'} in {yarn.heading} was measured yet."
        if fibre:
            return True, f"{nothing} It goes by {_many(fibre, 'warp')} in the same fibre."
        return True, f"{nothing} It goes by common practice."
    mostly = f", mostly {warps[own[0]].heading}" if len(own) > 1 else f", {warps[own[0]].heading}"
    number = f"{len(own)}{yours} warps" if yours or len(own) > 1 else "1 warp"
    said = f"Rests on {number}{mostly}."
    if kind.weave and not rests.both:
        return False, f"{said} None in {kind.weave}."
    if kind.weave and len(rests.both) < len(own):
        return False, f"{said} {len(rests.both)} of them in {kind.weave}."
    return False, said


def _many(number: int, word: str) -> str:
    return f"{number} {word}" + ("" if number == 1 else "s")


def _said(archive: Archive, kind: ClothKind, answers: dict[str, Answer]) -> Iterator[str]:
    unit = archive.journal.settings.length
    wide, long = WANTED[unit]
    tape, weave = (Fractional(step) for step in (STEPS[unit].tape, STEPS[unit].weave))
    reed, loom = _before(wide, answers["width"]), weave.up(_before(long, answers["length"]))
    low, high = _range(reed, answers["width"])
    named = f"In {kind.weave}, for" if kind.weave else "For"
    yield (
        f"{named} {tape.shown(wide, unit)} washed, sley {tape.shown(reed, unit)};"
        f" nine times in ten it comes out {tape.bare(low, unit)} to {tape.shown(high, unit)}."
    )
    low, high = _range(loom, answers["length"])
    yield (
        f"For {tape.shown(long, unit)} washed, weave {tape.shown(loom, unit)}, tension on;"
        f" nine times in ten {tape.bare(low, unit)} to {tape.shown(high, unit)}."
    )


def _small(answers: dict[str, Answer]) -> str:
    parts = []
    for direction, words in (("width", "width, reed to washed 1"), ("length", "length, loom to washed 1")):
        least, likely, most = losses(answers[direction])
        parts.append(f"{words}: {per_cent(likely)} ({per_cent(least)} to {per_cent(most)})")
    return "; ".join(parts) + "."


def losses(answer: Answer) -> tuple[float, float, float]:
    """The loss that is least in nine of ten, the likely one and the most, as fractions."""
    return tuple(1 - math.exp(log) for log in (answer.quantile(HIGH), answer.mean, answer.quantile(LOW)))  # type: ignore[return-value]


def _before(mm: float, answer: Answer) -> float:
    return mm / math.exp(answer.mean)


def _range(start: float, answer: Answer) -> tuple[float, float]:
    return start * math.exp(answer.quantile(LOW)), start * math.exp(answer.quantile(HIGH))


def _doubt(answer: Answer) -> float:
    low, high = _range(1.0, answer)
    return (high - low) / 2 / math.exp(answer.mean)


def _table(archive: Archive, yarn: Yarn, kinds: Sequence[ClothKind], unit: str) -> Table | None:
    """A row for each weave."""
    if len(kinds) < 2:
        return None
    wide, long = WANTED[unit]
    tape, weave = (Fractional(step) for step in (STEPS[unit].tape, STEPS[unit].weave))
    columns = (
        Column("weave"),
        Column("warps", True),
        Column(f"{tape.shown(wide, unit)} washed: sley", True),
        Column("comes out", True),
        Column(f"{tape.shown(long, unit)} washed: weave", True),
        Column("comes out", True),
    )
    rows = []
    for kind in kinds:
        width, length = (archive.pocket.answer(kind, asked) for asked in WHOLE.values())
        reed, loom = _before(wide, width), weave.up(_before(long, length))
        woven = {each.warp.name for each in archive.shelf.woven(yarn.name) if each.kind.weave == kind.weave}
        least, likely, most = losses(width)
        shorter, middle, longer = losses(length)
        rows.append(
            (
                Cell(kind.weave or "no weave named", small=_set_at(archive, kind)),
                Cell(str(len(woven))),
                Cell(tape.shown(reed, unit), strong=True),
                Cell(_to(tape, _range(reed, width), unit), small=f"{per_cent(likely)} ({_points(least, most)})"),
                Cell(tape.shown(loom, unit), strong=True),
                Cell(_to(tape, _range(loom, length), unit), small=f"{per_cent(middle)} ({_points(shorter, longer)})"),
            )
        )
    note = "What comes out is nine times in ten of a batch's mean; below it the loss, reed or loom to washed 1."
    return Table("In each weave", columns, tuple(rows), note=note, stacked=True)


def _set_at(archive: Archive, kind: ClothKind) -> str:
    found = next(
        (
            each.sett
            for each in archive.shelf.woven(kind.warp_yarn)
            if each.kind.weave == kind.weave and each.kind.closeness == kind.closeness and each.sett
        ),
        None,
    )
    return f"set at {show_density(found, archive.journal.settings.units.density)}" if found else ""


def _to(tape: Fractional, sizes: tuple[float, float], unit: str) -> str:
    return f"{tape.bare(sizes[0], unit)} to {tape.shown(sizes[1], unit)}"


def _points(low: float, high: float) -> str:
    return f"{per_cent(low)} to {per_cent(high)}".replace(" % to", " to")


class Fractional:
    """Lengths to the steps that hands and tapes go by, in mm."""

    def __init__(self, step: float) -> None:
        from fractions import Fraction

        self.step = Fraction(step).limit_denominator(1000)

    def up(self, mm: float) -> float:
        """The next whole step."""
        return float(math.ceil(mm / float(self.step) - 1e-6) * self.step)

    def shown(self, mm: float, unit: str) -> str:
        """In words."""
        return show_length(mm, unit, self.step)

    def bare(self, mm: float, unit: str) -> str:
        """In words, without the unit."""
        return self.shown(mm, unit).removesuffix(f" {unit}")


def bands(archive: Archive, yarn: Yarn, directions: Sequence[str]) -> tuple[LossBand, ...]:
    """What the chart draws of the next warp in the weave that is woven most."""
    kind = kinds_of(archive, yarn)[0]
    found = []
    for direction in directions:
        least, likely, most = (
            round(loss / BAND_STEP) * BAND_STEP for loss in losses(archive.pocket.answer(kind, WHOLE[direction]))
        )
        found.append(LossBand(kind.weave, direction, least, likely, most))
    return tuple(found)


def fulling_words(archive: Archive, yarn: Yarn) -> Iterator[str]:
    """How long a cloth takes to full, and what becomes of its length, for a yarn that was fulled with a watch."""
    fulling = archive.fulling(yarn.name)
    if fulling is None:
        return
    unit = archive.journal.settings.length
    wide, _ = WANTED[unit]
    tape = Fractional(STEPS[unit].tape)
    number = len({cloth.warp for cloth in fulling.cloths})
    yield f"Fulled, it is you who stop it. From {_many(number, 'warp')} with a watch beside the tub:"
    for left in FULLED_BY:
        lost = -math.log(left)
        minutes = fulling.minutes("width", lost)
        if minutes.likely > fulling.longest * 1.25:
            break
        shorter = 1 - math.exp(-fulling.length_for(lost).likely)
        yield (
            f"{tape.shown(wide, unit)} scoured is {tape.shown(wide * left, unit)} after {_minutes(minutes)}, and then"
            f" about {per_cent(shorter, 0)} shorter. Look first after {max(1, math.floor(minutes.least))}."
        )


def _minutes(minutes: Range) -> str:
    return f"{minutes.likely:.0f} minutes ({math.floor(minutes.least)} to {math.ceil(minutes.most)})"
