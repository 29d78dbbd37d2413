"""What a draft has to no purpose: threads that nothing binds, shafts that never move, treadles never pressed."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from journal_tools.drafts import Draft as Woven
from journal_tools.problems import Problem, Severity
from journal_tools.records import Draft

FOR_TABBY = 2
"""Treadles that a loom usually has beside one a shaft (common practice, no source)."""

FEW = 6
"""Numbers that are listed one by one."""

KEYS = ("tie_up", "lift_plan", "treadling", "profile_treadling", "threading", "profile")
"""Where the question stands: at the first of these that the record has; of two layers at the upper one."""

RUN = re.compile(r"[0-9]\s*[-\u2010-\u2015\u2212]\s*[0-9]")


def idle_parts(draft: Draft, made: Woven, file: str, field: str = "") -> Iterator[Problem]:
    """One question for all of them, since they come from one slip. field: the key of a draft inside a warp."""
    told = [] if "idle-parts" in draft.accepted else list(_idle(draft, made))
    if not told:
        return
    key = next((key for key in KEYS if getattr(draft, key) is not None), "upper")
    said = "; ".join(told)
    right = f"{said[0].upper()}{said[1:]}.{_likely(draft, key)} If it is so, write `accepted: idle parts`."
    typed = getattr(draft, key)
    read = "" if key == "upper" else typed.text
    path = ": ".join(filter(None, (field, key)))
    yield Problem(file, draft.line(key), path, read, right, Severity.QUESTION, "idle-parts")


def _likely(draft: Draft, key: str) -> str:
    """The likeliest slip: a dash where a plus was meant."""
    typed = draft.tie_up or draft.lift_plan
    if typed is None or not RUN.search(typed.text):
        return ""
    thread, does = ("treadle", "on") if key == "tie_up" else ("pick", "with")
    return f" Is a plus wanted for a dash? `1-2` is two {thread}s, `1+2` one {thread} {does} two shafts."


def _idle(draft: Draft, made: Woven) -> Iterator[str]:
    """Each kind of them in words."""
    from journal_tools.drafts.fewest import needs
    from journal_tools.drafts.hanging import hanging
    from journal_tools.drafts.interlacement import drawdown

    hangs = hanging(drawdown(made))
    loose = [
        _listed(word, [place + 1 for place in places])
        for word, places in (("end", hangs.loose_ends), ("pick", hangs.loose_picks))
        if places
    ]
    if loose:
        yield f"nothing binds {' and '.join(loose)}"
    need = needs(made)
    if shafts := need.idle_shafts:
        yield f"{_listed('shaft', shafts)} {_is(shafts)} threaded and never moved"
    usual = max(made.shafts + FOR_TABBY, draft.treadles.number if draft.treadles else 0)
    if made.treadles > usual and (treadles := need.unused_treadles):
        yield f"{_listed('treadle', treadles)} {_is(treadles)} tied and never pressed"


def _is(numbers: Sequence[int]) -> str:
    return "is" if len(numbers) == 1 else "are"


def _listed(word: str, numbers: Sequence[int]) -> str:
    if len(numbers) == 1:
        return f"{word} {numbers[0]}"
    if len(numbers) > FEW:
        return f"{len(numbers)} {word}s, from {word} {numbers[0]} on"
    return f"{word}s {', '.join(map(str, numbers[:-1]))} and {numbers[-1]}"
