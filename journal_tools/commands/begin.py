"""`tenterhook begin`: a new journal."""

from __future__ import annotations

from pathlib import Path

import click


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
    click.echo("\nNow, in that folder:")
    click.echo("  tenterhook new warp blue-towels     write your first warp")
    click.echo("  tenterhook measure blue-towels      add what it measured")
    click.echo("  tenterhook serve                    look at it in a browser")
