"""Characters that cannot be seen and change what is read: control characters, odd blanks."""

from __future__ import annotations

import re
import unicodedata

from journal_tools.problems import Problem
from journal_tools.records.fences import LINE

_CONTROL = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\ud800-\udfff\ufffe\uffff]")
_LINE_BREAKS = re.compile("[\x85\u2028\u2029]")
_ODD_BLANK = re.compile("[\u00a0\u2000-\u200a\u202f\u205f\u3000\u200b\u2060\ufeff]")
_BITING_BLANK = re.compile(rf"^[ \t]*{_ODD_BLANK.pattern}|[:\-]{_ODD_BLANK.pattern}|{_ODD_BLANK.pattern}[:#]")
"""An odd blank where only a plain blank parts a key, a dash or a comment from what follows."""


def bad_characters(header: str, file: str, first_line: int) -> list[Problem]:
    """One problem for every line with characters that a text file for fields cannot hold.

    An odd blank inside a value (a narrow blank in `18 1/4`) is no problem: it stays as typed.
    """
    found = []
    for number, match in enumerate(LINE.finditer(header)):
        line = match.group().rstrip("\r\n")
        control = _CONTROL.search(line) or _LINE_BREAKS.search(line)
        if control:
            right = f"{_name(control.group())} stands in this line, which cannot be seen. Take it out."
        elif _BITING_BLANK.search(line):
            odd = _ODD_BLANK.search(line)
            assert odd is not None
            right = f"{_name(odd.group())} stands where a plain blank must. Type the blank anew."
        else:
            continue
        mended = hide_odd_blanks(_CONTROL.sub("", _LINE_BREAKS.sub(" ", line)))
        key = re.match(r"[ ]*(?:- +)*([^:]*?):", mended)
        found.append(
            Problem(
                file=file,
                line=first_line + number,
                field=key.group(1).strip() if key else "",
                read=_shown(line),
                right=right,
                slug="characters",
                mended=mended,
            )
        )
    return found


def hide_bad_characters(header: str) -> str:
    """The text with every unreadable character replaced by one that reads: lengths stay the same."""
    header = _LINE_BREAKS.sub(" ", header)
    header = _CONTROL.sub("\ufffd", header)
    if not _ODD_BLANK.search(header):
        return header
    return "".join(hide_odd_blanks(match.group()) for match in LINE.finditer(header))


def hide_odd_blanks(line: str) -> str:
    """The line with plain blanks for odd ones, if one of them stands where it bites."""
    return _ODD_BLANK.sub(" ", line) if _BITING_BLANK.search(line) else line


def _name(character: str) -> str:
    name = unicodedata.name(character, "").lower()
    code = f"U+{ord(character):04X}"
    return f"The character {code} ({name})" if name else f"The control character {code}"


def _shown(line: str) -> str:
    """The line with what cannot be seen written as its code."""
    return re.sub(
        rf"{_CONTROL.pattern}|{_LINE_BREAKS.pattern}|{_ODD_BLANK.pattern}",
        lambda match: f"<U+{ord(match.group()):04X}>",
        line,
    )
