"""Every kind of page in a real browser: whole, quiet, and no wider than a telephone."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import pytest
from playwright.sync_api import Browser

from tests.browser.looking import KINDS, SIDEWAYS, looking

WIDTHS = (390, 760, 1280)


@dataclass(frozen=True)
class Visit:
    """What was seen of one page. sideways: by width, how many pixels can be scrolled to the side."""

    kind: str
    elsewhere: tuple[str, ...]
    wrong: tuple[str, ...]
    sideways: tuple[tuple[int, int], ...]
    unseen: tuple[str, ...]
    index: bool


@pytest.fixture(scope="module")
def visits(browser: Browser, tiny: str) -> list[Visit]:
    """Every kind of page, visited on a telephone and then widened to a desk."""
    return list(every_visit(browser, tiny))


def every_visit(browser: Browser, top: str) -> Iterator[Visit]:
    """One visit after the other."""
    for kind, address in KINDS.items():
        with looking(browser, width=WIDTHS[0]) as look:
            page = look.at(top + address)
            index = any("search_index" in each for each in look.requests)
            page.evaluate("document.querySelectorAll('details').forEach(each => { each.open = true })")
            page.evaluate("document.querySelectorAll('img').forEach(each => { each.loading = 'eager' })")
            page.wait_for_function("[...document.images].every(each => each.complete)")
            unseen = page.evaluate("[...document.images].filter(each => !each.naturalWidth).map(each => each.src)")
            sideways = []
            for width in WIDTHS:
                page.set_viewport_size({"width": width, "height": 800})
                sideways.append((width, page.evaluate(SIDEWAYS)))
            yield Visit(kind, tuple(look.elsewhere), tuple(look.wrong), tuple(sideways), tuple(unseen), index)


def test_no_other_host_is_asked(visits: list[Visit]) -> None:
    """No page asks any other host for anything."""
    assert {} == {visit.kind: visit.elsewhere for visit in visits if visit.elsewhere}
    assert len(KINDS) == len(visits)


def test_nothing_goes_wrong(visits: list[Visit]) -> None:
    """No script fails, the console has no errors and no warnings, and nothing asked for is missing."""
    assert {} == {visit.kind: visit.wrong for visit in visits if visit.wrong}


def test_nothing_is_wider_than_the_page(visits: list[Visit]) -> None:
    """On a telephone, between, and on a desk no page can be scrolled to the side, even with every table unfolded."""
    wide = {(visit.kind, width): over for visit in visits for width, over in visit.sideways if over > 0}

    assert {} == wide


def test_every_picture_is_shown(visits: list[Visit]) -> None:
    """Every picture on every page can be loaded and drawn."""
    assert {} == {visit.kind: visit.unseen for visit in visits if visit.unseen}


def test_the_search_index_waits_until_it_is_asked_for(visits: list[Visit]) -> None:
    """Only the page for searching fetches the index."""
    assert {"search"} == {visit.kind for visit in visits if visit.index}
