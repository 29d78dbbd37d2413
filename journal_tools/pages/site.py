"""All pages of a journal, for any site builder."""

from __future__ import annotations

import tempfile
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from journal_tools.pages import views
from journal_tools.pages.archive import KIND_WORDS, Archive
from journal_tools.pages.charts import Charts
from journal_tools.pages.draft_page import draft_view
from journal_tools.pages.guide_page import guide_view
from journal_tools.pages.list_pages import front_view, list_view
from journal_tools.pages.reckoned_page import reckoned_view
from journal_tools.pages.templating import panels
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
    if public:
        journal = shared_of(journal)
    archive = Archive(journal, public, cache)
    charts = Charts()
    pages = tuple(_pages(archive, charts, serving))
    problems = tuple(sorted({*archive.problems, *archive.refused}))
    return Site(pages, {**archive.assets, **_drawn(charts, cache)}, problems)


def _drawn(charts: Charts, cache: Path | None) -> dict[str, bytes]:
    if cache is not None:
        return charts.draw(cache / "charts")
    with tempfile.TemporaryDirectory() as folder:
        return charts.draw(Path(folder))


def _pages(archive: Archive, charts: Charts, serving: bool) -> Iterator[Page]:
    journal = archive.journal
    shown = archive.problems if serving else ()
    title = journal.settings.title or "The swatch book"
    yield _page("index", title, "front", front_view(archive, shown), journal.settings.notes)
    for kind, word in KIND_WORDS.items():
        records = journal.kind(kind)
        if records:
            yield _page(kind, word, "list", list_view(archive, kind), searchable=False)
        for record in records.values():
            yield _record_page(archive, charts, kind, record)
            for old in record.was:
                yield Page(f"{kind}/{old}", record.heading, "moved", searchable=False, moved_to=f"{kind}/{record.name}")
    yield _page("trends", "Trends", "thing", trends_view(archive, charts), searchable=False)
    yield _page("how-it-is-reckoned", "How it is reckoned", "thing", reckoned_view())
    if not archive.public:
        yield _page("field-guide", "Field guide", "thing", guide_view())


_VIEWS: Mapping[type[Record], tuple[str, Callable[..., views.WarpView | views.YarnView | views.DraftView | views.ThingView]]] = {
    Warp: ("warp", lambda archive, record, charts: warp_view(archive, record)),
    Yarn: ("yarn", yarn_view),
    Draft: ("draft", lambda archive, record, charts: draft_view(archive, record)),
    Loom: ("thing", lambda archive, record, charts: loom_view(archive, record)),
    Finish: ("thing", lambda archive, record, charts: finish_view(archive, record)),
}


def _record_page(archive: Archive, charts: Charts, kind: str, record: Record) -> Page:
    template, view = _VIEWS[type(record)]
    notes = "" if archive.public else record.notes
    return _page(
        f"{kind}/{record.name}",
        record.heading,
        template,
        view(archive, record, charts),
        notes,
        " ".join(_search_words(archive, record)),
    )


def _page(address: str, title: str, kind: str, view: object, notes: str = "", search: str = "", searchable: bool = True) -> Page:
    top, bottom = panels(kind, view, address)  # type: ignore[arg-type]
    return Page(address, title, kind, notes, top, bottom, search, searchable)


def _search_words(archive: Archive, record: Record) -> Iterator[str]:
    """What a search should find a record by, besides its title and notes."""
    if record.notes_for_everyone:
        yield record.notes_for_everyone
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
