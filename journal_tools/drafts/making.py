"""Drafts made of parts: blocks, tabby between pattern picks, accents, ends in dents, two layers."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import cycle, islice
from math import lcm

from journal_tools.drafts.draft import Draft
from journal_tools.drafts.operations import shifted
from journal_tools.notation import Sets, print_sets
from journal_tools.quantities import Unreadable

NOT_HELD = {
    "leno": "its ends cross over one another, which ups and downs of shafts cannot say",
    "gauze": "its ends cross over one another, which ups and downs of shafts cannot say",
    "pile": "its pile is made of loops or of cut ends, which lie beyond over and under",
    "velvet": "its pile is made of loops or of cut ends, which lie beyond over and under",
    "terry": "its pile is made of loops, which lie beyond over and under",
}
"""What a draft of over and under cannot hold, and why."""

MOST_PICKS_OF_LAYERS = 5_000


@dataclass(frozen=True)
class Accent:
    """An end put in: as the so-manieth (from 1), on these shafts. added: beside the others, or in place of one."""

    end: int
    shafts: frozenset[int]
    colour: str = ""
    added: bool = True


def refuse_what_is_not_held(words: Iterable[str]) -> None:
    """Raise Unreadable where a weave's name or a role is one that over and under cannot hold."""
    for text in words:
        for word, why in NOT_HELD.items():
            if word in text.lower().replace("-", " ").split():
                raise Unreadable(
                    text, f"A draft cannot hold it: {why}. Keep its ground as a draft, and the rest in the notes."
                )


def from_blocks(units: Mapping[str, Sets | None], order: Sequence[str], what: str) -> Sets:
    """The threads of blocks in turn. what: "threading" or "treadling". Raises Unreadable."""
    for letter in dict.fromkeys(order):
        if not units.get(letter):
            known = ", ".join(sorted(letter for letter, unit in units.items() if unit)) or "none"
            raise Unreadable(letter, f"Block {letter} has no {what} under blocks; those that have are {known}.")
    return tuple(thread for letter in order for thread in units[letter] or ())


def with_tabby(pattern: Sets, tabby: Sets) -> Sets:
    """Pattern picks with a tabby pick after each, the tabby sheds in turn."""
    return tuple(pick for both in zip(pattern, cycle(tabby), strict=False) for pick in both)


def with_accents(draft: Draft, accents: Iterable[Accent]) -> Draft:
    """A draft with single ends put in, the first end first. Raises Unreadable."""
    ends = len(draft.threading)
    threading = list(draft.threading)
    colours = list(islice(cycle(draft.warp_colours or ("warp",)), ends))
    order = list(islice(cycle(draft.warp_order or ("ground",)), ends))
    for accent in sorted(accents, key=lambda each: each.end):
        most = len(threading) + (1 if accent.added else 0)
        if not 1 <= accent.end <= most:
            raise Unreadable(str(accent.end), f"An accent is one of the ends 1 to {most}.")
        stop = accent.end - 1 + (0 if accent.added else 1)
        place = slice(accent.end - 1, stop)
        threading[place] = [accent.shafts or (frozenset() if accent.added else threading[accent.end - 1])]
        colours[place] = [accent.colour or (colours[accent.end - 1] if accent.end <= len(colours) else "warp")]
        order[place] = ["accent"]
    told = draft.warp_colours or any(accent.colour for accent in accents)
    return replace(
        draft, threading=tuple(threading), warp_colours=tuple(colours) if told else (), warp_order=tuple(order)
    )


def spacing_in_dents(ends_in_dents: Sets) -> tuple[float, ...]:
    """The room of each end beside the usual, from the ends in each dent; an empty dent is room of the next end.

    ends_in_dents: one number a dent, none for an empty one. Raises Unreadable.
    """
    numbers = []
    for dent in ends_in_dents:
        if len(dent) > 1:
            raise Unreadable(print_sets([dent]), "Ends in a dent are one number, and `none` for an empty dent.")
        numbers.append(min(dent, default=0))
    usual = Counter(number for number in numbers if number).most_common(1)
    if not usual:
        raise Unreadable("none", "Some dent has ends: `20 times (2), 4 times (4)`.")
    found: list[float] = []
    empty = 0
    for number in numbers:
        if not number:
            empty += 1
            continue
        room = usual[0][0] / number
        found += [room + empty * usual[0][0], *[room] * (number - 1)]
        empty = 0
    return tuple(found)


def double_cloth(upper: Draft, lower: Draft) -> Draft:
    """Two cloths on one another, an end and a pick of each in turn, the upper one first.

    For a pick of the lower cloth every end of the upper one is up; for one of the upper no end of the
    lower. Repeats of different length are woven until both end together. Raises Unreadable.
    """
    shafts = upper.shafts
    ends = lcm(len(upper.threading), len(lower.threading))
    picks = lcm(len(upper.picks), len(lower.picks))
    if max(ends, picks) > MOST_PICKS_OF_LAYERS:
        raise Unreadable(f"{ends:,} ends, {picks:,} picks", "The two layers' repeats fit together in too many threads.")
    over, under = (_lifts(layer) for layer in (upper, lower))
    every = frozenset(range(1, shafts + 1))
    threads = zip(_full(upper.threading, ends), shifted(_full(lower.threading, ends), shafts), strict=True)
    sheds = zip(_full(over, picks), shifted(_full(under, picks), shafts), strict=True)
    return Draft(
        tuple(end for both in threads for end in both),
        lift_plan=tuple(shed for top, below in sheds for shed in (top, every | below)),
        warp_colours=_both(upper.warp_colours, lower.warp_colours, ends),
        weft_colours=_both(upper.weft_colours, lower.weft_colours, picks),
    )


def _lifts(draft: Draft) -> Sets:
    """The shafts that are up at each pick."""
    every = frozenset(range(1, draft.shafts + 1))
    return draft.picks if draft.rising else tuple(every - pick for pick in draft.picks)


def _full(sets: Sets, number: int) -> Sets:
    return tuple(islice(cycle(sets), number))


def _both(one: tuple[str, ...], other: tuple[str, ...], number: int) -> tuple[str, ...]:
    if not one and not other:
        return ()
    pairs = zip(islice(cycle(one or ("upper",)), number), islice(cycle(other or ("lower",)), number), strict=True)
    return tuple(colour for both in pairs for colour in both)
