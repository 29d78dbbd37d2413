"""`tenterhook measure`: write down what cloth measured, and see at once what it did."""

from __future__ import annotations

import sys
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

import click
from click.exceptions import Exit

from journal_tools.commands.called import called
from journal_tools.commands.folder import Place, find, journal_option
from journal_tools.commands.measure_asks import Given, ask_states, is_meant
from journal_tools.commands.measure_shows import show
from journal_tools.commands.terminal import tell

if TYPE_CHECKING:
    from journal_tools.editing.change import Change
    from journal_tools.editing.measuring import Spot
    from journal_tools.problems import Problem
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
@click.option("--wash", type=click.IntRange(1, 99), help="Which wash --washed is; else the next, to replace the last.")
@click.option("--replace", is_flag=True, help="Put a figure in the place of one that is there.")
@click.option("--anyway", is_flag=True, help="Write a figure that the journal asks about.")
@click.option("--dry-run", is_flag=True, help="Say what would be written, and write nothing.")
@journal_option
def command(
    warp: str,
    piece: str | None,
    add: bool,
    stretch: str | None,
    journal: Path | None,
    wash: int | None,
    replace: bool,
    anyway: bool,
    dry_run: bool,
    **typed: str | tuple[str, ...] | None,
) -> None:
    """Write what a cloth measured into the record of WARP, and show what it did.

    Without a size it asks for each state that the record does not have yet; an empty answer leaves
    it out, and Ctrl+D ends the questions and keeps what was given. A bare number has the record's
    unit. Every other letter of the record stays as it is. What can hardly be so, as cloth that is
    wider than it was in the reed, is asked about before it is written.

    Exit status 1 when nothing was written.

    \b
    For example:
      tenterhook measure blue-towels
      tenterhook measure blue-towels --on-loom "19 3/8 x 33"
      tenterhook measure estuary-towels --piece "towel 2" --washed "18 1/2 x 28 3/8"
      tenterhook measure blue-towels --washed "17 7/8 x 30" --wash 1 --replace
    """
    from journal_tools.editing.measuring import NotMeasured
    from journal_tools.editing.splice import SpliceRefused
    from journal_tools.records import read_journal

    place = find(journal)
    read = read_journal(place.entries)
    record = _record(read, warp)
    given: list[Given] = [(state, text) for state in STATES for text in _several(typed[state])]
    try:
        spot, made = _spot(record, piece, stretch, add=add, asking=not given)
        measuring = _Measuring(place, read, record, spot, made, wash, replace)
        words = ["measure", warp, *_options(piece=spot.name, add=add, stretch=stretch)]
        if given:
            _refuse_unmeant([] if anyway else measuring.doubts(given))
        else:
            doubts = (lambda _: []) if anyway else measuring.doubts
            given = ask_states(spot, measuring.units, measuring.hems, doubts, words)
        if not given:
            click.echo("Nothing to write.")
            return
        told = [] if anyway else [problem.right for problem in measuring.doubts(given)]
        _write(place, record, measuring.changes(given), dry_run)
    except NotMeasured as refused:
        click.echo(str(refused), err=True)
        raise Exit(1) from None
    except SpliceRefused as refused:
        tell(refused.problem)
        click.echo("The record is as it was.", err=True)
        raise Exit(1) from None
    if not dry_run:
        show(place, record.name, spot, told)


@dataclass(frozen=True)
class _Measuring:
    """Figures on their way into one piece. made: the change that makes the piece, when it is new."""

    place: Place
    journal: Journal
    warp: Warp
    spot: Spot
    made: tuple[Change, ...]
    wash: int | None
    replace: bool

    @property
    def units(self) -> Units:
        """The record's units."""
        from journal_tools.editing.measuring import with_units

        return with_units(self.journal.settings.units, self.warp)

    @property
    def hems(self) -> bool:
        """Whether the piece has a hem, or should have one."""
        from journal_tools.editing.measuring import has_hems

        return has_hems(self.warp, self.spot)

    def changes(self, given: Sequence[Given]) -> list[Change]:
        """What is to be written. Raises NotMeasured for a figure that cannot be read, or is there already."""
        from journal_tools.editing.measuring import NotMeasured, change_for, read_as
        from journal_tools.quantities import Unreadable

        if (self.replace or self.wash) and sum(state == "washed" for state, _ in given) > 1:
            raise NotMeasured("only one wash is written anew, the last or the one of --wash; say --washed once.")
        if self.wash and not any(state == "washed" for state, _ in given):
            raise NotMeasured("--wash says which wash --washed is; say --washed as well.")
        changes, spot = list(self.made), self.spot
        for state, text in given:
            try:
                quantity = read_as(state, text, self.units)
            except Unreadable as unreadable:
                option = f"--{state.replace('_', '-')}"
                raise NotMeasured(f'{option} "{unreadable.read}": {unreadable.right}') from unreadable
            changes.append(change_for(spot, state, text.strip(), replace=self.replace, wash=self.wash))
            if state == "washed":
                spot = spot.washed_again(quantity)
        return changes

    def doubts(self, given: Sequence[Given]) -> list[Problem]:
        """What the journal would ask once these were written, and does not ask now."""
        from journal_tools.editing.measuring import text_with
        from journal_tools.ledger import ledger_of, questions
        from journal_tools.records.journal import with_warp_text

        changes = self.changes(given)
        text = text_with(self.place.entries / self.warp.file, changes, self.warp.file)
        after = with_warp_text(self.journal, self.warp, text)
        asked = {(each.field, each.right) for each in questions(self.journal, ledger_of(self.journal, self.warp))}
        warp = after.warps[self.warp.name]
        new = [each for each in questions(after, ledger_of(after, warp)) if (each.field, each.right) not in asked]
        return [each for each in new if not each.slug.startswith("no-such")]


def _refuse_unmeant(doubts: Sequence[Problem]) -> None:
    """Ask whether figures are meant, where somebody can answer; else say how to write them. Raises Exit."""
    if sys.stdin.isatty():
        try:
            meant = is_meant(doubts)
        except click.Abort:
            meant = False
        said = "Nothing was written."
    else:
        meant = not doubts
        for problem in doubts:
            tell(problem)
        said = "Nothing was written. If it is so, say --anyway as well."
    if not meant:
        click.echo(said, err=True)
        raise Exit(1)


def _options(**said: str | bool | None) -> list[str]:
    """Options as they are typed."""
    words = [[f"--{name}"] if value is True else [f"--{name}", str(value)] for name, value in said.items() if value]
    return [word for each in words for word in each]


def _spot(
    warp: Warp, piece: str | None, stretch: str | None, *, add: bool, asking: bool
) -> tuple[Spot, tuple[Change, ...]]:
    from journal_tools.editing.measuring import NotMeasured, find_spot, new_spot, spots

    if add:
        if piece is None:
            raise NotMeasured("say what the new piece is called, with --piece.")
        spot, made = new_spot(warp, piece, stretch)
        return spot, (made,)
    names = list(dict.fromkeys(spot.name for spot in spots(warp) if stretch in (None, spot.stretch)))
    if piece is None and len(names) > 1 and asking:
        piece = click.prompt("Which piece?", type=click.Choice(names), default=names[0])
    return find_spot(warp, piece, stretch), ()


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
        hint = f" Did you mean {near}?" if near else f" `{called()} new warp` makes one."
        click.echo(f'There is no warp called "{name}" here.{hint}', err=True)
        raise Exit(1)
    faults = [problem for problem in journal.problems_of(found.file) if problem.is_fault]
    if faults:
        click.echo(f"{found.file} has something to mend first:", err=True)
        for fault in faults:
            tell(fault)
        raise Exit(1)
    return found


def _write(place: Place, warp: Warp, changes: list[Change], dry_run: bool) -> None:
    from journal_tools.editing.measuring import write

    if not changes:
        return
    write(place.entries / warp.file, changes, warp.file, dry_run=dry_run)
    for change in changes:
        if isinstance(change.value, Mapping):
            continue
        where = ": ".join(str(key + 1) if isinstance(key, int) else key for key in change.path)
        more = " (one wash more; to mend one, say --wash 1 --replace)" if change.append else ""
        click.echo(f"{'would write' if dry_run else 'wrote'} {where}: {change.value}{more}")
