"""`tenterhook new`: a new record of any kind."""

from __future__ import annotations

import datetime
from pathlib import Path

import click

from journal_tools.commands.folder import find, journal_option


@click.command()
@click.argument("kind", type=click.Choice(["warp", "yarn", "draft", "loom", "finish"]))
@click.argument("name")
@click.option("--title", help="What you call it; else the name with a capital.")
@journal_option
@click.pass_context
def command(context: click.Context, kind: str, name: str, title: str | None, journal: Path | None) -> None:
    """Write a new record with its keys explained, for you to fill in.

    KIND is warp, yarn, draft, loom or finish. NAME is small letters, digits and hyphens: it is the
    file's name and the page's address. A record that is there already is never written over.

    \b
    For example:
      tenterhook new warp blue-towels
      tenterhook new yarn cotton-8-2 --title "Cotton 8/2"
    """
    from journal_tools.editing.starting import NotStarted, new_record

    place = find(journal)
    try:
        path = new_record(place.entries, kind, name, title, datetime.date.today().isoformat())
    except NotStarted as not_started:
        click.echo(str(not_started), err=True)
        context.exit(1)
    click.echo(f"made {path}")
