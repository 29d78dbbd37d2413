"""The site in a real browser: legible at every width, usable by keyboard, and asking nobody else."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import axe_playwright_python
import pytest
from playwright.sync_api import Browser, Page, expect

from tests.house import PROJECT

pytestmark = [pytest.mark.browser, pytest.mark.xdist_group("demo")]

AXE = next(Path(axe_playwright_python.__file__).parent.rglob("axe.min.js")).read_text(encoding="utf-8")
KINDS = (
    "index.html",
    "warps.html",
    "warps/gannet-napkins.html",
    "warps/fold-blanket.html",
    "yarns.html",
    "yarns/cottolin-22-2.html",
    "drafts/houndstooth.html",
    "looms/small-loom.html",
    "finishes/fulled-in-the-tub.html",
    "trends.html",
    "how-it-is-reckoned.html",
    "field-guide.html",
    "search.html?q=linen",
    "404.html",
)
# The letters of every tape on the page: their size, and whether any lies outside the window or on another.
LEGIBLE = """() => {
  const texts = [...document.querySelectorAll('.tape text')].filter(t => t.getBoundingClientRect().width);
  const size = text => parseFloat(getComputedStyle(text).fontSize);
  const boxes = texts.map(t => [t.textContent, t.getBoundingClientRect(), size(t), t.closest('svg.tape')]);
  const wrong = [];
  boxes.forEach(([text, box, size, tape], n) => {
    if (size < 11) wrong.push(`${text}: ${size} px`);
    if (box.left < 0 || box.right > innerWidth) wrong.push(`${text}: outside`);
    boxes.slice(n + 1).forEach(([other, its, _, same]) => {
      const over = Math.min(box.right, its.right) - Math.max(box.left, its.left);
      const deep = Math.min(box.bottom, its.bottom) - Math.max(box.top, its.top);
      if (tape === same && over > 1 && deep > 4) wrong.push(`${text} on ${other}`);
    });
  });
  return [boxes.length, wrong];
}"""


@pytest.fixture
def page(browser: Browser) -> Iterator[Page]:
    """A fresh page on a desk."""
    context = browser.new_context(viewport={"width": 1280, "height": 800})
    yield context.new_page()
    context.close()


class TestTape:
    """The tape in the page."""

    @pytest.mark.parametrize("width", [360, 768, 1280])
    @pytest.mark.parametrize("warp", ["tideline-towels", "gannet-napkins", "fold-blanket", "petrel-scarves"])
    def test_every_word_of_a_tape_can_be_read(self, warp: str, width: int, page: Page, demo_address: str) -> None:
        """On a telephone as on a desk no letter is smaller than 11 px, cut off, or on another."""
        page.set_viewport_size({"width": width, "height": 800})
        page.goto(f"{demo_address}warps/{warp}.html")
        count, wrong = page.evaluate(LEGIBLE)

        assert [] == wrong
        assert count > 0


class TestPages:
    """What holds for every kind of page."""

    @pytest.mark.parametrize("scheme", ["light", "dark"])
    @pytest.mark.parametrize("name", KINDS)
    def test_nothing_stands_in_the_way_of_any_reader(
        self, name: str, scheme: str, browser: Browser, demo_address: str
    ) -> None:
        """No axe violation, all tables opened, in light and in dark."""
        context = browser.new_context(color_scheme="dark" if scheme == "dark" else "light")
        page = context.new_page()
        page.goto(demo_address + name)
        if name.startswith("search"):
            page.wait_for_selector(".md-search-result__item")
        page.evaluate("document.querySelectorAll('details').forEach(part => { part.open = true })")
        page.evaluate(AXE)
        found = page.evaluate("axe.run().then(result => result.violations)")
        context.close()

        assert [] == [(each["id"], each["nodes"][0]["html"][:200]) for each in found]

    @pytest.mark.parametrize("name", KINDS)
    def test_a_page_asks_no_other_host_and_is_not_wider_than_a_telephone(
        self, name: str, page: Page, demo_address: str
    ) -> None:
        """Every request stays at home, no script stumbles, and nothing sticks out at 390 px."""
        asked: list[str] = []
        stumbled: list[str] = []
        page.on("request", lambda request: asked.append(request.url))
        page.on("pageerror", lambda error: stumbled.append(str(error)))
        page.set_viewport_size({"width": 390, "height": 800})
        page.goto(demo_address + name, wait_until="networkidle")

        assert [] == [url for url in asked if not url.startswith((demo_address, "data:"))]
        assert [] == stumbled
        assert 390 >= page.evaluate("document.documentElement.scrollWidth")

    def test_a_page_that_prefers_dark_is_dark_and_the_button_makes_it_light(
        self, browser: Browser, demo_address: str
    ) -> None:
        """The reader's system chooses the scheme; the button in the bar changes it."""
        context = browser.new_context(color_scheme="dark")
        page = context.new_page()
        page.goto(demo_address)
        expect(page.locator("body")).to_have_css("background-color", "rgb(28, 26, 23)")
        page.get_by_title("Switch to light").click()
        expect(page.locator("body")).to_have_css("background-color", "rgb(243, 239, 228)")
        context.close()


class TestSearch:
    """Search, from a server and from a disk."""

    def test_no_page_but_the_search_fetches_the_index(self, page: Page, demo_address: str) -> None:
        """The front page and the list of warps have a search box and no index behind it."""
        asked: list[str] = []
        page.on("request", lambda request: asked.append(request.url))
        for name in ("index.html", "warps.html", "warps/gannet-napkins.html"):
            page.goto(demo_address + name, wait_until="networkidle")
            expect(page.get_by_role("searchbox", name="Words to search for")).to_be_visible()

        assert [] == [url for url in asked if "search_index" in url]

    @pytest.mark.parametrize("where", ["server", "disk"])
    def test_a_warp_is_found_from_the_front_page(
        self, where: str, page: Page, demo: Path, demo_address: str
    ) -> None:
        """Words typed on the front page lead to the warp, from a server and from a disk alike."""
        page.goto(f"{demo_address if where == 'server' else demo.as_uri() + '/'}index.html")
        page.get_by_role("searchbox", name="Words to search for").fill("gannet napkins")
        page.keyboard.press("Enter")
        page.locator(".md-search-result__link", has_text="Gannet napkins").first.click()

        expect(page.locator("h1")).to_have_text("Gannet napkins, bookmarks off the end")


class TestLists:
    """Lists that can be narrowed and tables that can be sorted."""

    def test_the_list_of_warps_narrows_by_words_and_by_weave(self, page: Page, demo_address: str) -> None:
        """Only cards with the words stay, the count says so, and nothing is lost when they go."""
        page.goto(f"{demo_address}warps.html")
        cards = page.locator(".card")
        everything = cards.count()
        page.get_by_label("Words", exact=True).fill("gannet")
        expect(page.locator(".card:visible")).to_have_count(1)
        expect(page.get_by_role("status")).to_have_text(f"1 of {everything}")
        page.get_by_label("Words", exact=True).fill("")
        page.get_by_label("Weave").select_option("plain weave")
        plain = page.locator(".card:visible").count()

        assert 1 < plain < everything
        assert plain == page.locator('.card:visible[data-weave="plain weave"]').count()

    def test_without_scripts_the_list_is_whole_and_has_no_filter(
        self, browser: Browser, demo_address: str
    ) -> None:
        """Every warp of the journal has its card, and no control that would do nothing."""
        context = browser.new_context(java_script_enabled=False)
        page = context.new_page()
        page.goto(f"{demo_address}warps.html")

        assert len(list((PROJECT / "entries" / "warps").glob("*.md"))) == page.locator(".card:visible").count()
        assert not page.locator("form.filter").is_visible()
        context.close()

    def test_a_table_sorts_by_its_heading_from_the_keyboard(self, page: Page, demo_address: str) -> None:
        """The button in a heading sorts, says in which direction, and turns it round."""
        page.goto(f"{demo_address}yarns/cottolin-22-2.html")
        table = page.locator("table[data-sortable]").last
        button = table.get_by_role("button", name="warp")
        heading = table.locator("th", has=page.get_by_role("button", name="warp"))
        button.focus()
        page.keyboard.press("Enter")
        names = table.locator("tbody th").all_inner_texts()
        assert names == sorted(names, key=str.lower)
        expect(heading).to_have_attribute("aria-sort", "ascending")
        page.keyboard.press("Enter")

        assert names[::-1] == table.locator("tbody th").all_inner_texts()
        expect(heading).to_have_attribute("aria-sort", "descending")
