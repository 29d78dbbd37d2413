"""`tenterhook export`: the whole journal as tables and as one file."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from journal_tools.commands.folder import find, journal_option
from journal_tools.commands.terminal import tell, working

if TYPE_CHECKING:
    from journal_tools.editing.change import Value
    from journal_tools.records import Journal


@click.command()
@click.option(
    "--to",
    "folder",
    type=click.Path(file_okay=False, path_type=Path),
    help="Where to; else a folder export/ beside the entries.",
)
@click.option("--public", is_flag=True, help="Only what is shared: warps that say so, and nothing private.")
@journal_option
@click.pass_context
def command(context: click.Context, folder: Path | None, public: bool, journal: Path | None) -> None:
    """Write the journal as CSV tables, as JSON and as one file that `tenterhook import` takes in again.

    The tables have a row for each piece and step, for each piece and size, for each warp, yarn and
    so on, with units in the names of the columns; README.txt explains every column, and JSON Schemas
    say it to programs. journal.json holds every field as it was typed and all notes. Photographs
    are not in it. The same journal gives the same bytes.

    The folder must be new, empty or an earlier export, which is then brought up to date. A record
    that cannot all be read is told of, stands in journal.json as it was typed, and makes the exit
    status 1.

    \b
    For example:
      tenterhook export
      tenterhook export --to ../figures --public
    """
    place = find(journal)
    out = folder or place.root / "export"
    _need_room(out)
    with working("Writing the tables"):
        from journal_tools.exchange.downloads import TABLES, downloads
        from journal_tools.records import public as shared
        from journal_tools.records import read_journal

        read = read_journal(place.entries)
        faults = [problem for problem in read.problems if problem.is_fault]
        files = downloads(shared(read)) if public else downloads(read, typed=_as_typed(read))
    for fault in faults:
        tell(fault)
    try:
        out.mkdir(parents=True, exist_ok=True)
        for table in TABLES:
            if f"{table.name}.csv" not in files:  # it had rows in an earlier export, and has none now
                (out / f"{table.name}.csv").unlink(missing_ok=True)
        for name, content in files.items():
            (out / name).write_bytes(content)
    except OSError as error:
        click.echo(f"{out} cannot be written: {error.strerror or error}.", err=True)
        context.exit(1)
    click.echo(f"wrote {len(files)} files to {out}; README.txt there says what they are.")
    if faults:
        click.echo("What could not be read stands in journal.json as it was typed, and is not in the tables.")
    context.exit(1 if faults else 0)


def _need_room(out: Path) -> None:
    """Refuse a folder that holds anything but an earlier export: no file of the weaver's is written over."""
    from journal_tools.exchange.whole import FORMAT

    if not out.exists() or not any(out.iterdir()):
        return
    try:
        with (out / "journal.json").open(encoding="utf-8") as earlier:
            ours = FORMAT in earlier.readline()
    except (OSError, UnicodeDecodeError):
        ours = False
    if not ours:
        raise click.UsageError(f"{out} is not empty and holds no earlier export; name a folder that is new.")


def _as_typed(journal: Journal) -> dict[str, Value]:
    """The fields of every record that has a fault, as they stand in its file."""
    from journal_tools.editing.change import tree_of
    from journal_tools.records.front_matter import read_file

    found: dict[str, Value] = {}
    for file in {problem.file for problem in journal.problems if problem.is_fault}:
        front = read_file(journal.folder / file, file)
        if front.node is not None:
            found[file] = tree_of(front.node)
    return found
