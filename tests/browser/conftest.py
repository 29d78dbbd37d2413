"""Sites that are served, and tabs to look at them."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser

from tests.browser.looking import Look, looking, serving


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Every test here drives a browser."""
    for item in items:
        if Path(__file__).parent in item.path.parents:
            item.add_marker(pytest.mark.browser)


@pytest.fixture(scope="session")
def tiny(tiny_site: Path) -> Iterator[str]:
    """The top of the small journal's site, served."""
    with serving(tiny_site) as top:
        yield top


@pytest.fixture
def desk(browser: Browser) -> Iterator[Look]:
    """A tab as wide as on a desk, in the light."""
    with looking(browser, color_scheme="light") as look:
        yield look


@pytest.fixture
def phone(browser: Browser) -> Iterator[Look]:
    """A tab as narrow as on a telephone."""
    with looking(browser, width=390, height=844, has_touch=True, color_scheme="light") as look:
        yield look
