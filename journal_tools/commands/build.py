"""`tenterhook build`: the journal as a site."""

from __future__ import annotations

from pathlib import Path

import click

from journal_tools.commands.folder import find, journal_option
from journal_tools.commands.site_builder import run, site_folder


@click.command()
@journal_option
@click.option("--public/--whole", "public", default=None, help="For others, of what is shared alone; or all of it.")
@click.option("--out", type=click.Path(file_okay=False, path_type=Path), help="Another folder than site/.")
@click.pass_context
def command(context: click.Context, journal: Path | None, public: bool | None, out: Path | None) -> None:
    """Build the site of a journal into its folder site/.

    When a record has something to mend, nothing is built, the last site stays, and the exit status
    is 1. A site for others holds only warps that say `share: yes`, without what is private.

    \b
    For example:
      tenterhook build
      tenterhook build --public --out ../for-the-shop
    """
    place = find(journal)
    folder = site_folder(place, out)
    for_whom = {True: "for others", False: "for yourself", None: ""}[public]
    click.echo(f"Building the site of {place.entries} {for_whom}".rstrip() + " …")
    status = run(place, ["build", "--clean", "--site-dir", str(folder)], public=public)
    click.echo(f"The site is in {folder}; open {folder / 'index.html'}." if status == 0 else "The site was not built.")
    context.exit(1 if status else 0)
