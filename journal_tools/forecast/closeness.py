"""How close a sett is: ends to the length in the reed, over the most that the yarn takes in that weave.

Ashenhurst's rule: a yarn lies k √(yards to the pound) times side by side in an inch, and a weave of w
ends and i interlacings in its repeat takes w/(w + i) of these. k is 0.9 for firm yarns and 0.84 for soft
woollen ones. The working sett is about three quarters of the greatest. Source for the rule, both k and
the three quarters: http://www.faena.medievaltextiles.org/ash.html, which has 52 diameters for 8/2 cotton,
26 ends in plain weave and 34 in 2/2 twill.

By wraps: w/(w + i) of the wraps is a working sett; half of them for plain weave
(https://harborthread.org/articles/warp-and-weft-techniques/). Wrapping by hand packs less than the rule
does: a sett by wraps is about 0.7 of Ashenhurst's greatest (https://peggyosterkamp.com/ashenhurst-rule/).
"""

from __future__ import annotations

import itertools
import math
from collections import Counter
from dataclasses import dataclass
from fractions import Fraction
from functools import cache

from journal_tools.drafts import Draft, Face, named_weave
from journal_tools.quantities import INCH, SYSTEMS
from journal_tools.records.yarn import Yarn

FIRM, SOFT = 0.9, 0.84
"""Ashenhurst's k for worsted, cotton and their like, and for soft woollen yarns."""

WORKING = 0.75
"""Share of the greatest sett that is usually woven."""

WRAPS_TO_GREATEST = 0.7
"""A sett by wraps, over the greatest by Ashenhurst."""

WOOLLEN = {"wool", "woollen", "lambswool", "shetland", "tweed", "jacob"}
SMOOTH = {"worsted", "merino", "superwash", "combed"}
"""Words that call a wool soft-spun, and words that call it firm (judgement)."""

MOST_CROSSINGS = 1_000_000
"""Different picks times different neighbours of the largest draft that is counted through."""


@dataclass(frozen=True)
class Setts:
    """Setts as a guide, in ends to the metre; None where the yarn does not say enough.

    greatest: by Ashenhurst, or by wraps where no yarn number is known. working: about three quarters of
    it. by_wraps: what the wraps give by themselves. basis: "weighed", "label", "wraps" or "".
    """

    greatest: float | None
    working: float | None
    by_wraps: float | None
    basis: str


def diameters(tex: float | Fraction, fibre: str = "") -> float:
    """Threads that lie side by side in a metre, by Ashenhurst. tex: g in 1000 m, above 0."""
    yards_per_pound = float(SYSTEMS["yd/lb"].number_of(Fraction(tex)))
    return coefficient(fibre) * math.sqrt(yards_per_pound) * 1000 / float(INCH)


def coefficient(fibre: str) -> float:
    """Ashenhurst's k for a fibre as a weaver names it: 0.84 for soft woollen, else 0.9."""
    words = set(fibre.lower().replace("-", " ").split())
    return SOFT if words & WOOLLEN and not words & SMOOTH else FIRM


def setts(yarn: Yarn | None, weave: str, draft: Draft | None = None) -> Setts:
    """Setts for a yarn in a weave, as a guide. A yarn that was weighed is believed before its label."""
    share = interlacing(weave, draft)
    if yarn is None or share is None:
        return Setts(None, None, None, "")
    by_wraps = float(yarn.wraps.per_m) * share if yarn.wraps else None
    if yarn.tex:
        greatest = diameters(yarn.tex, _fibre_of(yarn)) * share
        basis = "label" if yarn.length_weight is None and yarn.yield_ is None else "weighed"
    elif by_wraps is not None:
        greatest, basis = by_wraps / WRAPS_TO_GREATEST, "wraps"
    else:
        return Setts(None, None, None, "")
    return Setts(greatest, greatest * WORKING, by_wraps, basis)


def closeness(ends_per_m: float, yarn: Yarn | None, weave: str, draft: Draft | None = None) -> float | None:
    """Ends to the metre in the reed, of one layer, over the greatest sett; None where that is not known."""
    greatest = setts(yarn, weave, draft).greatest
    return ends_per_m / greatest if greatest else None


def _fibre_of(yarn: Yarn) -> str:
    """The main fibre, with what the label says of how it was spun."""
    return f"{yarn.main_fibre or ''} {yarn.number or ''}"


def interlacing(weave: str, draft: Draft | None = None) -> float | None:
    """w/(w + i) of a weave by its name, else of a draft; None where neither is known.

    w: ends in the repeat. i: times that a pick changes between face and back in it, the mean over the
    picks where they differ (judgement). Warp-faced plain weave is 1: its ends lie side by side, and the
    weft, which runs straight, takes no room between them (judgement).
    """
    named = named_weave(weave) if weave else None
    if named is not None:
        return _of_named(named.name)
    return _share(draft) if draft is not None else None


@cache
def _of_named(name: str) -> float | None:
    named = named_weave(name)
    if named is None:
        return None
    faced = named.face is Face.WARP and named.name == "warp-faced plain weave"
    return 1.0 if faced else _share(named.draft)


def _share(draft: Draft) -> float | None:
    ends = draft.threading
    pairs = Counter(zip(ends, (*ends[1:], ends[0]), strict=True))
    picks = Counter(draft.picks)
    if not picks or len(pairs) * len(picks) > MOST_CROSSINGS:
        return None
    changes = sum(
        many * times
        for (pick, many), ((left, right), times) in itertools.product(picks.items(), pairs.items())
        if bool(pick & left) != bool(pick & right)
    )
    return len(ends) / (len(ends) + changes / picks.total())
