"""The dressing sheet: two sheets of paper at the most, large enough to be read at the loom."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from playwright.sync_api import Browser

from tests.browser.looking import Look, looking
from tests.browser.test_axe import violations

MOST = {"A4": 718, "Letter": 740}
"""Pixels across each paper with margins of 12 mm, at 96 to the inch."""
SMALLEST = 16 * 96 / 72
"""Sixteen points, in pixels: what is read at arm's length."""
SHEET = "warps/gannet-napkins/dressing.html"
SIZES = """
[...document.querySelectorAll(".dressing .large, .dressing .do, .dressing table.tied td, .dressing .do .ends")]
  .map(each => parseFloat(getComputedStyle(each).fontSize))
"""
BEYOND = """
[...document.querySelectorAll(".dressing *")]
  .filter(each => each.getBoundingClientRect().right > document.documentElement.clientWidth + 1
    && !each.closest(".unseen"))
  .map(each => each.outerHTML.slice(0, 80))
"""


def sheets(site: Path) -> list[str]:
    """Every dressing sheet of a site."""
    return sorted(path.relative_to(site).as_posix() for path in site.glob("warps/*/dressing.html"))


@pytest.mark.parametrize("paper", MOST)
def test_two_sheets(browser: Browser, tiny: str, tiny_site: Path, paper: str) -> None:
    """Every dressing sheet fits two sheets of A4 or of letter paper, and nothing is cut off at the right."""
    printed = {}
    for address in sheets(tiny_site):
        with looking(browser, width=MOST[paper]) as look:
            page = look.at(tiny + address)
            document = page.pdf(format=paper)
            printed[address] = len(re.findall(rb"/Type /Page\b(?!s)", document))
            page.emulate_media(media="print")
            assert [] == page.evaluate(BEYOND)

    assert SHEET in printed
    assert {} == {address: pages for address, pages in printed.items() if not 1 <= pages <= 2}


def test_read_at_arms_length(desk: Look, tiny: str) -> None:
    """On paper what is wound, threaded, sleyed and tied is set in sixteen points or more."""
    page = desk.at(tiny + SHEET)
    page.emulate_media(media="print")
    sizes = page.evaluate(SIZES)

    assert len(sizes) > 10
    assert min(sizes) >= SMALLEST - 0.01


def test_boxes_match_the_repeats(desk: Look, tiny: str) -> None:
    """380 ends of a ten-end repeat have 38 boxes, numbered through, and the last row comes to 380."""
    page = desk.at(tiny + SHEET)
    boxes = page.locator("#threading .tick").all_inner_texts()

    assert [str(number) for number in range(1, 39)] == boxes
    assert "380" in page.locator("#threading .to").last.inner_text()


def test_nothing_for_a_screen_is_printed(desk: Look, tiny: str) -> None:
    """On paper there is neither the bar nor the foot of the site, and the second sheet begins with the warp's name."""
    page = desk.at(tiny + SHEET)
    assert not page.locator(".dressing .again").is_visible()
    page.emulate_media(media="print")

    assert not page.locator("header.bar").is_visible()
    assert not page.locator("footer.foot").is_visible()
    assert "Gannet napkins, bookmarks off the end" == page.locator(".dressing .again").inner_text()


def test_the_warp_leads_there(desk: Look, tiny: str) -> None:
    """A warp's page links its dressing sheet, and the sheet leads back."""
    page = desk.at(f"{tiny}warps/gannet-napkins.html")
    page.get_by_role("link", name="dressing sheet").click()
    page.wait_for_url("**/dressing.html")
    page.locator(".dressing .back a").click()
    page.wait_for_url("**/gannet-napkins.html")

    assert "Gannet napkins" in page.locator("h1").inner_text()


def test_nothing_to_dress_by(desk: Look, tiny: str) -> None:
    """A warp in six lines, with neither ends nor an order, has no sheet and no link to one."""
    page = desk.at(f"{tiny}warps/tideline-towels.html")

    assert 0 == page.get_by_role("link", name="dressing sheet").count()


def test_no_rule_is_broken(phone: Look, tiny: str) -> None:
    """On a telephone too no rule of axe is broken, in both schemes."""
    assert [] == violations(phone.at(tiny + SHEET))
