"""Every check in one go: lint, types, and all tests, the browser's among them."""

from __future__ import annotations

import os
import shutil
import subprocess
import time
from collections.abc import Sequence
from pathlib import Path

from starter.environment import Environment, surroundings
from starter.speech import Stop, say


def test(environment: Environment, words: Sequence[str]) -> int:
    """Run all of them, also after one has failed. `words` go to pytest. Gives the exit status."""
    browser = need_chromium()
    environment.make(tests=True)
    need_driver(environment.python)
    checks = {
        "ruff": ["ruff", "check", "."],
        "mypy": ["mypy"],
        "pytest": ["pytest", "-n", "2", "--dist", "loadfile", *words],
    }
    results = []
    failed = False
    for name, command in checks.items():
        say(f"== {name}")
        began = time.monotonic()
        ended = subprocess.run(
            [environment.python, "-m", *command],
            cwd=environment.project,
            env=surroundings(TENTERHOOK_CHROMIUM=browser),
        ).returncode
        failed = failed or ended != 0
        results.append(f"{name} {'FAILED' if ended else 'ok'} in {time.monotonic() - began:.0f} s")
    say(("Not all passed: " if failed else "All passed: ") + ", ".join(results))
    return 1 if failed else 0


def need_chromium() -> str:
    """The browser for the tests; stop with the line that brings one where there is none."""
    browser = find_chromium()
    if browser is None:
        raise Stop(
            "The tests drive a real browser, and there is no Chromium or Chrome here.\n"
            "On Debian and its kin, type this line and start again:\n\n    sudo apt install chromium libatomic1\n"
        )
    return browser


def need_driver(python: str) -> None:
    """Stop where what drives the browser cannot run: it needs a library that a small Debian lacks."""
    tried = subprocess.run(
        [python, "-m", "playwright", "--version"], env=surroundings(), capture_output=True, text=True, errors="replace"
    )
    if tried.returncode:
        raise Stop(
            f"What drives the browser for the tests does not start:\n{tried.stderr.strip()}\n"
            "On Debian and its kin, type this line and start again:\n\n    sudo apt install libatomic1\n"
        )


def find_chromium() -> str | None:
    """The Chromium or Chrome of this machine. TENTERHOOK_CHROMIUM names one outright."""
    named = os.environ.get("TENTERHOOK_CHROMIUM")
    if named:
        return named
    for name in ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable"):
        found = shutil.which(name)
        if found:
            return found
    return next((str(path) for path in usual_places() if path.is_file()), None)


def usual_places() -> list[Path]:
    """Where macOS and Windows keep it."""
    mac = [
        Path("/Applications/Chromium.app/Contents/MacOS/Chromium"),
        Path("/Applications/Google Chrome.app/Contents/MacOS/Google Chrome"),
    ]
    folders = [os.environ.get(name) for name in ("ProgramFiles", "ProgramFiles(x86)", "LocalAppData")]
    programs = ("Google/Chrome/Application/chrome.exe", "Chromium/Application/chrome.exe")
    return mac + [Path(folder, program) for folder in folders if folder for program in programs]
