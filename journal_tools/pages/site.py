"""All pages of a journal, for any site builder."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from pathlib import Path

from journal_tools.checking import check
from journal_tools.pages.archive import KIND_WORDS, Archive
from journal_tools.pages.draft_page import draft_view
from journal_tools.pages.dressing_page import dressing_address, dressing_link, dressing_view
from journal_tools.pages.guide_page import NOTES as GUIDE_NOTES
from journal_tools.pages.guide_page import guide_view
from journal_tools.pages.list_pages import front_view, list_view
from journal_tools.pages.made import Page, Site
from journal_tools.pages.panels import PanelsFile
from journal_tools.pages.plan_page import DATA, plan_data, plan_view
from journal_tools.pages.reckoned_page import reckoned_view
from journal_tools.pages.sweeping import only_what_is_new_swept
from journal_tools.pages.templating import View, panels
from journal_tools.pages.thing_pages import finish_view, loom_view
from journal_tools.pages.trends_page import trends_view
from journal_tools.pages.warp_page import warp_view
from journal_tools.pages.yarn_page import yarn_view
from journal_tools.pictures.store import PictureStore
from journal_tools.records import Draft, Finish, Journal, Loom, Record, Warp, Yarn
from journal_tools.records import public as shared_of
from journal_tools.records.readers import slug

MUCH = 100
"""Warps from which on pictures are drawn in processes of their own."""


def make_site(journal: Journal, cache: Path, kept: Path, *, public: bool = False, serving: bool = False) -> Site:
    """Every page of a journal.

    cache: a folder for drawn pictures, kept by content; the site's pictures are files in it.
    kept: the file that the panels go to. public: make the shared journal, of what may be shared
    alone. serving: whether the weaver is looking on, so that problems are shown.
    """
    store = PictureStore(cache / "pictures", beside=len(journal.warps) > MUCH)
    archive = Archive(shared_of(journal) if public else journal, store, public)
    _ = archive.ledgers  # reckoned now, while nothing is swept
    pages = []
    with PanelsFile(kept) as file, only_what_is_new_swept():
        for page, made in _pages(archive, serving):
            file.add(page.address, made)
            pages.append(page)
    found = check(journal) if public else archive.problems  # whatever is shared, all of it must be sound
    problems = tuple(sorted({*found, *archive.refused}))
    return Site(tuple(pages), file.panels, archive.assets, problems, store.finish)


Made = tuple[Page, tuple[str, str]]
"""A page and its two panels."""


def _pages(archive: Archive, serving: bool) -> Iterator[Made]:
    journal = archive.journal
    shown = archive.problems if serving else ()
    title = journal.settings.title or "The swatch book"
    yield _page("index", title, "front", front_view(archive, shown), journal.settings.notes)
    yield _page("plan", "Plan a warp", "plan", plan_view(archive, archive.shelf), searchable=False)
    archive.keep(DATA, plan_data(archive, archive.shelf, archive.pocket.as_data()))
    yield _page("trends", "Trends", "thing", trends_view(archive), searchable=False)
    for kind in sorted(KIND_WORDS, key=lambda kind: kind != "yarns"):  # yarns' charts take longest to draw
        yield from _pages_of(archive, kind)
    yield _page("how-it-is-reckoned", "How it is reckoned", "thing", reckoned_view())
    if not archive.public:
        yield _page("field-guide", "Field guide", "thing", guide_view(), GUIDE_NOTES)


def _pages_of(archive: Archive, kind: str) -> Iterator[Made]:
    records = archive.journal.kind(kind)
    if records:
        yield _page(kind, KIND_WORDS[kind], "list", list_view(archive, kind), searchable=False)
    for record in records.values():
        template, view = _VIEWS[type(record)]
        yield _record_page(archive, kind, record, template, view(archive, record))
        if isinstance(record, Warp) and dressing_link(archive, record):
            sheet = dressing_view(archive, record)
            yield _page(dressing_address(record), sheet.title, "dressing", sheet, searchable=False)
        for old in record.was:
            moved_to = f"{kind}/{record.name}"
            yield Page(f"{kind}/{old}", record.heading, "moved", searchable=False, moved_to=moved_to), ("", "")


_VIEWS: Mapping[type[Record], tuple[str, Callable[..., View]]] = {
    Warp: ("warp", warp_view),
    Yarn: ("yarn", yarn_view),
    Draft: ("draft", draft_view),
    Loom: ("thing", loom_view),
    Finish: ("thing", finish_view),
}


def _record_page(archive: Archive, kind: str, record: Record, template: str, view: View) -> Made:
    words = (record.notes_for_everyone or "", "" if archive.public else record.notes)
    notes = "\n\n".join(part.strip() for part in words if part.strip())
    return _page(
        f"{kind}/{record.name}",
        record.heading,
        template,
        view,
        notes,
        "; ".join(dict.fromkeys(word for word in _search_words(archive, record) if word)),
    )


def _page(
    address: str, title: str, kind: str, view: View, notes: str = "", search: str = "", searchable: bool = True
) -> Made:
    return Page(address, title, kind, notes, search, searchable), panels(kind, view, address)


def _search_words(archive: Archive, record: Record) -> Iterator[str]:
    """What a search should find a record by, besides its title and notes, as a reader would say it."""
    yield from record.tags
    if isinstance(record, Warp):
        levels = (record, *record.stretches)
        yield from (each.weave or "" for each in levels)
        for yarn in archive.yarns(record):
            yield yarn.heading
            yield from _another_name(yarn.name, yarn.heading)
        drafts = [each.draft for each in levels if isinstance(each.draft, str)]
        for kind, name in [*(("drafts", draft) for draft in drafts), ("looms", record.loom or "")]:
            entry = archive.journal.kind(kind).get(name)
            yield entry.heading if entry else name.replace("-", " ")
            yield from _another_name(name, entry.heading if entry else name)
        when = record.started or record.finished
        yield when.show() if when else ""
    if isinstance(record, Yarn):
        yield from (record.fibre or {})
        yield from (record.colours or {})
        yield record.number or ""
    if isinstance(record, Draft):
        yield record.weave or ""


def _another_name(name: str, heading: str) -> Iterator[str]:
    """The words of a record's name, where its title does not hold them all."""
    if not set(name.split("-")) <= set(slug(heading).split("-")):
        yield name.replace("-", " ")
