"""On paper: the cloth and the figures, and nothing that only a screen needs."""

from __future__ import annotations

import pytest
from playwright.sync_api import Browser

from tests.browser.looking import looking

PAPER = 643
"""Pixels across a sheet of A4 with margins of 2 cm, at 96 to the inch."""
CLIPPED = """
[...document.querySelectorAll("table, svg, img, pre")].filter(each => {
  const box = each.getBoundingClientRect();
  return box.width > 0 && (box.right > document.documentElement.clientWidth + 1 || box.left < -1);
}).map(each => each.outerHTML.slice(0, 80))
"""
SCROLLED = """
[...document.querySelectorAll("div, section, figure")].filter(each =>
  each.scrollWidth > each.clientWidth + 1 && getComputedStyle(each).overflowX !== "visible" && each.clientWidth > 0
).map(each => each.outerHTML.slice(0, 80))
"""
PAGES = (
    *("index.html", "warps.html", "warps/gannet-napkins.html", "yarns/cottolin-22-2.html"),
    *("drafts/huck-squares.html", "field-guide.html", "how-it-is-reckoned.html", "trends.html", "plan.html"),
)


@pytest.mark.parametrize("address", PAGES)
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_on_paper(browser: Browser, tiny: str, address: str, scheme: str) -> None:
    """Printed, a page has no bar to press, its swatches and tapes are there, and no table is cut off at the edge."""
    with looking(browser, width=PAPER, height=930, color_scheme=scheme) as look:
        page = look.at(tiny + address)
        swatches = page.locator("img.cloth").count()
        page.emulate_media(media="print")
        page.evaluate("document.querySelectorAll('img').forEach(each => { each.loading = 'eager' })")
        page.wait_for_function("[...document.images].every(each => each.complete)")

        for only_on_a_screen in ("header nav", "form.find", "form.filter", "nav.way", "[data-md-component=palette]"):
            assert 0 == page.locator(f"{only_on_a_screen}:visible").count()
        assert page.locator("h1").is_visible()
        assert swatches == page.locator("img.cloth:visible").count()
        assert "rgb(255, 255, 255)" == page.evaluate("getComputedStyle(document.body).backgroundColor")
        assert [] == page.evaluate(CLIPPED)
        assert [] == page.evaluate(SCROLLED)


def test_folded_tables_are_printed(browser: Browser, tiny: str) -> None:
    """A table that is folded away on the screen is open on paper, since nobody can press there."""
    with looking(browser, width=PAPER, height=930) as look:
        page = look.at(f"{tiny}warps/tideline-towels.html")
        table = page.locator("details table").first
        assert not table.is_visible()
        page.emulate_media(media="print")

        assert table.is_visible()


def test_a_sheet(browser: Browser, tiny: str) -> None:
    """A warp in six lines can be printed: what comes out is a document of a few sheets."""
    with looking(browser) as look:
        document = look.at(f"{tiny}warps/tideline-towels.html").pdf(format="A4")

        assert document.startswith(b"%PDF")
        assert 1 <= document.count(b"/Type /Page\n") <= 3
