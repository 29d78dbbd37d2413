"""Serving the journal at its port, and building it once."""

from __future__ import annotations

import os
import signal
import socket
import subprocess
import time
from pathlib import Path

from starter.environment import Environment, surroundings
from starter.speech import Stop, say

HOST = "127.0.0.1"
PORT = 8327  # always the same: the place kept at the loom belongs to one address, port and all


def serve(environment: Environment, port: int) -> int:
    """Serve the journal with live reload until Ctrl+C. Gives the exit status."""
    stop_if_taken(port)
    environment.make()
    began = time.monotonic()
    server = subprocess.Popen(
        [environment.python, "-m", "journal_tools", "serve", "--port", str(port)],
        cwd=journal_folder(environment.project),
        env=surroundings(),
    )
    try:
        while server.poll() is None and not answers(port):
            time.sleep(0.1)
        if server.poll() is None:
            took = time.monotonic() - began
            say(f"Built in {took:.1f} s. Saving an entry builds it again; Ctrl+C ends it.")
            say(f"The journal is open at http://{HOST}:{port}/")
        ended = server.wait()
    except KeyboardInterrupt:
        end(server)
        say("\nClosed.")
        return 0
    if ended:
        say("The journal could not be served: the lines above say why.")
    return ended


def end(server: subprocess.Popen[bytes]) -> None:
    """Let it end by itself, for Ctrl+C has reached it too; else end it."""
    try:
        server.wait(timeout=1)
    except subprocess.TimeoutExpired:
        # An interrupt, because it ends the site builder that it has started too.
        server.send_signal(signal.SIGTERM if os.name == "nt" else signal.SIGINT)
        server.wait()


def build(environment: Environment) -> int:
    """Build the journal into its site/ once. Gives the exit status."""
    environment.make()
    command = [environment.python, "-m", "journal_tools", "build"]
    return subprocess.run(command, cwd=journal_folder(environment.project), env=surroundings()).returncode


def journal_folder(project: Path) -> Path:
    """The journal in the folder one stands in, or else the demonstration."""
    here = Path.cwd()
    return here if (here / "entries").is_dir() else project


def stop_if_taken(port: int) -> None:
    """Stop with the reason where something else holds this port."""
    with socket.socket() as probe:
        if os.name != "nt":  # there it would let two share one port; here it forgives one just closed
            probe.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            probe.bind((HOST, port))
        except OSError as why:
            raise Stop(
                f"Port {port} cannot be had ({why.strerror}). Is the journal open in another window?\n"
                "No other is taken by itself, because a place kept at the loom belongs to its port.\n"
                f"Close what holds it, or choose one: python3 start.py --port {port + 1}"
            ) from None


def answers(port: int) -> bool:
    """Whether something listens there."""
    with socket.socket() as caller:
        caller.settimeout(0.5)
        return caller.connect_ex((HOST, port)) == 0
