"""A draft as shown on its own page and on a warp's."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import cycle
from math import lcm

import numpy as np
from numpy.typing import NDArray

from journal_tools.checking import woven_draft
from journal_tools.drafts import Draft as Woven
from journal_tools.drafts.analysis import Analysis, analysed
from journal_tools.drafts.repeat import period
from journal_tools.pages.archive import Archive
from journal_tools.pages.view_parts import DraftPart, Fact, Link, Notation, Picture
from journal_tools.pictures.colour import plain_tone
from journal_tools.pictures.draft_drawing import Window, draft_picture, draft_picture_size
from journal_tools.quantities import Unreadable
from journal_tools.records import Draft, Stretch, Warp

LINES = (
    *("threading", "profile", "tie_up", "treadling", "profile_treadling", "lift_plan", "tabby_between"),
    *("ends_in_dents", "warp_colours", "weft_colours", "warp_order", "weft_order"),
)
CELL, LARGEST_CELL, PRINTED_CELL = 6, 12, 30
"""Pixels to a thread of a large draft, of a small one, and of a small one to print."""

SHEET_PX, PRINTED_PX = 420, 2400
"""A small draft is drawn larger until it is about so wide or high, on the page and in the file to print."""

DOTTED = "A dot marks a crossing in a float that is longer than cloth which is handled bears."
MOST = 64
"""Threads of a drawdown that is shown whole; of a longer one the first so many."""


def draft_part(archive: Archive, warp: Warp, stretch: Stretch) -> DraftPart | None:
    """The draft of a stretch, None when it has none that can be drawn."""
    said = stretch.draft or warp.draft
    record = archive.journal.drafts.get(said) if isinstance(said, str) else said
    if record is None:
        return None
    href = f"drafts/{said}.html" if isinstance(said, str) else ""
    return part_of(archive, record, record.heading if href else "Draft", href)


def part_of(
    archive: Archive, record: Draft, title: str, href: str = "", cloth: Sequence[Picture] = ()
) -> DraftPart | None:
    """A draft's drawing, facts and notation; None when its parts do not fit together."""
    try:
        woven = woven_draft(record)
    except Unreadable:
        return None
    return DraftPart(
        title,
        href,
        _drawing(archive, woven, record),
        tuple(cloth),
        tuple(_facts(woven, record, _found(archive, woven, record))),
        tuple(notation_of(record)),
    )


def _facts(woven: Woven, record: Draft, found: Analysis) -> Iterator[Fact]:
    yield Fact("shafts", (Link(str(max(woven.shafts, record.shafts.number if record.shafts else 0))),))
    if woven.treadles:
        yield Fact("treadles", (Link(str(woven.treadles)),))
    else:
        yield Fact("woven by", (Link("lift plan"),))
    once = found.repeat[::-1]
    ends, picks = (
        lcm(threads, period(order) if order else 1)
        for threads, order in zip(once, (woven.warp_colours, woven.weft_colours), strict=True)
    )
    said, coloured, written = (
        f"{ends} ends, {picks} picks" for ends, picks in (once, (ends, picks), found.over.shape[::-1])
    )
    more = [f"; with its colours {coloured}"] if coloured != said else []
    more += [f"; written: {written}"] if written not in (said, coloured) else []
    yield Fact("repeat", (Link(said + "".join(more)),))
    if record.weave:
        yield Fact("weave", (Link(record.weave),))
    yield Fact("longest float", (Link(", ".join(_longest(found, way) for way in ("warp", "weft"))),))
    yield Fact("shed", (Link(record.shed),))


def _found(archive: Archive, woven: Woven, record: Draft) -> Analysis:
    """What there is to tell of a draft: as it was looked through for all pages, or of one written in a warp anew."""
    of_journal = archive.journal.drafts.get(record.name) is record
    known = archive.patterns.found.get(record.name) if of_journal else None
    return known or analysed(woven)


def _longest(found: Analysis, way: str) -> str:
    runs = [one.threads for one in found.floats if one.system == way]
    lengths = [run for run in runs if run is not None]
    return f"{way} {'never crossed' if len(lengths) < len(runs) else max(lengths, default=0)}"


def notation_of(record: Draft) -> Iterator[Notation]:
    """A draft's parts as they were typed, each under its key."""
    for letter, block in (record.blocks or {}).items():
        for key in ("threading", "treadling"):
            if (unit := getattr(block, key)) is not None:
                yield Notation(f"block {letter}, {key}", unit.text)
    for key in LINES:
        value = getattr(record, key)
        if value is not None:
            label = "tie-up" if key == "tie_up" else key.replace("_", " ")
            yield Notation(label, value.text or _shortest(key, value.items))
    for end in record.accents:
        shaft = f" on {end.shaft.text}" if end.shaft else ""
        yield Notation(
            "accent",
            " ".join(f"end {end.end.text if end.end else ''}{shaft} {end.colour or ''}".split()) + f", {end.way}",
        )
    for name, layer in (("upper", record.upper), ("lower", record.lower)):
        if layer is not None:
            yield from (Notation(f"{name} layer, {line.label}", line.text) for line in notation_of(layer))


def _shortest(key: str, items: tuple[object, ...]) -> str:
    from journal_tools import notation

    if key.startswith("profile"):
        return notation.print_profile(items)  # type: ignore[arg-type]
    if key.endswith(("colours", "_order")):
        return notation.print_colours(items)  # type: ignore[arg-type]
    printed = {
        "tie_up": notation.print_tie_up,
        "lift_plan": notation.print_lift_plan,
        "ends_in_dents": notation.print_dents,
    }
    return printed.get(key, notation.print_sets)(items)  # type: ignore[arg-type]


def _drawing(archive: Archive, woven: Woven, record: Draft) -> Picture:
    window = Window(most_ends=MOST, most_picks=MOST)
    marked = _found(archive, woven, record).marked
    cell = cell_of(woven, window, SHEET_PX, LARGEST_CELL)
    picture = tile(archive, woven, record.heading, window, marked, cell_px=cell)
    return replace(picture, caption=DOTTED) if marked[:MOST, :MOST].any() else picture


def tile(
    archive: Archive,
    woven: Woven,
    heading: str,
    window: Window,
    marked: NDArray[np.bool_] | None = None,
    *,
    cell_px: int,
) -> Picture:
    """One part of a draft's drawing. marked: crossings that get a dot."""
    hexes = thread_hexes(archive, woven)
    dots = b"" if marked is None or not marked.any() else np.packbits(marked).tobytes()
    what = _canonical(woven) + repr((window, hexes, cell_px)).encode() + dots
    address = archive.drawn(what, ".png", draft_png, woven, window, marked if dots else None, hexes, cell_px)
    width, height = draft_picture_size(woven, window, cell_px=cell_px, coloured=any(hexes), numbered=True)
    ends = (window.first_end + 1, min(len(woven.threading), window.first_end + window.most_ends))
    picks = (window.first_pick + 1, min(len(woven.picks), window.first_pick + window.most_picks))
    beside = "treadling" if woven.treadles else "lifts"
    alt = (
        f"Drawdown of {heading}: ends {ends[0]} to {ends[1]}, picks {picks[0]} to {picks[1]},"
        f" threading above, {beside} beside"
    )
    return Picture(address, alt, width, height, sharp=True)


def thread_hexes(archive: Archive, woven: Woven) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Six digits for each thread of a draft that names its colours; nothing for a system without names.

    A colour is as the shelf has it, else one of the plain tones.
    """
    tones = {name: archive.colours.get(name) or plain_tone(place) for name, place in colour_places(woven).items()}
    return tuple(tones[name] for name in woven.warp_colours), tuple(tones[name] for name in woven.weft_colours)


def colour_places(woven: Woven) -> dict[str, int]:
    """A place among the colours to be had for each name of a draft's: 0 for the warp, 1 for what is seen on it.

    A warp without a name is the first of all; a yarn that weaves tabby alone is as the warp is.
    """
    roles = woven.weft_order or ("",)
    picks = range(lcm(len(roles), len(woven.weft_colours) or 1))
    pairs = {*zip(picks, cycle(roles), cycle(woven.weft_colours), strict=False)}
    tabby = {name for name in woven.weft_colours if {role for _, role, other in pairs if other == name} == {"tabby"}}
    warp = list(dict.fromkeys(woven.warp_colours or ("",)))
    more = [name for name in dict.fromkeys(woven.weft_colours) if name not in warp and name not in tabby]
    places = {name: place for place, name in enumerate((*warp, *more))}
    return {**dict.fromkeys(tabby, 0), **places}


def cell_of(woven: Woven, window: Window, sheet_px: int, largest: int) -> int:
    """Pixels to a thread, more in a small draft: until it is about sheet_px wide or high."""
    return max(CELL, min(largest, sheet_px // max(draft_picture_size(woven, window, cell_px=1))))


def draft_png(
    woven: Woven,
    window: Window,
    marked: NDArray[np.bool_] | None,
    hexes: tuple[tuple[str, ...], tuple[str, ...]],
    cell_px: int,
) -> bytes:
    """The drawing itself, as a PNG: what another process is asked for."""
    return draft_picture(woven, window, cell_px=cell_px, marked=marked, warp=hexes[0], weft=hexes[1], numbered=True)


def _canonical(woven: Woven) -> bytes:
    """All that a drawing depends on, the same in every run: a set has no order of its own."""
    parts = (woven.threading, woven.tie_up or (), woven.treadling or (), woven.lift_plan or ())
    return repr([[sorted(each) for each in part] for part in parts] + [woven.rising]).encode()
