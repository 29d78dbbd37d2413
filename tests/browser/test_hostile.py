"""A journal that means harm, in a real browser: nothing of it runs, asks, or tears a page."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser

from tests.browser.looking import SIDEWAYS, looking, serving
from tests.built import pages
from tests.site.hostile import NASTY


@pytest.fixture(scope="module")
def hostile(hostile_site: Path) -> Iterator[str]:
    """The top of its site, served."""
    with serving(hostile_site) as top:
        yield top


def test_nothing_runs_and_nothing_is_torn(browser: Browser, hostile: str, hostile_site: Path) -> None:
    """On a telephone, on every page: no script of the journal ran, nobody was asked, nothing was fetched
    from elsewhere, and the page cannot be scrolled to the side."""
    with looking(browser, width=390) as look:
        sideways = {}
        for address in pages(hostile_site):
            if "http-equiv" in (hostile_site / address).read_text(encoding="utf-8"):
                continue  # an old name, which leads on at once
            page = look.at(hostile + address)
            page.mouse.move(200, 300)
            assert page.evaluate("window.harmed") is None
            sideways[address] = page.evaluate(SIDEWAYS)

        assert {} == {address: over for address, over in sideways.items() if over > 0}
        assert [] == look.dialogs
        assert [] == look.elsewhere
        assert [] == [wrong for wrong in look.wrong if "404.html" not in wrong]


def test_nor_in_the_results_of_a_search(browser: Browser, hostile: str) -> None:
    """What a search finds is shown as text as well."""
    with looking(browser, width=390) as look:
        for words in ("onerror", "onload", "onmouseover", "gone"):
            page = look.at(f"{hostile}search.html?q={words}")
            page.locator(".md-search-result__item").first.wait_for()
            assert page.evaluate("window.harmed") is None
            assert page.evaluate(SIDEWAYS) <= 0
        titles = page.locator(".md-search-result__item h1").all_inner_texts()

        assert NASTY[5] in titles
        assert [] == look.dialogs
        assert [] == look.elsewhere
