"""`tenterhook serve`: the journal in a browser, made anew at every save."""

from __future__ import annotations

import socket
from pathlib import Path

import click

from journal_tools.commands.folder import find, journal_option
from journal_tools.commands.site_builder import run

PORT = 8327
MOST = 65535


@click.command()
@journal_option
@click.option("--port", type=click.IntRange(1024, MOST), default=PORT, show_default=True, help="The port to serve at.")
@click.option("--public/--whole", "public", default=None, help="As others would see it; or all of it.")
@click.option("--open", "open_browser", is_flag=True, help="Open a browser as well.")
@click.pass_context
def command(context: click.Context, journal: Path | None, port: int, public: bool | None, open_browser: bool) -> None:
    """Show the journal at an address on this machine, and again at every save.

    The port is always the same, since what a browser keeps belongs to a port. Something that must
    be mended is shown on its page; the rest of the journal works. Ends with Ctrl+C.

    \b
    For example:
      tenterhook serve
      tenterhook serve --public --port 8400
    """
    place = find(journal)
    if not _is_free(port):
        click.echo(
            f"Port {port} is taken, perhaps by this journal served in another window."
            f" End that one, or choose another: --port {port + 1 if port < MOST else port - 1}",
            err=True,
        )
        context.exit(1)
    click.echo(f"Serving {place.entries} at http://127.0.0.1:{port}/ (Ctrl+C ends it) …")
    words = ["serve", "--livereload", "--dev-addr", f"127.0.0.1:{port}", *(["--open"] if open_browser else [])]
    context.exit(1 if run(place, words, public=public) else 0)


def _is_free(port: int) -> bool:
    with socket.socket() as probe:
        probe.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            probe.bind(("127.0.0.1", port))
        except OSError:
            return False
    return True
