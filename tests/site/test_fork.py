"""The maintained fork of MkDocs builds the same site, with the same plugin."""

from __future__ import annotations

from pathlib import Path

from tests.built import build, copy_of, pages, seen
from tests.commands.shell import in_a_process


def test_the_fork_builds_the_same_pages(tiny_journal: Path, tiny_site: Path, tmp_path: Path) -> None:
    """Under the fork every page is there, with the same words on it, the same pictures and the same links."""
    folder = copy_of(tiny_journal, tmp_path / "journal")
    site = build(folder, "-f", "mkdocs.yml", program="properdocs")

    assert pages(tiny_site) == pages(site)
    for address in pages(site):
        ours, theirs = seen(tiny_site, address), seen(site, address)
        assert ours.text == theirs.text
        assert [each["src"] for each in ours.all("img")] == [each["src"] for each in theirs.all("img")]
        assert [each.get("href") for each in ours.all("a")] == [each.get("href") for each in theirs.all("a")]


def test_a_fault_stops_the_fork_too(tiny_journal: Path, tmp_path: Path) -> None:
    """Under the fork a fault ends a build before it has begun, as it does under MkDocs."""
    folder = copy_of(tiny_journal, tmp_path / "journal")
    record = folder / "entries" / "warps" / "tideline-towels.md"
    record.write_text(record.read_text(encoding="utf-8").replace("20 1/4", "wide"), encoding="utf-8")
    ended = in_a_process(folder, "build", "-f", "mkdocs.yml", program="properdocs")

    assert 1 == ended.returncode
    assert "1 fault to mend, so nothing was built." in ended.stderr
    assert not (folder / "site").exists()
