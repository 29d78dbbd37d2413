"""The command line as a weaver has it, in the folder of her journal."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

from click.testing import CliRunner, Result

from journal_tools.commands.main import main

NAPKINS = """\
---
title: Napkins
yarn: linen-20-2   # from the blue shelf
weave: plain weave
stretches:
  - name: napkins
    in_reed: 21 3/8
    pieces:
      - name: napkin 1
        on_loom: 20 1/2 x 21
        # re-tied here
      - name: napkins 2-6
        washed: 19 3/4 x 20
  - name: bookmarks
    in_reed: 2 5/8
---

A remark with a --- in it.
"""
TIDELINE = """\
---
title: Tideline towels
yarn: cottolin-22-2
weave: plain weave
in_reed: 20 1/4
on_loom: 19 3/8 x 33
washed: 17 7/8 x 30 1/8
---
"""
"""A warp in six lines, with its name."""


class Shell:
    """Runs commands in the folder it stands in. folder: of the journal."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder

    def __call__(self, *words: str, typed: str | None = None) -> Result:
        """One command, with what is typed when it asks. A traceback is a failure."""
        ended = CliRunner().invoke(main, words, input=typed)
        if ended.exception is not None and not isinstance(ended.exception, SystemExit):
            raise ended.exception
        return ended

    def write(self, entry: str, text: str) -> Path:
        """Write an entry, such as warps/tideline-towels, and say where it is."""
        path = self.folder / "entries" / f"{entry}.md"
        path.write_bytes(text.encode("utf-8"))
        return path


def in_a_process(folder: Path, *words: str, program: str = "journal_tools") -> subprocess.CompletedProcess[str]:
    """A command that starts the site builder, whose words do not pass through this process."""
    command = [sys.executable, "-m", program, *words]
    return subprocess.run(command, cwd=folder, capture_output=True, text=True, encoding="utf-8", timeout=60)


def text_of(path: Path) -> str:
    """A record's text, with its line ends as they are."""
    return path.read_bytes().decode("utf-8")
