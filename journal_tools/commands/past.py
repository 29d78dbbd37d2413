"""`tenterhook past`: what a yarn did before."""

from __future__ import annotations

import json
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import click

from journal_tools.commands.folder import find, journal_option

if TYPE_CHECKING:
    from journal_tools.ledger.past import Past, PastWarp, Step
    from journal_tools.records import Journal


@click.command()
@click.argument("yarn")
@journal_option
@click.option("--weave", metavar="NAME", help="Only what was woven in this weave.")
@click.option("--json", "as_json", is_flag=True, help="One object for each warp, piece and step.")
@click.pass_context
def command(context: click.Context, yarn: str, journal: Path | None, weave: str | None, as_json: bool) -> None:
    """Every warp in a yarn, newest first, and what each step of it lost.

    YARN is the yarn's name, an old name, its title or its label. Losses are per cent of the earlier
    size; ± is twice the standard uncertainty, in points. With --json all of them are fractions:

    \b
      warp, stretch, piece   whose loss it is; pieces: how many it stands for
      started, weave, use    of the warp; use is warp, weft, or warp and weft
      direction              width or length
      from, to               the states at its ends: in_reed, on_loom, off_loom, washed 1, …
      loss, uncertainty, planned      planned is null where the plan does not say
      skipped                states in between that nobody measured
      whole, joined, steered, learn, reason   see "How it is reckoned"

    Exit status 1 when the journal has no warp in this yarn.

    \b
    For example:
      tenterhook past linen-16-2
      tenterhook past "8/2 cotton" --weave "plain weave"
      tenterhook past "8/2 cotton" --json
    """
    from journal_tools.ledger.past import as_json as objects
    from journal_tools.ledger.past import past_of
    from journal_tools.records import read_journal

    entries = find(journal).entries
    read = read_journal(entries, about_yarn=yarn)
    past = past_of(read, yarn)
    if not past.warps:
        read = read_journal(entries)
    of_all = past
    if weave:
        past = past.of_weave(weave)
    if as_json:
        click.echo(json.dumps(objects(past), indent=2, ensure_ascii=False))
    elif past.warps:
        _show(past, read.yarns[past.yarn].heading if past.yarn in read.yarns else past.yarn)
    if of_all.warps and not past.warps:
        woven = sorted({each.weave(row.stretch) for each in of_all.warps for row in each.ledger.stretch_rows} - {""})
        click.echo(f'Nothing here in this yarn is in "{weave}"; there is {", ".join(woven) or "none named"}.', err=True)
    elif not past.warps:
        click.echo(_no_warp(read, past.yarn, yarn), err=True)
    context.exit(0 if past.warps else 1)


def _no_warp(journal: Journal, name: str, typed: str) -> str:
    """What to say where no warp has the yarn: what was probably meant, else what there is."""
    from journal_tools.problems import nearest
    from journal_tools.records.yarns_used import all_yarns, labelled_yarns

    labelled = [yarn.name for yarn in labelled_yarns(journal, typed)]
    if len(labelled) > 1:
        return f'Several yarns here are labelled "{typed}"; name one of them: {", ".join(labelled)}.'
    if name in journal.yarns:
        return f"No warp in this journal has {journal.yarns[name].heading} ({name}) in it yet."
    known = dict.fromkeys(yarn.name for warp in journal.warps.values() for yarn in all_yarns(journal, warp))
    near = nearest(name, known)
    if near:
        more = f" Did you mean {near}?"
    else:
        more = f" Yarns woven here: {', '.join(sorted(known))}." if known else ""
    return f'No warp in this journal has a yarn called "{typed}".{more}'


def _show(past: Past, heading: str) -> None:
    number = len(past.warps)
    click.secho(f"{heading}: {number} warp{'s' if number > 1 else ''}", bold=True)
    for each in past.warps:
        click.echo("")
        _show_warp(each)
    if len(past.weaves) > 1:
        for weave, steps in past.weaves:
            if any(step.losses for step in steps):
                click.echo("")
                click.secho(f"In {weave}" if weave else "In no weave that was named", bold=True)
                _show_steps(steps)
        click.echo("\nDifferent weaves lose differently, so there is no mean over all of them.")
    elif past.steps:
        click.echo("")
        click.secho("Over all of them", bold=True)
        _show_steps(past.steps)


def _show_warp(each: PastWarp) -> None:
    from journal_tools.ledger.words import per_cent, points, row_notes
    from journal_tools.quantities import show_density

    warp = each.warp
    when = warp.started or warp.finished
    click.secho(f"{warp.heading} ({warp.name})", bold=True, nl=False)
    click.echo(f", {when.show() if when else 'undated'}, as {each.use}")
    order = [stretch.name or "" for stretch in warp.stretches] or [""]
    for row in sorted(
        each.ledger.stretch_rows,
        key=lambda row: (order.index(row.stretch), row.direction == "length", row.whole),
    ):
        marks = [row.stretch] if row.stretch else []
        weave = each.weave(row.stretch)
        if row.whole:
            sett = each.sett(row.stretch)
            marks += [weave] if weave else []
            marks += [show_density(sett.per_m, sett.unit)] if sett is not None else []
        marks += [f"planned {per_cent(row.planned)}"] if row.planned is not None else []
        marks += row_notes(row)
        figure = f"{per_cent(row.loss):>8} ± {points(row.uncertainty)}"
        click.echo("  " + click.style(f"{row.label:<34}{figure:<15} ", bold=row.whole) + "; ".join(marks))


def _show_steps(steps: Sequence[Step]) -> None:
    from journal_tools.ledger.words import per_cent, points

    click.echo(f"  {'':<34}{'mean':>8}  {'spread':>6}  {'least':>8}  {'most':>8}  figures")
    for step in steps:
        if step.mean is None:
            continue
        spread = points(step.spread) if step.spread is not None else "–"
        low, high = per_cent(min(step.losses)), per_cent(max(step.losses))
        line = f"  {step.label:<34}{per_cent(step.mean):>8}  {spread:>6}  {low:>8}  {high:>8}  {len(step.losses):>7}"
        left = f"  ({step.left_out} left out)" if step.left_out else ""
        click.echo(click.style(line, bold=step.whole) + left)
