"""A record's file written to: whole or not at all, and never over someone else's words."""

from __future__ import annotations

import os
import stat
from pathlib import Path

import pytest

from journal_tools.editing import safe_write
from journal_tools.editing.splice import Change, SpliceRefused, splice_file
from tests.editing.napkins import NAPKINS


def names_in(folder: Path) -> list[str]:
    """What the folder holds."""
    return sorted(path.name for path in folder.iterdir())


class TestFiles:
    def record(self, folder: Path, text: str = NAPKINS) -> Path:
        path = folder / "napkins.md"
        path.write_bytes(text.encode())
        return path

    def test_a_file_is_written_whole_with_its_mode(self, tmp_path: Path) -> None:
        """The file holds the new text, keeps its mode, and nothing else is left in its folder."""
        path = self.record(tmp_path, "\ufeff---\r\ntitle: a\r\n---")
        path.chmod(0o640)
        splice_file(path, [Change(("reed",), "12/in")])

        assert "\ufeff---\r\ntitle: a\r\nreed: 12/in\r\n---".encode() == path.read_bytes()
        assert (0o640, ["napkins.md"]) == (stat.S_IMODE(path.stat().st_mode), names_in(tmp_path))

    def test_no_change_does_not_touch_the_file(self, tmp_path: Path) -> None:
        """A file that would stay the same is not written, and keeps its time."""
        path = self.record(tmp_path)
        os.utime(path, (1, 1))
        splice_file(path, [Change(("washed",), "19 x 30")])

        assert 1 == path.stat().st_mtime

    def test_all_changes_or_none(self, tmp_path: Path) -> None:
        """When one of several changes is refused, none is made."""
        path = self.record(tmp_path)
        with pytest.raises(SpliceRefused) as refused:
            splice_file(path, [Change(("reed",), "12/in"), Change(("yarns",), "x")], "warps/napkins.md")

        assert (NAPKINS, "warps/napkins.md") == (path.read_text(), refused.value.problem.file)

    def test_a_link_is_followed_inside_its_folder_only(self, tmp_path: Path) -> None:
        """A link to a record beside it is written through and stays a link; one that leads away is refused."""
        (tmp_path / "in").mkdir()
        inside, outside = self.record(tmp_path / "in"), self.record(tmp_path)
        (tmp_path / "in" / "near.md").symlink_to(inside)
        (tmp_path / "in" / "far.md").symlink_to(outside)
        splice_file(tmp_path / "in" / "near.md", [Change(("reed",), "12/in")])
        with pytest.raises(SpliceRefused, match="link"):
            splice_file(tmp_path / "in" / "far.md", [Change(("reed",), "12/in")])

        assert (True, True) == ((tmp_path / "in" / "near.md").is_symlink(), "reed: 12/in" in inside.read_text())
        assert NAPKINS == outside.read_text()

    def test_what_is_no_readable_file_is_refused(self, tmp_path: Path) -> None:
        """A missing file, a folder, a file in another encoding: each is refused with words."""
        (tmp_path / "latin.md").write_bytes("---\ntitle: grün\n---\n".encode("latin-1"))
        for name in ("missing.md", ".", "latin.md"):
            with pytest.raises(SpliceRefused):
                splice_file(tmp_path / name, [Change(("reed",), "12/in")])

        assert ["latin.md"] == names_in(tmp_path)

    def test_words_written_meanwhile_are_not_lost(
        self, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
    ) -> None:
        """When an editor saves the file between reading and writing, the editor's words stay."""
        path = self.record(tmp_path)
        sync = os.fsync

        def save_in_an_editor(handle: int) -> None:
            path.write_text("---\ntitle: saved meanwhile\n---\n")
            sync(handle)

        monkeypatch.setattr(safe_write.os, "fsync", save_in_an_editor)
        with pytest.raises(SpliceRefused, match="meanwhile"):
            splice_file(path, [Change(("reed",), "12/in")])

        assert ("---\ntitle: saved meanwhile\n---\n", ["napkins.md"]) == (path.read_text(), names_in(tmp_path))

    def test_a_full_disk_leaves_the_old_file(self, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
        """When the new text cannot be written, the old file is there and no half-written one."""
        path = self.record(tmp_path)

        def full(handle: int) -> None:
            raise OSError(28, "No space left on device")

        monkeypatch.setattr(safe_write.os, "fsync", full)
        with pytest.raises(SpliceRefused, match="No space left"):
            splice_file(path, [Change(("reed",), "12/in")])

        assert (NAPKINS, ["napkins.md"]) == (path.read_text(), names_in(tmp_path))
