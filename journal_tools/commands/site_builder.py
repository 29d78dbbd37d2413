"""Running the site builder on a journal, in a process of its own."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Sequence
from pathlib import Path

import click

from journal_tools.commands.folder import Place


def run(place: Place, words: Sequence[str], *, public: bool | None = None) -> int:
    """Run MkDocs in the journal's folder and give its exit status.

    public: build for others (True), for yourself (False), or as mkdocs.yml says (None).
    """
    if not (place.root / "mkdocs.yml").is_file():
        raise click.UsageError(f"{place.root} has no mkdocs.yml; `tenterhook begin` makes a folder that has one.")
    environment = dict(os.environ, NO_MKDOCS_2_WARNING="1")
    # The sitemap carries a day; with a fixed one, the same journal gives the same bytes.
    environment.setdefault("SOURCE_DATE_EPOCH", "1577836800")
    if public is not None:
        environment["TENTERHOOK_PUBLIC"] = "yes" if public else "no"
    try:
        return subprocess.run([sys.executable, "-m", "mkdocs", *words], cwd=place.root, env=environment, check=False).returncode
    except KeyboardInterrupt:
        return 0


def site_folder(place: Place, given: Path | None) -> Path:
    """Where the site goes."""
    return (given or place.root / "site").resolve()
