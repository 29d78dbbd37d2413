"""What `plan` shows: what it rests on, then what hands do, per cent last."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

import click

if TYPE_CHECKING:
    from journal_tools.planning.planned import Plan
    from journal_tools.planning.words import Words


def show(plan: Plan) -> None:
    """The whole plan in a weaver's words."""
    from journal_tools.planning.phrases import spare
    from journal_tools.planning.words import Words

    words = Words(plan)
    click.secho(plan.wants.warp.heading, bold=True)
    if loom := words.loom():
        click.echo(loom)
    for limit in words.limits():
        click.secho(limit, fg="yellow")
    for line in _stretches(plan, words):
        click.echo(line)
    click.echo("")
    click.secho(words.wound(), bold=True)
    for what, long, how in words.lines():
        click.echo(f"  {what:<28}{long:>10}  {how}".rstrip())
    if left_out := words.left_out():
        click.echo(left_out)
    click.echo("")
    for yarn in plan.yarns:
        for line in words.yarn(yarn):
            click.echo(line)
    click.echo(" ".join(part for part in (spare(), words.money()) if part))
    for each in plan.stretches:
        if sample := words.sample(each):
            click.echo(sample)
        for piece in each.pieces:
            for line in words.losses(piece):
                click.echo(click.style(f"  {line}", dim=True))


def _stretches(plan: Plan, words: Words) -> Iterator[str]:
    for each in plan.stretches:
        yield ""
        if len(plan.stretches) > 1:
            yield click.style(each.wanted.name or "stretch", bold=True)
        yield words.rests(each)
        yield click.style(words.sley(each), bold=True)
        if others := words.other_reeds(each):
            yield others
        yield from words.repeats(each)
        for piece in each.pieces:
            if weave := words.weave(piece):
                yield click.style(weave, bold=True)
            yield from words.expects(each, piece)
