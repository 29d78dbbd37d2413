"""A draft's page: its drawing, its cloth in the colours of the warps that used it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from journal_tools.checking import woven_draft
from journal_tools.drafts import drawdown
from journal_tools.pages import views
from journal_tools.pages.archive import Archive
from journal_tools.pages.cards import card
from journal_tools.pages.draft_part import part_of, thread_hexes
from journal_tools.pages.draft_study import study
from journal_tools.pages.faces import back_of, face_of
from journal_tools.pages.photos import photos
from journal_tools.pages.swatch import EPI, Swatch, cloth, swatch_of
from journal_tools.pages.views import DraftPart, Picture
from journal_tools.pictures.colour import plain_tone
from journal_tools.pictures.unevenness import Unevenness
from journal_tools.quantities import Unreadable
from journal_tools.records import Draft, Warp

CLOTH = (400, 300)
COLOURINGS = 3
OTHERS = 2
"""Yarns that a draft is shown in beside those of its warps."""


def draft_view(archive: Archive, draft: Draft) -> views.DraftView:
    """Everything a draft's page shows."""
    used = warps_with(archive, draft)
    part = part_of(archive, draft, "The draft", cloth=tuple(_cloths(archive, draft, used)))
    found = study(archive, draft)
    return views.DraftView(
        draft.heading,
        part or DraftPart("The draft"),
        draft.weave or "",
        tuple(card(archive, warp) for warp in used),
        problems=archive.problems_of(draft),
        neighbours=archive.neighbours("drafts", draft.name),
        photos=photos(archive, draft),
        **found,  # type: ignore[arg-type]
    )


def warps_with(archive: Archive, draft: Draft) -> list[Warp]:
    """The warps that used a draft, newest first."""
    return [warp for warp in archive.warps if draft.name in [each.draft for each in (warp, *warp.stretches)]]


def _cloths(archive: Archive, draft: Draft, used: list[Warp]) -> Iterator[Picture]:
    shown = 0
    for warp in used:
        stretch = next(each for each in (*warp.stretches, warp) if each.draft == draft.name)
        swatch = swatch_of(archive, warp, stretch)
        if swatch is not None and shown < COLOURINGS:
            shown += 1
            picture = cloth(archive, swatch, CLOTH, caption=False)
            yield views.Picture(picture.src, picture.alt, picture.width, picture.height, f"as in {warp.heading}")
    yield from other_colourings(archive, draft, used[:shown])
    if not shown and (bare := plain_picture(archive, draft)) is not None:
        yield bare
    if (back := plain_picture(archive, draft, back=True)) is not None:
        yield replace(back, caption="the back, turned over sideways, in undyed tones")


def other_colourings(archive: Archive, draft: Draft, shown: list[Warp]) -> Iterator[Picture]:
    """The cloth of a draft in other yarns of the shelf, those used most, each in two of its colours or more."""
    try:
        woven = woven_draft(draft)
    except Unreadable:
        return
    had = {yarn.name for warp in shown for yarn in archive.yarns(warp)}
    names = list(dict.fromkeys((*woven.warp_colours, *woven.weft_colours)))
    for yarn in [yarn for yarn in archive.patterns.shelf if yarn.name not in had][:OTHERS]:
        hexes = list((yarn.colours or {}).values())
        of = {name: hexes[place % len(hexes)] for place, name in enumerate(names)}
        warp = tuple(of[name] for name in woven.warp_colours) or (hexes[0],)
        weft = tuple(of[name] for name in woven.weft_colours) or (hexes[1],)
        side = face_of(drawdown(woven), warp, weft)
        swatch = Swatch(*side, EPI, EPI, "draft", draft.weave or draft.heading, tuple(yarn.colours or ())[:2])
        yield replace(cloth(archive, swatch, CLOTH, caption=False), caption=f"as it would be in {yarn.heading}")


def plain_picture(
    archive: Archive, draft: Draft, size: tuple[int, int] = CLOTH, *, back: bool = False
) -> Picture | None:
    """The cloth of a draft in undyed tones, a tone for each of its colours; None when it cannot be drawn."""
    try:
        woven = woven_draft(draft)
    except Unreadable:
        return None
    warp, weft = thread_hexes(woven)
    threads = (drawdown(woven), warp or (plain_tone(0),), weft or (plain_tone(1),))
    side = back_of(*threads) if back else face_of(*threads)
    even = back or side.over.shape != threads[0].shape
    uneven = Unevenness() if even else Unevenness(warp_room=woven.warp_spacing, weft_room=woven.weft_spacing)
    name = draft.weave or draft.heading
    swatch = Swatch(*side, EPI, EPI, "draft", f"the back of {name}" if back else name, ("undyed tones",), uneven)
    return cloth(archive, swatch, size, caption=False)
