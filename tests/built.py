"""Sites built for the tests, in processes of their own as a weaver builds them."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from functools import cached_property
from html.parser import HTMLParser
from pathlib import Path

TINY = Path(__file__).parent / "tiny_journal"

# What `serve` makes, without the server: pages that show their problems.
AS_SERVED = """
import sys
from mkdocs.commands.build import build
from mkdocs.config import load_config
config = load_config(site_dir=sys.argv[1])
config.plugins.on_startup(command="serve", dirty=False)
build(config)
"""


def copy_of(journal: Path, folder: Path) -> Path:
    """A copy of a journal to build in, so that nothing is made beside the one that is kept."""
    shutil.copytree(journal, folder, ignore=shutil.ignore_patterns("site", "for-others", ".cache"))
    return folder


def build(folder: Path, *words: str, program: str = "journal_tools", **surroundings: str) -> Path:
    """Build a journal with `words` more, and say where its site is. Anything but success is a failure."""
    return _run(folder, [sys.executable, "-m", program, "build", *words], surroundings)


def build_as_served(folder: Path, out: Path) -> Path:
    """Build what a preview of a journal shows, with its problems on its pages."""
    _run(folder, [sys.executable, "-c", AS_SERVED, str(out)], {})
    return out


def _run(folder: Path, command: list[str], surroundings: dict[str, str]) -> Path:
    ended = subprocess.run(
        command,
        cwd=folder,
        env=os.environ | {"NO_MKDOCS_2_WARNING": "1"} | surroundings,
        capture_output=True,
        text=True,
        encoding="utf-8",
        timeout=120,
    )
    assert 0 == ended.returncode, ended.stdout + ended.stderr
    return folder / "site"


def pages(site: Path) -> list[str]:
    """The address of every page of a site, in order."""
    return sorted(path.relative_to(site).as_posix() for path in site.rglob("*.html"))


INLINE = {"a", "b", "code", "em", "i", "small", "span", "strong"}


class Seen(HTMLParser):
    """What a page says: its words, and every tag with its attributes."""

    def __init__(self, html: str) -> None:
        super().__init__(convert_charrefs=True)
        self.tags: list[tuple[str, dict[str, str]]] = []
        self._words: list[str] = []
        self._inside: list[str] = []
        self.feed(html)
        self.close()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """A tag."""
        self.tags.append((tag, {name: value or "" for name, value in attrs}))
        if tag in ("script", "style"):
            self._inside.append(tag)

    def handle_endtag(self, tag: str) -> None:
        """The end of one."""
        if self._inside and tag == self._inside[-1]:
            self._inside.pop()
        if tag not in INLINE:
            self._words.append(" ")

    def handle_data(self, data: str) -> None:
        """Words between tags."""
        if not self._inside:
            self._words.append(data)

    @cached_property
    def text(self) -> str:
        """All the words, with single blanks."""
        return " ".join("".join(self._words).split())

    def all(self, tag: str) -> list[dict[str, str]]:
        """The attributes of every tag of this name."""
        return [attributes for name, attributes in self.tags if name == tag]


def seen(site: Path, address: str) -> Seen:
    """A page of a site, read."""
    return Seen((site / address).read_text(encoding="utf-8"))
