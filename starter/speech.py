"""What the starter says, and why it stops."""

from __future__ import annotations

import re
import sys
from collections.abc import Iterable


class Stop(Exception):
    """Why it cannot go on, in words for whoever started it."""


def say(text: str) -> None:
    """One line of progress. On stderr, so that what a command prints stays clean."""
    print(text, file=sys.stderr, flush=True)


def show_installing(lines: Iterable[str], total: int) -> list[str]:
    """Show how far pip has come, from the lines it prints, and give them all back for when it fails."""
    live = sys.stderr.isatty()
    kept: list[str] = []
    seen = 0
    for line in lines:
        kept.append(line.rstrip())
        collected = re.match(r"Collecting ([\w.-]+)", line)
        if collected:
            seen += 1
            if live:
                print(f"\r  {seen} of {total}: {collected[1]:40}", end="", file=sys.stderr, flush=True)
            elif seen % 10 == 0:
                say(f"  {seen} of {total}")
        elif line.startswith("Installing collected") and seen:
            start, blank = ("\r", " " * 20) if live else ("", "")
            say(f"{start}  {seen} fetched, putting them in place{blank}")
    return kept
