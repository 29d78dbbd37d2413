"""Which journal a command is about: the one around the folder that the weaver stands in."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any, TypeVar

import click

from journal_tools.commands.called import called

F = TypeVar("F", bound=Callable[..., Any])


@dataclass(frozen=True)
class Place:
    """A journal on disk. root: holds mkdocs.yml. entries: holds journal.md and the records."""

    root: Path
    entries: Path


def journal_option(command: F) -> F:
    """The option that names another journal than the one around."""
    return click.option(
        "--journal",
        "journal",
        type=click.Path(exists=True, file_okay=False, path_type=Path),
        help="The journal's folder; else the one you stand in.",
    )(command)


def find(given: Path | None) -> Place:
    """The journal in the given folder, or in the one around the working directory.

    Raises a usage error that says what a journal looks like.
    """
    start = (given or Path.cwd()).resolve()
    for folder in (start, *(() if given else start.parents)):
        if (folder / "entries").is_dir():
            return Place(folder, folder / "entries")
        if (folder / "journal.md").is_file():
            return Place(folder.parent, folder)
    raise click.UsageError(
        f"there is no journal in {start}: no folder `entries` and no `journal.md`."
        f" `{called()} begin my-journal` makes one."
    )
