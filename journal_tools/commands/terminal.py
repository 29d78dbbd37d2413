"""What commands say: problems, and progress. click drops the colours where there is no terminal."""

from __future__ import annotations

import sys
import time
from collections.abc import Iterable, Iterator
from contextlib import contextmanager

import click

from journal_tools.problems import Problem


def tell(problem: Problem) -> None:
    """One problem, with the line to paste where there is one."""
    colour = "red" if problem.is_fault else "yellow"
    place = click.style(problem.place(), bold=True)
    kind = click.style("to mend" if problem.is_fault else "question", fg=colour)
    read = f' read "{problem.read}".' if problem.read else ""
    field = f" {problem.field}:" if problem.field else ""
    click.echo(f"{place} {kind}{field}{read} {problem.told}")
    if problem.mended:
        # A line that is set in, and a line of several, stand by themselves, so that their blanks can be copied.
        whole = problem.mended[0] == " " or "\n" in problem.mended
        click.echo("    to paste:", nl=whole)
        click.echo(("" if whole else " ") + click.style(problem.mended, fg="green"))


def counted(problems: Iterable[Problem]) -> str:
    """`2 things to mend, 1 question`."""
    listed = list(problems)
    faults = sum(problem.is_fault for problem in listed)
    asked = len(listed) - faults
    words = [f"{faults} thing{'s' if faults != 1 else ''} to mend"] if faults else []
    words += [f"{asked} question{'s' if asked != 1 else ''}"] if asked else []
    return ", ".join(words) or "nothing to mend and nothing to ask"


@contextmanager
def working(what: str) -> Iterator[None]:
    """Say what is being done once it takes longer than a moment; only where somebody looks on."""
    import threading

    if not sys.stderr.isatty():
        yield
        return
    done = threading.Event()

    def say() -> None:
        if not done.wait(0.8):
            click.echo(f"{what} …", err=True)

    teller = threading.Thread(target=say, daemon=True)
    teller.start()
    began = time.monotonic()
    try:
        yield
    finally:
        done.set()
        teller.join()
        if time.monotonic() - began > 0.8:
            click.echo(f"{what}: done in {time.monotonic() - began:.1f} s", err=True)
