"""Readers for single values: a spot in, a value out, Unreadable when it cannot be."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from typing import TypeVar

from journal_tools.problems import nearest
from journal_tools.quantities import (
    CountOf,
    Density,
    Length,
    Money,
    Size,
    TimesLength,
    Unreadable,
    Weight,
    When,
    parse_count,
    parse_density,
    parse_length,
    parse_money,
    parse_size,
    parse_times_length,
    parse_weight,
    parse_when,
    parse_yes_no,
)
from journal_tools.records.spot import Elsewhere, Spot

T = TypeVar("T")

NAME = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")
_TWO_FIGURES = re.compile(r"(\d+(?:\.\d+)?(?: \d+/\d+)?) (\d+(?:\.\d+)?(?: \d+/\d+)?)")
_A_SIZE = re.compile(r"[~?]?\s*[\d?].*[x×]\s*[\d?]")
MOST_FEW = 100
HEX = re.compile(r"#?([0-9a-fA-F]{6}|[0-9a-fA-F]{3})")


def text(spot: Spot) -> str:
    """Free text."""
    return spot.text()


def length(spot: Spot) -> Length:
    """A length."""
    return parse_length(spot.text(), spot.units)


def some_length(spot: Spot) -> Length:
    """A length that is more than nothing."""
    return more_than_nothing(length(spot))


def more_than_nothing(read: Length) -> Length:
    """The length itself. Raises Unreadable for one of nothing, which no size can be held against."""
    if not read.mm:
        raise Unreadable(read=read.text, right="nothing cannot be measured; leave the line out where nobody measured.")
    return read


def few(spot: Spot) -> CountOf:
    """A small count of things that cannot be many."""
    counted = count(spot)
    if not 1 <= counted.number <= MOST_FEW:
        raise Unreadable(read=spot.text(), right=f"a number from 1 to {MOST_FEW} is wanted.")
    return counted


def times_length(spot: Spot) -> TimesLength:
    """A length, or so many of one."""
    return parse_times_length(spot.text(), spot.units)


def size(spot: Spot) -> Size:
    """Width x length."""
    typed = spot.text()
    two = _TWO_FIGURES.fullmatch(typed)
    if two:
        right = "a size is width x length, with an x between the two."
        raise Unreadable(read=typed, right=right, mended=f"{two[1]} x {two[2]}")
    return parse_size(typed, spot.units)


def density(spot: Spot) -> Density:
    """Threads or dents to the inch or centimetre."""
    return parse_density(spot.text(), spot.units)


def weight(spot: Spot) -> Weight:
    """A weight."""
    return parse_weight(spot.text(), spot.units)


def when(spot: Spot) -> When:
    """A date, a month, a season or a year."""
    return parse_when(spot.text())


def count(spot: Spot) -> CountOf:
    """A whole number of things."""
    return parse_count(spot.text(), spot.units)


def pick_count(spot: Spot) -> CountOf:
    """A number of picks; a density has a key of its own."""
    typed = spot.text()
    if "/" in typed or "per" in typed or "ppi" in typed:
        right = "`picks:` is a count. How many to the inch or centimetre is written under `beat:`."
        raise Elsewhere(typed, right, key="beat", mended=typed)
    return parse_count(typed, spot.units)


def small_number(spot: Spot) -> int:
    """A count used as a number of parts of a loom."""
    return count(spot).number


def money(spot: Spot) -> Money:
    """An amount of money."""
    return parse_money(spot.text(), spot.units)


def yes_no(spot: Spot) -> bool:
    """Yes or no."""
    return parse_yes_no(spot.text())


def slug(words: str) -> str:
    """Words as a record's name: small letters and digits with hyphens between."""
    return re.sub(r"[^a-z0-9]+", "-", words.lower()).strip("-")


def name(spot: Spot) -> str:
    """The name of another record: the name of its file."""
    typed = spot.text()
    if not NAME.fullmatch(typed):
        near = "" if _A_SIZE.match(typed) else slug(typed)
        raise Unreadable(
            read=typed,
            right="the name of a record is wanted: small letters, digits and hyphens"
            + (f", such as `{near}`." if near else "."),
            mended=near,
        )
    return typed


def names(spot: Spot) -> tuple[str, ...]:
    """One name or a list of names."""
    return several(name)(spot)


def texts(spot: Spot) -> tuple[str, ...]:
    """One text or a list of texts."""
    return several(text)(spot)


def colour(spot: Spot) -> str:
    """A colour as six hexadecimal digits, lower case, without `#`."""
    typed = spot.text()
    match = HEX.fullmatch(typed)
    if not match:
        raise Unreadable(read=typed, right="a colour is six digits or letters a to f, without `#`, such as `c9b58b`.")
    digits = match[1].lower()
    return digits if len(digits) == 6 else "".join(d * 2 for d in digits)


def choice(*words: str) -> Callable[[Spot], str]:
    """A reader that takes one of a few words."""

    def read(spot: Spot) -> str:
        typed = " ".join(spot.text().lower().split())
        if typed in words:
            return typed
        near = nearest(typed, words)
        said = f" Did you mean `{near}`?" if near else ""
        raise Unreadable(read=spot.text(), right=f"one of {_listed(words)} is wanted.{said}")

    return read


def several(reader: Callable[[Spot], T]) -> Callable[[Spot], tuple[T, ...]]:
    """A reader for one value or a list; an item that cannot be read is a problem and the others stay."""

    def read(spot: Spot) -> tuple[T, ...]:
        return tuple(value for item in spot.items() if (value := item.read(reader)) is not None)

    return read


def by_name(reader: Callable[[Spot], T]) -> Callable[[Spot], Mapping[str, T]]:
    """A reader for names of the weaver's own, each with a value."""

    def read(spot: Spot) -> Mapping[str, T]:
        return {key: value for key, _, at in spot.entries() if (value := at.read(reader)) is not None}

    return read


def _listed(words: tuple[str, ...]) -> str:
    quoted = [f"`{word}`" for word in words]
    return quoted[0] if len(quoted) == 1 else ", ".join(quoted[:-1]) + f" or {quoted[-1]}"
