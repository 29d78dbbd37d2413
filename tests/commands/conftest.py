"""A journal for every test of a command, and the command line standing in it."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.commands.shell import Shell


@pytest.fixture
def tenterhook(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Shell:
    """The command line in a new and empty journal."""
    shell = Shell(tmp_path / "journal")
    shell("begin", str(shell.folder))
    monkeypatch.chdir(shell.folder)
    return shell
