"""`tenterhook expect`: what a yarn will do next time."""

from __future__ import annotations

import json
from pathlib import Path
from typing import TYPE_CHECKING

import click

from journal_tools.commands.folder import find, journal_option
from journal_tools.commands.terminal import working
from journal_tools.commands.yarn_name import known_yarn

if TYPE_CHECKING:
    from journal_tools.forecast.expected import Expected
    from journal_tools.forecast.memory import Memory
    from journal_tools.records import Journal


@click.command()
@click.argument("yarn")
@click.option("--weave", default="", help="The weave; else as you mostly weave this yarn.")
@click.option("--weft", default="", help="The weft yarn; else as you mostly have it.")
@click.option("--sett", default="", help="Ends to the length, such as 20, 20/in or 8/cm; else as you mostly set it.")
@click.option("--finish", default="", help="The finishing recipe of the wash; else as you mostly wash it.")
@journal_option
@click.option("--json", "as_json", is_flag=True, help="Every figure, for programs.")
@click.pass_context
def command(
    context: click.Context,
    yarn: str,
    weave: str,
    weft: str,
    sett: str,
    finish: str,
    journal: Path | None,
    as_json: bool,
) -> None:
    """What the next warp in a yarn will lose, how sure that is, and which warps say so.

    YARN is the yarn's name, an old name, its title or its label. A loss is per cent of the earlier size;
    the range holds nine times in ten for one piece. A size that is wanted is divided by the last column.
    With --json one object, with fractions:

    \b
      warp_yarn, weft_yarn, weave, finish   the cloth it is of; null where nobody knows
      sett_per_m, closeness   ends to the metre in the reed, and over the most that the yarn takes
      usual, new   what of these was not asked for and is as it mostly was; yarns that no warp has yet
      rests_on     basis; warps in the yarn, the weave, both and the fibre, weightiest first; the heaviest
                   of all, and by how much it moves the width's ln(last / first)
      figures      figure, direction, from, to, loss, least, most; sample_first where the range is too wide
                   to plan by; warps: how many in the yarn measured it
      fulling      null, or minutes and loss of length by loss of width, from when it was only scoured
      sentences    what is said

    Exit status 1 when the journal does not know the yarn.

    \b
    For example:
      tenterhook expect cottolin-22-2
      tenterhook expect "8/2 cotton" --weave "2/2 twill" --sett 24
    """
    from journal_tools.records import read_journal

    place = find(journal)
    with working("Learning from your warps"):
        read = read_journal(place.entries)
        names = []
        for typed in (yarn, weft):
            name, unknown = known_yarn(read, typed) if typed else ("", "")
            if unknown:
                click.echo(unknown, err=True)
                context.exit(1)
            names.append(name)
        sett_per_m = _sett(read, sett) if sett else None
        from journal_tools.forecast.expected import Asked, expected_of
        from journal_tools.forecast.memory import Memory

        memory = Memory.of(read)
        expected = expected_of(read, memory, Asked(names[0], weave, names[1], sett_per_m, _finish(read, finish)))
    if as_json:
        click.echo(json.dumps(_object(read, memory, expected), indent=2, ensure_ascii=False))
    else:
        _show(read, memory, expected)


def _sett(journal: Journal, typed: str) -> float:
    from journal_tools.quantities import Unreadable, parse_density

    try:
        return float(parse_density(typed, journal.settings.units).per_m)
    except Unreadable as unreadable:
        raise click.BadParameter(unreadable.right, param_hint="'--sett'") from None


def _finish(journal: Journal, typed: str) -> str:
    """The recipe's name, by its name or its title; one that is not known is said to be so."""
    from journal_tools.problems import nearest
    from journal_tools.records.readers import slug

    if not typed:
        return ""
    by_name = {slug(recipe.title): name for name, recipe in journal.finishes.items() if recipe.title}
    by_name |= {name: name for name in journal.finishes}
    name = by_name.get(slug(typed))
    if name is None:
        near = nearest(slug(typed), by_name)
        more = f" Did you mean {by_name[near]}?" if near else ""
        click.echo(f'There is no finishing recipe called "{typed}", so the wash is a guess.{more}', err=True)
    return name or slug(typed)


def _object(journal: Journal, memory: Memory, expected: Expected) -> dict[str, object]:
    from journal_tools.forecast.words import as_json, rests_words, sentences

    said = [rests_words(journal, expected), *sentences(journal, memory, expected)]
    return {**as_json(expected), "sentences": said}


def _show(journal: Journal, memory: Memory, expected: Expected) -> None:
    from journal_tools.forecast.fulled_words import fulling_words
    from journal_tools.forecast.hand_words import per_cent
    from journal_tools.forecast.words import (
        as_usual,
        better_words,
        growth_words,
        heading,
        range_words,
        rests_words,
        sentences,
        told,
        undone,
    )

    click.secho(heading(journal, expected), bold=True)
    if usual := as_usual(expected):
        click.echo(usual)
    click.echo("\n" + rests_words(journal, expected) + "\n")
    for sentence in sentences(journal, memory, expected):
        click.secho(sentence, bold=True)
    click.echo("\n" + f"  {'':<28}{'loses':>9}  {'nine in ten':<14}{'divide by':>9}  {'your warps':>10}")
    for figure in told(expected):
        row = f"  {figure.label:<28}{per_cent(figure.loss):>9}  {range_words(figure):<14}"
        row += f"{'' if figure.useless else undone(figure):>9}  {len(figure.rests_on.yarn_warps) or 'none':>10}"
        click.echo(row)
    if grows := growth_words(expected):
        click.echo(f"  {grows}")
    for line in better_words(expected):
        click.echo(line)
    if expected.fulling is not None:
        click.echo("")
        for line in fulling_words(journal, memory, expected):
            click.echo(line)
