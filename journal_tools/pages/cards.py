"""Swatch cards: one for each warp."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator

from journal_tools.ledger import Ledger
from journal_tools.ledger.state import MADE_UP
from journal_tools.ledger.words import COMPARED, per_cent
from journal_tools.pages.archive import Archive
from journal_tools.pages.kinds import alike
from journal_tools.pages.measured import mean_lines
from journal_tools.pages.swatch import CARD, cloth, swatch_of
from journal_tools.pages.view_parts import Card, Figure, Picture
from journal_tools.problems import Problem
from journal_tools.quantities import When, show_length
from journal_tools.records import Stretch, Warp


def card(archive: Archive, warp: Warp, stretch: Stretch | None = None) -> Card:
    """The card of a warp, made once in a build. stretch: the one that stands for it, the first when not told."""
    shown = stretch or main_stretch(warp)
    key = (warp.name, shown.name or "")
    if key not in archive.cards:
        archive.cards[key] = _card(archive, warp, shown)
    return archive.cards[key]


def _card(archive: Archive, warp: Warp, shown: Stretch) -> Card:
    yarns = archive.yarns(warp)
    when = warp.started or warp.finished
    weave = weave_of(archive, warp, shown)
    words = [yarns[0].plain_heading if yarns else "", weave]
    ledger = archive.ledgers[warp.name]
    stretches = [stretch.name or "" for stretch in warp.stretches]
    found_by = [yarn.heading for yarn in yarns] + [s.weave or "" for s in warp.stretches] + list(warp.tags) + stretches
    return Card(
        warp.heading,
        f"warps/{warp.name}.html",
        card_picture(archive, warp, shown),
        " · ".join(word for word in (*words, month_of(when)) if word),
        tuple(_figures(ledger, shown.name or "" if shown is not warp else "")),
        _flag(archive.problems_of(warp)),
        tuple(dict.fromkeys(yarn.plain_heading for yarn in yarns)),
        weave,
        str(when.year) if when else "",
        " ".join(dict.fromkeys(word for word in found_by if word)),
    )


def month_of(when: When | None) -> str:
    """A date without its day: `March 2025`; "" for none."""
    return dataclasses.replace(when, day=None).show() if when else ""


def weave_of(archive: Archive, warp: Warp, stretch: Stretch | None = None) -> str:
    """The weave of a stretch, the first one when not told."""
    main = stretch or main_stretch(warp)
    draft = main.draft or warp.draft
    record = archive.journal.drafts.get(draft) if isinstance(draft, str) else draft
    return main.weave or warp.weave or (record.weave if record else "") or ""


def main_stretch(warp: Warp) -> Stretch:
    """The stretch that stands for the warp: the first."""
    return warp.woven()[0]


def card_picture(archive: Archive, warp: Warp, stretch: Stretch | None = None) -> Picture | None:
    """The cloth of a stretch, the first one when not told, at a card's size."""
    swatch = swatch_of(archive, warp, stretch or main_stretch(warp))
    return cloth(archive, swatch, CARD, caption=False) if swatch is not None else None


def _figures(ledger: Ledger, stretch: str) -> Iterator[Figure]:
    size = finished_size(ledger, stretch)
    if size is not None:
        yield size
    whole = ledger.whole("width")
    if whole is not None:
        less, more = COMPARED["width"]
        text = f"{per_cent(abs(whole.loss))} {less if whole.loss >= 0 else more}"
        yield Figure(text, f"{whole.first.short} to {whole.last.short}")


def finished_size(ledger: Ledger, stretch: str | None = None) -> Figure | None:
    """The last size of a stretch, of the first when not told: made up, else the last one measured."""
    own = [piece for piece in ledger.pieces if piece.stretch == stretch] or [
        piece for piece in ledger.pieces if piece.stretch == ledger.pieces[0].stretch
    ]
    first = alike(own)
    lines = {way: [line for line in mean_lines(first, way) if line.measured_mm is not None] for way in COMPARED}
    if any(piece.laid.band is not None for piece in first) or not all(lines.values()):
        return None
    width, length = lines["width"][-1], lines["length"][-1]
    if width.state != length.state or width.yardstick == "marks":
        return None
    unit = width.unit
    across = show_length(width.measured_mm or 0, unit, width.mark_mm, pretty=True).removesuffix(f" {unit}")
    along = show_length(length.measured_mm or 0, unit, length.mark_mm, pretty=True)
    return Figure(f"{across} × {along}", width.state.name if width.state != MADE_UP else "made up")


def _flag(problems: tuple[Problem, ...]) -> str:
    faults = sum(problem.is_fault for problem in problems)
    asked = len(problems) - faults
    if faults:
        return f"{faults} thing{'s' if faults > 1 else ''} to mend"
    return f"{asked} question{'s' if asked > 1 else ''}" if asked else ""
