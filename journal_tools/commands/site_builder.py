"""Running the site builder on a journal, in a process of its own."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
from collections.abc import Sequence
from pathlib import Path
from types import FrameType

import click

from journal_tools.commands.called import called
from journal_tools.commands.folder import Place


def run(place: Place, words: Sequence[str], *, public: bool | None = None) -> int:
    """Run MkDocs in the journal's folder and give its exit status.

    public: build for others (True), for yourself (False), or as mkdocs.yml says (None).
    """
    if not (place.root / "mkdocs.yml").is_file():
        raise click.UsageError(f"{place.root} has no mkdocs.yml; `{called()} begin` makes a folder that has one.")
    environment = dict(os.environ, NO_MKDOCS_2_WARNING="1")
    # The sitemap carries a day; with a fixed one, the same journal gives the same bytes.
    environment.setdefault("SOURCE_DATE_EPOCH", "1577836800")
    if public is not None:
        environment["TENTERHOOK_PUBLIC"] = "yes" if public else "no"
    command = [sys.executable, "-m", "mkdocs", *words]
    before = signal.signal(signal.SIGTERM, _interrupt)
    try:
        return subprocess.run(command, cwd=place.root, env=environment, check=False).returncode
    except KeyboardInterrupt:
        return 0
    finally:
        signal.signal(signal.SIGTERM, before)


def _interrupt(_signal: int, _frame: FrameType | None) -> None:
    """End the site builder too when this process is ended, so that nothing goes on holding its port."""
    raise KeyboardInterrupt


def site_folder(place: Place, given: Path | None) -> Path:
    """Where the site goes: a new folder, an empty one, or one that holds a site of this program.

    Raises a usage error for any other, because a build begins by clearing the folder.
    """
    from journal_tools.pages.style_assets import STYLESHEET

    folder = (given or place.root / "site").resolve()
    if folder.is_dir() and any(folder.iterdir()) and not (folder / STYLESHEET).is_file():
        raise click.UsageError(
            f"{folder} holds something else than the site of a journal, and building there would delete it."
            " Name a folder that is new or empty with --out."
        )
    return folder
