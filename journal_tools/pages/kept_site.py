"""The site of a folder, made anew only when something that it depends on has changed.

A build with nothing changed should cost no more than its pages. So a whole site is kept in one
file, named by all that decides it: the records' text, the photos' names and sizes, this program
and the libraries that draw. The folder it lies in may be deleted at any time.
"""

from __future__ import annotations

import hashlib
import json
import os
import time
from collections.abc import Iterator
from dataclasses import asdict, replace
from importlib.metadata import version
from pathlib import Path

from journal_tools.pages.made import Page, Site
from journal_tools.pages.panels import Panels
from journal_tools.pages.sweeping import no_sweeping
from journal_tools.pictures.store import drawn_by, write_whole
from journal_tools.problems import Problem, Severity
from journal_tools.records import read_journal

KEPT = 3
"""Sites kept: yours, the one for others, and one to spare."""

LIBRARIES = ("Jinja2", "PyYAML", "scipy")

UNUSED = 24 * 60 * 60
"""Seconds after which a file of the cache that no kept site wants is thrown away."""


def site_of(folder: Path, cache: Path, *, public: bool = False, serving: bool = False) -> Site:
    """Every page of the journal in a folder, with every problem of all its records.

    The arguments are those of `make_site`. Never raises for what a weaver wrote.
    """
    kept = cache / "sites" / f"{_key(folder, public, serving)}.json"
    site = _read(kept, cache)
    if site is None:
        from journal_tools.pages.site import make_site  # what draws and reckons is read only where there is need

        panels = kept.with_suffix(".panels")
        with no_sweeping():
            site = make_site(read_journal(folder), cache, panels, public=public, serving=serving)

        def finish() -> None:
            site.finish()
            _write(kept, cache, site)

        return replace(site, finish=finish)
    return site


def _key(folder: Path, public: bool, serving: bool) -> str:
    key = hashlib.sha256(repr((public, serving, [version(name) for name in LIBRARIES])).encode() + drawn_by())
    for path in _files(Path(__file__).parents[1], (".py", ".html", ".css", ".js")):
        key.update(f"{path.name} {path.stat().st_size} {path.stat().st_mtime_ns}".encode())
    for path in _files(folder):
        key.update(os.fsencode(path.relative_to(folder)))
        if path.suffix == ".md":
            key.update(path.read_bytes())
        else:  # a photo is megabytes; its time tells well enough whether it is another one
            key.update(f"{path.stat().st_size} {path.stat().st_mtime_ns}".encode())
    return key.hexdigest()[:32]


def _files(folder: Path, suffixes: tuple[str, ...] = ()) -> Iterator[Path]:
    for above, folders, names in os.walk(folder):
        folders.sort()
        for name in sorted(names):
            if not suffixes or name.endswith(suffixes):
                path = Path(above, name)
                if path.is_file():
                    yield path


def _read(kept: Path, cache: Path) -> Site | None:
    """A kept site, None when there is none or it is not whole, its panels and pictures among it."""
    try:
        listed = json.loads(kept.read_bytes())
        os.utime(kept)  # so that the one used last is thrown away last
        assets = {address: cache / file for address, file in listed["assets"].items()}
        places = {address: (start, middle, end) for address, (start, middle, end) in listed["panels"].items()}
        problems = tuple(
            Problem(**{**problem, "severity": Severity(problem["severity"])}) for problem in listed["problems"]
        )
        site = Site(
            tuple(Page(**page) for page in listed["pages"]),
            Panels(kept.with_suffix(".panels"), places),
            assets,
            problems,
        )
    except (OSError, ValueError, KeyError, TypeError, AttributeError):
        return None
    return site if site.panels.whole and all(file.is_file() for file in assets.values()) else None


def _write(kept: Path, cache: Path, site: Site) -> None:
    listed = {
        "pages": [asdict(page) for page in site.pages],
        "panels": site.panels.places,
        "problems": [problem.as_json() for problem in site.problems],
        "assets": {address: file.relative_to(cache).as_posix() for address, file in site.assets.items()},
    }
    write_whole(kept, json.dumps(listed).encode())
    _throw_away(kept.parent, cache / "pictures")


def _throw_away(sites: Path, pictures: Path) -> None:
    """Drop the sites used longest ago, the pictures that none of the others shows, and what was left half made.

    Only what nothing has used for a day: another build may be drawing what it has not listed yet.
    """
    newest = sorted(sites.glob("*.json"), key=lambda path: path.stat().st_mtime, reverse=True)[:KEPT]
    wanted = {name for kept in newest for name in (kept.name, kept.with_suffix(".panels").name)}
    shown = {file.name for kept in newest if (site := _read(kept, sites.parent)) for file in site.assets.values()}
    for path in [*sites.iterdir(), *pictures.iterdir()]:
        listing = path.suffix == ".txt"  # which sizes a photo has: a few letters, and hard to make again
        if path.name in wanted or path.name in shown or listing:
            continue
        try:
            if time.time() - path.stat().st_mtime > UNUSED:
                path.unlink()
        except OSError:
            continue  # gone already, by another build
