"""Which yarns a warp used, in warp and weft, and where their records are."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass

from journal_tools.records.cloth import Weft
from journal_tools.records.journal import Journal
from journal_tools.records.readers import slug
from journal_tools.records.warp import Stretch, Warp
from journal_tools.records.yarn import Yarn


@dataclass(frozen=True)
class YarnInUse:
    """One yarn as a warp names it.

    alias: the short name in this warp. name: the yarn's name, whether it has a record or not.
    colour: the colour's name, "" when none was said. record: the yarn's record, None when there is none.
    """

    alias: str
    name: str
    colour: str
    record: Yarn | None

    @property
    def heading(self) -> str:
        """The yarn and its colour, as a reader would want them."""
        title = self.record.heading if self.record else self.name.replace("-", " ")
        return f"{title}, {self.colour}" if self.colour else title

    @property
    def hex(self) -> str | None:
        """The colour as six digits; the yarn's only colour when none was said; None when unknown."""
        colours = (self.record.colours if self.record else None) or {}
        if self.colour:
            return colours.get(self.colour)
        return next(iter(colours.values())) if colours else None


def find_yarn(journal: Journal, typed: str) -> tuple[str, str, Yarn | None]:
    """Name, colour and record of a yarn typed as `linen-20-2 bone`, or by a label or title.

    The record is None when the journal has none of that name.
    """
    first, _, rest = typed.strip().partition(" ")
    record = journal.yarns_by_any_name.get(first)
    if record is not None:
        return record.name, rest.strip(), record
    name = slug(typed)
    record = journal.yarns_by_any_name.get(name)
    if record is not None:
        return record.name, "", record
    return (first, rest.strip(), None) if re.fullmatch(r"[a-z0-9]+(-[a-z0-9]+)+", first) else (name, "", None)


def yarn_in_use(journal: Journal, warp: Warp, typed: str, colour: str | None = None) -> YarnInUse:
    """The yarn that a text names in this warp: a short name of its own, or a yarn and a colour."""
    use = (warp.yarns or {}).get(typed)
    if use is not None and use.yarn:
        name, said, record = find_yarn(journal, use.yarn)
        return YarnInUse(typed, name, use.colour or said, record)
    name, said, record = find_yarn(journal, typed)
    return YarnInUse(typed, name, colour or said, record)


def warp_yarns(journal: Journal, warp: Warp) -> tuple[YarnInUse, ...]:
    """The yarns wound, in the order they first come in; one of each."""
    typed: list[str] = []
    for wound in warp.warp:
        typed += wound.order.items if wound.order else ([wound.yarn] if wound.yarn else [])
        if wound.floating_selvedges:
            typed.append(wound.floating_selvedges)
    if not typed:
        typed = [warp.yarn] if warp.yarn else list(warp.yarns or ())[:1]
    return _each_once(yarn_in_use(journal, warp, text) for text in dict.fromkeys(typed))


def weft_yarns(journal: Journal, warp: Warp, stretch: Stretch | None = None) -> tuple[YarnInUse, ...]:
    """The yarns thrown in one stretch, or in all; the yarn of the warp when nothing else is said."""
    stretches = (stretch,) if stretch is not None else warp.woven()
    used: list[YarnInUse] = []
    for each in stretches:
        wefts = [weft for piece in each.pieces for weft in piece.weft] + list(each.weft or warp.weft)
        for weft in wefts:
            used += [yarn_in_use(journal, warp, text, weft.colour) for text in _thrown(weft)]
    if not used and warp.yarn:
        used = [yarn_in_use(journal, warp, warp.yarn)]
    return _each_once(used)


def all_yarns(journal: Journal, warp: Warp) -> tuple[YarnInUse, ...]:
    """Every yarn of the warp once, warp yarns first."""
    named = (yarn_in_use(journal, warp, alias) for alias in warp.yarns or ())
    return _each_once([*warp_yarns(journal, warp), *weft_yarns(journal, warp), *named])


def _thrown(weft: Weft) -> list[str]:
    if weft.order:
        return list(dict.fromkeys(weft.order.items))
    return [weft.yarn] if weft.yarn else []


def _each_once(used: Iterable[YarnInUse]) -> tuple[YarnInUse, ...]:
    by_key = {(yarn.name, yarn.colour): yarn for yarn in reversed(list(used))}
    return tuple(reversed(by_key.values()))
