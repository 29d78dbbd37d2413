"""Light and dark: as the machine is set, and as the weaver turns it."""

from __future__ import annotations

import io
import re

import pytest
from PIL import Image
from playwright.sync_api import Browser, Page

from tests.browser.looking import TURN, Look, looking

GROUND = "getComputedStyle(document.body).backgroundColor"


def brightness(colour: str) -> float:
    """How light a colour is, from 0 to 1. Source: relative luminance, WCAG 2.2."""
    parts = [int(part) / 255 for part in re.findall(r"\d+", colour)[:3]]
    linear = [part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts]
    return sum(share * part for share, part in zip((0.2126, 0.7152, 0.0722), linear, strict=True))


def ground(page: Page) -> str:
    """`light` or `dark`, by the computed colour of the page's ground."""
    found = brightness(page.evaluate(GROUND))
    assert found > 0.7 or found < 0.08
    return "light" if found > 0.7 else "dark"


class TestTheGround:
    @pytest.mark.parametrize("scheme", ["light", "dark"])
    def test_follows_the_machine(self, browser: Browser, tiny: str, scheme: str) -> None:
        """The ground is light on a machine that is set to light, and dark on one set to dark."""
        with looking(browser, color_scheme=scheme) as look:
            assert scheme == ground(look.at(f"{tiny}index.html"))

    def test_is_turned_by_hand_and_kept(self, desk: Look, tiny: str) -> None:
        """The button in the bar turns the ground, other pages follow, and a second press turns it back."""
        page = desk.at(f"{tiny}index.html")
        page.locator(TURN).click()
        assert "dark" == ground(page)

        page = desk.at(f"{tiny}warps/tideline-towels.html")
        assert "dark" == ground(page)

        page.locator(TURN).click()
        assert "light" == ground(page)

    def test_is_turned_by_the_keyboard(self, desk: Look, tiny: str) -> None:
        """The button can be reached and pressed without a mouse."""
        page = desk.at(f"{tiny}index.html")
        for _ in range(20):
            page.keyboard.press("Tab")
            if page.evaluate("document.activeElement.closest('[data-md-component=palette]') !== null"):
                break
        page.keyboard.press("Enter")
        page.wait_for_function("document.body.dataset.mdColorScheme === 'slate'")

        assert "dark" == ground(page)

    def test_charts_turn_with_it(self, desk: Look, tiny: str) -> None:
        """A chart has a dark ground on a dark page and a light one on a light page."""
        page = desk.at(f"{tiny}trends.html")
        chart = page.locator("figure.chart img").first
        chart.scroll_into_view_if_needed()
        page.wait_for_function("document.querySelector('figure.chart img').complete")

        assert "light" == mostly(chart.screenshot())
        page.locator(TURN).click()
        assert "dark" == mostly(chart.screenshot())


def mostly(png: bytes) -> str:
    """Whether most of a picture is light or dark."""
    grey = Image.open(io.BytesIO(png)).convert("L")
    shares = grey.histogram()
    return "light" if sum(shares[128:]) > sum(shares[:128]) else "dark"
