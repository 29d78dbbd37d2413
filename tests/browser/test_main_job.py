"""The main job, from nothing to the figure: begin, write six lines, build, open, read."""

from __future__ import annotations

from pathlib import Path

from playwright.sync_api import Browser, Locator, Page

from tests.browser.looking import looking
from tests.built import build
from tests.commands.shell import TIDELINE, Shell


def row(page: Page, label: str) -> Locator:
    """The row of the losses whose heading begins with these words."""
    return page.locator("table.losses tr", has=page.locator("th", has_text=label))


def test_six_lines_become_two_losses(browser: Browser, tmp_path: Path) -> None:
    """Six lines in an empty journal show 11.7 % lost in width, reed to washed, and 8.7 % in length, loom to washed."""
    tenterhook = Shell(tmp_path / "my journal")
    assert 0 == tenterhook("begin", str(tenterhook.folder)).exit_code
    tenterhook.write("warps/tideline-towels", TIDELINE)
    site = build(tenterhook.folder)

    with looking(browser) as look:
        page = look.at((site / "index.html").as_uri())
        page.get_by_role("link", name="Tideline towels").click()
        page.wait_for_url("**/warps/tideline-towels.html")

        assert "Tideline towels" == page.locator("h1").inner_text()
        assert "11.7 %" in row(page, "width, reed to washed").inner_text()
        assert "8.7 %" in row(page, "length, loom to washed").inner_text()
        assert [] == look.wrong
