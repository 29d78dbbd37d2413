"""Every link, picture, style and script of a site leads to something that is there, anchors too."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from pathlib import Path
from posixpath import dirname, join, normpath
from urllib.parse import unquote, urlsplit

import pytest

from tests.built import Seen, pages, seen

OWN = ("https://attic.example/loom/", "/loom/", "/")
"""How pages may begin an address of the site itself, besides from where they stand."""


def addresses(page: Seen) -> Iterator[str]:
    """Every address that a page names."""
    for _, attributes in page.tags:
        yield from (attributes[name] for name in ("href", "src", "action", "poster", "data") if attributes.get(name))
        yield from (part.split()[0] for part in attributes.get("srcset", "").split(",") if part.strip())
        if attributes.get("http-equiv") == "refresh":
            yield attributes["content"].partition("url=")[2]


def dead(site: Path) -> list[str]:
    """Every address in a site that leads nowhere, with the page that names it."""
    files = {path.relative_to(site).as_posix() for path in site.rglob("*") if path.is_file()}
    read = {address: seen(site, address) for address in pages(site)}

    @cache
    def anchors(address: str) -> set[str]:
        tags = read[address].tags
        return {attributes[name] for _, attributes in tags for name in ("id", "name") if name in attributes}

    found = []
    for here, page in read.items():
        for address in dict.fromkeys(addresses(page)):
            inside = next((address.removeprefix(own) for own in OWN if address.startswith(own)), None)
            parts = urlsplit(address if inside is None else inside)
            if parts.scheme in ("http", "https", "mailto", "data"):
                continue
            path = unquote(parts.path)
            there = normpath(path if inside is not None else join(dirname(here), path)) if path else here
            there = {".": "index.html"}.get(there, there)
            if there not in files:
                found.append(f"{here}: {address}")
            elif there == "plan.html" and "=" in parts.fragment:
                continue  # a plan to begin with, which the page reads: the browser tests follow it
            elif parts.fragment and there.endswith(".html") and unquote(parts.fragment) not in anchors(there):
                found.append(f"{here}: {address} has no such anchor")
    return found


@pytest.mark.parametrize("site", ["tiny_site", "tiny_public_site", "tiny_problems", "demo_site"])
def test_no_link_is_dead(site: str, request: pytest.FixtureRequest) -> None:
    """From every page of a site, every address leads to a page, a picture or a place on a page that is there."""
    folder: Path = request.getfixturevalue(site)

    assert [] == dead(folder)


def test_a_dead_link_would_be_seen(tmp_path: Path) -> None:
    """A link to nothing, a picture that is missing and an anchor that is not there are found."""
    (tmp_path / "a").mkdir()
    links = '<a href="../c.html#d">x</a><a href="../c.html#e">x</a><img src="f.png"><a href="g.html">x</a>'
    (tmp_path / "a" / "b.html").write_text(links, encoding="utf-8")
    (tmp_path / "c.html").write_text('<p id="d">x</p>', encoding="utf-8")

    assert [
        "a/b.html: ../c.html#e has no such anchor",
        "a/b.html: f.png",
        "a/b.html: g.html",
    ] == dead(tmp_path)


def test_every_page_can_be_reached(tiny_site: Path) -> None:
    """From the front page, by links alone, one comes to every page but the one for what is not there."""
    reached, waiting = set(), ["index.html"]
    while waiting:
        here = waiting.pop()
        if here in reached or not (tiny_site / here).is_file():
            continue
        reached.add(here)
        for address in addresses(seen(tiny_site, here)):
            path = urlsplit(address).path
            if path.endswith(".html") and not address.startswith(("http", "/")):
                waiting.append(normpath(join(dirname(here), path)))
    old_names = {"warps/blue-towels.html"}

    assert {"404.html"} | old_names == set(pages(tiny_site)) - reached
