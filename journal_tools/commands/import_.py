"""`tenterhook import`: old records taken in, from a spreadsheet or from a whole journal that was exported."""

from __future__ import annotations

import json
from pathlib import Path
from typing import TYPE_CHECKING

import click

from journal_tools.commands.called import called
from journal_tools.commands.folder import Place, find, journal_option
from journal_tools.commands.terminal import tell, working

if TYPE_CHECKING:
    from journal_tools.exchange.columns import Columns
    from journal_tools.exchange.sheet import Sheet
    from journal_tools.exchange.taking import Outcome, Taken
    from journal_tools.problems import Problem
    from journal_tools.records import Journal


@click.command(name="import")
@click.argument("file", type=click.Path(exists=True, dir_okay=False, path_type=Path))
@click.option(
    "--columns",
    "columns_file",
    type=click.Path(dir_okay=False, path_type=Path),
    help="The file that says what each column is; else FILE.columns.txt beside the sheet.",
)
@click.option("--write", is_flag=True, help="Write the records. Without it, all is only told.")
@click.option("--keep-unread", is_flag=True, help="Put what cannot be read into the notes, and take the row.")
@click.option("--json", "as_json", is_flag=True, help="One object for each row, for programs.")
@journal_option
@click.pass_context
def command(
    context: click.Context,
    file: Path,
    columns_file: Path | None,
    write: bool,
    keep_unread: bool,
    as_json: bool,
    journal: Path | None,
) -> None:
    """Take past warps into the journal from a spreadsheet saved as CSV, or a whole journal.json.

    The first run writes nothing into the journal. It proposes what each column of the sheet is, in
    a small file beside it (past-warps.columns.txt for past-warps.csv), and tells what would become
    of every row. Put right what is wrong in that file or in the sheet and run it again; when all is
    well, say --write. One row is a piece or a warp; yarns, finishes and looms that have no record
    get one. A record that is there already is never written over, so it may be run as often as
    you like.

    With --json: file, written (whether it was), records (their files), problems, and rows, each
    with row, done (new, there or skipped), file, why and problems.

    Exit status 1 when something must be mended before all of it can be taken.

    \b
    For example:
      tenterhook import past-warps.csv
      tenterhook import past-warps.csv --write
      tenterhook import journal.json --write
    """
    place = find(journal)
    with working("Reading"):
        from journal_tools.records import read_journal

        read = read_journal(place.entries)
        taken, said = _taken(context, file, columns_file, read, keep_unread)
    failed = _write(place, taken) if write else []
    if as_json:
        click.echo(json.dumps(_as_json(file, taken, write, failed), indent=2, ensure_ascii=False))
    else:
        for line in said:
            click.echo(line)
        _show(file, taken, write, failed)
    context.exit(0 if taken.sound and not failed else 1)


def _taken(
    context: click.Context, file: Path, columns_file: Path | None, journal: Journal, keep_unread: bool
) -> tuple[Taken, list[str]]:
    """What the file comes to, and what to say of its columns."""
    from journal_tools.exchange.sheet import NoSheet, read_sheet
    from journal_tools.exchange.taking import take_sheet
    from journal_tools.exchange.whole import NotWhole
    from journal_tools.exchange.whole_taking import take_whole

    try:
        data = file.read_bytes()
        if file.suffix.lower() == ".json":
            return take_whole(data, file.name, journal, keep_unread=keep_unread), []
        sheet = read_sheet(data, file.name)
    except OSError as error:
        raise click.UsageError(f"{file} cannot be read: {error.strerror or error}.") from error
    except (NoSheet, NotWhole) as refused:
        tell(refused.problem)
        context.exit(1)
    columns, said = _columns(file, columns_file, sheet, journal)
    return take_sheet(sheet, columns, journal, keep_unread=keep_unread), said


def _columns(file: Path, given: Path | None, sheet: Sheet, journal: Journal) -> tuple[Columns, list[str]]:
    """The columns as the weaver's file has them, or as proposed, and then kept in one."""
    from journal_tools.exchange.columns import parsed, printed
    from journal_tools.exchange.propose import propose
    from journal_tools.exchange.sheet import decoded

    proposed = propose(sheet, journal.settings.units)
    path = given or file.with_suffix(".columns.txt")
    if path.exists():
        try:
            text, _ = decoded(path.read_bytes())
        except OSError as error:
            raise click.UsageError(f"{path} cannot be read: {error.strerror or error}.") from error
        columns = parsed(text, path.name, sheet, proposed)
        return columns, [_how(sheet, columns, f"as {path} says"), *_listed(columns)]
    text = printed(proposed, sheet.file)
    try:
        with path.open("x", encoding="utf-8", newline="\n") as kept:
            kept.write(text)
        where = f"as proposed. This is kept in {path}; put right there what is wrong, and run this again"
    except OSError as error:
        where = f"as proposed. {path} cannot be written ({error.strerror or error}); name another with --columns"
    return proposed, [_how(sheet, proposed, where), *_listed(proposed)]


def _how(sheet: Sheet, columns: Columns, where: str) -> str:
    first, last = columns.header
    rows = f"row {last}" if first == last else f"rows {first} and {last}"
    read = f"{sheet.encoding}, {sheet.separator} between cells, headings in {rows}"
    return f"{sheet.file}: {read}, one row is {columns.each}. Its columns are taken {where}:"


def _listed(columns: Columns) -> list[str]:
    widest = max((len(column.heading) for column in columns.columns), default=0)
    lines = [f"  {column.heading:<{min(widest, 40)}} -> {column.words}" for column in columns.columns]
    return [*lines, ""]


def _write(place: Place, taken: Taken) -> list[Problem]:
    """Write the records, what warps name before the warps. The problems of those that could not be written."""
    from journal_tools.editing.splice import SpliceRefused, splice_file
    from journal_tools.exchange.new_record import write_new

    if taken.settings:
        try:
            splice_file(place.entries / "journal.md", taken.settings, "journal.md")
        except SpliceRefused as refused:
            return [refused.problem]
    failed = (write_new(place.entries, record) for record in taken.records)
    return [problem for problem in failed if problem is not None]


def _show(file: Path, taken: Taken, write: bool, failed: list[Problem]) -> None:
    for problem in taken.problems:
        tell(problem)
    not_written = {problem.file for problem in failed}
    for outcome in taken.outcomes:
        _show_outcome(outcome, write and outcome.file not in not_written, outcome.file in not_written)
    for change in taken.settings:
        click.echo(f"journal.md {'has' if write else 'would have'} {change.path[0]}: {change.value}")
    rows = {row for record in taken.records for row in record.source}
    for record in taken.records:
        if rows and record.kind != "warps" and record.file not in not_written:
            click.echo(f"{'made' if write else 'would make'} {record.file}: {record.fields.get('title', '')}")
    for problem in failed:
        tell(problem)
    click.echo(_summed(taken, write, len(failed)))
    if not write and taken.records:
        click.echo(f"Nothing was written. To write them: {called()} import {file} --write")


def _show_outcome(outcome: Outcome, written: bool, failed: bool) -> None:
    whose = f"row {outcome.row}" if outcome.row else outcome.file
    where = f": {outcome.file}" if outcome.row and outcome.file else ""
    if outcome.done == "new":
        what = "not written" if failed else "written" if written else "would be written"
        click.echo(f"{click.style(whose, bold=True)} {what}{where}")
    elif outcome.done == "there":
        click.echo(f"{click.style(whose, bold=True)} is there already, the same{where}")
    else:
        click.echo(f"{click.style(whose, bold=True)} {click.style('skipped', fg='yellow')}{_why(outcome)}")
    for problem in outcome.problems:
        _tell_below(problem)


def _why(outcome: Outcome) -> str:
    if outcome.why:
        return f": {outcome.why}"
    return " because:" if outcome.problems else ""


def _tell_below(problem: Problem) -> None:
    kind = click.style("to mend" if problem.is_fault else "question", fg="red" if problem.is_fault else "yellow")
    read = f' read "{problem.read}".' if problem.read else ""
    field = f" {problem.field}:" if problem.field else ""
    click.echo(f"    {kind}{field}{read} {problem.told}")


def _summed(taken: Taken, write: bool, failed: int) -> str:
    """`12 rows: 10 in 4 warps, 1 there already, 1 skipped, 2 with a question; 2 yarns, 1 finish.`"""
    done = [outcome.done for outcome in taken.outcomes]
    what = "row" if any(outcome.row for outcome in taken.outcomes) else "record"
    asked = sum(any(not p.is_fault for p in outcome.problems) for outcome in taken.outcomes)
    parts = [f"{done.count('new')} {'written' if write else 'to write'}"]
    parts += [f"{done.count('there')} there already"] if "there" in done else []
    parts += [f"{done.count('skipped')} skipped"] if "skipped" in done else []
    parts += [f"{asked} with a question"] if asked else []
    parts += [f"{failed} that could not be written"] if failed else []
    kinds = [(kind, sum(record.kind == kind for record in taken.records)) for kind in ("warps", *_SHELF)]
    made = [f"{number} {_SHELF.get(kind, 'warp') if number == 1 else kind}" for kind, number in kinds if number]
    return f"{len(done)} {what}{'' if len(done) == 1 else 's'}: {', '.join(parts)}. {', '.join(made)}".rstrip() + (
        "." if made else ""
    )


_SHELF = {"yarns": "yarn", "drafts": "draft", "looms": "loom", "finishes": "finish"}


def _as_json(file: Path, taken: Taken, write: bool, failed: list[Problem]) -> dict[str, object]:
    return {
        "file": file.name,
        "written": write,
        "records": [record.file for record in taken.records],
        "problems": [problem.as_json() for problem in (*taken.problems, *failed)],
        "rows": [
            {
                "row": outcome.row,
                "done": outcome.done,
                "file": outcome.file,
                "why": outcome.why,
                "problems": [problem.as_json() for problem in outcome.problems],
            }
            for outcome in taken.outcomes
        ],
    }
