"""What `plan --write` writes, and what it asks before it writes over something."""

from __future__ import annotations

import dataclasses
import sys
from typing import TYPE_CHECKING

import click

from journal_tools.commands.terminal import tell

if TYPE_CHECKING:
    from journal_tools.commands.folder import Place
    from journal_tools.exchange.new_record import NewRecord
    from journal_tools.planning.planned import Plan


def write_down(place: Place, plan: Plan, new: NewRecord | None, *, anyway: bool) -> bool:
    """Write a plan into its record, or make the record; whether it was written.

    What would be written over is told, old -> new. It is asked first, unless anyway, where something would
    be, or where the warp cannot be woven so.
    """
    from journal_tools.editing.splice import SpliceRefused
    from journal_tools.planning.writing import figures_for, new_fields, write_plan

    warp = plan.wants.warp
    figures = list(figures_for(place.entries, plan)) if new is None else []
    replaced = [each.words for each in figures if each.was]
    if replaced:
        click.echo("Planned before, and written over:", err=True)
        for line in replaced:
            click.echo(f"  {line}", err=True)
    barred = [limit.words for each in plan.stretches for limit in each.limits if limit.bars]
    if barred:
        click.echo("This cannot be woven as it is planned: " + " ".join(dict.fromkeys(barred)), err=True)
    if (replaced or barred) and not anyway and not _is_meant():
        return False
    if new is None:
        try:
            write_plan(place.entries, plan, figures)
        except SpliceRefused as refused:
            tell(refused.problem)
            return False
        said = f"wrote the plan into {warp.file}" if figures else f"the plan stands in {warp.file} already"
        click.echo(said, err=True)
        return True
    from journal_tools.exchange.new_record import write_new

    problem = write_new(place.entries, dataclasses.replace(new, fields=new_fields(new.fields, plan)))
    if problem is not None:
        tell(problem)
        return False
    click.echo(f"wrote {new.file}", err=True)
    return True


def _is_meant() -> bool:
    """Whether it is to be written; nobody to ask is no."""
    if not sys.stdin.isatty():
        click.echo("Nothing was written. If it is so, say --anyway as well.", err=True)
        return False
    try:
        meant = click.confirm("Write it anyway?", default=False, err=True)
    except click.Abort:
        meant = False
    if not meant:
        click.echo("Nothing was written.", err=True)
    return meant
