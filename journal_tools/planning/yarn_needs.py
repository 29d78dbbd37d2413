"""How much yarn, of which colour, what is on the shelf, and how many cones are to be bought."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass, field

from journal_tools.planning import arithmetic as sums
from journal_tools.planning.allowances import SPARE_YARN
from journal_tools.quantities import Unreadable, parse_weight
from journal_tools.records.yarn import Yarn
from journal_tools.records.yarns_used import YarnInUse

_WEIGHT = re.compile(r"\d[\d.,/ ]*\s*(?:kg|g|oz|lb)\b", re.IGNORECASE)


@dataclass
class _Thread:
    """Millimetres of one yarn in one colour."""

    yarn: YarnInUse
    warp_mm: float = 0.0
    weft_mm: float = 0.0


@dataclass(frozen=True)
class ColourNeed:
    """One yarn in one colour. warp_mm, weft_mm: of yarn, without the spare.

    grams: of both with the spare; None where nobody knows how thick the yarn is.
    """

    yarn: YarnInUse
    warp_mm: float
    weft_mm: float
    grams: float | None

    @property
    def named(self) -> str:
        """The colour, else the yarn."""
        return self.yarn.colour or self.yarn.plain_heading


@dataclass(frozen=True)
class YarnNeed:
    """One yarn in all its colours.

    on_hand_g: on the shelf, of all colours together; short_g: what is missing of it; cones: whole
    put-ups that hold it; put_up_g, put_up: the size and the words of one; cost: of what is used, and
    buy_cost of what is to be bought, in `currency`. None where a record does not say enough.
    """

    heading: str
    record: Yarn | None
    colours: tuple[ColourNeed, ...]
    grams: float | None
    on_hand_g: float | None
    short_g: float | None
    put_up_g: float | None
    put_up: str
    cones: int | None
    cost: float | None
    buy_cost: float | None
    currency: str


@dataclass
class Tally:
    """Adds up yarn, warp by warp and weft by weft."""

    threads: dict[tuple[str, str], _Thread] = field(default_factory=dict)

    def wind(self, ends: Iterable[tuple[YarnInUse, float]], warp_mm: float) -> None:
        """Ends of each yarn, all of one length."""
        for yarn, number in ends:
            self._of(yarn).warp_mm += number * warp_mm

    def throw(self, picks: float, shares: Iterable[tuple[YarnInUse, int]], reed_mm: float) -> None:
        """Picks shared among yarns, each as long as the reed is wide and a little more."""
        shares = list(shares)
        total = sum(number for _, number in shares)
        for yarn, number in shares:
            self._of(yarn).weft_mm += picks * number / total * sums.weft_mm(reed_mm)

    def needs(self, currency: str) -> tuple[YarnNeed, ...]:
        """Each yarn once, its colours in the order they came in."""
        by_name: dict[str, list[_Thread]] = {}
        for (name, _), thread in self.threads.items():
            by_name.setdefault(name, []).append(thread)
        return tuple(_need(threads, currency) for threads in by_name.values())

    def _of(self, yarn: YarnInUse) -> _Thread:
        return self.threads.setdefault((yarn.name, yarn.colour), _Thread(yarn))


def _need(threads: Iterable[_Thread], currency: str) -> YarnNeed:
    threads = list(threads)
    yarn = threads[0].yarn
    record = yarn.record
    tex = float(record.tex) if record is not None and record.tex else None
    colours = tuple(
        ColourNeed(
            thread.yarn,
            thread.warp_mm,
            thread.weft_mm,
            (thread.warp_mm + thread.weft_mm) * tex / 1e6 * (1 + SPARE_YARN) if tex else None,
        )
        for thread in threads
    )
    grams = sum(colour.grams or 0 for colour in colours) if tex else None
    have = float(record.on_hand.grams) if record is not None and record.on_hand is not None else None
    short = max(0.0, grams - have) if grams is not None and have is not None else None
    put_up, words = put_up_of(record)
    cones = None
    if put_up and grams is not None:
        # A cone has one colour. What is on hand is told of all colours together, so no more than its lack is known.
        wanted = [colour.grams or 0.0 for colour in colours] if short is None else [short]
        cones = sum(sums.cones(each, put_up) for each in wanted)
    price = record.price if record is not None else None
    cost = grams * float(price.amount) / put_up if price and put_up and grams is not None else None
    buy = cones * float(price.amount) if price and cones is not None else None
    named = (price.currency if price and price.currency else currency) or ""
    heading = yarn.plain_heading
    return YarnNeed(heading, record, colours, grams, have, short, put_up, words, cones, cost, buy, named)


def put_up_of(record: Yarn | None) -> tuple[float | None, str]:
    """Grams of one put-up and the word for it, "cone" where nothing better is said; 250 g cones is 250 and cone."""
    said = record.put_up if record is not None else None
    found = _WEIGHT.search(said or "")
    if said is None or found is None:
        return None, "cone"
    try:
        grams = float(parse_weight(found[0].strip()).grams)
    except Unreadable:
        return None, "cone"
    after = re.search(r"(?:cone|skein|ball|hank|spool|pirn|tube|cake)", said, re.IGNORECASE)
    return grams or None, after[0].lower() if after else "cone"
