"""Pages of looms and of finishing recipes."""

from __future__ import annotations

from collections.abc import Iterator

from journal_tools.pages.archive import Archive
from journal_tools.pages.cards import card
from journal_tools.pages.photos import photos
from journal_tools.pages.view_parts import Fact, Link
from journal_tools.pages.views import ThingView
from journal_tools.quantities import show_density
from journal_tools.records import Finish, Loom, Record, Warp


def loom_view(archive: Archive, loom: Loom) -> ThingView:
    """A loom: what it can do, and what was woven on it."""
    used = [warp for warp in archive.warps if warp.loom == loom.name]
    return _thing(archive, "looms", loom, tuple(_loom_facts(loom)), used)


def finish_view(archive: Archive, finish: Finish) -> ThingView:
    """A finishing recipe, with its cautions, and the cloth it was used on."""
    used = finished_with(archive, finish)
    keys = ("done", "water", "agitation", "drying", "pressing", "care")
    facts = tuple(Fact(key, (Link(text),)) for key in keys if (text := getattr(finish, key)))
    if finish.fulling:
        facts = (*facts, Fact("fulling", (Link("yes: the cloth is stopped at its size"),)))
    cautions = (finish.cautions,) if finish.cautions else ()
    return _thing(archive, "finishes", finish, facts, used, cautions)


def finished_with(archive: Archive, finish: Finish) -> list[Warp]:
    """The warps that were finished by a recipe, newest first."""
    return [warp for warp in archive.warps if finish.name in recipes_of(warp)]


def recipes_of(warp: Warp) -> tuple[str, ...]:
    """The recipes of a warp, its stretches and its pieces, in the order named."""
    levels = [warp, *warp.stretches, *(piece for stretch in warp.woven() for piece in stretch.pieces)]
    washes = [at.finish for level in levels for at in level.washed if at.finish]
    return tuple(dict.fromkeys([*(name for level in levels for name in level.finish), *washes]))


def _thing(
    archive: Archive,
    kind: str,
    record: Record,
    facts: tuple[Fact, ...],
    used: list[Warp],
    cautions: tuple[str, ...] = (),
) -> ThingView:
    return ThingView(
        record.heading,
        "",
        facts,
        (),
        cautions,
        cards=tuple(card(archive, warp) for warp in used),
        problems=archive.problems_of(record),
        neighbours=archive.neighbours(kind, record.name),
        photos=photos(archive, record),
    )


def _loom_facts(loom: Loom) -> Iterator[Fact]:
    plain = (
        ("shafts", loom.shafts and str(loom.shafts.number)),
        ("treadles", loom.treadles and str(loom.treadles.number)),
        ("weaving width", loom.width and loom.width.text),
        ("heddles", _heddles(loom)),
        ("reeds", ", ".join(show_density(reed.per_m, reed.unit) for reed in loom.reeds)),
        ("usual waste", loom.waste and loom.waste.text),
        ("a re-tie costs", loom.retie and loom.retie.text),
    )
    yield from (Fact(label, (Link(text),)) for label, text in plain if text)


def _heddles(loom: Loom) -> str:
    if not loom.heddles:
        return ""
    if list(loom.heddles) == [0]:
        return f"{loom.heddles[0]} a shaft"
    return ", ".join(f"{number} on shaft {shaft}" for shaft, number in loom.heddles.items())
