"""A draft's page: its drawing, its cloth in the colours of the warps that used it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from itertools import combinations, islice

from journal_tools.checking import woven_draft
from journal_tools.drafts import Draft as Woven
from journal_tools.drafts import drawdown, named_weave
from journal_tools.pages import views
from journal_tools.pages.archive import Archive
from journal_tools.pages.cards import card
from journal_tools.pages.draft_part import colour_places, part_of, thread_hexes
from journal_tools.pages.draft_study import study
from journal_tools.pages.faces import back_of, face_of
from journal_tools.pages.photos import photos
from journal_tools.pages.swatch import EPI, Swatch, Told, cloth, own_unevenness, swatch_of, swatch_side
from journal_tools.pages.view_parts import DraftPart, Picture
from journal_tools.pictures.colour import contrast, luminance, parse_hex, plain_tone
from journal_tools.quantities import Unreadable
from journal_tools.records import Draft, Stretch, Warp

CLOTH = (400, 300)
COLOURINGS = 3
OWN_COLOURS = "its own colours"
OTHERS = 2
"""Yarns that a draft is shown in beside those of its warps."""


def draft_view(archive: Archive, draft: Draft) -> views.DraftView:
    """Everything a draft's page shows."""
    used = archive.patterns.used(draft.name)
    part = part_of(archive, draft, "The draft", cloth=tuple(_cloths(archive, draft, used)))
    found = study(archive, draft)
    return views.DraftView(
        draft.heading,
        part or DraftPart("The draft"),
        draft.weave or "",
        tuple(card(archive, warp, stretch) for warp, stretch in used),
        problems=archive.problems_of(draft),
        neighbours=archive.neighbours("drafts", draft.name),
        photos=photos(archive, draft),
        **found,  # type: ignore[arg-type]
    )


def warps_with(archive: Archive, draft: Draft) -> list[Warp]:
    """The warps that used a draft, newest first."""
    return [warp for warp, _ in archive.patterns.used(draft.name)]


def _cloths(archive: Archive, draft: Draft, used: Sequence[tuple[Warp, Stretch]]) -> Iterator[Picture]:
    shown = 0
    for warp, stretch in used:
        swatch = swatch_of(archive, warp, stretch)
        if swatch is not None and shown < COLOURINGS:
            shown += 1
            picture = cloth(archive, swatch, CLOTH, caption=False)
            yield Picture(picture.src, picture.alt, picture.width, picture.height, f"as in {warp.heading}")
    if not shown and (own := plain_picture(archive, draft)) is not None:
        yield replace(own, caption=f"in {_tones(archive, draft)}")
    yield from other_colourings(archive, draft, [warp for warp, _ in used[:shown]])
    if (back := plain_picture(archive, draft, back=True)) is not None:
        yield replace(back, caption=f"the back, turned over sideways, in {_tones(archive, draft)}")


def other_colourings(archive: Archive, draft: Draft, shown: list[Warp]) -> Iterator[Picture]:
    """The cloth of a draft in other yarns of the shelf, those used most that have colours enough for it."""
    try:
        woven = woven_draft(draft)
    except Unreadable:
        return
    had = {yarn.name for warp in shown for yarn in archive.yarns(warp)}
    places = colour_places(woven)
    wanted = max(2, len(set(places.values())))
    fit = (yarn for yarn in archive.patterns.shelf if yarn.name not in had and len(yarn.colours or {}) >= wanted)
    for yarn in islice(fit, OTHERS):
        colours = _told_apart(yarn.colours or {})
        hexes = list(colours.values())
        of = {name: hexes[place] for name, place in places.items()}
        warp = tuple(of[name] for name in woven.warp_colours) or (hexes[0],)
        weft = tuple(of[name] for name in woven.weft_colours) or (hexes[1],)
        seen = tuple(name for name, digits in colours.items() if digits in (*warp, *weft))
        swatch = _swatch(archive, draft, woven, (warp, weft), seen)
        yield replace(cloth(archive, swatch, CLOTH, caption=False), caption=f"as it would be in {yarn.heading}")


def _told_apart(colours: Mapping[str, str]) -> dict[str, str]:
    """The colours of a yarn, the two first that are seen apart best: a darker weft on a lighter warp."""
    light, dark = max(combinations(colours, 2), key=lambda pair: contrast(*(parse_hex(colours[name]) for name in pair)))
    if luminance(parse_hex(colours[light])) < luminance(parse_hex(colours[dark])):
        light, dark = dark, light
    return {name: colours[name] for name in dict.fromkeys((light, dark, *colours))}


def plain_picture(
    archive: Archive, draft: Draft, size: tuple[int, int] = CLOTH, *, back: bool = False
) -> Picture | None:
    """The cloth of a draft in the colours that it names, else in undyed tones; None when it cannot be drawn."""
    try:
        woven = woven_draft(draft)
    except Unreadable:
        return None
    warp, weft = thread_hexes(archive, woven)
    threads = (warp or (plain_tone(0),), weft or (plain_tone(1),))
    return cloth(
        archive, _swatch(archive, draft, woven, threads, (_tones(archive, draft),), back=back), size, caption=False
    )


def _tones(archive: Archive, draft: Draft) -> str:
    named = [name for order in (draft.warp_colours, draft.weft_colours) if order for name in order.items]
    layers = [layer for layer in (draft.upper, draft.lower) if layer is not None]
    own = any(name in archive.colours for name in named) or any(
        _tones(archive, layer) == OWN_COLOURS for layer in layers
    )
    return OWN_COLOURS if own else "undyed tones"


def _swatch(
    archive: Archive,
    draft: Draft,
    woven: Woven,
    threads: tuple[tuple[str, ...], tuple[str, ...]],
    colours: tuple[str, ...],
    *,
    back: bool = False,
) -> Swatch:
    """A side of a draft's cloth, in the proportions of the newest warp in it, else in those usual for its weave."""
    side = (back_of if back else face_of)(drawdown(woven), *threads, own_unevenness(woven))
    told: Told = "set"
    setts = archive.patterns.sett(draft.name)
    if setts is None:
        known = named_weave(draft.weave) if draft.weave else None
        setts, told = (EPI, EPI / (known.ends_to_picks if known else 1.0)), ""
    name = draft.weave or draft.heading
    return swatch_side(side, setts, "draft", f"the back of {name}" if back else name, colours, told)
