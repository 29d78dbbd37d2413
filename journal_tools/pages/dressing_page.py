"""A warp's dressing sheet: what is read at the warping board and at the loom."""

from __future__ import annotations

from collections.abc import Iterator

from journal_tools.dressing import Dressing, dressing_of
from journal_tools.pages.archive import Archive
from journal_tools.pages.dressing_sheets import sheets_of
from journal_tools.pages.dressing_sley import sley_part
from journal_tools.pages.dressing_threading import heddles_part, threading_part
from journal_tools.pages.dressing_tie_up import later_tie_ups, tie_up_parts
from journal_tools.pages.dressing_view import DressingView, Part
from journal_tools.pages.dressing_weaving import weaving_part
from journal_tools.pages.dressing_winding import names_of, winding_parts
from journal_tools.pages.dressing_words import draft_words, later_words, short_words
from journal_tools.pages.view_parts import Link
from journal_tools.quantities.density import PerUnit
from journal_tools.records import Warp

ORDER = (
    "Either way of beaming is fine. The parts stand from front to back: sley, thread, tie on, beam. "
    "From back to front fill the raddle and beam first, then thread, and sley last."
)


def dressing_address(warp: Warp) -> str:
    """Where a warp's dressing sheet is, without a suffix."""
    return f"warps/{warp.name}/dressing"


def dressing_link(archive: Archive, warp: Warp) -> Link | None:
    """The way to a warp's dressing sheet; None where there is neither a threading nor an order to dress by."""
    if not _dressing(archive, warp).worth_a_page:
        return None
    return Link("dressing sheet, to print", f"{dressing_address(warp)}.html")


def _dressing(archive: Archive, warp: Warp) -> Dressing:
    """A warp's dressing, made once in a build."""
    if warp.name not in archive.dressings:
        archive.dressings[warp.name] = dressing_of(archive.journal, warp)
    return archive.dressings[warp.name]


def dressing_view(archive: Archive, warp: Warp) -> DressingView:
    """Everything on a dressing sheet."""
    made = _dressing(archive, warp)
    about = " · ".join(word for word in (made.loom.heading if made.loom else "", draft_words(archive, made)) if word)
    asked = tuple(short_words(made))
    top = 78 + 18 * len(asked)
    return DressingView(
        f"Dressing the loom: {warp.heading}",
        about,
        Link(warp.heading, f"warps/{warp.name}.html"),
        asked,
        ORDER,
        sheets_of(tuple(_parts(archive, warp, made)), top),
    )


def _parts(archive: Archive, warp: Warp, made: Dressing) -> Iterator[Part]:
    """What is done, in the order in which it is done."""
    unit = _unit(archive, warp, made)
    yield from winding_parts(archive, made, unit)
    yield sley_part(made, unit)
    if made.shafts:
        yield heddles_part(made, archive.public)
    if made.sections:
        named = {name: called for winding in made.windings for name, called in names_of(winding).items()}
        yield threading_part(made, named)
    yield from tie_up_parts(made, warp)
    if (weaving := weaving_part(archive, warp, unit)) is not None:
        yield weaving
    if later := tuple(later_words(archive, made, unit, warp.woven()[0].name or "")):
        yield Part("later", "Later stretches", later)
        yield from later_tie_ups(made, warp.woven()[0].name or "")
    yield Part("notes", "Date and notes", blanks=("Dressed on", "Notes"))


def _unit(archive: Archive, warp: Warp, made: Dressing) -> PerUnit:
    """The unit that the width in the reed was written in, else the reed's, else the journal's."""
    width = warp.woven()[0].in_reed or warp.in_reed
    if width is not None and width.length is not None:
        unit = width.length.unit
    elif warp.units is None and made.sleyed is not None:
        unit = made.sleyed.reed.unit
    else:
        unit = warp.units or archive.journal.settings.length
    return "in" if unit == "in" else "cm"
