"""Searching: a warp is found by what a weaver remembers of it, from a server and from a stick."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Page

from tests.browser.looking import Look

NAPKINS = "Gannet napkins, bookmarks off the end"
WAYS = {
    "the yarn": "Linen 20/2",
    "the yarn's name": "linen-20-2",
    "the weave": "huck lace",
    "a colour": "slate",
    "a word of its notes": "skipped",
    "a word of its notes for everyone": "squares close up",
    "its title": "gannet",
    "a tag": "lace",
}


@pytest.fixture(params=["from a server", "from a disk"])
def top(request: pytest.FixtureRequest, tiny: str, tiny_site: Path) -> str:
    """The top of the small journal's site, both ways."""
    return tiny if request.param == "from a server" else f"{tiny_site.as_uri()}/"


def found(page: Page, words: str) -> list[str]:
    """The titles that a search finds on a page that has not searched yet, in their order."""
    page.get_by_role("textbox", name="Search", exact=True).focus()
    page.keyboard.insert_text(words)
    page.keyboard.press("End")
    page.wait_for_function("document.querySelector('.md-search-result__meta').textContent.includes(' matching ')")
    return page.locator(".md-search-result__item h1").all_inner_texts()


class TestFinding:
    def test_a_warp_by_all_that_is_remembered(self, desk: Look, top: str) -> None:
        """The napkins are found by yarn, weave, colour, title, tag and a word of their notes."""
        for words in WAYS.values():
            page = desk.at(f"{top}search.html")
            assert NAPKINS in found(page, words)
        assert [] == desk.wrong
        assert [] == desk.elsewhere

    def test_from_the_bar_of_any_page(self, desk: Look, top: str) -> None:
        """What is typed at the top of any page is searched for, and the first result leads to the warp."""
        page = desk.at(f"{top}yarns/cotton-8-2.html")
        page.get_by_role("searchbox", name="Words to search for").fill("gulls")
        page.keyboard.press("Enter")
        page.wait_for_url("**/search.html?q=gulls")
        page.locator(".md-search-result__item a").first.click()
        page.wait_for_url("**/warps/gannet-napkins.html*")

        assert NAPKINS == page.locator("h1").first.inner_text()

    def test_by_pasted_words(self, desk: Look, top: str) -> None:
        """Words that come without a key, pasted or spoken, are searched for as well, and others after them."""
        page = desk.at(f"{top}search.html")
        assert NAPKINS in found(page, "huck lace")

        page.get_by_role("textbox", name="Search", exact=True).fill("creaks")
        page.locator(".md-search-result__item h1", has_text="The small loom").wait_for()

    def test_nothing(self, desk: Look, top: str) -> None:
        """A word that is nowhere says so."""
        page = desk.at(f"{top}search.html")

        assert [] == found(page, "zibeline")
        assert "No matching documents" == page.locator(".md-search-result__meta").inner_text().strip()

    def test_words_of_the_search_are_not_shown_on_the_page(self, desk: Look, top: str) -> None:
        """The line that a search finds a warp by does not stand on its page."""
        assert 0 == desk.at(f"{top}warps/gannet-napkins.html").locator(".found-by").count()
