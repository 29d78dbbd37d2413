"""What a page weighs: few bytes for a weaver's telephone, and no index until somebody searches."""

from __future__ import annotations

import gzip
from collections.abc import Iterator
from pathlib import Path
from urllib.parse import unquote, urlsplit

import pytest
from playwright.sync_api import Browser

from tests.browser.looking import TOP, looking, serving

TEXT = {".html", ".css", ".js", ".json", ".svg", ".xml"}
BUDGET = 400_000
"""Bytes of a first look at the front page or at the list of warps."""


@pytest.fixture(scope="module")
def demo(demo_site: Path) -> Iterator[str]:
    """The top of the demonstration journal's site, served."""
    with serving(demo_site) as top:
        yield top


def weight(path: Path) -> int:
    """The bytes of a file as they are sent: text packed as gzip packs it at best, pictures as they are."""
    content = path.read_bytes()
    return len(gzip.compress(content, 9, mtime=0)) if path.suffix in TEXT else len(content)


def fetched(browser: Browser, address: str) -> list[str]:
    """What a page of 1280 x 800 asks for before anybody scrolls, from the top of the site."""
    with looking(browser) as look:
        look.at(address).wait_for_load_state("networkidle")
        return [unquote(urlsplit(each).path).removeprefix(TOP) for each in dict.fromkeys(look.requests)]


@pytest.mark.parametrize("address", ["index.html", "warps.html"])
def test_a_first_look(browser: Browser, demo: str, demo_site: Path, address: str) -> None:
    """The front page and the list of warps weigh no more than 400 KB, all that they fetch counted."""
    files = fetched(browser, demo + address)
    weights = {name: weight(demo_site / name) for name in files}

    assert sum(weights.values()) <= BUDGET
    assert [] == [name for name in files if "search_index" in name]
    assert len([name for name in files if name.startswith("pictures/")]) >= 6


def test_with_twenty_four_cards(browser: Browser, demo: str, demo_site: Path) -> None:
    """With the 24 heaviest cards of the journal, all scrolled into sight, a front page weighs no more than 400 KB."""
    files = [name for name in fetched(browser, f"{demo}index.html") if not name.startswith("pictures/")]
    html = (demo_site / "warps.html").read_text(encoding="utf-8")
    cards = sorted(weight(path) for path in (demo_site / "pictures").iterdir() if path.name in html)

    assert sum(weight(demo_site / name) for name in files) + sum(cards[-24:]) <= BUDGET
    assert len(cards) >= 24


def test_the_size_of_a_warps_page(demo_site: Path) -> None:
    """No page of a warp is over 30 KB as it is sent."""
    heavy = {path.name: weight(path) for path in (demo_site / "warps").glob("*.html") if weight(path) > 30_000}

    assert {} == heavy
