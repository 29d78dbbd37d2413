"""A site that is kept: taken again when nothing changed, made anew when anything is not whole."""

from __future__ import annotations

import os
import time
from pathlib import Path

import pytest

from journal_tools.pages.kept_site import UNUSED, site_of
from journal_tools.pages.made import Site
from tests.ledger.desk import write

WARP = "yarn: cottolin\nweave: plain weave\nin_reed: 20 1/4\non_loom: 19 3/8 x 33\nwashed: 17 7/8 x 30 1/8"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A journal of one warp."""
    write(tmp_path / "journal", warps__w=WARP)
    return tmp_path / "journal"


def finished(folder: Path, cache: Path) -> Site:
    """The site, all its pictures drawn."""
    site = site_of(folder, cache)
    site.finish()
    return site


def panel(folder: Path, cache: Path) -> str:
    """What stands above the notes of its one warp, from the kept site if there is one."""
    return finished(folder, cache).panels.of("warps/w")[0]


def only(cache: Path, suffix: str) -> Path:
    """The one file of the kept site with this ending."""
    (found,) = (cache / "sites").glob(f"*{suffix}")
    return found


class TestKept:
    def test_the_second_time(self, folder: Path, tmp_path: Path) -> None:
        """The same records give the same site, and nothing is written again."""
        first = panel(folder, tmp_path)
        made = only(tmp_path, ".panels").stat().st_mtime_ns

        assert first == panel(folder, tmp_path)
        assert made == only(tmp_path, ".panels").stat().st_mtime_ns

    def test_a_record_that_changed(self, folder: Path, tmp_path: Path) -> None:
        """Another size is another page."""
        assert "11.7 %" in panel(folder, tmp_path)
        write(folder, warps__w=WARP.replace("17 7/8", "18"))
        assert "11.1 %" in panel(folder, tmp_path)

    @pytest.mark.parametrize(
        "listing", ["", "[]", "{}", "null", '{"pages": 3, "panels": {}, "assets": {}, "problems": []}', "\x00"]
    )
    def test_a_listing_that_is_broken(self, folder: Path, tmp_path: Path, listing: str) -> None:
        """Whatever stands in the kept listing, the page comes out as it was."""
        first = panel(folder, tmp_path)
        only(tmp_path, ".json").write_text(listing, encoding="utf-8")

        assert first == panel(folder, tmp_path)

    @pytest.mark.parametrize("broken", ["shorter", "longer", "gone"])
    def test_panels_that_are_not_whole(self, folder: Path, tmp_path: Path, broken: str) -> None:
        """A file of panels that was cut off, added to or deleted is made again."""
        first = panel(folder, tmp_path)
        kept = only(tmp_path, ".panels")
        text = kept.read_bytes()
        if broken == "gone":
            kept.unlink()
        else:
            kept.write_bytes(text[:-9] if broken == "shorter" else text + b"more")

        assert first == panel(folder, tmp_path)
        assert text == kept.read_bytes()

    def test_a_picture_that_is_gone(self, folder: Path, tmp_path: Path) -> None:
        """A picture that somebody deleted is drawn again."""
        site = finished(folder, tmp_path)
        picture = next(iter(site.assets.values()))
        picture.unlink()

        assert {file.is_file() for file in finished(folder, tmp_path).assets.values()} == {True}
        assert picture.is_file()


class TestThrownAway:
    @pytest.mark.parametrize(("seconds", "stays"), [(UNUSED + 60, False), (UNUSED - 60, True)])
    def test_what_nothing_wants(self, folder: Path, tmp_path: Path, seconds: int, stays: bool) -> None:
        """A picture no site shows goes after a day unused, and not before: another build may want it."""
        finished(folder, tmp_path)
        old = [tmp_path / "pictures" / "nobody.png", tmp_path / "sites" / "half.4711"]
        for path in old:
            path.write_bytes(b"x")
            os.utime(path, (time.time() - seconds,) * 2)
        write(folder, warps__w=WARP.replace("17 7/8", "18"))
        finished(folder, tmp_path)

        assert [stays, stays] == [path.exists() for path in old]

    def test_what_is_shown_stays(self, folder: Path, tmp_path: Path) -> None:
        """A picture of the site is kept, however old."""
        shown = list(finished(folder, tmp_path).assets.values())
        for path in shown:
            os.utime(path, (time.time() - 9 * UNUSED,) * 2)
        write(folder, warps__v=WARP.replace("plain weave", "2/2 twill"))
        finished(folder, tmp_path)

        assert [path for path in shown if not path.exists()] == []

    def test_the_last_few_sites(self, folder: Path, tmp_path: Path) -> None:
        """Sites of long ago go when three newer ones are there."""
        for eighths in range(6):
            for path in (tmp_path / "sites").glob("*"):
                os.utime(path, (time.time() - (9 - eighths) * UNUSED,) * 2)
            write(folder, warps__w=WARP.replace("17 7/8", f"17 {eighths}/8"))
            finished(folder, tmp_path)

        assert 3 == len(list((tmp_path / "sites").glob("*.json"))) == len(list((tmp_path / "sites").glob("*.panels")))
