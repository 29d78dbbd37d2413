"""`tenterhook left`: what the rest of a warp still gives."""

from __future__ import annotations

import json
from fractions import Fraction
from pathlib import Path
from typing import TYPE_CHECKING

import click

from journal_tools.commands.folder import find, journal_option
from journal_tools.commands.terminal import working

if TYPE_CHECKING:
    from journal_tools.planning.left import Left


@click.command()
@click.argument("name")
@journal_option
@click.option("--json", "as_json", is_flag=True, help="Every figure in mm.")
@click.pass_context
def command(context: click.Context, name: str, journal: Path | None, as_json: bool) -> None:
    """How much of a warp can still be woven, and whether the next piece fits.

    From the warp as it was wound: less the cloth woven so far with what it took up, less every line of
    where it went, less what will not weave. A piece that was not measured on the loom counts at its
    planned length, and is named. With --json, in mm: wound, gone, behind, left (warp), cloth (that it
    makes, tension on), cloth_range (nine times in ten; null where marks tell the take-up), take_up (a
    share), by_marks, reckoned (pieces), and next: piece, weave, takes, spare, more.

    Exit status 1 when nobody wrote how long the warp was wound.

    \b
    For example:
      tenterhook left tideline-towels-again
    """
    from journal_tools.problems import nearest
    from journal_tools.records import read_journal

    place = find(journal)
    with working("Learning from your warps"):
        read = read_journal(place.entries)
        warp = read.warps.get(name)
        if warp is None:
            near = nearest(name, read.warps)
            click.echo(f'There is no warp called "{name}".' + (f" Did you mean {near}?" if near else ""), err=True)
            context.exit(1)
        from journal_tools.ledger import ledger_of
        from journal_tools.planning.left import left_of
        from journal_tools.planning.remembering import remembered
        from journal_tools.planning.wants import NotPlanned

        ledgers = {each: ledger_of(read, one) for each, one in read.warps.items()}
        memory, seen = remembered(read, warp, ledgers)
        try:
            left = left_of(read, memory, warp, seen, ledgers)
        except NotPlanned as reason:
            click.echo(f"{warp.heading}: {reason}", err=True)
            context.exit(1)
    if as_json:
        click.echo(json.dumps(_object(left), indent=2))
    else:
        _show(warp.heading, left, warp.units or read.settings.length)


def _show(heading: str, left: Left, unit: str) -> None:
    from journal_tools.quantities import show_length

    def length(mm: float) -> str:
        return show_length(mm, unit, Fraction(127, 20) if unit == "in" else Fraction(5))

    click.secho(heading, bold=True)
    basis = "by the marks on this warp" if left.marked else "as the journal expects"
    click.echo(
        f"Wound {length(left.wound)}; gone {length(left.gone)}, take-up of {left.take_up * 100:.0f} % in it, {basis}."
    )
    if left.reckoned:
        names = ", ".join(left.reckoned)
        click.echo(f"Not measured on the loom, and led back from a later size, or as long as planned: {names}.")
    if left.uncounted:
        click.secho(f"Not counted, for want of any length: {', '.join(left.uncounted)}.", fg="yellow")
    if left.behind:
        click.echo(f"The last {length(left.behind)} will not weave.")
    if left.left <= 0:
        click.secho("Nothing is left to weave.", bold=True)
        return
    said = f"{length(left.left)} of warp are left, which make {length(left.cloth)} of cloth, tension on"
    if left.cloth_range is not None and length(left.cloth_range[0]) != length(left.cloth_range[1]):
        low, high = (length(each) for each in left.cloth_range)
        said += f"; nine times in ten {low.removesuffix(' ' + unit)} to {high}"
    click.secho(f"{said}.", bold=True)
    coming = left.next
    if coming is None:
        return
    fits = (
        f"fits, with {length(coming.spare)} to spare"
        if coming.spare >= 0
        else f"does not fit: it is {length(-coming.spare)} short"
    )
    more = f" {coming.more} of them are still wanted." if coming.more > 1 else ""
    click.secho(f"The next {coming.name}, {length(coming.weave)} on the loom, {fits}.{more}", bold=True)


def _object(left: Left) -> dict[str, object]:
    coming = left.next
    return {
        "wound": round(left.wound, 1),
        "gone": round(left.gone, 1),
        "behind": round(left.behind, 1),
        "left": round(left.left, 1),
        "cloth": round(left.cloth, 1),
        "cloth_range": None if left.cloth_range is None else [round(each, 1) for each in left.cloth_range],
        "take_up": round(left.take_up, 4),
        "by_marks": left.marked,
        "reckoned": list(left.reckoned),
        "uncounted": list(left.uncounted),
        "next": None
        if coming is None
        else {
            "piece": coming.name,
            "weave": round(coming.weave, 1),
            "takes": round(coming.takes, 1),
            "spare": round(coming.spare, 1),
            "more": coming.more,
        },
    }
