"""What `measure` shows once it has written: what the cloth did, as it stands now."""

from __future__ import annotations

from collections.abc import Collection
from typing import TYPE_CHECKING

import click

from journal_tools.commands.folder import Place
from journal_tools.commands.terminal import tell

if TYPE_CHECKING:
    from journal_tools.editing.measuring import Spot


def show(place: Place, name: str, spot: Spot, told: Collection[str] = ()) -> None:
    """The losses of one piece, and what the journal asks about its warp but for what it asked before.

    told: the sentences of those questions.
    """
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
        if not problem.slug.startswith("no-such") and problem.right not in told:
            tell(problem)
