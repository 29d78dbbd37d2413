"""What a draft's page tells of it before it is threaded: findings, whole drawing, heddles, likes, files."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from math import ceil
from typing import TYPE_CHECKING

from journal_tools.checking import woven_draft
from journal_tools.drafts import Draft as Woven
from journal_tools.drafts.analysis import HELD, Analysis, analysed
from journal_tools.drafts.analysis_words import sentences, warnings
from journal_tools.drafts.likeness import distance, same_cloth, windows
from journal_tools.interchange import Extras, write_wif
from journal_tools.pages.archive import Archive
from journal_tools.pages.draft_part import MOST, PRINTED_PX, thread_hexes, tile
from journal_tools.pages.faces import face_of
from journal_tools.pages.swatch import own_unevenness
from journal_tools.pages.views import Cell, Column, Link, Picture, Table
from journal_tools.pictures.colour import plain_tone
from journal_tools.pictures.draft_drawing import Window
from journal_tools.pictures.real_size import real_size_picture
from journal_tools.quantities import Unreadable
from journal_tools.records import Draft, Yarn

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

ALIKE = 0.25
"""The most that two cloths differ in that are shown as like one another: a quarter of their windows (judgement)."""

LIKES = 6
MOST_TILES = 48
REAL = (4.0, 3.0)
"""Inches across and down of the cloth to print."""

WIDTHS = (10, 20, 30)
"""Inches in the reed that heddles are counted for."""

GUESSED_EPI = 20.0
INCH_M = 0.0254


@dataclass
class Patterns:
    """Every draft that can be woven, looked through once for all pages."""

    archive: Archive

    @cached_property
    def woven(self) -> Mapping[str, Woven]:
        """The drafts by name, those that fit together."""
        found = {}
        for name, record in self.archive.journal.drafts.items():
            try:
                found[name] = woven_draft(record)
            except Unreadable:
                continue  # told of on its own page
        return found

    @cached_property
    def found(self) -> Mapping[str, Analysis]:
        """What there is to tell of each, at the sett of the newest warp that used it."""
        return {name: self._look(name, woven) for name, woven in self.woven.items()}

    @cached_property
    def shelf(self) -> Sequence[Yarn]:
        """Yarns of two colours and more, those in most warps first: what drafts are shown in."""
        used = Counter(yarn.name for warp in self.archive.warps for yarn in self.archive.yarns(warp))
        coloured = [yarn for yarn in self.archive.journal.yarns.values() if len(yarn.colours or {}) >= 2]
        return sorted(coloured, key=lambda yarn: (-used[yarn.name], yarn.name))

    @cached_property
    def _windows(self) -> Mapping[str, NDArray[np.float64]]:
        return {name: windows(found.over) for name, found in self.found.items()}

    def sett(self, name: str) -> tuple[float | None, float | None]:
        """Finished ends and picks to the inch of the newest warp in a draft; None where none has told them."""
        from journal_tools.pages.draft_page import stretch_in, warps_with
        from journal_tools.pages.swatch import swatch_of

        record = self.archive.journal.drafts[name]
        for warp in warps_with(self.archive, record):
            stretch = stretch_in(warp, record)
            if (warp.sett_of(stretch) or stretch.beat or warp.beat) and (
                swatch := swatch_of(self.archive, warp, stretch)
            ):
                return swatch.epi, swatch.ppi
        return None, None

    def reed_sett(self, name: str) -> float | None:
        """Ends to the inch in the reed of the newest warp in a draft that tells them."""
        from journal_tools.pages.draft_page import stretch_in, warps_with

        record = self.archive.journal.drafts[name]
        for warp in warps_with(self.archive, record):
            if (sett := warp.sett_of(stretch_in(warp, record))) is not None:
                return float(sett.per_inch)
        return None

    def _look(self, name: str, woven: Woven) -> Analysis:
        epi, ppi = self.sett(name)
        return analysed(
            woven,
            ends_per_m=epi / INCH_M if epi else None,
            picks_per_m=ppi / INCH_M if ppi else None,
            said_weave=self.archive.journal.drafts[name].weave or "",
            bears_mm=HELD if epi else None,
        )

    def likes(self, name: str) -> list[tuple[str, float]]:
        """Other drafts that weave nearly the same, with the share in which they differ, the nearest first."""
        if name not in self._windows:
            return []
        mine = self._windows[name]
        apart = [(other, distance(mine, theirs)) for other, theirs in self._windows.items() if other != name]
        return sorted((pair for pair in apart if pair[1] <= ALIKE), key=lambda pair: (pair[1], pair[0]))[:LIKES]


def study(archive: Archive, record: Draft) -> Mapping[str, object]:
    """The parts of a draft's page that come of its analysis; none where it cannot be woven."""
    found = archive.patterns.found.get(record.name)
    if found is None:
        return {}
    inches = archive.journal.settings.units.density
    asked = tuple(warnings(found, inches))
    return {
        "asked": asked,
        "said": tuple(line for line in sentences(found, inches) if line not in asked),
        "tiles": tuple(_tiles(archive, record, found)),
        "dotted": bool(found.marked.any()),
        "tables": tuple(_tables(archive, record, found)),
        "files": tuple(_files(archive, record, found)),
    }


def _tiles(archive: Archive, record: Draft, found: Analysis) -> Iterator[Picture]:
    """The whole drawing in pieces that can be read, where one picture does not hold it or floats are marked."""
    woven = found.draft
    windows_ = Window(most_ends=MOST, most_picks=MOST).tiles(len(woven.threading), len(woven.picks))
    if len(windows_) == 1 and not found.marked.any():
        return
    for window in windows_[:MOST_TILES]:
        picture = tile(archive, woven, record.heading, window, found.marked)
        ends = f"ends {window.first_end + 1} to {min(len(woven.threading), window.first_end + MOST)}"
        picks = f"picks {window.first_pick + 1} to {min(len(woven.picks), window.first_pick + MOST)}"
        yield Picture(picture.src, picture.alt, picture.width, picture.height, f"{ends}, {picks}", sharp=True)


def _tables(archive: Archive, record: Draft, found: Analysis) -> Iterator[Table]:
    yield _heddles(archive, record, found)
    likes = archive.patterns.likes(record.name)
    if likes:
        rows = tuple((_like(archive, name), Cell(_words(archive, record.name, name, apart))) for name, apart in likes)
        yield Table("Patterns like this one", (Column("pattern"), Column("how alike")), rows)


def _like(archive: Archive, name: str) -> Cell:
    return Cell(archive.journal.drafts[name].heading, f"drafts/{name}.html")


def _words(archive: Archive, one: str, other: str, apart: float) -> str:
    found = archive.patterns.found
    if same_cloth(found[one].over, found[other].over):
        return "the same cloth, but for where it begins, how it is turned or which side is up"
    return f"woven alike in {(1 - apart) * 100:.0f} % of its small parts"


def _heddles(archive: Archive, record: Draft, found: Analysis) -> Table:
    sett = archive.patterns.reed_sett(record.name)
    woven, per_inch = found.draft, sett or GUESSED_EPI
    columns = (Column("shaft"), Column("in one repeat", True), *(Column(f"{width} in wide", True) for width in WIDTHS))
    rows = []
    for shaft in range(1, woven.shafts + 1):
        on = [shaft in end for end in woven.threading]
        figures = [_over(on, round(width * per_inch)) for width in WIDTHS]
        rows.append((Cell(str(shaft)), Cell(str(sum(on))), *(Cell(str(figure)) for figure in figures)))
    whose = "as the newest warp in it was sleyed" if sett else "a guess"
    return Table("Heddles", columns, tuple(rows), note=f"At {per_inch:g} ends to the inch in the reed, {whose}.")


def _over(on: list[bool], ends: int) -> int:
    """Heddles of a shaft for so many ends of a threading begun again and again."""
    times, left = divmod(ends, len(on))
    return times * sum(on) + sum(on[:left])


def _files(archive: Archive, record: Draft, found: Analysis) -> Iterator[Link]:
    """The interchange file and the drawing, to take away."""
    address = f"drafts/{record.name}.wif"
    epi, ppi = archive.patterns.sett(record.name)
    warp, weft = thread_hexes(archive, found.draft)
    names = (*found.draft.warp_colours, *found.draft.weft_colours)
    extras = Extras(
        {"Title": record.heading},
        (record.notes_for_everyone or "") if archive.public else record.notes.strip(),
        dict(zip(names, (*warp, *weft), strict=True)),
        epi / INCH_M if epi else None,
        ppi / INCH_M if ppi else None,
    )
    archive.keep(address, write_wif(found.draft, extras))
    yield Link("interchange file (WIF 1.1)", address)
    if epi and ppi:
        threads = (warp or (plain_tone(0),), weft or (plain_tone(1),), own_unevenness(found.draft))
        side = face_of(found.over, *threads)
        given = (side.warp, side.weft, epi, ppi, REAL, side.uneven)
        what = repr(("real", side.over.shape, given)).encode() + side.over.tobytes()
        real = archive.drawn(what, ".png", real_size_picture, side.over, *given)
        yield Link(f"cloth in its real size, {REAL[0]:g} × {REAL[1]:g} in (PNG, to print)", real)
    window = Window(most_ends=len(found.draft.threading), most_picks=len(found.draft.picks))
    if ceil(window.most_ends / MOST) * ceil(window.most_picks / MOST) <= MOST_TILES:
        yield Link(
            "drawing (PNG)", tile(archive, found.draft, record.heading, window, found.marked, sheet_px=PRINTED_PX).src
        )
