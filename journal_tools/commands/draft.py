"""`tenterhook draft`: a draft looked through, drawn, changed, and turned into other files."""

from __future__ import annotations

import json
from pathlib import Path
from typing import TYPE_CHECKING

import click

from journal_tools.commands.draft_changes import CHANGES, changed, changes_in_words
from journal_tools.commands.draft_found import found_draft
from journal_tools.commands.draft_ground import ground_sentence, ground_weave
from journal_tools.commands.draft_setts import setts
from journal_tools.commands.draft_shows import notation
from journal_tools.commands.draft_writes import write
from journal_tools.commands.folder import journal_option

if TYPE_CHECKING:
    from journal_tools.quantities.density import PerUnit

HELP = """\
What a draft weaves, and what to look at before it is threaded.

FILE is an interchange file (.wif), a record (.md) wherever it lies, or the name of a draft in your
journal. What is wrong or was odd in it is told first. Changes keep the cloth, or say what becomes of
it, and keep the shed but for other-shed:

\b
{changes}

With --json, among others: hangs_together, verdict, layers, floats (system, side, threads, mm, at),
weave, agrees, face, repeat_ends, repeat_picks, symmetry, plain_weave_lifts, selvedge,
threading_slip, ground_weave, ends_per_m, setts_from; ends, picks, shafts and treadles are counted from 1.

Exit status 1 when there is no draft in it.

\b
For example:
  tenterhook draft huck-squares --sett 18
  tenterhook draft birds-eye --change turned --to turned.wif
  tenterhook draft from-a-friend.wif --to entries/drafts/from-a-friend.md
"""


@click.command(help=HELP.format(changes=changes_in_words()))
@click.argument("file")
@click.option(
    "--change",
    "changes",
    multiple=True,
    type=click.Choice(list(CHANGES)),
    help="Change it first; several are done in turn. See above.",
)
@click.option(
    "--sett",
    default="",
    help="Finished ends to the inch or centimetre, so that floats have lengths; else as a file spaces them.",
)
@click.option("--beat", default="", help="Finished picks likewise; else as many as ends.")
@click.option("--bears", default="", help="The longest float that its use bears, such as `3/8 in`.")
@click.option(
    "--to",
    "target",
    type=click.Path(dir_okay=False, path_type=Path),
    help="Write it to a new file: .wif, .md (a record), .png (the whole drawing) or .txt.",
)
@journal_option
@click.option("--json", "as_json", is_flag=True, help="The findings as one object, for programs.")
@click.pass_context
def command(
    context: click.Context,
    file: str,
    changes: tuple[str, ...],
    sett: str,
    beat: str,
    bears: str,
    target: Path | None,
    journal: Path | None,
    as_json: bool,
) -> None:
    """Look a draft through, draw, change and write it."""
    from journal_tools.drafts.analysis import analysed

    found = found_draft(context, file, journal, aside=as_json)
    made = changed(found.draft, changes)
    draft = made.draft
    given = setts(found, changes, _density(sett, "--sett"), _density(beat, "--beat"))
    looked = analysed(
        draft,
        ends_per_m=given.ends_per_m,
        picks_per_m=given.picks_per_m,
        said_weave="" if changes else found.said,
        bears_mm=_length(bears) if bears else None,
    )
    if bears and not given.ends_per_m and not given.picks_per_m:
        click.secho("How long a float is hangs on the sett: with --bears goes --sett.", fg="yellow", err=True)
    title = ", ".join([found.called, *made.titled])
    if target is not None:
        write(target, found, looked, changes, title)
    if as_json:
        told = {**looked.as_json(), **given.as_json(), "ground_weave": ground_weave(draft)}
        click.echo(json.dumps(told, indent=2, ensure_ascii=False))
        return
    from journal_tools.drafts.analysis_words import sentences, warnings
    from journal_tools.pictures.text_drawing import text_drawing

    unit: PerUnit = "cm" if "cm" in sett else "in"
    click.secho(title, bold=True)
    for line in found.own if found.own and not changes else notation(draft):
        click.echo(line)
    click.echo("")
    for line in text_drawing(draft, looked.marked if bears else None, "--to whole.png"):
        click.echo(line)
    click.echo("")
    asked = list(warnings(looked, unit))
    for line in asked:
        click.secho(line, fg="yellow")
    for line in (*given.sentences(unit), *sentences(looked, unit), *ground_sentence(draft)):
        if line not in asked:
            click.echo(line)
    if target is not None:
        click.echo(f"\nWritten: {target}")


def _density(typed: str, option: str) -> float | None:
    from journal_tools.quantities import Unreadable, parse_density

    try:
        return float(parse_density(typed).per_m) if typed else None
    except Unreadable as unreadable:
        raise click.BadParameter(unreadable.right, param_hint=f"'{option}'") from None


def _length(typed: str) -> float:
    from journal_tools.quantities import Unreadable, parse_length

    try:
        return float(parse_length(typed).mm)
    except Unreadable as unreadable:
        raise click.BadParameter(unreadable.right, param_hint="'--bears'") from None
