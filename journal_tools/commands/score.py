"""`tenterhook score`: how far off the journal's advice has been."""

from __future__ import annotations

import json
from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING

import click

from journal_tools.commands.folder import find, journal_option
from journal_tools.commands.terminal import working

if TYPE_CHECKING:
    from journal_tools.forecast.score import Guess, Score
    from journal_tools.records import Journal

MOST_GUESSES = 5

NINE_IN_TEN = 1.645
"""Standard deviations on either side that nine in ten lie within, as the page of trends tells it."""


@click.command()
@journal_option
@click.option("--json", "as_json", is_flag=True, help="One object for each warp that was scored.")
@click.pass_context
def command(context: click.Context, journal: Path | None, as_json: bool) -> None:
    """Forecast each past warp from those before it, and say how far off that was.

    Beside it stand three simple rules: ten per cent, the yarn's own mean so far, and the last warp in
    the same yarn and weave. Undated warps are left out: nobody knows what came before them. With --json:

    \b
      warp, weave, warp_yarn, weft_yarn   what was woven
      direction     width (reed to washed 1) or length (loom to washed 1)
      loss, expected     what it lost, and what was to be expected; fractions of the first size
      chance        that it would lose more than it did: .5 when it came as expected
      rules         what each of the three rules expected, in the order above

    Exit status 1 when there are not two dated warps to go by.

    \b
    For example:
      tenterhook score
      tenterhook score --json
    """
    from journal_tools.forecast.kept_score import dated, scores_of
    from journal_tools.forecast.memory import Memory
    from journal_tools.forecast.score import guesses, kinds_of
    from journal_tools.records import read_journal

    place = find(journal)
    read = read_journal(place.entries)
    with working("Forecasting past warps"):
        memory = Memory.of(read)
        scores = scores_of(memory.observed, dated(read), place.root / ".cache" / "tenterhook" / "score.json")
        years = [piece.kind.year for piece in memory.observed["width"] if piece.kind.year]
        kinds = kinds_of(memory.observed["width"])
        least_known = guesses(memory.forecasts["width"], kinds, max(years, default=None))
    if as_json:
        click.echo(json.dumps(_objects(scores), indent=2, ensure_ascii=False))
    else:
        for score in scores.values():
            _show(score)
        _show_guesses(read, least_known)
    context.exit(0 if any(score.scored for score in scores.values()) else 1)


def _show(score: Score) -> None:
    from journal_tools.forecast.score import PROMISED, RIVALS, root_mean_square, usual
    from journal_tools.ledger.words import points

    what = {"width": "Width, reed to washed", "length": "Length, loom to washed"}[score.direction]
    number = len(score.scored)
    if not number:
        click.echo(f"{what}: no two dated warps to go by yet.\n")
        return
    click.secho(f"{what}: {number} forecast{'s' if number > 1 else ''} from the warps before", bold=True)
    click.echo(f"  {'':<42}{'half within':>12}{'root mean square':>18}{'furthest off':>14}")
    told = [("this journal's forecast", score.offs), *((name, score.offs_of(n)) for n, name in enumerate(RIVALS))]
    for name, offs in told:
        figures = usual(offs), root_mean_square(offs), max(map(abs, offs))
        click.echo(f"  {name:<42}{points(figures[0]):>12}{points(figures[1]):>18}{points(figures[2]):>14}")
    click.echo("  in points: per cent of the first size")
    held = ", ".join(f"{promised:.0%} held {score.held(promised)} of {number}" for promised in PROMISED)
    click.echo(f"  ranges that should hold: {held.replace('%', ' %')}\n")


def _show_guesses(journal: Journal, found: tuple[Guess, ...]) -> None:
    from journal_tools.ledger.words import points

    if not found:
        return
    click.secho("Least known widths, nine times in ten, and what a washed sample would leave of the doubt", bold=True)
    for guess in found[:MOST_GUESSES]:
        yarns = dict.fromkeys((guess.kind.warp_yarn, guess.kind.weft_yarn))
        names = " and ".join(journal.yarns[yarn].heading if yarn in journal.yarns else yarn for yarn in yarns)
        warps = f"{guess.warps} warp{'s' if guess.warps != 1 else ''}"
        cloth = f"{names}, {guess.kind.weave or 'no weave named'}"
        now, sampled = (points(NINE_IN_TEN * sd) for sd in (guess.now, guess.sampled))
        click.echo(f"  {cloth}: ± {now} points from {warps}; sampled, ± {sampled}")


def _objects(scores: Mapping[str, Score]) -> list[dict[str, object]]:
    from math import expm1

    return [
        {
            "warp": each.warp,
            "weave": each.kind.weave,
            "warp_yarn": each.kind.warp_yarn,
            "weft_yarn": each.kind.weft_yarn,
            "direction": direction,
            "loss": round(-expm1(each.came), 6),
            "expected": round(-expm1(each.expected), 6),
            "chance": round(each.place, 6),
            "rules": [round(-expm1(rule), 6) for rule in each.rivals],
        }
        for direction, score in scores.items()
        for each in score.scored
    ]
