"""`tenterhook begin`: a new journal."""

from __future__ import annotations

import os
import shlex
import subprocess
import sys
from pathlib import Path

import click

from journal_tools.commands.called import called

NEXT = (
    ("new warp blue-towels", "write your first warp"),
    ("measure blue-towels", "add what it measured"),
    ("serve", "look at it in a browser"),
)


@click.command()
@click.argument("folder", type=click.Path(file_okay=False, path_type=Path))
@click.option("--title", default="The swatch book", show_default=True, help="What the journal is called.")
@click.pass_context
def command(context: click.Context, folder: Path, title: str) -> None:
    """Make a new journal in FOLDER, empty but for its settings, and ready to build.

    \b
    For example:
      tenterhook begin my-journal
      tenterhook begin ~/weaving --title "What the loom did"
    """
    from journal_tools.editing.starting import NotStarted, begin

    try:
        made = begin(folder, title)
    except NotStarted as not_started:
        click.echo(str(not_started), err=True)
        context.exit(1)
    for path in made:
        click.echo(f"made {path}")
    click.echo(f"\nNow, in that folder ({cd_to(folder)}):")
    for words, what in NEXT:
        click.echo(f"  {called()} {words:<28}{what}")
    if called() != "tenterhook":
        there = Path(sys.executable).with_name("tenterhook")
        click.echo(f"\nThe same program, with a shorter name: {shlex.quote(str(there))}")


def cd_to(folder: Path) -> str:
    """The line that leads into a folder."""
    return f"cd {shlex.quote(str(folder)) if os.name != 'nt' else subprocess.list2cmdline([str(folder)])}"
