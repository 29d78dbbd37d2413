"""What to expect of a yarn the next time: the words of the forecast, a row for each weave, bands for the chart."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from typing import TYPE_CHECKING, cast
from urllib.parse import quote, urlencode

from journal_tools.forecast.expected import Asked, Expected, Figure, meant, new_yarns, usual_size_mm
from journal_tools.forecast.fulled_words import fulling_words
from journal_tools.forecast.hand_words import HANDS, ROUND
from journal_tools.forecast.kind import ClothKind
from journal_tools.forecast.words import as_usual, better_words, heading, rests_words, sentences
from journal_tools.ledger.words import per_cent
from journal_tools.pages import views
from journal_tools.pages.archive import Archive
from journal_tools.pages.plan_shelf import Woven
from journal_tools.pages.view_parts import Cell, Column, Link, Table
from journal_tools.pictures.scatter import LossBand
from journal_tools.quantities import show_density, show_length
from journal_tools.records import Yarn

if TYPE_CHECKING:
    from journal_tools.forecast.belief import Belief
    from journal_tools.pages.plan_pocket import Answer

WHOLE = {
    "width": ("width, reed to washed", ("width", "in_reed", "washed 1")),
    "length": ("length, loom to washed", ("length", "on_loom", "washed 1")),
}
BAND_STEP = 0.0025
"""Bands of the chart are drawn to a quarter of a point: a warp in another yarn need not draw them anew."""
TO_OTHERS = (
    ("one of your warps", "one warp"),
    (" of your warps", " warps"),
    ("othing of yours", "othing"),
    ("None of yours", "None"),
    ("longer than you ever fulled", "longer than any was fulled"),
    (", and by how you weave this weave", ", and by what this weave does"),
)
"""What is said to the weaver, and how it is told to others."""
MOST = 4
"""Weaves that the table has a row for."""


def expect_part(archive: Archive, yarn: Yarn) -> views.Expect:
    """What a yarn will do the next time, as it is mostly woven, and in its other weaves."""
    expected = expected_of(archive, yarn)
    journal, kind = archive.journal, expected.kind
    rests = rests_words(journal, expected)
    guess = rests.startswith("A guess: ")
    lines = [*better_words(expected), *fulling_words(journal, archive.memory, expected)]
    begun = urlencode({"warp": kind.warp_yarn, "weave": kind.weave}, quote_via=quote)
    return views.Expect(
        about=" ".join(part for part in (f"{heading(journal, expected)}.", as_usual(expected)) if part),
        rests=_told(archive, rests.removeprefix("A guess: ")),
        guess=guess,
        said=tuple(sentences(journal, archive.memory, expected, archive.shelf.beats)),
        small="; ".join(_loss_words(figure) for figure in expected.figures) + ", nine times in ten.",
        table=_table(archive, yarn, expected),
        fulling=tuple(_told(archive, line) for line in lines),
        plan=Link("Plan a warp in it", f"plan.html#{begun}"),
    )


def expected_of(archive: Archive, yarn: Yarn) -> Expected:
    """What `tenterhook expect` says, from the pocket: every page asks, and a fit is slow to ask."""
    kind, sett, usual = meant(archive.journal, archive.woven_kinds, Asked(yarn.name))
    recipe = archive.journal.finishes.get(kind.finish)
    fulled = recipe is not None and bool(recipe.fulling)
    figures = tuple(
        Figure(
            label.replace("washed", "scoured") if fulled else label,
            *asked,
            cast("Belief", archive.pocket.answer(kind, asked)),
            archive.rests_on(kind, asked),
        )
        for label, asked in WHOLE.values()
    )
    fulling = archive.fulling(yarn.name)
    new = new_yarns(archive.woven_kinds, kind)
    return Expected(kind, sett, usual, new, figures, fulling if fulled or fulling.basis == "yarn" else None)


def _told(archive: Archive, words: str) -> str:
    """The words as they are told to others, to whom the warps are nobody's."""
    if not archive.public:
        return words
    for ours, plain in TO_OTHERS:
        words = words.replace(ours, plain)
    return words


def _loss_words(figure: Figure) -> str:
    least, most = figure.range
    return f"{figure.label} {per_cent(figure.loss)} ({_points(least, most)})"


def _points(low: float, high: float) -> str:
    return f"{per_cent(low)} to {per_cent(high)}".replace(" % to", " to")


def _table(archive: Archive, yarn: Yarn, expected: Expected) -> Table | None:
    """A row for each weave that it was woven in, where there are several."""
    kinds = [expected.kind, *(kind for kind in _in_weaves(archive, yarn) if kind.weave != expected.kind.weave)]
    if len(kinds) < 2:
        return None
    unit = "in" if archive.journal.settings.length == "in" else "cm"
    step, *round_sizes = ROUND[unit]
    wide, long = (
        usual_size_mm(archive.memory.observed[direction], expected.kind, step, other)
        for direction, other in zip(WHOLE, round_sizes, strict=True)
    )
    columns = (
        Column("weave"),
        Column("warps", True),
        Column(f"{show_length(wide, unit)} washed: sley", True),
        Column("comes out", True),
        Column(f"{show_length(long, unit)} washed: weave", True),
        Column("comes out", True),
    )
    rows = tuple(tuple(_row(archive, yarn, kind, (wide, long), unit)) for kind in kinds[:MOST])
    note = "What comes out is of one piece, nine times in ten; below it what it loses."
    return Table("In each weave", columns, rows, note=note, stacked=True)


def _in_weaves(archive: Archive, yarn: Yarn) -> list[ClothKind]:
    """One kind of cloth for each weave of a yarn, as it was last woven and only washed, the most woven first."""
    by_weave: dict[str, list[Woven]] = {}
    for each in archive.shelf.woven(yarn.name):
        by_weave.setdefault(each.kind.weave, []).append(each)
    warps = {weave: len({each.warp.name for each in found}) for weave, found in by_weave.items()}
    most = sorted(by_weave, key=lambda weave: (weave == "", -warps[weave]))
    return [replace(_washed(archive, by_weave[weave]), year=None) for weave in most]


def _washed(archive: Archive, woven: Sequence[Woven]) -> ClothKind:
    """The newest of them that was only washed; without its recipe where all were fulled."""
    for each in woven:
        recipe = archive.journal.finishes.get(each.kind.finish)
        if recipe is None or not recipe.fulling:
            return each.kind
    return replace(woven[0].kind, finish="")


def _row(archive: Archive, yarn: Yarn, kind: ClothKind, sizes: tuple[float, float], unit: str) -> Iterator[Cell]:
    woven = [each for each in archive.shelf.woven(yarn.name) if each.kind.weave == kind.weave]
    sett = next((each.sett for each in woven if each.sett), None)
    set_at = f"set at {show_density(Fraction(sett), archive.journal.settings.units.density)}" if sett else ""
    yield Cell(kind.weave or "no weave named", small=set_at)
    yield Cell(str(len({each.warp.name for each in woven})))
    for size, (_, asked) in zip(sizes, WHOLE.values(), strict=True):
        answer = archive.pocket.answer(kind, asked)
        start = math.ceil(size * math.exp(-answer.mean) / HANDS[unit] - 1e-6) * HANDS[unit]
        low, high = (start * math.exp(log) for log in answer.range(0.9))
        between = f"{show_length(low, unit).removesuffix(f' {unit}')} to {show_length(high, unit)}"
        yield Cell(show_length(start, unit), strong=True)
        yield Cell(between, small=f"{per_cent(answer.loss())} ({_points(*answer.loss_range(0.9))})")


def bands(archive: Archive, yarn: Yarn, directions: Sequence[str]) -> tuple[LossBand, ...]:
    """What the chart draws of the next warp, as the yarn is mostly woven."""
    kind, _, _ = meant(archive.journal, archive.woven_kinds, Asked(yarn.name))
    answers: Mapping[str, Answer] = {way: archive.pocket.answer(kind, WHOLE[way][1]) for way in directions}
    return tuple(
        LossBand(kind.weave, way, *(_drawn(loss) for loss in (least, answer.loss(), most)))
        for way, answer in answers.items()
        for least, most in [answer.loss_range(0.9)]
    )


def _drawn(loss: float) -> float:
    return round(loss / BAND_STEP) * BAND_STEP
