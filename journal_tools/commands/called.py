"""How the weaver calls the program, so that a line which is told can be typed as it stands."""

from __future__ import annotations

import os
import shlex
import subprocess

BY = "TENTERHOOK_CALLED"
"""Set by start.py to the words that start it, for there may be no `tenterhook` command then."""


def called() -> str:
    """`tenterhook`, or the words that stand in its place."""
    return os.environ.get(BY) or "tenterhook"


def line_to_type(*words: str) -> str:
    """A command as it can be typed, with quotes where a word needs them."""
    return f"{called()} {subprocess.list2cmdline(words) if os.name == 'nt' else shlex.join(words)}"
