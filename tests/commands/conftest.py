"""A journal for every test of a command, and the command line standing in it."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.commands.shell import NAPKINS, TIDELINE, Shell


@pytest.fixture
def tenterhook(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Shell:
    """The command line in a new and empty journal."""
    shell = Shell(tmp_path / "journal")
    shell("begin", str(shell.folder))
    monkeypatch.chdir(shell.folder)
    return shell


@pytest.fixture
def tideline(tenterhook: Shell) -> Path:
    """The record of a warp in six lines."""
    return tenterhook.write("warps/tideline-towels", TIDELINE)


@pytest.fixture
def napkins(tenterhook: Shell) -> Path:
    """The record of a warp with stretches and pieces, and remarks between them."""
    return tenterhook.write("warps/napkins", NAPKINS)
