"""What `measure` asks: one state after the other, and whether a figure that can hardly be so is to be written."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

import click
from click.exceptions import Exit

from journal_tools.commands.called import line_to_type
from journal_tools.commands.terminal import tell

if TYPE_CHECKING:
    from journal_tools.editing.measuring import Spot
    from journal_tools.problems import Problem
    from journal_tools.quantities import Units

Given = tuple[str, str]
"""A state and what was typed for it."""


def ask_states(
    spot: Spot, units: Units, hems: bool, doubts: Callable[[Sequence[Given]], Sequence[Problem]], words: Sequence[str]
) -> list[Given]:
    """Ask for each state that the record does not have, until each answer can be read and is meant.

    hems: whether it has any. doubts: what the journal would ask about these answers. words: of the command, to
    be typed again. The end of the answers (Ctrl+D) ends the asking and keeps them; Ctrl+C raises Exit,
    after saying how to give them again.
    """
    unit = {"in": "inches", "cm": "centimetres", "mm": "millimetres"}[units.length]
    click.echo(f"A bare number is in {unit}. An empty answer leaves a state out; Ctrl+D ends the questions.")
    answers: list[Given] = []
    try:
        for state in _states_to_ask(spot, hems):
            _ask_state(state, spot, units, doubts, answers)
    except click.Abort as ended:
        click.echo("")
        if isinstance(ended.__context__, KeyboardInterrupt):
            click.echo("Stopped; nothing was written.", err=True)
            if answers:
                click.echo(f"To write what you gave: {line_to_type(*words, *as_options(answers))}", err=True)
            raise Exit(1) from None
        if answers:
            click.echo("The answers end here; what you gave until now is taken.")
    return answers


def _states_to_ask(spot: Spot, hems: bool) -> list[str]:
    from journal_tools.editing.measuring import STATES

    missing = [state for state in STATES if state == "washed" or not spot.has(state)]
    return [state for state in missing if state != "hemmed" or hems]


def _ask_state(
    state: str, spot: Spot, units: Units, doubts: Callable[[Sequence[Given]], Sequence[Problem]], answers: list[Given]
) -> None:
    from journal_tools.editing.measuring import STATES, read_as
    from journal_tools.quantities import Unreadable

    asked = STATES[state]
    if state == "washed" and spot.washes:
        asked = f"washed {spot.washes + 1} and dry (width x length)"
    while True:
        typed = click.prompt(asked[0].upper() + asked[1:], default="", show_default=False).strip()
        if not typed:
            return
        try:
            read_as(state, typed, units)
        except Unreadable as unreadable:
            click.echo(f"  {unreadable.right}")
            continue
        if is_meant(doubts([*answers, (state, typed)])):
            answers.append((state, typed))
            return


def is_meant(doubts: Sequence[Problem]) -> bool:
    """Whether figures are to be written although the journal asks this about them; each is asked first."""
    for problem in doubts:
        tell(problem)
    return not doubts or click.confirm("Write it anyway?", default=False)


def as_options(given: Sequence[Given]) -> list[str]:
    """Figures as options of the command."""
    return [word for state, typed in given for word in (f"--{state.replace('_', '-')}", typed)]
