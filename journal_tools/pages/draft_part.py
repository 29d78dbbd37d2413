"""A draft as shown on its own page and on a warp's."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from journal_tools.checking import woven_draft
from journal_tools.drafts import Draft as Woven
from journal_tools.drafts import drawdown, longest_floats
from journal_tools.pages.archive import Archive
from journal_tools.pages.views import DraftPart, Fact, Link, Notation, Picture
from journal_tools.pictures.drawdown import draft_picture, draft_picture_size
from journal_tools.quantities import Unreadable
from journal_tools.records import Draft, Stretch, Warp

LINES = ("threading", "tie_up", "treadling", "lift_plan", "warp_colours", "weft_colours")
CELL = 6
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
        tuple(_facts(woven, record)),
        tuple(_notation(record)),
    )


def _facts(woven: Woven, record: Draft) -> Iterator[Fact]:
    yield Fact("shafts", (Link(str(max(woven.shafts, record.shafts.number if record.shafts else 0))),))
    if woven.treadles:
        yield Fact("treadles", (Link(str(woven.treadles)),))
    else:
        yield Fact("woven by", (Link("lift plan"),))
    yield Fact("repeat", (Link(f"{len(woven.threading)} ends, {len(woven.picks)} picks"),))
    if record.weave:
        yield Fact("weave", (Link(record.weave),))
    floats = longest_floats(drawdown(woven))
    words = [
        f"{way} {length if length is not None else 'never crossed'}"
        for way, length in (("warp", floats.warp), ("weft", floats.weft))
    ]
    yield Fact("longest float", (Link(", ".join(words)),))
    yield Fact("shed", (Link(record.shed),))


def _notation(record: Draft) -> Iterator[Notation]:
    for key in LINES:
        value = getattr(record, key)
        if value is not None:
            yield Notation(
                "tie-up" if key == "tie_up" else key.replace("_", " "), value.text or _shortest(key, value.items)
            )


def _shortest(key: str, items: tuple[object, ...]) -> str:
    from journal_tools.notation import print_colours, print_sets

    return print_colours(items) if key.endswith("colours") else print_sets(items)  # type: ignore[arg-type]


def _drawing(archive: Archive, woven: Woven, record: Draft) -> Picture:
    address = archive.drawn(_canonical(woven), ".png", draft_png, woven)
    width, height = draft_picture_size(woven, most_ends=MOST, most_picks=MOST, cell_px=CELL)
    picks, ends = len(woven.picks), len(woven.threading)
    beside = "treadling" if woven.treadles else "lifts"
    alt = f"Drawdown of {record.heading}: {ends} ends by {picks} picks, threading above, {beside} beside"
    return Picture(address, alt, width, height, sharp=True)


def draft_png(woven: Woven) -> bytes:
    """The drawing itself, as a PNG: what another process is asked for."""
    return draft_picture(woven, most_ends=MOST, most_picks=MOST, cell_px=CELL)


def _canonical(woven: Woven) -> bytes:
    """All that a drawing depends on, the same in every run: a set has no order of its own."""
    parts = (woven.threading, woven.tie_up or (), woven.treadling or (), woven.lift_plan or ())
    return repr([[sorted(each) for each in part] for part in parts] + [woven.rising, MOST, CELL]).encode()
