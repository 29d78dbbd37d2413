"""`build`: the site of what is right, and the last good one left alone when something is not."""

from __future__ import annotations

import hashlib
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.commands.shell import TIDELINE, Shell, in_a_process

SHARED = TIDELINE.replace("Tideline towels", "Shared towels").replace("---\n", "---\nshare: yes\n", 1)


@pytest.fixture(scope="module")
def built(tmp_path_factory: pytest.TempPathFactory) -> Shell:
    """A journal with one warp of one's own and one to share, and its site."""
    shell = Shell(tmp_path_factory.mktemp("weaving") / "journal")
    shell("begin", str(shell.folder))
    shell.write("warps/tideline-towels", TIDELINE)
    shell.write("warps/shared-towels", SHARED)
    in_a_process(shell.folder, "build")
    return shell


@pytest.fixture
def broken(built: Shell) -> Iterator[Shell]:
    """The same with two things to mend, in two records."""
    paths = [
        built.write("warps/wide-cloth", "---\ntitle: Wide\nin_reed: wide\n---\n"),
        built.write("looms/big-loom", "---\ntitle: Big\nshafts: many\n---\n"),
    ]
    yield built
    for path in paths:
        path.unlink()


def bytes_of(folder: Path) -> dict[str, str]:
    """A digest of every file below a folder, by its path."""
    return {
        path.relative_to(folder).as_posix(): hashlib.sha256(path.read_bytes()).hexdigest()
        for path in folder.rglob("*")
        if path.is_file()
    }


class TestASite:
    def test_a_new_journal_builds_at_once(self, tenterhook: Shell) -> None:
        """A journal that was only begun builds, and says where its site is."""
        ended = in_a_process(tenterhook.folder, "build")
        front = tenterhook.folder / "site" / "index.html"

        assert (0, "") == (ended.returncode, ended.stderr if ended.returncode else "")
        assert f"The site is in {front.parent}; open {front}.\n" in ended.stdout
        assert "The swatch book" in front.read_text(encoding="utf-8")

    def test_questions_never_stop_a_build(self, built: Shell) -> None:
        """A yarn without a record is a question, so the page of its warp is there."""
        assert (built.folder / "site" / "warps" / "tideline-towels.html").is_file()

    def test_for_others(self, built: Shell, tmp_path: Path) -> None:
        """--public builds of what is shared alone, into the folder that is asked for."""
        ended = in_a_process(built.folder, "build", "--public", "--out", str(tmp_path / "for the shop"))
        pages = sorted(path.name for path in (tmp_path / "for the shop" / "warps").iterdir())

        assert 0 == ended.returncode
        assert ["shared-towels.html"] == pages

    def test_for_oneself(self, built: Shell, tmp_path: Path) -> None:
        """--whole goes before what mkdocs.yml says."""
        settings = built.folder / "mkdocs.yml"
        private = settings.read_text(encoding="utf-8")
        settings.write_text(private.replace("public: false", "public: true"), encoding="utf-8")
        try:
            in_a_process(built.folder, "build", "--out", str(tmp_path / "as it says"))
            in_a_process(built.folder, "build", "--whole", "--out", str(tmp_path / "whole"))
        finally:
            settings.write_text(private, encoding="utf-8")

        assert not (tmp_path / "as it says" / "warps" / "tideline-towels.html").exists()
        assert (tmp_path / "whole" / "warps" / "tideline-towels.html").is_file()


class TestAFault:
    @pytest.mark.parametrize("program", ["journal_tools", "mkdocs"])
    def test_the_last_site_stays(self, broken: Shell, program: str) -> None:
        """With two faults a build ends with 1, says both and how many, and no byte of the last site moves."""
        before = bytes_of(broken.folder / "site")
        ended = in_a_process(broken.folder, "build", program=program)

        assert 1 == ended.returncode
        assert 'warps/wide-cloth.md:3 in_reed: read "wide".' in ended.stderr
        assert 'looms/big-loom.md:3 shafts: read "many".' in ended.stderr
        assert "2 faults to mend, so nothing was built." in ended.stderr
        assert f"{broken.folder / 'site'} is left as it was." in ended.stderr
        assert before == bytes_of(broken.folder / "site")

    def test_a_draft_that_cannot_be_woven(self, built: Shell) -> None:
        """A fault that shows only when the draft is put together stops a build as well."""
        path = built.write("drafts/four", "---\nthreading: 1-4\ntie_up: 1+2, 3+4\ntreadling: 1-3\n---\n")
        before = bytes_of(built.folder / "site")
        ended = in_a_process(built.folder, "build")
        path.unlink()

        assert 1 == ended.returncode
        assert "drafts/four.md" in ended.stderr
        assert before == bytes_of(built.folder / "site")


class TestRefusals:
    def test_a_folder_with_other_things(self, built: Shell, tmp_path: Path) -> None:
        """A build clears its folder, so a folder with anything but a site in it is refused and kept."""
        (tmp_path / "letters").mkdir()
        letter = tmp_path / "letters" / "letter.txt"
        letter.write_text("Dear Ann,", encoding="utf-8")
        ended = in_a_process(built.folder, "build", "--out", str(letter.parent))

        assert 2 == ended.returncode
        assert "building there would delete it" in ended.stderr
        assert "Dear Ann," == letter.read_text(encoding="utf-8")

    def test_a_journal_without_its_site_settings(self, tenterhook: Shell) -> None:
        """Without mkdocs.yml it says what is missing, before anything is made."""
        (tenterhook.folder / "mkdocs.yml").unlink()
        said = tenterhook("build")

        assert 2 == said.exit_code
        assert "has no mkdocs.yml" in said.stderr
        assert not (tenterhook.folder / "site").exists()
