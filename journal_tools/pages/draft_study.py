"""What a draft's page tells of it before it is threaded: findings, whole drawing, heddles, likes, files."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from math import ceil

from journal_tools.drafts.analysis import Analysis
from journal_tools.drafts.analysis_words import sentences, warnings
from journal_tools.drafts.likeness import same_cloth
from journal_tools.interchange import Extras, write_wif
from journal_tools.pages.archive import Archive
from journal_tools.pages.draft_part import CELL, DOTTED, MOST, PRINTED_CELL, PRINTED_PX, cell_of, thread_hexes, tile
from journal_tools.pages.faces import face_of
from journal_tools.pages.patterns import INCH_M
from journal_tools.pages.swatch import own_unevenness
from journal_tools.pages.view_parts import Cell, Column, Link, Picture, Table
from journal_tools.pictures.colour import plain_tone
from journal_tools.pictures.draft_drawing import Window
from journal_tools.pictures.real_size import pixels_to_a_thread, real_size_picture
from journal_tools.records import Draft

MOST_PIECES = 48
REAL = (4.0, 3.0)
"""Inches across and down of the cloth to print."""

WIDTHS = (10, 20, 30)
"""Inches in the reed that heddles are counted for."""

GUESSED_EPI = 20.0


def study(archive: Archive, record: Draft) -> Mapping[str, object]:
    """The parts of a draft's page that come of its analysis; none where it cannot be woven."""
    found = archive.patterns.found.get(record.name)
    if found is None:
        return {}
    inches = archive.journal.settings.units.density
    asked = tuple(warnings(found, inches))
    pieces, of_pieces = _pieces(archive, record, found)
    return {
        "asked": asked,
        "said": tuple(line for line in sentences(found, inches) if line not in asked),
        "pieces": pieces,
        "of_pieces": of_pieces,
        "tables": tuple(_tables(archive, record, found)),
        "files": tuple(_files(archive, record, found)),
    }


def _pieces(archive: Archive, record: Draft, found: Analysis) -> tuple[tuple[tuple[Picture, ...], ...], str]:
    """The whole drawing in rows of pieces that can be read, and what is to be said of it.

    None where the page's first drawing holds it all. What is written several times over is drawn once.
    """
    woven = found.draft
    written = len(woven.threading), len(woven.picks)
    ends, picks = (once if all_ % once == 0 else all_ for all_, once in zip(written, found.repeat[::-1], strict=True))
    if max(ends, picks) <= MOST:
        return (), ""
    rows: list[tuple[Picture, ...]] = []
    pieces = Window(most_ends=MOST, most_picks=MOST).tiles(ends, picks)
    shown = pieces[:MOST_PIECES]
    for first in dict.fromkeys(window.first_pick for window in shown):
        of_row = (window for window in shown if window.first_pick == first)
        rows.append(tuple(_piece(archive, record, found, window, (ends, picks)) for window in of_row))
    said = []
    if (ends, picks) != written:
        said.append(f"Written are {written[0]} ends and {written[1]} picks; what comes again is drawn once.")
    if len(shown) < len(pieces):
        said.append(f"These are the first {len(shown)} of {len(pieces)} pieces.")
    if found.marked.any():
        said.append(DOTTED)
    return tuple(rows), " ".join(said)


def _piece(archive: Archive, record: Draft, found: Analysis, window: Window, last: tuple[int, int]) -> Picture:
    cut = replace(
        window,
        most_ends=min(window.most_ends, last[0] - window.first_end),
        most_picks=min(window.most_picks, last[1] - window.first_pick),
    )
    picture = tile(archive, found.draft, record.heading, cut, found.marked, cell_px=CELL)
    ends = f"ends {cut.first_end + 1} to {cut.first_end + cut.most_ends}"
    picks = f"picks {cut.first_pick + 1} to {cut.first_pick + cut.most_picks}"
    return replace(picture, caption=f"{ends}, {picks}")


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
    if same_cloth(found[one].block, found[other].block):
        return "the same cloth, but for its colours, where it begins, how it is turned or which side is up"
    return f"{(1 - apart) * 100:.0f} % alike, looked at four ends by four picks at a time"


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
    sett = archive.patterns.sett(record.name)
    warp, weft = thread_hexes(archive, found.draft)
    names = (*found.draft.warp_colours, *found.draft.weft_colours)
    extras = Extras(
        {"Title": record.heading},
        (record.notes_for_everyone or "") if archive.public else record.notes.strip(),
        dict(zip(names, (*warp, *weft), strict=True)),
        sett[0] / INCH_M if sett else None,
        sett[1] / INCH_M if sett else None,
    )
    archive.keep(address, write_wif(found.draft, extras))
    yield Link("interchange file (WIF 1.1)", address)
    if sett is not None:
        threads = (warp or (plain_tone(0),), weft or (plain_tone(1),), own_unevenness(found.draft))
        side = face_of(found.over, *threads)
        epi, ppi = (count * share for count, share in zip(sett, side.share, strict=True))
        if pixels_to_a_thread(epi, ppi, REAL):
            given = (side.warp, side.weft, epi, ppi, REAL, side.uneven)
            what = repr(("real", side.over.shape, given)).encode() + side.over.tobytes()
            real = archive.drawn(what, ".png", real_size_picture, side.over, *given)
            yield Link(f"cloth in its real size, {REAL[0]:g} × {REAL[1]:g} in (PNG, to print)", real)
    window = Window(most_ends=len(found.draft.threading), most_picks=len(found.draft.picks))
    if ceil(window.most_ends / MOST) * ceil(window.most_picks / MOST) <= MOST_PIECES:
        cell = cell_of(found.draft, window, PRINTED_PX, PRINTED_CELL)
        whole = tile(archive, found.draft, record.heading, window, found.marked, cell_px=cell)
        yield Link("drawing (PNG)", whole.src)
