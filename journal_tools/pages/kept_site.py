"""The site of a folder, made anew only when something that it depends on has changed.

A build with nothing changed should cost no more than its pages. So a whole site is kept in one
file, named by all that decides it: the records' text, the photos' names and sizes, this program
and the libraries that draw. The folder it lies in may be deleted at any time.
"""

from __future__ import annotations

import hashlib
import json
import os
import zipfile
from collections.abc import Iterator
from dataclasses import asdict
from importlib.metadata import version
from pathlib import Path

from journal_tools.pages.site import Page, Site, make_site
from journal_tools.problems import Problem, Severity
from journal_tools.records import read_journal

KEPT = 3
"""Sites kept: yours, the one for others, and one to spare."""

LIBRARIES = ("Jinja2", "Pillow", "PyYAML", "matplotlib", "numpy")


def site_of(folder: Path, *, public: bool = False, cache: Path | None = None, serving: bool = False) -> Site:
    """Every page of the journal in a folder, with every problem of all its records.

    The arguments are those of `make_site`. Never raises for what a weaver wrote.
    """
    kept = cache / "sites" / f"{_key(folder, public, serving)}.zip" if cache is not None else None
    if kept is not None and (site := _read(kept)) is not None:
        return site
    site = make_site(read_journal(folder), public=public, cache=cache, serving=serving)
    if kept is not None:
        _write(kept, site)
    return site


def _key(folder: Path, public: bool, serving: bool) -> str:
    key = hashlib.sha256(repr((public, serving, [version(name) for name in LIBRARIES])).encode())
    for path in _files(Path(__file__).parents[1], (".py", ".html", ".css", ".js")):
        key.update(f"{path.name} {path.stat().st_size} {path.stat().st_mtime_ns}".encode())
    for path in _files(folder):
        key.update(str(path.relative_to(folder)).encode())
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


def _read(kept: Path) -> Site | None:
    """A kept site, None when there is none or it is not whole."""
    try:
        with zipfile.ZipFile(kept) as packed:
            listed = json.loads(packed.read("site.json"))
            assets = {name: packed.read(f"assets/{name}") for name in listed["assets"]}
    except (OSError, zipfile.BadZipFile, KeyError, ValueError):
        return None
    os.utime(kept)  # so that the one used last is thrown away last
    pages = tuple(Page(**page) for page in listed["pages"])
    problems = tuple(
        Problem(**{**problem, "severity": Severity(problem["severity"])}) for problem in listed["problems"]
    )
    return Site(pages, assets, problems)


def _write(kept: Path, site: Site) -> None:
    kept.parent.mkdir(parents=True, exist_ok=True)
    listed = {
        "pages": [asdict(page) for page in site.pages],
        "problems": [problem.as_json() for problem in site.problems],
        "assets": list(site.assets),
    }
    part = kept.with_suffix(f".{os.getpid()}")
    with zipfile.ZipFile(part, "w") as packed:
        packed.writestr("site.json", json.dumps(listed))
        for name, content in site.assets.items():
            packed.writestr(f"assets/{name}", content)
    part.replace(kept)  # whole or not at all, should the build be stopped here
    others = sorted(kept.parent.glob("*.zip"), key=lambda path: path.stat().st_mtime, reverse=True)
    for old in others[KEPT:]:
        old.unlink(missing_ok=True)
