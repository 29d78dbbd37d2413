"""Drafts made of parts: blocks, tabby between pattern picks, accents, ends in dents."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import cycle, islice

from journal_tools.drafts.draft import Draft
from journal_tools.drafts.unfitting import Unfitting
from journal_tools.notation import Sets, print_sets
from journal_tools.notation.sequence import MOST_THREADS

_CROSSED = "its ends cross over one another, which ups and downs of shafts cannot say"
_CUT = "its pile is made of loops or of cut ends, which lie beyond over and under"
NOT_HELD = {
    "leno": _CROSSED,
    "gauze": _CROSSED,
    "pile": _CUT,
    "velvet": _CUT,
    "terry": "its pile is made of loops, which lie beyond over and under",
}
"""What a draft of over and under cannot hold, and why."""

IMITATING = {"mock", "imitation", "false", "faux"}
"""Words that make an ordinary weave of the one that follows: a mock leno has no ends that cross."""

LACKING = {"without", "no", "non", "not"}
"""Words that say that a weave lacks what one of the next three words names."""


@dataclass(frozen=True)
class Accent:
    """An end put in: as the so-manieth (from 1), on these shafts. added: beside the others, or in place of one."""

    end: int
    shafts: frozenset[int]
    colour: str = ""
    added: bool = True


def refuse_what_is_not_held(texts: Iterable[str], part: str = "weave") -> None:
    """Raise Unfitting where a weave's name or a role is one that over and under cannot hold. part: their key."""
    for text in texts:
        words = re.findall(r"\w+", text.lower())
        for place, word in enumerate(words):
            before = words[max(0, place - 3) : place]
            if word in NOT_HELD and not IMITATING & set(before[-1:]) and not LACKING & set(before):
                why = f"A draft cannot hold it: {NOT_HELD[word]}."
                raise Unfitting(text, f"{why} Keep its ground as a draft, and the rest in the notes.", part=part)


def from_blocks(units: Mapping[str, Sets | None], order: Sequence[str], what: str) -> Sets:
    """The threads of blocks in turn. what: "threading" or "treadling". Raises Unfitting."""
    part = "profile" if what == "threading" else "profile_treadling"
    for letter in dict.fromkeys(order):
        if not units.get(letter):
            known = ", ".join(sorted(letter for letter, unit in units.items() if unit)) or "none"
            right = f"Block {letter} has no {what} under blocks; those that have are {known}."
            raise Unfitting(letter, right, part=part)
    threads = sum(len(units[letter] or ()) * times for letter, times in Counter(order).items())
    if threads > MOST_THREADS:
        right = f"That is {threads:,} threads; {MOST_THREADS:,} are read at most. Write one repeat."
        raise Unfitting("", right, part=part)
    return tuple(thread for letter in order for thread in units[letter] or ())


def with_tabby(pattern: Sets, tabby: Sets) -> Sets:
    """Pattern picks with a tabby pick after each, the tabby sheds in turn."""
    return tuple(pick for both in zip(pattern, cycle(tabby), strict=False) for pick in both)


def with_accents(draft: Draft, accents: Iterable[Accent]) -> Draft:
    """A draft with single ends put in, the first end first; an added one takes the usual room. Raises Unfitting.

    Where colours, roles or sizes go on over several repeats of the threading, it is written out as far as they go.
    """
    put_in = sorted(accents, key=lambda each: each.end)
    ends = len(draft.threading)
    longest = max(map(len, (draft.warp_colours, draft.warp_order, draft.warp_spacing, draft.warp_thickness)))
    ends = longest if longest > ends and longest % ends == 0 else ends
    threading = list(islice(cycle(draft.threading), ends))
    colours = list(islice(cycle(draft.warp_colours or ("warp",)), ends))
    order = list(islice(cycle(draft.warp_order or ("ground",)), ends))
    spacing = list(islice(cycle(draft.warp_spacing or (1.0,)), ends))
    thickness = list(islice(cycle(draft.warp_thickness or (1.0,)), ends))
    for accent in put_in:
        most = len(threading) + (1 if accent.added else 0)
        if not 1 <= accent.end <= most:
            raise Unfitting(str(accent.end), f"An accent is one of the ends 1 to {most}.", part="accents")
        at = accent.end - 1
        place = slice(at, at + (0 if accent.added else 1))
        threading[place] = [accent.shafts or (frozenset() if accent.added else threading[at])]
        colours[place] = [accent.colour or (colours[at] if at < len(colours) else "warp")]
        order[place] = ["accent"]
        if accent.added:
            spacing.insert(at, 1.0)
            thickness.insert(at, 1.0)
    told = draft.warp_colours or any(accent.colour for accent in put_in)
    return replace(
        draft,
        threading=tuple(threading),
        warp_colours=tuple(colours) if told else (),
        warp_order=tuple(order),
        warp_spacing=tuple(spacing) if draft.warp_spacing else (),
        warp_thickness=tuple(thickness) if draft.warp_thickness else (),
    )


def spacing_in_dents(ends_in_dents: Sets) -> tuple[float, ...]:
    """The room of each end beside the usual, from the ends in each dent.

    An empty dent is room of the next end; those after the last end are room of that one.
    ends_in_dents: one number a dent, none for an empty one. Raises Unfitting.
    """
    numbers = []
    for dent in ends_in_dents:
        if len(dent) > 1:
            right = "Ends in a dent are one number, and `none` for an empty dent."
            raise Unfitting(print_sets([dent]), right, part="ends_in_dents")
        numbers.append(min(dent, default=0))
    usual = Counter(number for number in numbers if number).most_common(1)
    if not usual:
        raise Unfitting("none", "Some dent has ends: `20 times (2), 4 times (4)`.", part="ends_in_dents")
    found: list[float] = []
    empty = 0
    for number in numbers:
        if not number:
            empty += 1
            continue
        room = usual[0][0] / number
        found += [room + empty * usual[0][0], *[room] * (number - 1)]
        empty = 0
    found[-1] += empty * usual[0][0]
    return tuple(found)
