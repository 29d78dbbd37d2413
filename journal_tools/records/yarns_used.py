"""Which yarns a warp used, in warp and weft, and where their records are."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from journal_tools.records.cloth import Weft
from journal_tools.records.journal import Journal
from journal_tools.records.readers import slug
from journal_tools.records.warp import Stretch, Warp, WarpYarn
from journal_tools.records.yarn import Yarn


@dataclass(frozen=True)
class YarnInUse:
    """One yarn as a warp names it.

    alias: the short name in this warp. name: the yarn's name, whether it has a record or not.
    colour: the colour's name, "" when none was said. record: the yarn's record, None when there is none.
    typed: the yarn as it was typed.
    """

    alias: str
    name: str
    colour: str
    record: Yarn | None
    typed: str = ""

    @property
    def said(self) -> str:
        """The yarn as it was typed, without its colour."""
        return self.typed if slug(self.typed) == self.name else self.name

    @property
    def plain_heading(self) -> str:
        """The yarn as a reader would want it, without its colour."""
        if self.record:
            return self.record.heading
        return self.said if self.said != self.name else self.name.replace("-", " ")

    @property
    def heading(self) -> str:
        """The yarn and its colour."""
        return f"{self.plain_heading}, {self.colour}" if self.colour else self.plain_heading

    @property
    def hex(self) -> str | None:
        """The colour as six digits; the yarn's only colour when none was said; None when unknown."""
        colours = (self.record.colours if self.record else None) or {}
        if self.colour:
            return colours.get(self.colour)
        return next(iter(colours.values())) if colours else None


def find_yarn(journal: Journal, typed: str) -> tuple[str, str, Yarn | None]:
    """Name, colour and record of a yarn typed as `linen-20-2 bone`, or by a title or a label.

    The record is None when the journal has none of that name, and when several have that label.
    """
    first, _, rest = typed.strip().partition(" ")
    record = journal.yarns_by_any_name.get(first)
    if record is not None:
        return record.name, rest.strip(), record
    name = slug(typed)
    record = journal.yarns_by_any_name.get(name)
    if record is not None:
        return record.name, "", record
    words = typed.split()
    for many in range(len(words), 0, -1):
        labelled = labelled_yarns(journal, " ".join(words[:many]))
        if len(labelled) == 1:
            return labelled[0].name, " ".join(words[many:]), labelled[0]
    return (first, rest.strip(), None) if re.fullmatch(r"[a-z0-9]+(-[a-z0-9]+)+", first) else (name, "", None)


def labelled_yarns(journal: Journal, typed: str) -> tuple[Yarn, ...]:
    """The yarns whose label says this, such as `8/2 cotton`."""
    return journal.yarns_by_label.get(slug(typed), ()) if re.search(r"\d", typed) else ()


def yarn_in_use(journal: Journal, warp: Warp, typed: str, colour: str | None = None) -> YarnInUse:
    """The yarn that a text names in this warp: a short name of its own, a yarn and a colour, or a colour alone.

    A colour alone, as in an order of colours, is of the yarn that stands beside the order.
    """
    use = (warp.yarns or {}).get(typed)
    if use is not None and use.yarn:
        name, said, record = find_yarn(journal, use.yarn)
        return YarnInUse(typed, name, use.colour or said, record, use.yarn)
    name, said, record = find_yarn(journal, typed)
    if record is None and (beside := _beside(journal, warp, typed)) is not None:
        yarn = yarn_in_use(journal, warp, beside)
        return YarnInUse(typed, yarn.name, typed, yarn.record, beside)
    return YarnInUse(typed, name, colour or said, record, typed)


def _beside(journal: Journal, warp: Warp, colour: str) -> str | None:
    """The yarn beside the order that a colour stands in, or the warp's only yarn when it has the colour."""
    ordered: list[WarpYarn | Weft] = [*warp.warp, *_wefts(warp)]
    for each in ordered:
        if each.yarn and each.yarn != colour and each.order and colour in each.order.items:
            return each.yarn
    record = find_yarn(journal, warp.yarn)[2] if warp.yarn else None
    return warp.yarn if record is not None and colour in (record.colours or {}) else None


def _wefts(warp: Warp) -> list[Weft]:
    levels = [warp, *warp.stretches, *(piece for stretch in warp.woven() for piece in stretch.pieces)]
    return [weft for level in levels for weft in level.weft]


def warp_threads(journal: Journal, warp: Warp) -> tuple[tuple[YarnInUse, int], ...]:
    """The yarns wound, each with its ends; alike where the ends of one are not said."""
    counted: Counter[str] = Counter()
    for wound in warp.warp:
        if wound.order:
            counted.update(wound.order.counts)
        elif wound.yarn:
            counted[wound.yarn] += wound.ends.number if wound.ends else 0
        if wound.floating_selvedges:
            counted[wound.floating_selvedges] += 2
    if not counted:
        counted.update([warp.yarn] if warp.yarn else list(warp.yarns or ())[:1])
    alike = not all(counted.values())
    return tuple((yarn_in_use(journal, warp, typed), 1 if alike else number) for typed, number in counted.items())


def weft_threads(journal: Journal, warp: Warp, wefts: Sequence[Weft]) -> tuple[tuple[YarnInUse, int], ...]:
    """The yarns of these wefts, or of the warp, each with its picks; alike where there is no order.

    Hems and accents are left out where there is another weft: they are few.
    """
    ground = [weft for weft in wefts if weft.role not in ("hem", "accent")] or list(wefts)
    counted: Counter[tuple[str, str | None]] = Counter()
    for weft in ground:
        for typed, number in weft.order.counts.items() if weft.order else [(weft.yarn or "", 1)]:
            counted[typed, weft.colour] += number if len(ground) == 1 else 1
    if not counted and warp.yarn:
        counted[warp.yarn, None] = 1
    return tuple((yarn_in_use(journal, warp, *typed), number) for typed, number in counted.items())


def warp_yarns(journal: Journal, warp: Warp) -> tuple[YarnInUse, ...]:
    """The yarns wound, in the order they first come in; one of each."""
    return _each_once(yarn for yarn, _ in warp_threads(journal, warp))


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
