"""A journal that means harm shows as text: nothing of it becomes a part of a page."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest

from tests.built import Seen, pages, seen
from tests.site.hostile import NASTY

SCRIPT = re.compile(r"<script(?P<head>[^>]*)>(?P<body>.*?)</script>", re.DOTALL)


def scripts(site: Path) -> set[str]:
    """Every script that stands in a page itself, with what tells one page's way to the top from another's left out."""
    found = set()
    for address in pages(site):
        for script in SCRIPT.finditer((site / address).read_text(encoding="utf-8")):
            found.add(re.sub(r'"\.\.?"', '"."', script["head"] + script["body"]).replace("../", ""))
    return found


class TestAsText:
    def test_every_title_is_shown_as_typed(self, hostile_site: Path) -> None:
        """A title of tags, quotes or template syntax is a heading of the very same letters."""
        for number, nasty in enumerate(NASTY):
            assert " ".join(nasty.split()) in seen(hostile_site, f"warps/nasty-{number}.html").text

    def test_no_script_that_a_kind_journal_has_not(self, tiny_site: Path, hostile_site: Path) -> None:
        """The scripts of its pages are those of any other journal's pages."""
        assert set() == scripts(hostile_site) - scripts(tiny_site)

    def test_no_tag_that_a_kind_journal_has_not(self, tiny_site: Path, hostile_site: Path) -> None:
        """There are no frames, objects, forms or bases in it, and no attribute that would run something."""
        kinds = {tag for address in pages(tiny_site) for tag, _ in seen(tiny_site, address).tags}
        notes = {"pre", "code", "blockquote", "hr", "table", "thead", "tbody", "tr", "th", "td", "strong", "em", "br"}
        for address in pages(hostile_site):
            page = seen(hostile_site, address)
            assert set() == {tag for tag, _ in page.tags} - kinds - notes
            assert [] == [name for _, attributes in page.tags for name in attributes if name.startswith("on")]

    def test_every_address_is_harmless(self, hostile_site: Path) -> None:
        """No link leads into a script, and no picture comes from another host or from outside the site."""
        for address in pages(hostile_site):
            page = seen(hostile_site, address)
            for link in page.all("a"):
                assert not re.match(r"\s*(javascript|vbscript|data):", link.get("href", ""), re.IGNORECASE)
            for picture in page.all("img"):
                assert re.fullmatch(r"(\.\./)?(pictures|charts)/[0-9a-f]{16,}\.(png|webp|svg)", picture["src"])

    def test_templates_are_not_filled_in(self, hostile_site: Path) -> None:
        """Braces stay braces: nothing that a weaver wrote is run as a template."""
        for address in pages(hostile_site):
            if address.startswith("warps/seen"):
                page = (hostile_site / address).read_text(encoding="utf-8")
                assert "{{ 7 * 7 }}{% raw %}{{ config.site_name }}{# gone #}" in Seen(page).text

    def test_the_index_is_plain_data(self, hostile_site: Path) -> None:
        """The search's index is one text of data in both its forms, and a script's end in it ends nothing."""
        index = (hostile_site / "search" / "search_index.json").read_text(encoding="utf-8")
        as_script = (hostile_site / "search" / "search_index.js").read_text(encoding="utf-8")

        assert json.loads(index) == json.loads(as_script.removeprefix("var __index = "))

    @pytest.mark.parametrize("folder", ["warps", "yarns", "drafts", "looms", "finishes", "pictures"])
    def test_nothing_outside_its_place(self, hostile_site: Path, folder: str) -> None:
        """Every file has a name made by the program, whatever the record or the photograph was called."""
        for path in (hostile_site / folder).rglob("*"):
            place = path.relative_to(hostile_site / folder).as_posix()
            sheet = path.is_dir() or "/" in place  # a warp's folder holds its dressing sheet alone
            own = r"[a-z0-9-]+(/dressing\.html)?" if sheet else r"[a-z0-9-]+\.(html|png|webp|svg|wif)"
            assert re.fullmatch(own, place)
