"""All pages of a journal, for any site builder."""

from __future__ import annotations

import tempfile
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from journal_tools.checking import check
from journal_tools.pages.archive import KIND_WORDS, Archive
from journal_tools.pages.charts import Charts
from journal_tools.pages.draft_page import draft_view
from journal_tools.pages.guide_page import NOTES as GUIDE_NOTES
from journal_tools.pages.guide_page import guide_view
from journal_tools.pages.list_pages import front_view, list_view
from journal_tools.pages.reckoned_page import reckoned_view
from journal_tools.pages.templating import View, panels
from journal_tools.pages.thing_pages import finish_view, loom_view
from journal_tools.pages.trends_page import trends_view
from journal_tools.pages.warp_page import warp_view
from journal_tools.pages.yarn_page import yarn_view
from journal_tools.problems import Problem
from journal_tools.records import Draft, Finish, Journal, Loom, Record, Warp, Yarn
from journal_tools.records import public as shared_of


@dataclass(frozen=True)
class Page:
    """One page. address: without a suffix, "warps/tideline-towels". title: plain text.

    kind: the template's name. notes: the weaver's Markdown. panel_top, panel_bottom: safe HTML
    around the notes. search: plain words that a search should find it by.
    moved_to: for an old address, the new one; such a page has nothing else.
    """

    address: str
    title: str
    kind: str
    notes: str = ""
    panel_top: str = ""
    panel_bottom: str = ""
    search: str = ""
    searchable: bool = True
    moved_to: str = ""


@dataclass(frozen=True)
class Site:
    """Pages, the pictures they show, by address, and every problem met on the way."""

    pages: tuple[Page, ...]
    assets: Mapping[str, bytes]
    problems: tuple[Problem, ...]


def make_site(journal: Journal, *, public: bool = False, cache: Path | None = None, serving: bool = False) -> Site:
    """Every page of a journal.

    public: make the shared journal, of what may be shared alone. cache: a folder for drawn
    pictures, by content. serving: whether the weaver is looking on, so that problems are shown.
    """
    archive = Archive(shared_of(journal) if public else journal, public, cache)
    charts = Charts()
    with tempfile.TemporaryDirectory() as passing:
        pages = list(_pages_with_charts(archive, charts))
        charts.start((cache or Path(passing)) / "charts")
        pages += _pages(archive, serving)
        assets = {**archive.assets, **charts.drawn()}
    found = check(journal) if public else archive.problems  # whatever is shared, all of it must be sound
    problems = tuple(sorted({*found, *archive.refused}))
    return Site(tuple(pages), assets, problems)


def _pages_with_charts(archive: Archive, charts: Charts) -> Iterator[Page]:
    for yarn in archive.journal.yarns.values():
        yield _record_page(archive, "yarns", yarn, "yarn", yarn_view(archive, yarn, charts))
    yield _page("trends", "Trends", "thing", trends_view(archive, charts), searchable=False)


def _pages(archive: Archive, serving: bool) -> Iterator[Page]:
    journal = archive.journal
    shown = archive.problems if serving else ()
    title = journal.settings.title or "The swatch book"
    yield _page("index", title, "front", front_view(archive, shown), journal.settings.notes)
    for kind, word in KIND_WORDS.items():
        records = journal.kind(kind)
        if records:
            yield _page(kind, word, "list", list_view(archive, kind), searchable=False)
        for record in records.values():
            if (made := _VIEWS.get(type(record))) is not None:
                template, view = made
                yield _record_page(archive, kind, record, template, view(archive, record))
            for old in record.was:
                yield Page(f"{kind}/{old}", record.heading, "moved", searchable=False, moved_to=f"{kind}/{record.name}")
    yield _page("how-it-is-reckoned", "How it is reckoned", "thing", reckoned_view())
    if not archive.public:
        yield _page("field-guide", "Field guide", "thing", guide_view(), GUIDE_NOTES)


_VIEWS: Mapping[type[Record], tuple[str, Callable[..., View]]] = {
    Warp: ("warp", warp_view),
    Draft: ("draft", draft_view),
    Loom: ("thing", loom_view),
    Finish: ("thing", finish_view),
}
"""Template and view of each kind that has no chart of its own; yarns have, and come first."""


def _record_page(archive: Archive, kind: str, record: Record, template: str, view: View) -> Page:
    words = (record.notes_for_everyone or "", "" if archive.public else record.notes)
    notes = "\n\n".join(part.strip() for part in words if part.strip())
    return _page(
        f"{kind}/{record.name}",
        record.heading,
        template,
        view,
        notes,
        " ".join(_search_words(archive, record)),
    )


def _page(address: str, title: str, kind: str, view: View, notes: str = "", search: str = "", searchable: bool = True) -> Page:
    top, bottom = panels(kind, view, address)
    return Page(address, title, kind, notes, top, bottom, search, searchable)


def _search_words(archive: Archive, record: Record) -> Iterator[str]:
    """What a search should find a record by, besides its title and notes."""
    yield from record.tags
    if isinstance(record, Warp):
        words = [yarn.heading for yarn in archive.yarns(record)] + [yarn.name for yarn in archive.yarns(record)]
        words += [each.weave or "" for each in (record, *record.stretches)]
        words += [each.draft for each in (record, *record.stretches) if isinstance(each.draft, str)]
        when = record.started or record.finished
        words += [when.show() if when else "", record.loom or ""]
        yield from dict.fromkeys(word for word in words if word)
    if isinstance(record, Yarn):
        yield from (record.fibre or {})
        yield from (record.colours or {})
        yield record.number or ""
    if isinstance(record, Draft):
        yield record.weave or ""
