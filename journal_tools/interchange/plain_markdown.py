"""A stranger's text in Markdown notes, so that it shows letter for letter and does nothing."""

from __future__ import annotations

import re

from journal_tools.interchange.lines import without_unseen

_ANYWHERE = str.maketrans({"&": "&amp;", "<": "&lt;", ">": "&gt;"} | {mark: f"\\{mark}" for mark in "\\`*_{}[]"})
_AT_THE_START = re.compile(r"(?P<mark>[#+\-!])|(?P<odd>[=:|~?$%^@/])|(?P<number>\d+)(?P<dot>[.)])")


def plain_markdown(text: str) -> str:
    """One line of Markdown that is shown as this text: no tag, link, picture, heading, list or table is made of it.

    Backslashes before what Markdown lets stand after one, and entities for the rest, so that any reader
    of Markdown shows the same.
    """
    line = " ".join(without_unseen(text)[0].split()).translate(_ANYWHERE).replace("~~", "~&#126;")
    return _AT_THE_START.sub(_at_the_start, line, count=1) if _AT_THE_START.match(line) else line


def _at_the_start(found: re.Match[str]) -> str:
    if found["mark"]:
        return f"\\{found['mark']}"
    return f"&#{ord(found['odd'])};" if found["odd"] else f"{found['number']}\\{found['dot']}"
