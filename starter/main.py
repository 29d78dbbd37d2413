"""The words after start.py, and what they start."""

from __future__ import annotations

import os
import shlex
import shutil
import signal
import subprocess
import sys
from collections.abc import Sequence
from pathlib import Path
from types import FrameType

from starter.checks import test
from starter.environment import Environment, surroundings
from starter.serving import PORT, build, serve
from starter.speech import Stop

PROJECT = Path(__file__).resolve().parent.parent


def run(words: Sequence[str], help_text: str) -> int | str:
    """Do what the words ask. Gives what sys.exit takes: a status, or the reason it stopped."""
    signal.signal(signal.SIGTERM, ended_from_outside)
    try:
        return start(words, help_text)
    except Stop as why:
        return str(why)
    except KeyboardInterrupt:
        return "\nStopped. Start again when you like: what is unfinished is made anew."
    except PermissionError as why:
        return f"This folder cannot be written to ({why}). Put the project where you may write."


def start(words: Sequence[str], help_text: str, project: Path = PROJECT) -> int:
    """The same, with a Stop raised and not told."""
    environment = Environment(project)
    match list(words):
        case ["-h" | "--help"]:
            print(help_text.strip())
            return 0
        case []:
            return serve(environment, PORT)
        case ["--port", *rest]:
            return serve(environment, read_port(rest))
        case [word] if word.startswith("--port="):
            return serve(environment, read_port([word.removeprefix("--port=")]))
        case ["build"]:
            return build(environment)
        case ["test", *rest]:
            return test(environment, rest)
        case [word, *_] if word.startswith("-"):
            raise Stop(f"start.py does not know {word}. What it knows: python3 start.py --help")
    environment.make()
    command = [environment.python, "-m", "journal_tools", *words]
    # What a command tells to type must work here, where there may be no command `tenterhook`.
    return subprocess.run(command, env=surroundings(TENTERHOOK_CALLED=called_as(project))).returncode


def called_as(project: Path) -> str:
    """The words that start this from any folder, as they can be typed."""
    start_file = str(project.resolve() / "start.py")
    if os.name == "nt":
        return subprocess.list2cmdline(["py", start_file])
    name = Path(sys.executable).name
    python = name if shutil.which(name) and name.startswith("python3") else sys.executable
    return shlex.join([python, start_file])


def read_port(words: Sequence[str]) -> int:
    """The port that was asked for."""
    if len(words) != 1 or not words[0].isdecimal() or not 1024 <= int(words[0]) <= 65534:
        raise Stop(
            "After --port comes one number from 1024 to 65534, for example: python3 start.py --port 8400"
        )
    return int(words[0])


def ended_from_outside(_signal: int, _frame: FrameType | None) -> None:
    """End what was started, as after Ctrl+C, and not only itself."""
    raise KeyboardInterrupt


