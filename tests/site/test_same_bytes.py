"""The same journal gives the same bytes: no clock, no chance order, no trace of the folder it lies in."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from tests.built import build, copy_of


def bytes_of(site: Path) -> dict[str, bytes]:
    """Every file of a site, by its path."""
    return {path.relative_to(site).as_posix(): path.read_bytes() for path in site.rglob("*") if path.is_file()}


def differing(one: dict[str, bytes], other: dict[str, bytes]) -> list[str]:
    """The paths whose bytes are not the same, or that one of them has not."""
    return sorted(path for path in {*one, *other} if one.get(path) != other.get(path))


@pytest.mark.parametrize("words", [(), ("--public",)])
def test_whatever_the_hash_seed(tiny_journal: Path, tmp_path: Path, words: tuple[str, ...]) -> None:
    """Two builds in two folders, with nothing kept from before and two hash seeds, are alike to the byte."""
    folders = [copy_of(tiny_journal, tmp_path / name) for name in ("first", "a second one")]
    sites = [
        bytes_of(build(folder, *words, PYTHONHASHSEED=seed))
        for folder, seed in zip(folders, ("1", "4242"), strict=True)
    ]

    assert [] == differing(*sites)
    assert len(sites[0]) > 50


def test_from_what_was_kept(tiny_journal: Path, tmp_path: Path) -> None:
    """A build that takes what it can from the last one is alike to the byte, and so is one after a change and back."""
    folder = copy_of(tiny_journal, tmp_path / "journal")
    record = folder / "entries" / "warps" / "tideline-towels.md"
    text = record.read_text(encoding="utf-8")
    first = bytes_of(build(folder))
    again = bytes_of(build(folder))
    record.write_text(text.replace("17 7/8", "17 1/2"), encoding="utf-8")
    changed = differing(first, bytes_of(build(folder)))
    record.write_text(text, encoding="utf-8")

    assert [] == differing(first, again)
    assert "warps/tideline-towels.html" in changed
    assert "yarns/cottolin-22-2.html" in changed
    assert "warps/sett-sampler.html" not in changed
    assert [] == differing(first, bytes_of(build(folder)))


def test_every_address_is_dated_alike(tiny_site: Path) -> None:
    """The map of the site carries the day that our build sets, and no day of a clock."""
    dated = re.findall("<lastmod>(.*?)</lastmod>", (tiny_site / "sitemap.xml").read_text(encoding="utf-8"))

    assert {"2020-01-01"} == set(dated)
