"""The environment of its own, .venv beside start.py: what is in it, and bringing it to what is wanted.

It is made in steps, and a stamp for each says what the step was made from. A step is marked as
unfinished while it runs, and an environment with an unfinished step is thrown away and made anew.
"""

from __future__ import annotations

import contextlib
import hashlib
import json
import os
import shutil
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path

from starter.speech import Stop, say, show_installing

UNFINISHED = "unfinished"


class Environment:
    """.venv of the project in `project`, seen by one start."""

    def __init__(self, project: Path) -> None:
        self.project = project
        self.folder = project / ".venv"
        self.state_file = self.folder / "made-by-start.json"
        # Never a script beside it: those hold a path, and break when the folder is moved.
        self.python = str(self.folder / ("Scripts/python.exe" if os.name == "nt" else "bin/python"))

    def wanted(self, *, tests: bool) -> dict[str, str]:
        """The stamp that each step should have, in the order of the steps."""
        pins = self.project / "requirements.txt"
        stamps = {
            "packages": stamp(pins),
            # The folder too: an editable install holds its path.
            "project": stamp(self.project / "pyproject.toml", also=str(self.project)),
        }
        if tests:
            stamps["tests"] = stamp(pins, self.project / "requirements-tests.txt")
        return stamps

    def state(self) -> dict[str, str]:
        """The stamp that each step has; empty where nothing usable is."""
        try:
            state = json.loads(self.state_file.read_text(encoding="utf-8"))
        except (OSError, ValueError):
            return {}
        usable = isinstance(state, dict) and Path(self.python).exists()
        return dict(state) if usable else {}

    def remember(self, state: dict[str, str]) -> None:
        """Write the stamps down, whole or not at all."""
        beside = self.state_file.with_suffix(".new")
        beside.write_text(json.dumps(state), encoding="utf-8")
        beside.replace(self.state_file)

    def make(self, *, tests: bool = False) -> None:
        """Do the steps that are missing; none, in a moment, where all is there."""
        steps = self.missing(tests=tests)
        if not steps:
            return
        if "packages" in steps:
            need_venv()
        with only_one(self.project / ".cache" / "start.lock"):
            steps = self.missing(tests=tests)  # again: another start may have done them meanwhile
            began = time.monotonic()
            if "packages" in steps:
                self.make_bare()
            for step in steps:
                self.do(step)
            if steps:
                say(f"Environment ready in {time.monotonic() - began:.0f} s.")

    def missing(self, *, tests: bool) -> list[str]:
        """The steps to do: all of them, when a big one was changed or left unfinished."""
        wanted, state = self.wanted(tests=tests), self.state()
        if state.get("packages") != wanted["packages"] or (tests and state.get("tests") == UNFINISHED):
            return list(wanted)
        return [step for step in wanted if state.get(step) != wanted[step]]

    def make_bare(self) -> None:
        """An empty .venv, in place of the one that a start made before."""
        if os.path.lexists(self.folder):
            if not self.state_file.exists():
                raise Stop(
                    "There is a .venv here that start.py did not make, so it is left alone.\n"
                    "Move it away, then start again."
                )
            say("Throwing the old environment in .venv away")
            shutil.rmtree(self.folder)
        say("Making an environment of its own in .venv")
        self.folder.mkdir()
        self.remember({"packages": UNFINISHED})
        try:
            made = subprocess.run(
                [sys.executable, "-m", "venv", str(self.folder)],
                env=surroundings(),
                stdout=subprocess.PIPE,
                stderr=subprocess.STDOUT,
                text=True,
                errors="replace",
            )
            if made.returncode:
                raise Stop(f"Python could not make an environment:\n{made.stdout}\n{how_to_get_venv()}")
        except BaseException:
            shutil.rmtree(self.folder, ignore_errors=True)
            raise

    def do(self, step: str) -> None:
        """One step, marked as unfinished while it runs."""
        self.remember({**self.state(), step: UNFINISHED})
        try:
            if step == "packages":
                self.install_list("requirements.txt", "packages")
            elif step == "tests":
                self.install_list("requirements-tests.txt", "packages for the tests")
            else:
                # Offline and with the pinned setuptools: nothing is fetched that no list names.
                self.pip("--no-deps", "--no-build-isolation", "--no-index", "-e", ".", total=1)
        except BaseException:
            if step == "packages":
                shutil.rmtree(self.folder, ignore_errors=True)
            raise
        self.remember({**self.state(), step: self.wanted(tests=True)[step]})

    def install_list(self, name: str, what: str) -> None:
        """Install what a list of pinned packages names."""
        listed = self.project / name
        total = count_pins(listed)
        say(f"Installing {total} {what}")
        self.pip("-r", str(listed), total=total)

    def pip(self, *words: str, total: int) -> None:
        """pip install, with its progress shown; its last words in the Stop when it fails."""
        with subprocess.Popen(
            [self.python, "-m", "pip", "install", "--progress-bar", "off", *words],
            cwd=self.project,
            env=surroundings(),
            stdin=subprocess.DEVNULL,
            stdout=subprocess.PIPE,
            stderr=subprocess.STDOUT,
            text=True,
            encoding="utf-8",
            errors="replace",
        ) as pip:
            assert pip.stdout is not None
            try:
                said = show_installing(pip.stdout, total)
            except BaseException:
                pip.terminate()
                raise
        if pip.returncode:
            told = "\n".join(f"    {line}" for line in said[-12:])
            raise Stop(
                f"The packages could not be installed. The last words of pip were:\n{told}\n"
                "Is there a network? When that is mended, start again: nothing was left half made."
            )


def need_venv() -> None:
    """Stop, before anything is made, where Python came without the parts that make an environment."""
    try:
        import ensurepip
        import venv  # noqa: F401  only to see whether it is there

        ensurepip.version()
    except (ImportError, AttributeError, OSError):
        raise Stop(f"This Python came without its venv module. {how_to_get_venv()}") from None


def how_to_get_venv() -> str:
    """The one line to type."""
    major, minor = sys.version_info[:2]
    return (
        "On Debian and its kin, type this line and start again:\n\n"
        f"    sudo apt install python{major}.{minor}-venv\n"
    )


def stamp(*paths: Path, also: str = "") -> str:
    """A word that changes when one of the files does, or the Python, or what else it was made from."""
    made_of = hashlib.sha256(f"{sys.version}\0{also}".encode("utf-8", "surrogateescape"))
    for path in paths:
        made_of.update(b"\0" + path.read_bytes())
    return made_of.hexdigest()


def count_pins(path: Path) -> int:
    """How many packages a list names itself."""
    return sum("==" in line.split("#")[0] for line in path.read_text(encoding="utf-8").splitlines())


def surroundings(**more: str) -> dict[str, str]:
    """The environment variables for what is started, without those that would lead it astray."""
    astray = {"PYTHONHOME", "PYTHONPATH", "PIP_USER", "PIP_TARGET", "PIP_PREFIX"}
    kept = {name: value for name, value in os.environ.items() if name not in astray}
    kept |= {
        "PIP_DISABLE_PIP_VERSION_CHECK": "1",
        "PYTHONUTF8": "1",  # Windows would read a weaver's words in an old code page
        "NO_MKDOCS_2_WARNING": "1",  # pyproject.toml keeps MkDocs below 2: no need to hear of it daily
    }
    return kept | more


@contextlib.contextmanager
def only_one(lock: Path) -> Iterator[None]:
    """Let one start at a time change .venv. The lock goes when its process does, however that ends."""
    lock.parent.mkdir(exist_ok=True)
    with lock.open("a+") as file:
        if not take(file.fileno()):
            say("Another start is making the environment: waiting for it")
            while not take(file.fileno()):
                time.sleep(0.2)
        yield


def take(file: int) -> bool:
    """Whether the lock is ours now."""
    try:
        if sys.platform == "win32":
            import msvcrt

            msvcrt.locking(file, msvcrt.LK_NBLCK, 1)
        else:
            import fcntl

            fcntl.flock(file, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except OSError:
        return False
    return True
