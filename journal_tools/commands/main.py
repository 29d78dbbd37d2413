"""`tenterhook`: the command line. Each command is read only when it is asked for."""

from __future__ import annotations

import importlib

import click

NAMES = (
    *("begin", "new", "check", "measure"),
    *("past", "expect", "plan", "left", "score"),
    *("draft", "import", "export", "serve", "build"),
)

WORDS_OF_PYTHON = ("import",)
"""Commands whose module cannot have their name: it has a line behind it."""


class Commands(click.Group):
    """A group that imports a command when it is wanted, so that help comes at once."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        """The commands, in the order in which a weaver meets them."""
        return list(NAMES)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        """One command, None for a name that is none."""
        if cmd_name not in NAMES:
            return None
        name = f"{cmd_name}_" if cmd_name in WORDS_OF_PYTHON else cmd_name
        module = importlib.import_module(f"journal_tools.commands.{name}")
        command: click.Command = module.command
        return command


@click.group(cls=Commands, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(package_name="tenterhook")
def main() -> None:
    """Keep what your cloth did, and look it up for the next warp.

    Exit status: 0 when all is well, 1 when something in the journal must be mended or was not
    found, 2 when the command was mistyped.

    \b
    For example:
      tenterhook begin my-journal
      tenterhook past linen-16-2
    """
