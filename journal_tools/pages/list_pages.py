"""The front page and the lists of each kind."""

from __future__ import annotations

from collections.abc import Sequence

from journal_tools.ledger.past import Past
from journal_tools.ledger.words import COMPARED, per_cent
from journal_tools.pages.archive import KIND_WORDS, Archive
from journal_tools.pages.cards import card
from journal_tools.pages.draft_finder import draft_list
from journal_tools.pages.figures import figures_table
from journal_tools.pages.thing_pages import finished_with
from journal_tools.pages.trends_page import last_off_plan
from journal_tools.pages.view_parts import Cell, Column, Link, Table
from journal_tools.pages.views import FrontView, ListView
from journal_tools.pages.yarn_page import fibres_text, number_text
from journal_tools.problems import Problem
from journal_tools.records import Warp

NEWEST = 12
NEAREST = 6


def front_view(archive: Archive, problems: tuple[Problem, ...]) -> FrontView:
    """The maker's words, the newest cloth, and the cloth that came nearest its plan."""
    settings = archive.journal.settings
    newest = archive.warps[:NEWEST]
    return FrontView(
        settings.title or "The swatch book",
        settings.maker or "",
        tuple(card(archive, warp) for warp in newest),
        tuple(card(archive, warp) for warp in _nearest_plan(archive, archive.warps[NEWEST:])),
        tuple(_counts(archive)),
        problems,
    )


def _nearest_plan(archive: Archive, warps: Sequence[Warp]) -> list[Warp]:
    """The warps whose finished size came nearest the planned one, in both directions, nearest first."""
    found = []
    for warp in warps:
        lines = [last_off_plan(archive.ledgers[warp.name], direction) for direction in COMPARED]
        if all(line is not None and not line.beyond for line in lines):
            off = sum(abs(line.off_mm or 0) / (line.planned_mm or 1) for line in lines if line is not None)
            found.append((off, warp.name, warp))
    return [warp for _, _, warp in sorted(found, key=lambda each: each[:2])][:NEAREST]


def _counts(archive: Archive) -> list[Link]:
    found = []
    for kind, word in KIND_WORDS.items():
        number = len(archive.journal.kind(kind))
        if number:
            one = {"Finishes": "finish"}.get(word, word.lower().removesuffix("s"))
            found.append(Link(f"{number} {word.lower() if number > 1 else one}", f"{kind}.html"))
    return found


def list_view(archive: Archive, kind: str) -> ListView:
    """The list of one kind."""
    return _LISTS[kind](archive)


def _warps(archive: Archive) -> ListView:
    about = "Newest first; undated ones last. Every figure names both of its ends."
    cards = tuple(card(archive, warp) for warp in archive.warps)
    return ListView("Warps", about, cards, filters=True, tables=(figures_table(archive),))


def _yarns(archive: Archive) -> ListView:
    columns = (
        Column("yarn"),
        Column("fibre"),
        Column("number"),
        Column("warps", True),
        Column("width, reed to washed", True),
        Column("length, loom to washed", True),
    )
    rows = []
    for yarn in sorted(archive.journal.yarns.values(), key=lambda each: each.heading.lower()):
        past = archive.past(yarn.name)
        rows.append(
            (
                Cell(yarn.heading, f"yarns/{yarn.name}.html"),
                Cell(fibres_text(yarn)),
                Cell(number_text(yarn)),
                Cell(str(len(past.warps))),
                _mean_cell(past, "width"),
                _mean_cell(past, "length"),
            )
        )
    table = Table(
        "Yarns",
        columns,
        tuple(rows),
        sortable=True,
        note="Means over the warps in each yarn; its page has every figure and the spread.",
    )
    return ListView("Yarns", "What each of them did before.", tables=(table,))


def _mean_cell(past: Past, direction: str) -> Cell:
    step = past.step(direction)
    if step is None or step.mean is None:
        return Cell("–", sort="-1")
    number = len(step.losses)
    return Cell(per_cent(step.mean), sort=f"{step.mean:.6f}", small=f"of {number}" if number > 1 else "once")


def _looms(archive: Archive) -> ListView:
    columns = (
        Column("loom"),
        Column("shafts", True),
        Column("treadles", True),
        Column("width", True),
        Column("warps", True),
    )
    rows = tuple(
        (
            Cell(loom.heading, f"looms/{loom.name}.html"),
            Cell(str(loom.shafts.number) if loom.shafts else "–"),
            Cell(str(loom.treadles.number) if loom.treadles else "–"),
            Cell(loom.width.text if loom.width else "–"),
            Cell(str(sum(warp.loom == loom.name for warp in archive.warps))),
        )
        for loom in archive.journal.looms.values()
    )
    return ListView("Looms", "", tables=(Table("Looms", columns, rows),))


def _finishes(archive: Archive) -> ListView:
    columns = (Column("finish"), Column("water"), Column("drying"), Column("pressing"), Column("warps", True))
    rows = tuple(
        (
            Cell(finish.heading, f"finishes/{finish.name}.html"),
            Cell(finish.water or "–"),
            Cell(finish.drying or "–"),
            Cell(finish.pressing or "–"),
            Cell(str(len(finished_with(archive, finish)))),
        )
        for finish in archive.journal.finishes.values()
    )
    about = "Hot water and steam scald; wet floors are slippery; wool felts when it is hot and moved."
    shown = [0, len(columns) - 1] if archive.public else range(len(columns))
    table = Table(
        "Finishes",
        tuple(columns[place] for place in shown),
        tuple(tuple(row[place] for place in shown) for row in rows),
    )
    return ListView("Finishes", about, tables=(table,))


_LISTS = {"warps": _warps, "yarns": _yarns, "drafts": draft_list, "looms": _looms, "finishes": _finishes}
