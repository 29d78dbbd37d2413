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
POINT = 96 / 72
"""Pixels."""
SHEET = "warps/gannet-napkins/dressing.html"
SIZES = """
chosen => [...document.querySelectorAll(chosen)]
  .filter(each => each.checkVisibility() && !each.closest(".unseen")
    && [...each.childNodes].some(node => node.nodeType === 3 && node.data.trim()))
  .map(each => parseFloat(getComputedStyle(each).fontSize))
"""
BROKEN = """
[...document.querySelectorAll("#threading .ends")].filter(each => each.getClientRects().length > 1
  || each.getBoundingClientRect().height > 1.8 * parseFloat(getComputedStyle(each).lineHeight)).length
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


def test_read_at_arms_length(browser: Browser, tiny: str, tiny_site: Path) -> None:
    """On paper nothing is under nine points, and the numbers of the threading are of fourteen or more."""
    for address in sheets(tiny_site):
        with looking(browser, width=MOST["A4"]) as look:
            page = look.at(tiny + address)
            page.emulate_media(media="print")
            every, threaded = page.evaluate(SIZES, ".dressing *"), page.evaluate(SIZES, "#threading .ends")

            assert len(every) > 20
            assert min(every) >= 9 * POINT
            assert min(threaded, default=14 * POINT) >= 14 * POINT


def test_no_group_is_broken(browser: Browser, tiny: str, tiny_site: Path) -> None:
    """On paper the numbers of a group stand on one line."""
    for address in sheets(tiny_site):
        with looking(browser, width=MOST["A4"]) as look:
            page = look.at(tiny + address)
            page.emulate_media(media="print")

            assert 0 == page.evaluate(BROKEN)


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
