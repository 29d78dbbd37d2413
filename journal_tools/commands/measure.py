"""`tenterhook measure`: write down what cloth measured, and see at once what it did."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING

import click
from click.exceptions import Exit

from journal_tools.commands.folder import Place, find, journal_option
from journal_tools.commands.terminal import tell

if TYPE_CHECKING:
    from journal_tools.editing.change import Change
    from journal_tools.editing.measuring import Spot
    from journal_tools.quantities import Units
    from journal_tools.records import Journal, Warp

STATES = ("in_reed", "on_loom", "off_loom", "hemmed", "washed", "made_up", "picks", "weight")


@click.command()
@click.argument("warp")
@click.option("--piece", help="Which piece, by its name in the record.")
@click.option("--add", is_flag=True, help="The piece is new: add it to the record.")
@click.option("--stretch", help="The stretch that the piece is of, where its name alone does not say.")
@click.option("--in-reed", metavar="WIDTH", help="Width in the reed, or so many dents.")
@click.option("--on-loom", metavar="SIZE", help="Width x length, tension on, temple moved away.")
@click.option("--off-loom", metavar="SIZE", help="Width x length, cut off and rested overnight.")
@click.option("--hemmed", metavar="SIZE", help="Width x length, once hemmed.")
@click.option(
    "--washed", metavar="SIZE", multiple=True, help="Width x length, dry; the next wash. May stand more than once."
)
@click.option("--made-up", metavar="SIZE", help="Width x length as the owner measures it.")
@click.option("--picks", metavar="COUNT", help="Picks in the piece.")
@click.option("--weight", metavar="WEIGHT", help="What it weighs, washed.")
@click.option("--replace", is_flag=True, help="Put a figure in the place of one that is there.")
@click.option("--dry-run", is_flag=True, help="Say what would be written, and write nothing.")
@journal_option
def command(
    warp: str,
    piece: str | None,
    add: bool,
    stretch: str | None,
    journal: Path | None,
    replace: bool,
    dry_run: bool,
    **typed: str | tuple[str, ...] | None,
) -> None:
    """Write what a cloth measured into the record of WARP, and show what it did.

    Without a size it asks for each state that the record does not have yet; an empty answer leaves
    it out. A bare number has the record's unit. Every other letter of the record stays as it is.

    Exit status 1 when nothing could be written.

    \b
    For example:
      tenterhook measure blue-towels
      tenterhook measure blue-towels --on-loom "19 3/8 x 33"
      tenterhook measure estuary-towels --piece "towel 2" --washed "18 1/2 x 28 3/8"
    """
    from journal_tools.editing.measuring import NotMeasured
    from journal_tools.editing.splice import SpliceRefused
    from journal_tools.records import read_journal

    place = find(journal)
    read = read_journal(place.entries)
    record = _record(read, warp)
    given = [(state, text) for state in STATES for text in _several(typed[state])]
    try:
        spot, changes = _changes(read, record, piece, stretch, given, add=add, replace=replace)
        _write(place, record, changes, dry_run)
    except NotMeasured as refused:
        click.echo(str(refused), err=True)
        raise Exit(1) from None
    except SpliceRefused as refused:
        tell(refused.problem)
        click.echo("The record is as it was.", err=True)
        raise Exit(1) from None
    if changes and not dry_run:
        _show(place, record.name, spot)


def _several(typed: str | tuple[str, ...] | None) -> tuple[str, ...]:
    if typed is None:
        return ()
    return (typed,) if isinstance(typed, str) else typed


def _record(journal: Journal, name: str) -> Warp:
    from journal_tools.problems import nearest
    from journal_tools.records.readers import slug

    by_title = {slug(warp.heading): warp for warp in journal.warps.values()}
    by_old = {old: warp for warp in journal.warps.values() for old in warp.was}
    found = journal.warps.get(name) or by_old.get(name) or by_title.get(slug(name))
    if found is None:
        near = nearest(name, journal.warps)
        hint = f" Did you mean {near}?" if near else " `tenterhook new warp` makes one."
        click.echo(f'There is no warp called "{name}" here.{hint}', err=True)
        raise Exit(1)
    faults = [problem for problem in journal.problems_of(found.file) if problem.is_fault]
    if faults:
        click.echo(f"{found.file} has something to mend first:", err=True)
        for fault in faults:
            tell(fault)
        raise Exit(1)
    return found


def _changes(
    journal: Journal,
    warp: Warp,
    piece: str | None,
    stretch: str | None,
    given: list[tuple[str, str]],
    *,
    add: bool,
    replace: bool,
) -> tuple[Spot, list[Change]]:
    from journal_tools.editing.measuring import NotMeasured, find_spot, new_spot, spots, with_units

    units = with_units(journal.settings.units, warp)
    changes: list[Change] = []
    if add:
        if piece is None:
            raise NotMeasured("say what the new piece is called, with --piece.")
        spot, made = new_spot(warp, piece, stretch)
        changes.append(made)
    else:
        names = list(dict.fromkeys(spot.name for spot in spots(warp) if stretch in (None, spot.stretch)))
        if piece is None and len(names) > 1 and not given:
            piece = click.prompt("Which piece?", type=click.Choice(names), default=names[0])
        spot = find_spot(warp, piece, stretch)
    if not given:
        given = _ask(spot, units)
    if not given:
        click.echo("Nothing to write.")
        return spot, []
    return spot, changes + _read(spot, given, units, replace)


def _read(spot: Spot, given: list[tuple[str, str]], units: Units, replace: bool) -> list[Change]:
    from journal_tools.editing.measuring import NotMeasured, change_for, read_as
    from journal_tools.quantities import Unreadable

    if replace and sum(state == "washed" for state, _ in given) > 1:
        raise NotMeasured("with --replace only the last wash is written anew; say --washed once.")
    changes = []
    for state, text in given:
        try:
            quantity = read_as(state, text, units)
        except Unreadable as unreadable:
            raise NotMeasured(f'--{state.replace("_", "-")} "{unreadable.read}": {unreadable.right}') from unreadable
        changes.append(change_for(spot, state, text.strip(), replace=replace))
        if state == "washed":
            spot = spot.washed_again(quantity)
    return changes


def _ask(spot: Spot, units: Units) -> list[tuple[str, str]]:
    """Ask for each state that the record does not have, until each answer can be read."""
    from journal_tools.editing.measuring import STATES as ASKED
    from journal_tools.editing.measuring import read_as
    from journal_tools.quantities import Unreadable

    unit = {"in": "inches", "cm": "centimetres", "mm": "millimetres"}[units.length]
    click.echo(f"A bare number is in {unit}. An empty answer leaves a state out.")
    answers = []
    for state, words in ASKED.items():
        if spot.has(state) and state != "washed":
            continue
        asked = f"washed {spot.washes + 1} and dry (width x length)" if state == "washed" and spot.washes else words
        while True:
            typed = click.prompt(asked[0].upper() + asked[1:], default="", show_default=False).strip()
            if not typed:
                break
            try:
                read_as(state, typed, units)
            except Unreadable as unreadable:
                click.echo(f"  {unreadable.right}")
                continue
            answers.append((state, typed))
            break
    return answers


def _write(place: Place, warp: Warp, changes: list[Change], dry_run: bool) -> None:
    from journal_tools.editing.measuring import write

    if not changes:
        return
    write(place.entries / warp.file, changes, warp.file, dry_run=dry_run)
    for change in changes:
        if isinstance(change.value, Mapping):
            continue
        where = ": ".join(str(key + 1) if isinstance(key, int) else key for key in change.path)
        click.echo(f"{'would write' if dry_run else 'wrote'} {where}: {change.value}")


def _show(place: Place, name: str, spot: Spot) -> None:
    """What the cloth did, as it stands now, and what the journal asks about it."""
    from journal_tools.editing.measuring import spots
    from journal_tools.ledger import ledger_of, questions
    from journal_tools.ledger.words import per_cent, points
    from journal_tools.pages.measured import off_words, size_text
    from journal_tools.records import read_journal

    journal = read_journal(place.entries)
    warp = journal.warps[name]
    ledger = ledger_of(journal, warp)
    said = next(each.said for each in spots(warp) if each.path == spot.path)
    click.echo("")
    for each in ledger.pieces:
        if each.laid.levels[0] is not said:
            continue
        if title := each.name or spot.name:
            click.secho(title, bold=True)
        if not each.rows:
            click.echo("  No loss yet: two sizes of the same cloth make one.")
        for row in each.rows:
            line = each.size(row.direction, row.last)
            off = off_words(line) if line is not None else ""
            planned = f"planned {per_cent(row.planned)}" if row.planned is not None else ""
            words = "; ".join(word for word in (planned, off) if word)
            figure = f"{per_cent(row.loss):>8} ± {points(row.uncertainty)}"
            click.secho(f"  {row.label:<34}{figure:<16}{words}".rstrip(), bold=row.whole)
        lost = {(row.direction, row.last) for row in each.rows}
        for line in each.sizes:  # what was planned and ends no loss, as the made-up size
            if line.off_mm is not None and (line.direction, line.state) not in lost:
                label = f"{line.direction}, {line.state.name}"
                click.echo(f"  {label:<34}{size_text(line.measured_mm or 0, line):>8}{'':<8}{off_words(line)}")
    for problem in questions(journal, ledger):
        if not problem.slug.startswith("no-such"):
            tell(problem)
