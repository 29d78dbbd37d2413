"""What every test folder shares: how hard the property tests try, one browser and one small site a worker."""

from __future__ import annotations

import json
import os
from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import settings
from playwright.sync_api import Browser, sync_playwright

from starter.checks import need_chromium
from tests.built import TINY, build, build_as_served, copy_of
from tests.house import PROJECT
from tests.photographs import photograph
from tests.site.hostile import NASTY, harm

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


@pytest.fixture(scope="session")
def tiny_journal(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A copy of the small journal that has one of everything, with photographs beside one warp.

    There are also things beside it that are none of the site's business.
    """
    folder = copy_of(TINY, tmp_path_factory.mktemp("tiny") / "journal")
    photos = folder / "entries" / "warps" / "gannet-napkins"
    photos.mkdir()
    (photos / "on-the-line.jpg").write_bytes(photograph())
    (photos / "at-the-loom.jpg").write_bytes(photograph(1200, 700))
    for kind, name in (("yarns", "linen-20-2"), ("drafts", "huck-squares"), ("looms", "small-loom")):
        (folder / "entries" / kind / name).mkdir()
        (folder / "entries" / kind / name / "by-the-window.jpg").write_bytes(photograph(600, 400))
    (photos / "prices.csv").write_text("CANARYPRICES", encoding="utf-8")
    (folder / "entries" / "warps" / "readme.md").write_text("CANARYREADME", encoding="utf-8")
    (folder / "entries" / "drafts" / "old.dat").write_bytes(b"CANARYDRAFT")
    return folder


@pytest.fixture(scope="session")
def tiny_site(tiny_journal: Path) -> Path:
    """The small journal's site, for oneself."""
    return build(tiny_journal)


@pytest.fixture(scope="session")
def tiny_public_site(tiny_journal: Path) -> Path:
    """The small journal's site, for others."""
    build(tiny_journal, "--public", "--out", "for-others")
    return tiny_journal / "for-others"


@pytest.fixture(scope="session")
def tiny_problems(tiny_journal: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """What a preview of the small journal shows when one of its warps is broken and another is odd."""
    folder = copy_of(tiny_journal, tmp_path_factory.mktemp("broken") / "journal")
    warps = folder / "entries" / "warps"
    odd = "---\ntitle: Odd\nin_reed: 20\nreed: twelve\nwashed: 22 x 30\n---\n"
    (warps / "broken.md").write_text("---\ntitle: Broken\nin_reed: wide\ncolor: [\n---\n", encoding="utf-8")
    (warps / "odd.md").write_text(odd, encoding="utf-8")
    return build_as_served(folder, folder / "site")


@pytest.fixture(scope="session")
def demo_site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The site of the demonstration journal."""
    folder = tmp_path_factory.mktemp("demo") / "journal"
    copy_of(PROJECT / "entries", folder / "entries")
    (folder / "mkdocs.yml").write_bytes((PROJECT / "mkdocs.yml").read_bytes())
    return build(folder)


@pytest.fixture(scope="session")
def hostile_site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The site of a journal that means harm, with its problems shown, if it has any."""
    folder = tmp_path_factory.mktemp("hostile") / "journal"
    harm(folder / "entries")
    name = json.dumps(NASTY[0] + " {{ 7 * 7 }}")
    plain = (TINY / "mkdocs.yml").read_text(encoding="utf-8")
    (folder / "mkdocs.yml").write_text(plain.replace("The attic loom", name), encoding="utf-8")
    return build(folder)
