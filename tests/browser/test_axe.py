"""No violation of any rule of axe, on any kind of page, in both schemes."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, Page

from tests.browser.looking import KINDS, TURN, Look, looking, serving

NARROW_TOO = ("front", "warp of stretches", "plan a warp")
"""Kinds that are looked at on a telephone as well."""


@pytest.fixture(scope="session")
def problems(tiny_problems: Path) -> Iterator[str]:
    """The top of a preview with a broken warp and an odd one, served."""
    with serving(tiny_problems) as top:
        yield top


def violations(page: Page) -> list[str]:
    """Every rule that is broken on a page, in both schemes, with the first place where it is."""
    found = []
    page.evaluate("document.querySelectorAll('details').forEach(each => { each.open = true })")
    for scheme in ("default", "slate"):
        page.wait_for_function(f"document.body.dataset.mdColorScheme === '{scheme}'")
        result = Axe().run(page).response
        assert result["passes"]
        found += [f"{scheme} {each['id']}: {each['nodes'][0]['html'][:120]}" for each in result["violations"]]
        page.locator(TURN).click()
    return found


@pytest.mark.parametrize("kind", KINDS)
def test_on_a_desk(desk: Look, tiny: str, kind: str) -> None:
    """No rule is broken on this kind of page, 1280 pixels wide, with every table unfolded."""
    assert [] == violations(desk.at(tiny + KINDS[kind]))


@pytest.mark.parametrize("kind", NARROW_TOO)
def test_on_a_telephone(phone: Look, tiny: str, kind: str) -> None:
    """No rule is broken on this kind of page, 390 pixels wide."""
    assert [] == violations(phone.at(tiny + KINDS[kind]))


@pytest.mark.parametrize("address", ["index.html", "warps/broken.html", "warps/odd.html"])
def test_with_problems(desk: Look, problems: str, address: str) -> None:
    """No rule is broken where problems are shown."""
    assert [] == violations(desk.at(problems + address))


def test_while_searching(browser: Browser, tiny: str) -> None:
    """No rule is broken by the results of a search."""
    with looking(browser, color_scheme="light") as look:
        page = look.at(f"{tiny}search.html?q=lace")
        page.locator(".md-search-result__item").first.wait_for()

        assert [] == violations(page)
