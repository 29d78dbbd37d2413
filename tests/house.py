"""The project's own files, for the tests that look at the project itself."""

from __future__ import annotations

import subprocess
import tomllib
from functools import cache
from pathlib import Path
from typing import Any

PROJECT = Path(__file__).resolve().parents[1]
MADE = {".git", ".venv", ".cache", "site", "build", "dist", "__pycache__", ".hypothesis"}


@cache
def own_files() -> tuple[Path, ...]:
    """Every file that belongs to the project: what git tracks or would, else all that nothing made."""
    asked = subprocess.run(
        ["git", "ls-files", "-z", "--cached", "--others", "--exclude-standard"],
        cwd=PROJECT,
        capture_output=True,
    )
    if asked.returncode == 0:
        names = asked.stdout.decode("utf-8").split("\0")
        paths = [PROJECT / name for name in names if name]
    else:
        paths = [path for path in PROJECT.rglob("*") if not MADE & set(path.relative_to(PROJECT).parts)]
    return tuple(sorted(path for path in paths if path.is_file()))


def name_of(path: Path) -> str:
    """The path inside the project, with forward slashes."""
    return path.relative_to(PROJECT).as_posix()


def python_files(*folders: str) -> list[Path]:
    """The project's Python files in these folders."""
    return [path for path in own_files() if path.suffix == ".py" and name_of(path).startswith(folders)]


def text_of(path: Path) -> str:
    """The text of a file, or nothing where it is a picture."""
    try:
        return path.read_text(encoding="utf-8")
    except UnicodeDecodeError:
        return ""


@cache
def pyproject() -> dict[str, Any]:
    """What pyproject.toml says."""
    return tomllib.loads((PROJECT / "pyproject.toml").read_text(encoding="utf-8"))
