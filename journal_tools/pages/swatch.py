"""The cloth of a stretch as it is drawn: its interlacement, its threads' colours, its proportions."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Literal

from journal_tools.checking import woven_draft
from journal_tools.drafts import Draft as Woven
from journal_tools.drafts import drawdown, named_weave
from journal_tools.pages.archive import Archive
from journal_tools.pages.faces import Side, face_of
from journal_tools.pages.view_parts import Picture
from journal_tools.pictures.colour import plain_tone
from journal_tools.pictures.described import described
from journal_tools.pictures.unevenness import EVEN, Unevenness
from journal_tools.quantities import Unreadable
from journal_tools.records import Draft, Stretch, Warp
from journal_tools.records.yarns_used import YarnInUse, warp_yarns, weft_yarns, yarn_in_use

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

Told = Literal["finished", "set", ""]
CARD = (400, 176)
PAGE = (560, 270)
SEEN_WELL = 8
"""Pixels to an end in a page's picture, where it can show all in so many."""
SEEN_THICKER = 1.25
"""The thicker of two threads is drawn so where it is a quarter thicker."""

THICKNESS = {"pattern": 1.4, "tabby": 0.6}
"""Of the threads of a draft with both of these, beside its usual ones: common practice, no source."""

EPI = 20.0
"""Threads to the inch of a cloth that nobody counted, for its picture alone."""


@dataclass(frozen=True)
class Swatch:
    """What a cloth picture is drawn from.

    over: shape (picks, ends), True where the warp is over the weft. warp, weft: hex of each thread.
    epi, ppi: finished threads to the inch. drawn_from: "draft", "weave" or "nothing".
    weave: its name, "" when there is none. told: whether both
    epi and ppi were counted in the finished cloth, or told as it was set, or are guesses. setts: epi and ppi of
    all of the cloth, where this is one of several layers.
    """

    over: NDArray[np.bool_]
    warp: tuple[str, ...]
    weft: tuple[str, ...]
    epi: float
    ppi: float
    drawn_from: str
    weave: str
    colours: tuple[str, ...]
    uneven: Unevenness = EVEN
    told: Told = "finished"
    setts: tuple[float, float] = (EPI, EPI)


def swatch_of(archive: Archive, warp: Warp, stretch: Stretch) -> Swatch | None:
    """The swatch of one stretch; None when neither a draft nor a weave that can be drawn is known."""
    place = next((n for n, each in enumerate(warp.stretches) if each is stretch), -1)
    if (warp.name, place) not in archive.swatches:
        archive.swatches[warp.name, place] = _swatch(archive, warp, stretch)
    return archive.swatches[warp.name, place]


def _swatch(archive: Archive, warp: Warp, stretch: Stretch) -> Swatch | None:
    name = stretch.weave or warp.weave or ""
    draft = stretch.draft or warp.draft
    record = archive.journal.drafts.get(draft) if isinstance(draft, str) else draft
    woven = _woven(record)
    weave = named_weave(name) if name else None
    if woven is None and weave is None:
        return None
    made = woven or (weave.draft if weave is not None else None)
    assert made is not None
    epi, ppi, told = _counts(archive, warp, stretch, weave.ends_to_picks if weave else 1.0)
    warp_hex, warp_names = _warp_colours(archive, warp, made)
    weft_hex, weft_names = _weft_colours(archive, warp, stretch, made, len(dict.fromkeys(warp_hex)))
    names = tuple(dict.fromkeys((*warp_names, *weft_names)))
    drawn_from = "draft" if woven is not None else "weave"
    face = face_of(drawdown(made), warp_hex, weft_hex, _uneven(archive, warp, stretch, made))
    said = name or (record.weave if record else "") or ""
    return swatch_side(face, (epi, ppi), drawn_from, said, names, told)


def swatch_side(
    side: Side, setts: tuple[float, float], drawn_from: str, weave: str, colours: tuple[str, ...], told: Told
) -> Swatch:
    """The swatch of a face or a back. setts: ends and picks to the inch of all of the cloth; a layer has its share."""
    epi, ppi = (sett * share for sett, share in zip(setts, side.share, strict=True))
    return Swatch(side.over, side.warp, side.weft, epi, ppi, drawn_from, weave, colours, side.uneven, told, setts)


def _uneven(archive: Archive, warp: Warp, stretch: Stretch, draft: Woven) -> Unevenness:
    """How thick each thread is beside the middle one of its system, by its yarn's number, and the room that it has."""
    ends = next((wound.order.items for wound in warp.warp if wound.order), ())
    wefts = stretch.weft or next((piece.weft for piece in stretch.pieces if piece.weft), ()) or warp.weft
    picks = next((weft.order.items for weft in wefts if weft.order), ())
    weights = {text: _tex(yarn_in_use(archive.journal, warp, text)) for text in dict.fromkeys((*ends, *picks))}
    warp_side, weft_side = (_thickness(order, weights) for order in (ends, picks))
    own = own_unevenness(draft)
    return replace(own, warp_thickness=warp_side or own.warp_thickness, weft_thickness=weft_side or own.weft_thickness)


def own_unevenness(draft: Woven) -> Unevenness:
    """What a draft says itself of its threads; of a pattern and a tabby shuttle the pattern's yarn is the thicker."""
    sides = ((draft.warp_thickness, draft.warp_order), (draft.weft_thickness, draft.weft_order))
    warp, weft = (said or _by_role(order) for said, order in sides)
    return Unevenness(warp, weft, draft.warp_spacing, draft.weft_spacing)


def _by_role(order: Sequence[str]) -> tuple[float, ...]:
    return tuple(THICKNESS.get(role, 1.0) for role in order) if set(THICKNESS) <= set(order) else ()


def _tex(yarn: YarnInUse) -> float | None:
    return float(yarn.record.tex) if yarn.record is not None and yarn.record.tex else None


def _thickness(order: Sequence[str], weights: Mapping[str, float | None]) -> tuple[float, ...] | None:
    """The diameters of an order's threads beside the middle one's: () where they are much alike, None if unknown."""
    known = [tex for text in order if (tex := weights.get(text))]
    if not order or len(known) < len(order):
        return None
    middle = sorted(known)[len(known) // 2]
    beside = tuple(round((tex / middle) ** 0.5, 2) for tex in known)
    return beside if max(beside) / min(beside) >= SEEN_THICKER else ()


def _woven(record: Draft | None) -> Woven | None:
    if record is None:
        return None
    try:
        return woven_draft(record)
    except Unreadable:
        return None  # told of on the draft's own page


def _counts(archive: Archive, warp: Warp, stretch: Stretch, ends_to_picks: float) -> tuple[float, float, Told]:
    """Ends and picks to the inch of all layers together, and how they are known.

    Those of a finished cloth that opens are counted opened, in one layer.
    """
    layers = warp.layers.number if warp.opens and warp.layers else 1
    own = stretch.name or "" if stretch is not warp else ""
    pieces = [piece for piece in archive.ledgers[warp.name].pieces if piece.stretch == own]
    epi = next((piece.counts.ends_per_m for piece in pieces if piece.counts.ends_per_m), None)
    ppi = next((piece.counts.picks_per_m for piece in pieces if piece.counts.picks_per_m), None)
    sett = warp.sett_of(stretch)
    beat = stretch.beat or warp.beat
    epi_in = epi * 0.0254 * layers if epi else float(sett.per_inch) if sett else None
    ppi_in = ppi * 0.0254 * layers if ppi else float(beat.per_inch) if beat else None
    told: Told = "finished" if epi and ppi else "set" if epi_in and ppi_in else ""
    if epi_in is None:
        epi_in = ppi_in * ends_to_picks if ppi_in else EPI
    return epi_in, ppi_in or epi_in / ends_to_picks, told


def _warp_colours(archive: Archive, warp: Warp, draft: Woven) -> tuple[tuple[str, ...], tuple[str, ...]]:
    order: Sequence[str] = next((wound.order.items for wound in warp.warp if wound.order), ())
    used = warp_yarns(archive.journal, warp)
    return _colours(archive, warp, order, draft.warp_colours, used, 0)


def _weft_colours(
    archive: Archive, warp: Warp, stretch: Stretch, draft: Woven, taken: int
) -> tuple[tuple[str, ...], tuple[str, ...]]:
    wefts = stretch.weft or next((piece.weft for piece in stretch.pieces if piece.weft), ()) or warp.weft
    order: Sequence[str] = next((weft.order.items for weft in wefts if weft.order), ())
    used = weft_yarns(archive.journal, warp, stretch)
    return _colours(archive, warp, order, draft.weft_colours, used, taken)


def _colours(
    archive: Archive,
    warp: Warp,
    order: Sequence[str],
    drafted: Sequence[str],
    used: Sequence[YarnInUse],
    taken: int,
) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Hex of each thread, and the names of the colours. taken: plain tones that other threads have."""
    if order:
        yarns = {text: yarn_in_use(archive.journal, warp, text) for text in dict.fromkeys(order)}
        hexes = _hexes(list(yarns.values()), taken)
        by_text = dict(zip(yarns, hexes, strict=True))
        return tuple(by_text[text] for text in order), tuple(_word(yarn) for yarn in yarns.values())
    hexes = _hexes(used, taken)
    words = tuple(_word(yarn) for yarn in used)
    if drafted and len(set(drafted)) <= len(hexes):
        by_name = dict(zip(dict.fromkeys(drafted), hexes, strict=False))
        return tuple(by_name[name] for name in drafted), words
    return (tuple(hexes[:1]) or (plain_tone(taken),)), words[:1]


def _hexes(used: Sequence[YarnInUse], taken: int) -> list[str]:
    return [yarn.hex or plain_tone(taken + place) for place, yarn in enumerate(used)]


def _word(yarn: YarnInUse) -> str:
    return yarn.colour or (yarn.record.heading if yarn.record else yarn.name.replace("-", " "))


def cloth(archive: Archive, swatch: Swatch, size: tuple[int, int], *, caption: bool = True) -> Picture:
    """The cloth picture of a swatch, in pixels."""
    width, height = size
    what = repr(("cloth", size, swatch.over.shape, swatch.warp, swatch.weft, swatch.epi, swatch.ppi, swatch.uneven))
    address = archive.drawn(what.encode() + swatch.over.tobytes(), ".png", swatch_png, swatch, width, height)
    alt = described(swatch.weave, swatch.colours, *((swatch.epi, swatch.ppi) if swatch.told else ()))
    said = "Drawn from the weave's name; this warp has no draft." if swatch.drawn_from == "weave" else ""
    return Picture(address, alt, width, height, said if caption else "")


def whole_width(archive: Archive, swatch: Swatch, warp: Warp) -> Picture | None:
    """Every end from edge to edge, where the page's picture can show a part of the colours only."""
    wound = sum(len(each.order.items) for each in warp.warp if each.order)
    if wound != len(swatch.warp) or len(set(swatch.warp)) < 2 or wound * SEEN_WELL <= PAGE[0]:
        return None
    from journal_tools.pictures.whole_width import strip_picture, strip_size

    size = strip_size(wound, swatch.epi, swatch.ppi)
    if size is None:
        return None
    what = repr(("whole", size, swatch.over.shape, swatch.warp, swatch.weft, swatch.epi, swatch.ppi))
    given = (swatch.over, swatch.warp, swatch.weft, swatch.epi, swatch.ppi)
    address = archive.drawn(what.encode() + swatch.over.tobytes(), ".png", strip_picture, *given)
    said = f"The whole width, edge to edge: {wound} ends."
    return Picture(address, f"{said} {described(swatch.weave, swatch.colours, swatch.epi, swatch.ppi)}", *size, said)


def swatch_png(swatch: Swatch, width: int, height: int) -> bytes:
    """The picture itself, as a PNG: what another process is asked for."""
    from journal_tools.pictures.card import card_picture
    from journal_tools.pictures.uneven import uneven_picture

    if not swatch.uneven.is_even:
        threads = (swatch.over, swatch.warp, swatch.weft, swatch.epi, swatch.ppi, swatch.uneven)
        return uneven_picture(*threads, width_px=width, height_px=height)
    return card_picture(swatch.over, swatch.warp, swatch.weft, swatch.epi, swatch.ppi, width_px=width, height_px=height)
