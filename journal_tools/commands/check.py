"""`tenterhook check`: every problem of every record."""

from __future__ import annotations

import json
from pathlib import Path

import click

from journal_tools.commands.folder import find, journal_option
from journal_tools.commands.terminal import counted, tell, working


@click.command()
@journal_option
@click.option("--json", "as_json", is_flag=True, help="A list of problems, for programs.")
@click.pass_context
def command(context: click.Context, journal: Path | None, as_json: bool) -> None:
    """Read every record and say what must be mended and what is asked.

    Asked, too, are figures that your other warps make incredible, with the likeliest slip of the pen.

    Exit status 1 when something must be mended. Questions never fail.

    \b
    For example:
      tenterhook check
      tenterhook check --json
    """
    place = find(journal)
    with working("Reading the journal"):
        from journal_tools.checking import check
        from journal_tools.forecast.incredible import worth_asking
        from journal_tools.ledger import ledger_of
        from journal_tools.records import KINDS, read_journal

        read = read_journal(place.entries)
        ledgers = {name: ledger_of(read, warp) for name, warp in read.warps.items()}
        problems = check(read, ledgers)
    if worth_asking(read, problems, ledgers):
        with working("Holding each warp against the others"):
            from journal_tools.forecast.incredible import with_incredible
            from journal_tools.forecast.memory import Memory

            problems = with_incredible(read, Memory.of(read, ledgers), problems, ledgers)
    if as_json:
        click.echo(json.dumps([problem.as_json() for problem in problems], indent=2, ensure_ascii=False))
    else:
        for problem in problems:
            tell(problem)
        kinds = ", ".join(_number(kind, len(read.kind(kind))) for kind in KINDS if read.kind(kind)) or "no records yet"
        click.echo(f"{kinds}: {counted(problems)}.")
    context.exit(1 if any(problem.is_fault for problem in problems) else 0)


def _number(kind: str, number: int) -> str:
    one = {"finishes": "finish"}.get(kind, kind.removesuffix("s"))
    return f"{number} {one if number == 1 else kind}"
