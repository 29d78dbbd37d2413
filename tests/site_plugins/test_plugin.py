"""The plugin: which files a site has, what stops a build, and what a preview shows."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from tests.site_plugins.building import SETTINGS, TOWELS, build_here, build_with, pages_of, write_journal

BROKEN = "---\ntitle: Broken\nin_reed: a hand's breadth\n---\n"


class TestFiles:
    """What is on the site."""

    def test_nothing_of_entries_is_copied_unless_a_page_asks_for_it(self, tmp_path: Path) -> None:
        """A price list and a stray note that lie beside the records are not on the site."""
        entries = {"warps/towels.md": TOWELS, "prices.csv": "secret", "warps/stray.txt": "secret", "note.md": "secret"}
        site = build_here(write_journal(tmp_path, entries))

        found = [path for path in site.rglob("*") if path.is_file() and b"secret" in path.read_bytes()]
        assert [] == found
        assert "warps/towels.html" in pages_of(site)

    @pytest.mark.parametrize("tool", ["mkdocs", "properdocs"])
    def test_the_site_builds_under_mkdocs_and_its_maintained_fork(self, tool: str, tmp_path: Path) -> None:
        """Either command makes the same pages from the same journal."""
        built = build_with(tool, write_journal(tmp_path, {"warps/towels.md": TOWELS}))

        assert 0 == built.returncode, built.stderr
        page = (tmp_path / "site" / "warps" / "towels.html").read_text(encoding="utf-8")
        assert "11.7" in page
        assert "8.7" in page

    def test_a_second_build_forgets_the_first(self, tmp_path: Path) -> None:
        """A record that was taken away has no page in the next build of the same process."""
        folder = write_journal(tmp_path, {"warps/towels.md": TOWELS, "warps/other.md": TOWELS})
        build_here(folder)
        (folder / "entries" / "warps" / "other.md").unlink()

        assert "warps/other.html" not in pages_of(build_here(folder))

    def test_an_old_address_leads_to_the_new_one(self, tmp_path: Path) -> None:
        """A renamed record's old page says where it went."""
        renamed = TOWELS.replace("share: yes", "was: old-towels")
        site = build_here(write_journal(tmp_path, {"warps/towels.md": renamed}))

        page = (site / "warps" / "old-towels.html").read_text(encoding="utf-8")
        assert 'http-equiv="refresh" content="0; url=towels.html"' in page
        assert '<a href="towels.html">Tideline towels</a>' in page

    def test_a_weavers_own_theme_folder_goes_before_ours(self, tmp_path: Path) -> None:
        """A main.html of the weaver's own replaces the journal's."""
        own = SETTINGS.replace("  name: material\n", "  name: material\n  custom_dir: own\n")
        folder = write_journal(tmp_path, {"warps/towels.md": TOWELS}, own)
        (folder / "own").mkdir()
        (folder / "own" / "main.html").write_text("my own look", encoding="utf-8")

        assert "my own look" == (build_here(folder) / "index.html").read_text(encoding="utf-8").strip()


class TestFaults:
    """What stops a build, and what does not."""

    @pytest.mark.parametrize("tool", ["mkdocs", "properdocs"])
    def test_a_fault_stops_a_build_and_the_last_good_site_stays(self, tool: str, tmp_path: Path) -> None:
        """Every fault is named with its file and line, counted, and the old site is not touched."""
        folder = write_journal(
            tmp_path, {"warps/towels.md": TOWELS, "warps/broken.md": BROKEN, "warps/worse.md": BROKEN}
        )
        (folder / "site").mkdir()
        (folder / "site" / "index.html").write_text("the last good site", encoding="utf-8")
        built = build_with(tool, folder)

        assert 1 == built.returncode
        assert "warps/broken.md:3" in built.stderr
        assert "warps/worse.md:3" in built.stderr
        assert "2 faults to mend" in built.stderr
        assert "Traceback" not in built.stderr
        assert ["index.html"] == [path.name for path in (folder / "site").iterdir()]
        assert "the last good site" == (folder / "site" / "index.html").read_text(encoding="utf-8")

    def test_a_question_never_stops_a_build(self, tmp_path: Path) -> None:
        """Cloth that came out wider than the reed is asked about, and built."""
        wider = TOWELS.replace("washed: 17 7/8 x 30 1/8", "washed: 21 x 30 1/8")

        assert "warps/towels.html" in pages_of(build_here(write_journal(tmp_path, {"warps/towels.md": wider})))

    def test_a_preview_shows_a_fault_on_its_page_and_the_rest_works(self, tmp_path: Path) -> None:
        """The broken record's page tells what to mend; the other record's page is as ever."""
        entries = {"warps/towels.md": TOWELS, "warps/broken.md": BROKEN}
        site = build_here(write_journal(tmp_path, entries), serving=True)

        broken = (site / "warps" / "broken.html").read_text(encoding="utf-8")
        assert "One thing to mend" in broken
        assert "warps/broken.md:3" in broken
        towels = (site / "warps" / "towels.html").read_text(encoding="utf-8")
        assert "thing to mend" not in towels
        assert "11.7" in towels


class TestPublic:
    """The journal for others."""

    PRIVATE = TOWELS.replace("share: yes", "share: no").replace("Tideline", "Hidden")

    @pytest.mark.parametrize(("said", "hidden"), [("yes", True), ("no", False)])
    def test_the_environment_decides_whom_the_site_is_for(self, said: str, hidden: bool, tmp_path: Path) -> None:
        """TENTERHOOK_PUBLIC=yes leaves a warp out that is not shared."""
        folder = write_journal(tmp_path, {"warps/towels.md": TOWELS, "warps/hidden.md": self.PRIVATE})
        built = build_with("mkdocs", folder, TENTERHOOK_PUBLIC=said)

        assert 0 == built.returncode, built.stderr
        assert hidden == ("warps/hidden.html" not in pages_of(folder / "site"))
        assert "warps/towels.html" in pages_of(folder / "site")

    def test_a_word_that_is_neither_yes_nor_no_is_refused(self, tmp_path: Path) -> None:
        """A slip in the setting must not publish anything."""
        folder = write_journal(tmp_path, {"warps/towels.md": TOWELS})
        built = build_with("mkdocs", folder, TENTERHOOK_PUBLIC="yse")

        assert 1 == built.returncode
        assert "it is yes or no" in built.stderr
        assert not (folder / "site").exists()


class TestNotes:
    """The weaver's notes are Markdown, and nothing but text, pictures and links."""

    @staticmethod
    def page(folder: Path, notes: str, title: str = "Towels") -> str:
        """The page of a warp with these notes."""
        record = f"---\ntitle: '{title}'\n---\n\n{notes}\n"
        site = build_here(write_journal(folder, {"warps/towels.md": record}))
        return (site / "warps" / "towels.html").read_text(encoding="utf-8")

    def test_tags_are_text(self, tmp_path: Path) -> None:
        """A script that somebody typed is shown and never run, in a title as in the notes."""
        page = self.page(tmp_path, "One <script>alert(1)</script>\n\n<div onclick='x()'>two</div>", "<img src=x>")

        assert "<script>alert" not in page
        assert "&lt;script&gt;alert(1)&lt;/script&gt;" in page
        assert "<div onclick" not in page
        assert "<img src=x>" not in page

    def test_a_link_into_a_script_is_no_link(self, tmp_path: Path) -> None:
        """Only pages and ordinary addresses are linked."""
        page = self.page(tmp_path, "[bad](java&#115;cript:alert(1)), [also](JavaScript:x), [good](https://example.org/)")

        assert "script:" not in page.lower().split("<article")[1]
        assert '<a href="https://example.org/">good</a>' in page

    def test_a_picture_of_another_host_becomes_a_link(self, tmp_path: Path) -> None:
        """No page asks another host for anything."""
        page = self.page(tmp_path, "![the shore](https://example.org/shore.jpg)")

        assert "<img" not in page.split('class="notes')[1]
        assert '<a href="https://example.org/shore.jpg">the shore</a>' in page

    def test_a_line_that_looks_like_a_setting_stays_in_the_notes(self, tmp_path: Path) -> None:
        """Notes may begin with "Template: ..." and still be notes."""
        assert "Template: none, I tied up by eye." in self.page(tmp_path, "Template: none, I tied up by eye.")


class TestSearch:
    """What a search can find."""

    def test_a_warp_is_found_by_yarn_weave_colour_and_note(self, tmp_path: Path) -> None:
        """All of it stands in the index under the warp's address, and tags in a title are text there."""
        record = TOWELS.replace("title: Tideline towels", "title: Tideline <i>towels</i>")
        site = build_here(write_journal(tmp_path, {"warps/towels.md": record}))
        index = json.loads((site / "search" / "search_index.json").read_text(encoding="utf-8"))
        (found,) = [entry for entry in index["docs"] if entry["location"] == "warps/towels.html"]

        for word in ("cottolin 22 2, indigo", "plain weave; ", "windy"):
            assert word in found["text"]
        assert "Tideline &lt;i&gt;towels&lt;/i&gt;" == found["title"]
        assert "found-by" not in (site / "warps" / "towels.html").read_text(encoding="utf-8")
