"""Build a small journal's site, in this process or with a command of its own."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Mapping
from pathlib import Path

from mkdocs.commands import build as mkdocs_build
from mkdocs.config import load_config

SETTINGS = """site_name: A test of the loom
docs_dir: entries
theme:
  name: material
plugins:
  - search
  - tenterhook
"""

TOWELS = """---
title: Tideline towels
yarn: cottolin-22-2 indigo
weave: plain weave
in_reed: 20 1/4
on_loom: 19 3/8 x 33
washed: 17 7/8 x 30 1/8
share: yes
---

Beamed alone on a windy day.
"""


def write_journal(folder: Path, entries: Mapping[str, str], settings: str = SETTINGS) -> Path:
    """A journal with these entries below entries/, and its mkdocs.yml. Gives the folder."""
    for name, text in {"journal.md": "---\ntitle: A test\n---\n", **entries}.items():
        path = folder / "entries" / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    (folder / "mkdocs.yml").write_text(settings, encoding="utf-8")
    return folder


def build_here(folder: Path, *, serving: bool = False) -> Path:
    """Build in this process, as a build or as a preview. Gives the site's folder."""
    config = load_config(str(folder / "mkdocs.yml"))
    config.plugins.on_startup(command="serve" if serving else "build", dirty=False)
    mkdocs_build.build(config, serve_url="http://127.0.0.1/" if serving else None)
    return folder / "site"


def build_with(tool: str, folder: Path, **environment: str) -> subprocess.CompletedProcess[str]:
    """Build with `python -m TOOL build`, whatever it ends with."""
    return subprocess.run(
        [sys.executable, "-m", tool, "build", "-f", "mkdocs.yml"],
        cwd=folder,
        env={**os.environ, "NO_MKDOCS_2_WARNING": "1", **environment},
        capture_output=True,
        text=True,
    )


def pages_of(site: Path) -> set[str]:
    """The addresses of the HTML files of a site."""
    return {path.relative_to(site).as_posix() for path in site.rglob("*.html")}
