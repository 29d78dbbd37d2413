"""What every test folder shares: how hard the property tests try, and one browser a worker."""

from __future__ import annotations

import os
from collections.abc import Iterator

import pytest
from hypothesis import settings
from playwright.sync_api import Browser, sync_playwright

from starter.checks import need_chromium

settings.register_profile("ci", derandomize=True, max_examples=100, deadline=None)
settings.register_profile("long", max_examples=5000, deadline=None)
settings.load_profile(os.environ.get("HYPOTHESIS_PROFILE", "ci"))


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """A real Chromium, one for all the tests of a worker; without one they fail, never skip."""
    with sync_playwright() as playwright:
        chromium = playwright.chromium.launch(
            executable_path=need_chromium(),
            args=["--no-sandbox", "--disable-gpu", "--disable-background-networking"],
        )
        yield chromium
        chromium.close()
