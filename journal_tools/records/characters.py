"""Characters that cannot be seen and change what is read: control characters, odd blanks."""

from __future__ import annotations

import re
import unicodedata

from journal_tools.problems import Problem
from journal_tools.records.fences import LINE
from journal_tools.records.field_line import take_apart

ODD_BLANKS = "\u00a0\u2000-\u200b\u202f\u205f\u2060\u3000\ufeff"
"""Blanks that are no plain blank, as the inside of a character class. The parser takes them for
letters; they come in with text pasted from a page or typed with a modifier key held."""

_ODD_BLANK = re.compile(f"[{ODD_BLANKS}]")
_CONTROL = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x84\x86-\x9f\ud800-\udfff\ufffe\uffff]")
_BREAK = re.compile("[\x85\u2028\u2029]")


def bad_characters(header: str, file: str, first_line: int) -> list[Problem]:
    """One problem for every line with a character that no line of text can hold."""
    if not (_CONTROL.search(header) or _BREAK.search(header)):
        return []
    found = []
    for number, match in enumerate(LINE.finditer(header)):
        line = match.group().rstrip("\r\n")
        bad = _CONTROL.search(line) or _BREAK.search(line)
        if bad is None:
            continue
        mended = _BREAK.sub(" ", _CONTROL.sub("", line))
        found.append(
            Problem(
                file=file,
                line=first_line + number,
                field=take_apart(mended).key,
                read=show_unseen(line),
                right=f"{name(bad.group())} stands in this line and cannot be seen. Take it out.",
                slug="characters",
                mended=mended,
            )
        )
    return found


def hide_bad_characters(header: str) -> str:
    """The text with every unreadable character replaced by one that reads; lengths stay the same."""
    return _CONTROL.sub("\ufffd", _BREAK.sub(" ", header))


def odd_blank(text: str) -> str:
    """The first odd blank in the text, or ""."""
    found = _ODD_BLANK.search(text)
    return found.group() if found else ""


def plain_blanks(text: str) -> str:
    """The text with plain blanks for odd ones."""
    return _ODD_BLANK.sub(" ", text)


def name(character: str) -> str:
    """What to call a character that cannot be seen."""
    words = unicodedata.name(character, "").lower()
    code = f"U+{ord(character):04X}"
    return f"The character {code} ({words})" if words else f"The control character {code}"


def show_unseen(text: str) -> str:
    """The text with the code of each character that cannot be seen in its place."""
    for pattern in (_CONTROL, _BREAK, _ODD_BLANK):
        text = pattern.sub(lambda match: f"<U+{ord(match.group()):04X}>", text)
    return text
